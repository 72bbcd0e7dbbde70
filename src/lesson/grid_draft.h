#pragma once

#include <optional>
#include <string>
#include <vector>

#include "lesson/grid_bar_lines.h"
#include "lesson/grid_rows.h"
#include "lesson/music.h"

// What a grid's cells say, each token under its count, before anything is known of time: a draft is made cell by cell,
// and the bars, events and spans are made from it.
namespace fretsheaf::lesson {

// A token of a string row and where it lies.
struct NoteDraft {
  Note note;          // its place has the string; `approach` and suffixes are read, all else comes later
  bool fret = false;  // a number, not `x` or `=`
  int begin = 0;      // columns: its first character, its first digit (-1 for none), its end
  int digit = -1;
  int end = 0;
};

// Words of a finger, hand or spell row: one a string, the top line first.
struct HandWords {
  std::vector<Located<std::string>> words;
  Range range;
};

// One count of a count cell and all that is tied to its moment.
struct Count {
  int figure = 0;     // from 1
  Rational fraction;  // of a count after it
  bool rest = false;
  bool bad = false;   // was reported; what stands under it is dropped unseen
  bool lost = false;  // a token under it could not be read
  int begin = 0;      // columns, parentheses included
  int end = 0;
  std::string text;  // as written
  Range range;
  Rational at;  // in whole notes from the full bar's start; set with the bars' times
  std::vector<NoteDraft> notes;
  std::optional<Strum> strum;  // in an example without string rows
  std::optional<HandWords> finger;
  std::optional<HandWords> hand;
  std::optional<HandWords> spell;
  std::optional<Located<Stroke>> stroke;
  std::optional<Range> fermata;

  // Whether something starts here: not a bare count, which says where we are or holds what was before it.
  bool starts() const { return rest || lost || strum || !notes.empty(); }
};

// A position that a token names: a count of a bar, by index.
struct CountRef {
  static constexpr int bar_start = -1;
  static constexpr int last_event = -2;  // in a `%` bar: the last that it repeats

  int bar = 0;
  int count = bar_start;
};

// A word of a chord, text, lyric, section, ending, meter or road row.
struct PlacedWord {
  RowKind kind = RowKind::text;
  int row = 0;
  int count = CountRef::bar_start;
  std::string text;
  bool quoted = false;
  bool goes_on = false;  // a syllable before a hyphen
  Range range;           // of the words, without quotes
};

// A token that stands under no count.
struct Stray {
  int column = 0;  // that should stand under one
  Range range;
  std::string text;
  std::string help;
};

struct BarDraft {
  std::vector<Count> counts;
  std::vector<Stray> strays;     // in the order of the rows
  std::optional<Range> percent;  // the `%` of a repeated bar
  std::vector<PlacedWord> words;
  BarSign right = BarSign::plain;
  Range range;  // of its count cell
  int strip = 0;
  bool damaged = false;     // something in it was reported and left out
  bool lost_meter = false;  // a word of a meter row here was reported and left out
  bool slipped = false;     // a bar line beside it is out of line: nothing is said of its counts
  bool unsure = false;      // its counts were reported, or its bar lines: what they seem to lack is not said
  // Bar lines of rows that are out of line with its end, to be reported where its counts are sound: what was left out
  // there has moved them.
  std::vector<source::Diagnostic> misplaced;
};

struct DynamicDraft {
  CountRef moment;
  std::string text;
  Range range;
};

struct SpanDraft {
  SpanKind kind = SpanKind::crescendo;
  CountRef first;
  CountRef last;
  Range range;
};

struct GridDraft {
  BarSign left = BarSign::plain;
  std::vector<BarDraft> bars;
  std::vector<DynamicDraft> dynamics;
  std::vector<SpanDraft> spans;
  bool has_strings = false;
  bool has_play = false;
  // A word of these rows was reported and left out: what seems to be missing there is not said.
  bool lost_road = false;
  bool lost_ending = false;
};

// Notes that something of such a row in this bar was reported and left out.
void lose_word(GridDraft& draft, BarDraft& bar, RowKind kind);

// Reads all cells.
GridDraft read_draft(const GridInput& input, const std::vector<Strip>& strips);

// Columns -> counts.

// The index of the count whose columns hold this one.
std::optional<int> count_at(const BarDraft& bar, int column);

// "between `2` and `3`", "between the bar line and `1`".
std::string neighbours(const BarDraft& bar, int column);

// The count over a word's first column: CountRef::bar_start in a `%` bar. nullopt where there is none: the word is then
// among the bar's strays, unless the bar has no counts at all.
std::optional<int> place_word(BarDraft& bar, const Cell& cell, int begin, int end);

}  // namespace fretsheaf::lesson
