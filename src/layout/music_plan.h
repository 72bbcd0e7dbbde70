#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/music_columns.h"
#include "layout/spacing.h"

// A line of music being planned: what stands in it, from left to right, and how its columns are spaced.
namespace fretsheaf::layout {

enum class StopKind { start, column, bar_line, end };

// A place in the line. x is a column's centre, a bar line's right edge (of its last stroke; dots of a repeat follow),
// and the staff's ends.
struct Stop {
  StopKind kind = StopKind::column;
  const Column* column = nullptr;
  lesson::BarSign sign = lesson::BarSign::plain;
  int bar = 0;                           // before which a bar line stands, or in which a column does
  const theory::Meter* meter = nullptr;  // a time signature after this bar line
  double x = 0;
  double centre = 0;  // of a column that stands in the middle of its bar; else x
};

// Whether a column of this moment stands here.
bool stands_at(const Stop& stop, const lesson::Moment& moment);

// A row's name, set once under the clef of the line in which it first has something.
struct RowName {
  Row row{};
  Words words;
  lesson::Moment first;  // of the column that first has something in it
};

// An example ready to be broken into lines.
struct Engraving {
  const Context& context;
  std::vector<BarPiece> pieces;
  std::vector<RowName> names;

  const score::Example& example() const { return context.example; }
};

struct LinePlan {
  int first = 0;  // pieces, both inclusive
  int last = 0;
  bool first_line = false;
  bool last_line = false;
  bool opens_repeat = false;
  const theory::Meter* meter = nullptr;  // in the prefix
  double prefix = 0;                     // its width: where the first bar begins
  double meter_x = 0;                    // left edge of the time signature in it
  std::vector<Stop> stops;
  std::vector<Spring> springs;
  double k = 0;
  double width = 0;  // of the staves

  double least() const { return width_at(springs, 0); }
  int first_bar() const { return stops.size() > 1 ? stops[1].bar : 0; }
  // Stops that hold an event's column.
  bool is_event(std::size_t i) const {
    return stops[i].kind == StopKind::column && stops[i].column->kind == ColumnKind::event;
  }
};

// Whether the row's name stands in this line: its first column does.
bool begins_in(const RowName& name, const LinePlan& line);

// The line of pieces `first` to `last`, sprung but not yet stretched.
LinePlan plan_line(const Engraving& engraving, int first, int last);
// Sets k and every x. `width` is the room: the line fills it, or ends early where `ragged` asks for that k.
void stretch(LinePlan& line, double width, std::optional<double> ragged);

// Lines of pieces, chosen over the whole example; stretched.
std::vector<LinePlan> break_lines(const Engraving& engraving);
// Cuts bars that no line could hold into pieces at their beats.
void split_wide_bars(Engraving& engraving);

// Time signatures.
double meter_width(const Context& context, const theory::Meter& meter);
// How wide a bar line is, from its left edge to the right edge of its last stroke.
double bar_line_width(const Context& context, lesson::BarSign sign);

}  // namespace fretsheaf::layout
