#pragma once

#include <vector>

#include "fretboard/fingering.h"
#include "fretboard/fingering_board.h"

namespace fretsheaf::fretboard {

// A line made ready for the search: rests are taken in as time, and what a later note is joined to goes along through
// all events between, so that every rule is one of a single event or of two neighbours.

// A place where a note might lie, with its grace notes.
struct Spot {
  Place place;
  int first_fret = 0;  // of its first grace note, or its own
  int slide = 0;       // frets that slides between these take the hand along
  int low = 0;         // the outer frets that one hand stops for them; 0 where it stops none
  int high = 0;

  bool operator==(const Spot&) const = default;
};

// Whom a dead note goes with.
enum class Neighbour { none, same_step, step_before, step_after };

// A note of one step.
struct Slot {
  const NoteToPlace* note = nullptr;
  NoteIndex index;
  bool carried = false;       // not of this event: a later note is joined to it, so no other takes its string
  int from = -1;              // the slot of the step before that it is joined to; -1 none
  Joint joint = Joint::none;  // how
  bool open_slide = false;    // the original slid from or to an open string
  int ligature_reach = 0;     // micrometres that a hammer-on or pull-off may span
  bool string_alone = false;  // joined to or from a dead note: on one string, no more
  std::vector<Spot> spots;    // lowest fret first, then the lower line; of a dead note every string
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

std::vector<Step> make_steps(const Line& line, const Board& board);

bool is_slide(Joint joint);
bool is_ligature(Joint joint);  // a hammer-on or pull-off
// Whether that joint leads from one place to the other; how far a hand spans is not asked.
bool joins(Joint joint, Place from, Place to, bool open_slide);

}  // namespace fretsheaf::fretboard
