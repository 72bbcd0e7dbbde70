#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fretboard/neck.h"
#include "source/range.h"
#include "theory/chord.h"
#include "theory/meter.h"
#include "theory/pitch.h"
#include "theory/rational.h"

// What a tab grid says, bar by bar, with the place of every word. Positions (`at`) are counted in whole notes from the
// start of the full bar, also in a pickup or a bar that starts late: beat 4 of a 4/4 pickup is at 3/4.
namespace fretsheaf::lesson {

using fretboard::Place;
using source::Located;
using source::Range;
using theory::Rational;

enum class Approach { none, hammer_on, pull_off, slide_up, slide_down };
enum class SlideOff { none, up, down };

struct Bend {
  Rational tones;  // whole tones up
  bool release = false;
};

struct GraceNote {
  Place place;
  Approach approach = Approach::none;  // how it is itself reached, from the grace note or note before on its string
  Range range;
};

// A token of a string row.
struct Note {
  Place place;  // a dead note has its string, and fret 0
  bool dead = false;
  bool ghost = false;
  bool harmonic = false;
  bool held = false;  // `=`, or held over the bar line: sounds on from the event before (same place)
  Approach approach = Approach::none;
  bool approach_from_nowhere = false;  // a slide with no note before it on its string
  std::vector<GraceNote> graces;       // played before it, in order, on its string
  bool accent = false;
  bool staccato = false;
  bool tenuto = false;
  bool vibrato = false;
  std::optional<Bend> bend;
  SlideOff slide_off = SlideOff::none;
  std::optional<Located<std::string>> finger;  // fretting hand: 0-4, T
  std::optional<Located<std::string>> hand;    // plucking hand: p i m a, T, P
  std::optional<Located<theory::NoteName>> spell;
  Range range;
};

enum class EventKind {
  struck,  // something starts here (single notes of it may be held on)
  rest,
  held,  // nothing new: what was before goes on (over a bar line, or with fewer notes)
};

enum class Strum { plain, muted, accented, ghost };
enum class Stroke { down, up };

// What sounds (or is silent) from one count to the next.
struct Event {
  EventKind kind = EventKind::struck;
  Rational at;
  Rational length;             // to the next event of the bar, or the bar's end; held counts are taken in
  std::vector<Note> notes;     // by string, top line first; empty for rests, strums and the slots of a `vary` grid
  std::optional<Strum> strum;  // in an example without string rows
  std::optional<Located<Stroke>> stroke;
  bool fermata = false;
  std::vector<Located<std::string>> hand;  // of a slot of a `vary` grid: one a string, top line first
  bool written_out = true;                 // false where `%` or a held bar start made it
  Range range;                             // its count, or its first token
};

enum class BarSign { plain, doubled, repeat_begin, repeat_end, repeat_both, final };

inline bool ends_repeat(BarSign sign) {
  return sign == BarSign::repeat_end || sign == BarSign::repeat_both;
}
inline bool begins_repeat(BarSign sign) {
  return sign == BarSign::repeat_begin || sign == BarSign::repeat_both;
}

struct ChordMark {
  Rational at;
  theory::ChordToken chord;
  Range range;
};

// A word at a position: of a text, lyric, section or road row. `row` counts the rows of that kind from 0 (the second
// verse is row 1).
struct Word {
  Rational at;
  std::string text;
  int row = 0;
  bool goes_on = false;  // a lyric syllable with a hyphen after it
  Range range;
};

struct Bar {
  int number = 1;  // as printed; 0 a pickup; a late bar has the number of the bar that it completes
  theory::Meter meter;
  std::optional<Range> meter_written;  // where a meter row or the lesson sets it anew
  Rational begin;                      // where in the full bar it starts: 0 but for a pickup and a late bar
  Rational end;                        // where it ends: meter.bar() unless it ends early
  BarSign right = BarSign::plain;
  std::optional<Located<int>> plays;  // `4x` at its `:|`
  bool same_as_previous = false;      // written `%`: its events are copies of the bar before
  std::vector<Event> events;          // in order, from `begin` to `end` without a gap
  std::vector<ChordMark> chords;
  std::vector<Word> texts;
  std::vector<Word> lyrics;
  std::vector<Word> sections;
  std::vector<Word> roads;
  Range range;  // of its count cell
};

// A place in the music: an index into `bars` and a position in that bar. It is a count of the grid; a bare count's lies
// inside the event that it holds.
struct Moment {
  int bar = 0;
  Rational at;
};

struct Dynamic {
  Moment moment;
  std::string text;  // "mf", "sfz"
  Range range;
};

enum class SpanKind { crescendo, diminuendo, palm_mute, let_ring, tremolo };

// From the count where it starts to the last count that it reaches (inclusive).
struct Span {
  SpanKind kind = SpanKind::crescendo;
  Moment first;
  Moment last;
  Range range;
};

struct Ending {
  std::string label;  // "1."
  int first_bar = 0;  // indices into `bars`, both inclusive
  int last_bar = 0;
  Range range;
};

// One example's music. All bars that can be read are there; what cannot has been reported.
struct Music {
  BarSign left = BarSign::plain;  // before the first bar
  std::vector<Bar> bars;
  std::vector<Dynamic> dynamics;
  std::vector<Span> spans;
  std::vector<Dynamic> repeated_dynamics;  // those that `%` bars repeat: they sound and are not printed
  std::vector<Span> repeated_spans;
  std::vector<Ending> endings;
  bool has_strings = false;  // false: a rhythm of strums
  // What is written in a row is printed, `labels` or not.
  bool has_finger_row = false;
  // Of a `vary` grid without a chord row: its chords came with the notes.
  bool chords_borrowed = false;
};

}  // namespace fretsheaf::lesson
