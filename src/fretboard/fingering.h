#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "fretboard/neck.h"
#include "theory/rational.h"

// Where on the neck a line is played: an optimal path over all places of all its notes and chords, by dynamic
// programming over string, fret and hand position (Sayegh 1989, Computer Music Journal 13(3) 76-84, is the classic).
// Which fingers press is not chosen here.
namespace fretsheaf::fretboard {

enum class Sound { pitched, harmonic, dead };

// How a note is reached from the one before it on its string. All keep to one string: the hammer-on and the slide up
// lead to a higher fret, the pull-off and the slide down to a lower one, `held` (a tie, a note held on) is the same
// place. A slide neither leaves nor reaches an open string, unless the original's did; the two frets of a hammer-on or
// pull-off lie within a hand's reach.
enum class Joint { none, held, hammer_on, pull_off, slide_up, slide_down };

struct NoteIndex {
  int event = 0;  // into Line::events
  int note = 0;   // into its notes

  bool operator==(const NoteIndex&) const = default;
};

// A grace note is played on the string of the note that it leads to.
struct GraceToPlace {
  int midi = 0;
  Joint joint = Joint::none;      // to it, from the grace note or note before
  std::optional<Place> original;  // where it was
};

struct NoteToPlace {
  Sound sound = Sound::pitched;
  int midi = 0;               // what sounds, of a harmonic too; without meaning for a dead note
  Joint joint = Joint::none;  // to the note itself, from its last grace note where it has any
  // The note of an earlier event that the first of its grace notes, or else the note itself, is joined to: the latest
  // on its string. None where it is not joined, or slides in from nowhere.
  std::optional<NoteIndex> from;
  std::vector<GraceToPlace> graces;  // played before it, in order; none for a dead note
  bool stopped = false;              // needs a finger (a bend, a vibrato, a slide to or from nowhere): not open
  std::vector<int> not_on;           // strings that it may not lie on; a dead note goes by its neighbour alone
  std::optional<Place> original;     // where it was, of a dead note the string alone; none where there is no original
  std::optional<Place> fixed;        // where it stays whatever the search finds for others; it sounds there as it does
};

// What sounds from one moment to the next.
struct EventToPlace {
  theory::Rational length;         // to the next event, in whole notes
  std::vector<NoteToPlace> notes;  // those that sound on, with Joint::held, too; none in a rest
};

struct Line {
  std::vector<EventToPlace> events;
  theory::Rational quarters_per_minute = 120;  // how much time the hand has
};

struct PlacedNote {
  Place place;  // of a dead note the string alone; its fret is 0
  std::vector<Place> graces;

  bool operator==(const PlacedNote&) const = default;
};

enum class Unplayable {
  too_low,            // below the neck's lowest note
  too_high,           // above its highest
  nowhere,            // between them, and yet no string has it (or has it without being open, where a finger is needed)
  no_harmonic,        // no natural harmonic has that pitch
  no_free_string,     // the strings that have it are taken by the other notes of its chord
  out_of_reach,       // no hand spans it and the other notes of its chord (notes held on among them)
  joint_too_wide,     // the hammer-on or pull-off that it ends spans more than a hand
  not_on_one_string,  // it and the note or grace note that it is joined to are nowhere on one string in that direction
};

struct UnplayableNote {
  NoteIndex note;
  Unplayable why = Unplayable::nowhere;
  double least_span = 0;  // out_of_reach, joint_too_wide: mm between the outer frets where they are nearest

  bool operator==(const UnplayableNote&) const = default;
};

struct Fingering {
  // As Line::events and their notes; empty where something is unplayable.
  std::vector<std::vector<PlacedNote>> events;
  // For every event the fret where the hand's first finger lies, counted from the capo; where nothing is stopped, and
  // in a rest, where the hand waits.
  std::vector<int> hands;
  // What the path costs, in units of the table of weights; comparable between lines that differ in pitch alone.
  std::int64_t cost = 0;
  // In order; as many as can be found. Empty where every note has its place.
  std::vector<UnplayableNote> unplayable;

  bool operator==(const Fingering&) const = default;
};

// The cheapest of all fingerings of the line. Always kept: every note at its pitch (a harmonic at its sounding pitch);
// no two notes of an event on one string; all that is stopped in an event (what is held on as well) within a hand's
// reach (see reach.h); what is joined on one string and in its direction. A shape that lies just as in the original,
// shifted along the neck, may span as much as it did there, and a tenth more than that or than the most reach: the
// teacher's own stretches are taken at their word, and a shape moved down a fret or two stays allowed. A dead note goes
// with its neighbour: as many strings up or down as the pitched note of its event that was nearest, else as the event
// before, else the one after; without an original on its string, or the nearest free one. All else is one sum, whose
// weights, with their reasons, are in fingering_weights.h.
// Of fingerings that cost the same it is the one whose last event lies lowest on the neck, then the one before, and so
// on; so the result is the same on every machine.
// Scale length in mm. REQUIRES: every `from` names an earlier note, originals are places of a neck with as many strings
// or as few, positive lengths and tempo.
Fingering find_fingering(const Line& line, const Neck& neck, double scale_length);

}  // namespace fretsheaf::fretboard
