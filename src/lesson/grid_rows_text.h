#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "fretboard/neck.h"
#include "lesson/music.h"

namespace fretsheaf::lesson {

// What stands under a count in one row, and how many of its characters stand before the count.
struct GridToken {
  int before = 0;
  std::string text;
};

// A count of a bar and what stands under it, by row.
struct GridColumn {
  Rational at;
  std::string count;
  std::map<std::size_t, GridToken> tokens;
  int x = 0;  // where it stands in its cell
};

// The rows of a music's grid, in the order in which they are written, and what stands in them.
class GridRows {
 public:
  static constexpr std::size_t count_row = 0;

  GridRows(const Music& music, const fretboard::Neck& neck);

  std::size_t size() const { return rows_.size(); }
  const std::string& label(std::size_t row) const { return rows_[row].label; }

  // The counts of a bar (by index): where events begin, where words and marks stand, and every beat.
  std::vector<GridColumn> columns(std::size_t bar) const;

  // The cell of a row of hairpins and their like, whose dashes run from count to count; empty in other rows, and where
  // nothing stands. REQUIRES: columns that have their places.
  std::string dashes(std::size_t bar, std::size_t row, const std::vector<GridColumn>& columns, int width) const;

  // The rows that a strip of the bars [first, last) needs. Of rows with one label those above a needed one are there,
  // too, since their order counts.
  std::vector<std::size_t> used(std::size_t first, std::size_t last) const;

 private:
  enum class Kind {
    section,
    ending,
    meter,
    chord,
    road,
    span,
    mark,
    string,
    play,
    finger,
    hand,
    spell,
    stroke,
    lyric,
    text
  };
  struct Row {
    Kind kind = Kind::text;
    int ordinal = 0;  // among those of its kind
    std::string label;
  };
  // A token before its row is known.
  struct Wanted {
    Kind kind = Kind::text;
    int ordinal = 0;
    Rational at;
    GridToken token;
  };

  void want(std::size_t bar, Kind kind, int ordinal, Rational at, GridToken token);
  // In the first row of the kind that has nothing there.
  void want_free(std::size_t bar, Kind kind, Rational at, GridToken token);
  void want_words(std::size_t bar);
  void want_hands(std::size_t bar, const Event& event);
  void want_event(std::size_t bar, const Event& event);
  void want_marks();
  void want_spans();
  void lay_rows();
  bool is_bare(std::size_t bar, const Event& event) const;
  bool play_needed() const;
  bool needs_row(std::size_t row, std::size_t bar) const;
  std::vector<Rational> moments(std::size_t bar) const;
  std::size_t row_of(Kind kind, int ordinal) const;

  const Music& music_;
  std::vector<std::string> strings_;
  bool play_ = false;
  std::vector<Row> rows_;
  std::vector<std::vector<Wanted>> wanted_;         // by bar
  std::vector<int> span_rows_;                      // which row of hairpins each span stands in
  std::vector<std::vector<std::size_t>> spans_in_;  // by bar: the spans that reach into it, in order
};

}  // namespace fretsheaf::lesson
