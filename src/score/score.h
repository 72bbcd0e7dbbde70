#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "fretboard/neck.h"
#include "lesson/lesson.h"
#include "score/naming.h"
#include "score/pictures.h"
#include "score/text.h"
#include "theory/chord.h"
#include "theory/key.h"
#include "theory/meter.h"
#include "theory/pitch.h"
#include "theory/rational.h"
#include "theory/tempo.h"
#include "words/words.h"

// What is to be notated, in no medium: every written symbol with its value, every spelling and every filled-in text.
// Layout, MusicXML and the walk-through are made from this alone. A score owns all that it holds (it keeps no pointer
// into the lesson).
namespace fretsheaf::score {

using theory::Rational;

// A written value: `log2` 0 is a whole note, 1 a half, 2 a quarter … 6 a sixty-fourth (7, 8 beyond); a dot adds half.
struct NoteValue {
  int log2 = 2;
  int dots = 0;

  Rational length() const;  // without a tuplet
  int beams() const { return log2 > 2 ? log2 - 2 : 0; }
  bool operator==(const NoteValue&) const = default;
};

enum class HeadKind { normal, dead, ghost, harmonic };

// A sign before a head of the notes staff.
struct Accidental {
  int alteration = 0;       // in semitones: what it raises or lowers the natural note by
  bool cautionary = false;  // it only reminds of what holds without it

  bool operator==(const Accidental&) const = default;
};

struct GraceNote {
  fretboard::Place place;
  theory::Pitch sounding;
  lesson::Approach approach = lesson::Approach::none;
  theory::Pitch written{};  // on the notes staff
  std::optional<Accidental> accidental{};
};

// One note of a symbol. Ties join it with the same place in the next symbol (of the next bar, too).
struct Note {
  fretboard::Place place;
  theory::Pitch sounding;  // spelled; of a harmonic what sounds; of a dead note its open string's
  theory::NoteName exact;  // its name as degrees are counted, which may have three accidentals
  theory::Pitch written;   // on the notes staff; of a harmonic where the string is touched
  std::optional<Accidental> accidental;
  HeadKind head = HeadKind::normal;
  bool tie_from = false;  // tied from the symbol before: no digit, not struck again
  bool tie_to = false;
  bool accent = false;  // articulations stand on the struck symbol only
  bool staccato = false;
  bool tenuto = false;
  bool vibrato = false;
  std::optional<lesson::Bend> bend;
  lesson::Approach approach = lesson::Approach::none;
  bool approach_from_nowhere = false;
  lesson::SlideOff slide_off = lesson::SlideOff::none;
  std::vector<GraceNote> graces;
  std::string finger;  // "" for none
  std::string hand;
  source::Range range;
};

// What the row of counts says under a symbol.
struct CountLabel {
  std::string text;  // "1", "&", "la", "+1/5"; a rest in parentheses as "(2)"
  bool rest = false;
};

// What an event says whose notes a student's copy hides.
struct Touch {
  bool accent = false;
  bool staccato = false;
  bool tenuto = false;
  std::string hand;
};

// One written symbol: a note, chord, strum or rest of one value. What sounds from one count to the next may be several
// symbols, tied.
struct Event {
  Rational at;      // from the start of the full bar, in whole notes
  Rational length;  // as it sounds, tuplets taken in
  NoteValue value;
  bool rest = false;
  bool whole_bar_rest = false;  // a centred rest for the whole bar, whatever its length
  bool blank = false;           // room to write in: nothing is drawn
  bool struck = false;          // something starts here
  bool beat_slash = false;      // a slash without a stem: a beat of the chord, played as one likes
  std::vector<Note> notes;      // by string, top line first; empty for rests and strums
  std::optional<Touch> touch;   // in place of hidden notes
  std::optional<lesson::Strum> strum;
  HeadKind slash = HeadKind::normal;  // the head on the slash staff
  bool tie_from = false;              // of the slash: everything here is tied from before
  bool tie_to = false;                // and everything in the next symbol is tied from here
  std::optional<int> tuplet;          // index into the bar's tuplets
  // Beams that reach to the neighbours, by level: `beams_left` of them join to the symbol before, `beams_right` to the
  // one after; value.beams() less the larger of the two are partial beams, which point to the neighbour that the symbol
  // makes up a longer value with: left where `partial_left`, else right.
  int beams_left = 0;
  int beams_right = 0;
  bool partial_left = false;
  bool fermata = false;
  std::optional<lesson::Stroke> stroke;
  // The rows of labels under the tab, for what starts here: several notes from the lowest up, joined by a space.
  std::optional<CountLabel> count;
  std::string degree;         // "" where nothing starts, or the labels are not asked for
  std::string second_degree;  // of the other kind, where both are asked for
  std::string note_name;
  source::Range range;

