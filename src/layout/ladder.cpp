#include "layout/ladder.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "layout/heading.h"
#include "layout/tick_box.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Measures;
using templates::Role;

// Shares of a box's side.
constexpr double rail = 0.1;
constexpr double rung_end = 0.89;  // from the last box to the next rung
constexpr double widest = 1.7;     // a rung's place, in natural ones
constexpr double rounding = 1e-6;
constexpr double parted_penalty = 150;  // a page break between the rows of a ladder

// How the rungs of a ladder stand.
struct Rungs {
  int columns = 1;
  int rows = 1;
  double width = 0;      // of one rung
  int boxes_in_row = 1;  // within a rung
  int box_rows = 1;
  double height = 0;  // from rail to rail
};

Rungs arrange(const score::Ladder& ladder, double width, const Measures& m) {
  Rungs rungs;
  const int passes = std::max(1, ladder.passes);
  const double end = rung_end * m.ladder_box;
  const double room = width - m.ladder_first_box - end - m.ladder_box;
  rungs.boxes_in_row = std::clamp(1 + static_cast<int>(std::floor(room / m.ladder_box_pitch)), 1, passes);
  rungs.box_rows = (passes + rungs.boxes_in_row - 1) / rungs.boxes_in_row;
  rungs.height = m.ladder_height + (rungs.box_rows - 1) * m.ladder_box_pitch;
  const double needed = m.ladder_first_box + (rungs.boxes_in_row - 1) * m.ladder_box_pitch + m.ladder_box + end;
  const int fit = std::max(1, static_cast<int>(std::floor((width + rounding) / needed)));
  const int count = std::max(1, static_cast<int>(ladder.rungs.size()));
  rungs.rows = (count + fit - 1) / fit;
  rungs.columns = (count + rungs.rows - 1) / rungs.rows;
  // The rails run to the text's right edge unless so few rungs would stand too far apart.
  rungs.width = std::min(width / rungs.columns, std::max(widest * m.ladder_rung, needed));
  return rungs;
}

void put_rule(Block& block, sheet::Point from, sheet::Point to, const Measures& m) {
  block.items.emplace_back(sheet::Rule{Part::ladder, from, to, rail * m.ladder_box, sheet::Color{}, 0, 0});
}

// A row of the table that a ladder is to a reader: the tempo, and its boxes.
void put_rung(Block& block, int tempo, int passes, const Rungs& rungs, double x, Setter& setter) {
  const Measures& m = setter.measures();
  Words number = setter.type.set(Role::ladder_number, std::to_string(tempo), Part::ladder);
  const double baseline = rungs.height / 2 + setter.type.cap_height(Role::ladder_number) / 2;
  sheet::translate(number.items, x + m.ladder_number_right - number.width, baseline);
  sheet::Group row;
  row.tag = sheet::Tag::table_row;
  sheet::Group name;
  name.tag = sheet::Tag::table_header;
  name.items = std::move(number.items);
  row.items.emplace_back(std::move(name));
  sheet::Group boxes;
  boxes.tag = sheet::Tag::figure;
  boxes.alternative = words::counted(setter.words, words::Counted::passes, passes);
  const double boxes_height = (rungs.box_rows - 1) * m.ladder_box_pitch + m.ladder_box;
  const double top = (rungs.height - boxes_height) / 2;
  for (int i = 0; i < passes; ++i) {
    const int box_row = i / rungs.boxes_in_row;
    const int place = i % rungs.boxes_in_row;
    boxes.items.emplace_back(tick_box(
        {x + m.ladder_first_box + place * m.ladder_box_pitch, top + box_row * m.ladder_box_pitch}, m.ladder_box));
  }
  sheet::Group cell;
  cell.tag = sheet::Tag::table_cell;
  cell.items.emplace_back(std::move(boxes));
  row.items.emplace_back(std::move(cell));
  block.items.emplace_back(std::move(row));
}

}  // namespace

bool ladder_fits(const score::Ladder& ladder, double width, const Measures& measures) {
  const Rungs rungs = arrange(ladder, width, measures);
  return rungs.rows == 1 && rungs.box_rows == 1;
}

Blocks ladder_blocks(const score::Ladder& ladder, double width, Setter& setter) {
  const Measures& m = setter.measures();
  const Rungs rungs = arrange(ladder, width, m);
  const int count = static_cast<int>(ladder.rungs.size());
  Blocks blocks;
  blocks.push_back(section_heading(std::string(words::word(setter.words, words::Word::tempo_ladder)),
                                   std::string(words::word(setter.words, words::Word::ladder_hint)), width, setter));
  const Nest table{setter.new_group(), sheet::Tag::table, std::nullopt};
  for (int first = 0; first < count; first += rungs.columns) {
    const int columns = std::min(rungs.columns, count - first);
    Block row;
    row.height = rungs.height;
    row.gap = row.gap_least = row.gap_most = first == 0 ? m.heading_to_ladder : m.ladder_row_gap;
    row.part_penalty = parted_penalty;
    row.nests = {table};
    put_rule(row, {0, 0}, {columns * rungs.width, 0}, m);
    put_rule(row, {0, rungs.height}, {columns * rungs.width, rungs.height}, m);
    for (int i = 0; i < columns; ++i) {
      if (i > 0) put_rule(row, {i * rungs.width, 0}, {i * rungs.width, rungs.height}, m);
      put_rung(row, ladder.rungs[static_cast<std::size_t>(first) + static_cast<std::size_t>(i)],
               std::max(1, ladder.passes), rungs, i * rungs.width, setter);
    }
    blocks.push_back(std::move(row));
  }
  blocks.back().part_penalty = 0;
  return blocks;
}

}  // namespace fretsheaf::layout
