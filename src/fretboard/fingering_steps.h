#pragma once

#include <vector>

#include "fretboard/fingering.h"

namespace fretsheaf::fretboard {

// A line made ready for the search: rests are taken in as time, and what a later note is joined to goes along through
// all events between, so that every rule is one of a single event or of two neighbours.

// A place where a note might lie.
struct Candidate {
  Place place;
  int low = 0;  // the outer frets that are stopped, grace notes of the same hand among them; 0 where nothing is
  int high = 0;
};

// Whom a dead note goes with.
enum class Neighbour { none, same_step, step_before, step_after };

// A note of one step.
struct Slot {
  const NoteToPlace* note = nullptr;
  NoteIndex index;
  bool carried = false;               // not of this event: a later note is joined to it, so no other takes its string
  int from = -1;                      // the slot of the step before that it is joined to; -1 none
  Joint joint = Joint::none;          // how
  std::vector<Candidate> candidates;  // lowest fret first, then the lower line; of a dead note every string
  Neighbour neighbour = Neighbour::none;
  int neighbour_slot = -1;

  bool dead() const { return note->sound == Sound::dead; }
  bool struck() const { return !carried && note->joint != Joint::held; }
};

// An event that is no rest.
struct Step {
  int event = 0;
  std::vector<Slot> slots;  // those of the event in its order, then the carried ones
  int anchor = 0;           // the slot whose distance to the next step's is looked at
  int dead_alone = -1;      // the first dead slot of a step that has no other notes; -1 of any other step
  int urgency_stopped = 1;  // times that the time for a move to the next step goes into a second
  int urgency_free = 1;     // the same where no finger is down
};

std::vector<Step> make_steps(const Line& line, const Neck& neck);

// Whether a note at `to` can be reached by that joint from one at `from`.
// `was_open`: the original's slide left or reached an open string.
bool joins(Joint joint, Place from, Place to, bool was_open);

}  // namespace fretsheaf::fretboard