  bool beamed() const { return beams_left > 0 || beams_right > 0; }
};

struct Tuplet {
  int first = 0;  // indices into the bar's events, both inclusive
  int last = 0;
  int actual = 3;       // three in the time
  int normal = 2;       // of two
  NoteValue unit;       // of such values
  bool bracket = true;  // false where one beam spans exactly the group
};

struct ChordMark {
  Rational at;
  std::optional<theory::Chord> chord;     // nullopt is N.C.
  std::optional<theory::Chord> fingered;  // with a capo: as the hand shapes it
};

struct Bar {
  int number = 1;
  theory::Meter meter;
  bool show_meter = false;
  Rational begin;  // as in lesson::Bar
  Rational end;
  lesson::BarSign right = lesson::BarSign::plain;
  int plays = 0;                  // 4 for `4x` at its repeat sign, 0 for none
  bool same_as_previous = false;  // drawn as a bar-repeat sign; the events are there nevertheless
  std::vector<Event> events;
  std::vector<Tuplet> tuplets;
  std::vector<ChordMark> chords;
  bool chords_to_write = false;     // by the student: an exercise hides them
  std::vector<lesson::Word> texts;  // filled in
  std::vector<lesson::Word> lyrics;
  std::vector<lesson::Word> sections;
  std::vector<lesson::Word> roads;
};

struct TempoMark {
  int tempo = 0;      // the first; quarters, or `beat`s, a minute
  int last = 0;       // of a pair or a ladder; equal to `tempo` otherwise
  bool pair = false;  // printed "80 and 100"
  NoteValue beat;     // the note that the number counts
  Rational beat_length;
};

struct Ladder {
  std::vector<int> rungs;
  int passes = 4;
};

// Bars to tick off, both inclusive.
struct Step {
  int first = 1;
  int last = 1;
  bool whole = false;  // the whole example

  bool operator==(const Step&) const = default;
};

struct Example {
  int number = 1;
  Runs title;
  Blocks intro;
  theory::Key key;
  theory::Feel feel = theory::Feel::straight;
  bool show_feel = false;  // where it is not straight, or differs from the lesson's
  std::optional<TempoMark> tempo;
  std::optional<Ladder> ladder;
  std::vector<Step> build_up;
  // An exercise: what the student's copy leaves out, and an answer key sets apart.
  lesson::Hidden hidden;
  bool blank = false;  // empty bars to write in
  std::vector<lesson::Staff> staves;
  std::vector<lesson::Label> labels;
  std::optional<int> bars_per_line;  // nullopt: auto
  source::Range bars_per_line_range;
  lesson::BarSign left = lesson::BarSign::plain;
  std::vector<Bar> bars;
  std::vector<lesson::Dynamic> dynamics;
  std::vector<lesson::Span> spans;
  std::vector<lesson::Dynamic> repeated_dynamics;  // those that `%` bars repeat: they sound and are not drawn
  std::vector<lesson::Span> repeated_spans;
  std::vector<lesson::Ending> endings;
  bool has_strings = true;
  // What is drawn below the tab: asked for by `labels`, or written in a row.
  bool show_counts = false;
  bool show_degrees = false;
  std::vector<lesson::Label> degree_kinds;  // of the degrees, and the second degrees, in the order asked for
  bool show_notes = false;
  bool show_fingers = false;
  std::vector<Blocks> practice;  // each note's blocks
  std::optional<NeckPicture> neck;
  std::vector<ChordBox> boxes;
  std::optional<FormChart> form;
};

// A fact of the title block: "Key", "D Dorian".
struct Fact {
  enum class Kind { key, meter, tuning, capo };
  std::string label;
  Runs value;
  Kind kind = Kind::key;
};

// A picture that was read and can be drawn. Its size is in its own unit: only the proportion counts.
struct Logo {
  bool svg = false;  // else a PNG
  std::shared_ptr<const std::string> bytes;
  double width = 1;
  double height = 1;
  std::string alternative;
};

struct Heading {
  std::string series;  // with number and level: the meta line
  std::string number;  // "No. 7", "" for none
  std::string level;
  Runs title;
  Runs subtitle;
  std::vector<Fact> facts;  // key, meter, tuning, capo …, in order
  bool name_line = false;
  std::string answer_key;  // the words that say so, "" for a student's copy
  std::optional<std::string> link;
  std::optional<Logo> logo;  // put in by whoever reads files
};

struct Score {
  words::Language language{};
  Naming naming;            // of notes
  bool answer_key = false;  // shows what its examples hide
  std::string title;        // plain, for metadata
  Heading heading;
  Blocks intro;
  std::vector<Example> examples;
  std::vector<Blocks> practice;  // lesson-level practice notes
  int practice_log = 0;          // rows
  std::string teacher;
  std::string copyright;
  std::optional<lesson::Paper> paper;  // none: the template's
  fretboard::Neck neck;
  std::vector<std::string> string_letters;  // the tab's top line first: "G", "D" …
  fretboard::Clef clef{};
  bool sounds_octave_lower = false;
  std::string instrument;  // its name in lesson files
  theory::Rational swing_ratio{2};
  bool left_handed = false;  // pictures of the neck and chord boxes are mirrored
};

}  // namespace fretsheaf::score
