#pragma once

#include <array>
#include <optional>
#include <vector>

#include "layout/music_context.h"
#include "layout/music_layer.h"
#include "theory/rational.h"

// The columns of an example: everything that shares one centre x, drawn once around x = 0, with what it needs to the
// left and right of that.
namespace fretsheaf::layout {

// What a column may have ink in. Two columns keep apart in each of these.
enum class Row {
  slash,
  notes,
  tab,
  chord,
  road,
  stroke,
  fermata,
  word,  // of techniques: "harm.", the letters of grace notes
  hand,
  vibrato,
  dynamic,
  degree,
  second_degree,
  note,
  finger,
  count,
  lyric,
  text
};
inline constexpr std::size_t row_count = 18;

// How far ink reaches from the centre (negative: it begins beyond the centre).
struct Reach {
  double left = 0;
  double right = 0;
};

// A stretch of a staff line that is left out behind a sign, relative to the column's centre. String 0 is the slash
// line.
struct LineGap {
  int string = 0;
  double left = 0;
  double right = 0;
};

enum class ColumnKind { event, mark, bar_repeat };

// y = 0 is the slash line in `slash`, the top line in `notes` and `tab`, the baseline in all other rows.
struct Column {
  ColumnKind kind = ColumnKind::event;
  int bar = 0;
  int event = -1;  // index into the bar's events; −1 for a mark between events
  theory::Rational at;
  double stretch = 0;    // of the space after it
  bool centred = false;  // stands in the middle of its bar
  std::array<Layer, row_count> rows;
  std::array<std::optional<Reach>, row_count> ink;
  std::vector<LineGap> gaps;
  // The tab digits of tied notes, smaller: drawn where the column begins a line of music.
  Layer tied_digits;
  std::vector<LineGap> tied_gaps;

  const Layer& row(Row row) const { return rows[static_cast<std::size_t>(row)]; }
  const std::optional<Reach>& reach(Row row) const { return ink[static_cast<std::size_t>(row)]; }
};

std::optional<Reach> reach_of(const Layer& layer);

// What stands between two possible line breaks: a bar, or a beat of a bar that is too wide for one line.
struct BarPiece {
  int bar = 0;
  std::vector<Column> columns;
  bool opens_bar = true;
  bool closes_bar = true;
};

// One piece a bar.
std::vector<BarPiece> make_pieces(const Context& context);

}  // namespace fretsheaf::layout
