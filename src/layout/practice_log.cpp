#include "layout/practice_log.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "layout/heading.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Measures;
using templates::Role;
using words::Word;

constexpr std::array columns = {Word::date, Word::tempo, Word::clean_passes, Word::note_column};
constexpr std::array<double, columns.size()> least = {50, 42, 58, 82};  // in a column of 232 points
// Of the size of the names of the columns.
constexpr double cell_gap = 0.5625;  // from a line to the words after it
constexpr double head_drop = 0.75;   // from the head row's words to the rule under it,
constexpr double head_rise = 1.25;   // up to where its lines begin,
constexpr double head_clear = 0.45;  // and from there to the heading's ink
constexpr double outer = 0.9;
constexpr double inner = 0.5;
constexpr double row_height = 2.33;  // of the ladder's boxes: room for handwriting
constexpr int whole_rows = 12;       // so many are not parted

double size_of(Setter& setter) {
  return setter.type.look().style(Role::caption).size;
}

// The left edges of the columns, and the right edge of the last: no words meet the next line, and what is left over
// goes to the last column most of all, which has the most to say.
std::array<double, columns.size() + 1> edges(double width, Setter& setter) {
  std::array<double, columns.size() + 1> edge{};
  const double gap = cell_gap * size_of(setter);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const double words = setter.type.width(Role::caption, words::word(setter.words, columns[i]));
    edge[i + 1] = edge[i] + std::max(least[i], (i > 0 ? gap : 0) + words + gap);
  }
  const double spare = std::max(0.0, width - edge.back());
  constexpr std::array<double, columns.size()> share = {0.1, 0.08, 0.12, 0.7};
  double given = 0;
  for (std::size_t i = 0; i < columns.size(); ++i) edge[i + 1] += spare * (given += share[i]);
  edge.back() = width;
  return edge;
}

void put_rule(Block& block, sheet::Point from, sheet::Point to, double weight) {
  block.items.emplace_back(sheet::Rule{Part::rule, from, to, weight, sheet::Color{}, 0, 0});
}

// The names of the columns; the rule under them is the block's end.
Block head(const std::array<double, columns.size() + 1>& edge, Setter& setter) {
  Block block;
  const double size = size_of(setter);
  const double drop = head_drop * size;
  const double rise = head_rise * size;
  sheet::Group row;
  row.tag = sheet::Tag::table_row;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    Words name = setter.type.set(Role::caption, words::word(setter.words, columns[i]), Part::text);
    sheet::translate(name.items, edge[i] + (i > 0 ? cell_gap * size : 0), 0);
    sheet::Group cell;
    cell.tag = sheet::Tag::table_header;
    cell.items = std::move(name.items);
    row.items.emplace_back(std::move(cell));
    if (i > 0) put_rule(block, {edge[i], -rise}, {edge[i], drop}, inner);
  }
  block.items.emplace_back(std::move(row));
  put_rule(block, {0, drop}, {edge.back(), drop}, outer);
  block.ascent = rise;
  block.height = drop;
  block.clearance = head_clear * size;
  block.keep_with_next = true;
  block.gap = block.gap_least = block.gap_most = setter.measures().heading_to_text;
  return block;
}

Block row(const std::array<double, columns.size() + 1>& edge, bool last, Setter& setter) {
  const double height = row_height * setter.measures().ladder_box;
  Block block;
  for (std::size_t i = 1; i < columns.size(); ++i) put_rule(block, {edge[i], 0}, {edge[i], height}, inner);
  put_rule(block, {0, height}, {edge.back(), height}, last ? outer : inner);
  // Its cells are for a pen.
  sheet::Group cell;
  cell.tag = sheet::Tag::table_cell;
  sheet::Group cells;
  cells.tag = sheet::Tag::table_row;
  cells.items.assign(columns.size(), cell);
  block.items.emplace_back(std::move(cells));
  block.height = height;
  block.part_penalty = 40;
  return block;
}

}  // namespace

Blocks practice_log_blocks(int rows, double width, Setter& setter) {
  Blocks blocks;
  blocks.push_back(section_heading(std::string(words::word(setter.words, Word::practice_log)), {}, width, setter));
  const auto edge = edges(width, setter);
  blocks.push_back(head(edge, setter));
  for (int i = 0; i < rows; ++i) {
    blocks.push_back(row(edge, i + 1 == rows, setter));
    blocks.back().keep_with_next = rows <= whole_rows || i == 0 || i + 2 == rows;
  }
  const Nest nest{setter.new_group(), sheet::Tag::table, std::nullopt};
  for (std::size_t i = 1; i < blocks.size(); ++i) blocks[i].nests = {nest};
  blocks.back().part_penalty = 0;
  blocks.back().keep_with_next = false;
  return blocks;
}

}  // namespace fretsheaf::layout
