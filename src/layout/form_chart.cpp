#include "layout/form_chart.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "layout/heading.h"
#include "layout/music_layer.h"
#include "layout/music_signs.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using sheet::Point;
using sheet::Tag;
using templates::Measures;
using templates::Role;

constexpr double outer_line = 0.9;
constexpr double inner_line = 0.5;
constexpr double number_right = 6;  // from a bar's number to the grid
// For chords of 12 points; others in proportion.
constexpr double natural_size = 12;
constexpr double thick_line = 2;     // of a repeat sign
constexpr double repeat_room = 7;    // that its dots take from a cell
constexpr double repeat_dot = 1.1;   // radius
constexpr double dot_gap = 2.4;      // from the thick line to its middle
constexpr double same_stroke = 1.3;  // half the width of the stroke that repeats a bar
constexpr double same_dot = 0.6;     // how far its dots stand out
constexpr double chord_padding = 3;  // each side of a chord
constexpr double here_drop = 1.18;   // from a chord to the word under it, of that word\'s size
// Of the size of the words beside it.
constexpr double key_width = 1.125;  // of the shaded sample under the grid
constexpr double key_height = 0.925;
constexpr double key_gap = 0.5;          // from it to the words
constexpr double key_drop = 1.625;       // its middle, under the grid
constexpr double rows_overlap = -4;      // rows share their lines
constexpr std::size_t whole_rows = 8;    // so many are not parted
constexpr double to_write_taller = 1.6;  // cells of a chart in which chords are to be written
constexpr double answer_line = 0.5;
constexpr double answer_inset = 5;  // from the cell's edges
constexpr double answer_drop = 2;   // under the baseline

sheet::Group group(Tag tag, Layer layer) {
  sheet::Group group;
  group.tag = tag;
  group.items = layer.take();
  return group;
}

// Bars that stand in one row: indices, `last` not included.
struct Row {
  std::size_t first = 0;
  std::size_t last = 0;

  std::size_t cells() const { return last - first; }
};

class Chart {
 public:
  Chart(const score::Example& example, const score::Naming& naming, double width, Setter& setter)
      : title_(words::word(setter.words, words::Word::form)),
        chart_(*example.form),
        example_(example.number),
        naming_(naming),
        width_(width),
        setter_(setter),
        type_(setter.type),
        m_(setter.measures()),
        to_write_(example.hidden.chords),
        height_(m_.form_cell_height * (to_write_ ? to_write_taller : 1)) {
    arrange();
  }

  bool fits() const { return fits_; }
  // `words` are what the picture of it says to who does not see it.
  Blocks blocks(const std::string& words);

 private:
  double grid_left() const { return m_.form_label; }
  double here_below() const { return here_drop * type_.look().style(Role::technique).size; }
  double room() const { return width_ - grid_left(); }
  double scaled(double length) const { return length * type_.look().style(Role::chord).size / natural_size; }
  double cell_x(std::size_t column) const { return grid_left() + static_cast<double>(column) * cell_width_; }
  const score::FormCell& bar(std::size_t index) const { return chart_.bars[index]; }

  void arrange();
  double needed(double factor);
  Layer name(const std::optional<theory::Chord>& chord, double factor);
  static double ink_width(const Layer& layer);

  Block row_block(std::size_t index);
  void put_shades(const Row& row, Layer& layer) const;
  void put_lines(std::size_t index, Layer& layer) const;
  void put_level(std::size_t above, double y, Layer& layer) const;
  void put_repeats(const Row& row, Layer& layer) const;
  Layer cell(std::size_t index, double left, double baseline, bool marked_row);
  void put_same(Layer& layer, double centre, double baseline) const;
  Block key_block();

  std::string title_;
  const score::FormChart& chart_;
  int example_;  // its number
  const score::Naming& naming_;
  double width_;
  Setter& setter_;
  Type& type_;
  const Measures& m_;
  std::vector<Row> rows_;
  bool to_write_;  // the chords where the example stands are hidden, or the answers
  double height_;  // of a cell
  double cell_width_ = 0;
  double factor_ = 1;  // of the chords' size
  bool fits_ = true;
};

Layer Chart::name(const std::optional<theory::Chord>& chord, double factor) {
  if (chord) return chord_symbol(type_, *chord, naming_, factor);
  Layer layer;
  layer.words(type_.set_at_size(Role::chord, type_.look().style(Role::chord).size * factor, "N.C.", Part::chord_symbol),
              0, 0);
  return layer;
}

double Chart::ink_width(const Layer& layer) {
  double right = 0;
  for (const sheet::Box& box : layer.ink()) right = std::max(right, box.right);
  return right;
}

// The width of a cell that holds every bar's chords.
double Chart::needed(double factor) {
  double widest = 0;
  for (const score::FormCell& cell : chart_.bars) {
    double share = 0;
    for (const auto& chord : cell.chords)
      share = std::max(share, ink_width(name(chord, factor)) + 2 * scaled(chord_padding));
    const double signs = (cell.repeat_begin ? scaled(repeat_room) : 0) + (cell.repeat_end ? scaled(repeat_room) : 0);
    widest = std::max(widest, share * static_cast<double>(cell.chords.size()) + signs);
  }
  return widest;
}

// Lines of the form as rows: at the natural size, else smaller as far as type may, else longer lines in several rows.
void Chart::arrange() {
  std::vector<Row> lines;
  for (std::size_t i = 0; i < chart_.bars.size(); ++i) {
    if (i == 0 || bar(i).begins_line) lines.push_back({i, i});
    lines.back().last = i + 1;
  }
  std::size_t longest = 1;
  for (const Row& line : lines) longest = std::max(longest, line.cells());
  const double smallest = std::min(1.0, type_.look().least_type / type_.look().style(Role::chord_raised).size);
  double wanted = std::max(m_.form_cell_width, needed(1));
  if (wanted * static_cast<double>(longest) > room() && smallest < 1) {
    factor_ = smallest;
    wanted = needed(smallest);
  }
  auto fit = static_cast<std::size_t>(std::max(1.0, std::floor((room() + 1e-6) / wanted)));
  fits_ = longest <= fit;
  // Halves and quarters of what musicians count in.
  if (!fits_ && fit > 1) fit = fit >= 8 ? 8 : fit >= 4 ? 4 : 2;
  for (const Row& line : lines) {
    for (std::size_t at = line.first; at < line.last; at += fit) rows_.push_back({at, std::min(at + fit, line.last)});
  }
  std::size_t columns = 1;
  for (const Row& row : rows_) columns = std::max(columns, row.cells());
  cell_width_ = std::min(std::max(wanted, m_.form_cell_width), room() / static_cast<double>(columns));
}

void Chart::put_shades(const Row& row, Layer& layer) const {
  for (std::size_t i = row.first; i < row.last; ++i) {
    if (!bar(i).here) continue;
    const double left = cell_x(i - row.first);
    const sheet::Box cell{left, 0, left + cell_width_, height_};
    layer.path(filled(Part::form_shade, cell, ground), cell);
  }
}

// The line between a row and the one below it: heavy where only one of them has a cell.
void Chart::put_level(std::size_t above, double y, Layer& layer) const {
  const std::size_t up = above < rows_.size() ? rows_[above].cells() : 0;
  const std::size_t down = above + 1 < rows_.size() ? rows_[above + 1].cells() : 0;
  const double both = cell_x(std::min(up, down));
  const double one = cell_x(std::max(up, down));
  if (both > grid_left()) layer.rule(Part::form_chart, {grid_left(), y}, {both, y}, inner_line);
  const double half = outer_line / 2;
  if (one > both) {
    layer.rule(Part::form_chart, {both - (both > grid_left() ? 0 : half), y}, {one + half, y}, outer_line);
  }
}

void Chart::put_lines(std::size_t index, Layer& layer) const {
  const Row& row = rows_[index];
  if (index == 0) {
    layer.rule(Part::form_chart, {grid_left() - outer_line / 2, 0}, {cell_x(row.cells()) + outer_line / 2, 0},
               outer_line);
  }
  // A shade covers half of the line that the row above has drawn.
  if (index > 0) put_level(index - 1, 0, layer);
  put_level(index, height_, layer);
  for (std::size_t column = 0; column <= row.cells(); ++column) {
    const bool edge = column == 0 || column == row.cells();
    const double x = cell_x(column);
    layer.rule(Part::form_chart, {x, 0}, {x, height_}, edge ? outer_line : inner_line);
  }
}

void Chart::put_repeats(const Row& row, Layer& layer) const {
  const auto sign = [&](double x, int inward) {
    const double thick = x + inward * scaled(thick_line) / 2;
    layer.rule(Part::form_chart, {thick, 0}, {thick, height_}, scaled(thick_line));
    for (const int side : {-1, 1}) {
      const Point centre{x + inward * scaled(thick_line + dot_gap), height_ / 2 + side * 0.13 * height_};
      const sheet::Path dot = disc(Part::repeat_dot, centre, scaled(repeat_dot));
      layer.path(dot, bounds(dot));
    }
  };
  for (std::size_t i = row.first; i < row.last; ++i) {
    if (bar(i).repeat_begin) sign(cell_x(i - row.first), 1);
    if (bar(i).repeat_end) sign(cell_x(i - row.first + 1), -1);
  }
}

// A slanted stroke between two dots.
void Chart::put_same(Layer& layer, double centre, double baseline) const {
  const double middle = baseline - type_.cap_height(Role::chord) / 2;
  const double half = 0.5 * type_.cap_height(Role::chord);
  const double thick = scaled(same_stroke);
  const sheet::Path stroke = polygon(Part::form_chart, {{centre - half - thick, middle + half},
                                                        {centre - half + thick, middle + half},
                                                        {centre + half + thick, middle - half},
                                                        {centre + half - thick, middle - half}});
  layer.path(stroke, bounds(stroke));
  for (const int side : {-1, 1}) {
    const Point at{centre + side * (half + scaled(same_dot)), middle + side * 0.42 * half};
    const sheet::Path dot = disc(Part::form_chart, at, scaled(repeat_dot));
    layer.path(dot, bounds(dot));
  }
}

Layer Chart::cell(std::size_t index, double left, double baseline, bool marked_row) {
  const score::FormCell& cell = bar(index);
  const double begin = left + (cell.repeat_begin ? scaled(repeat_room) : 0);
  const double end = left + cell_width_ - (cell.repeat_end ? scaled(repeat_room) : 0);
  Layer layer;
  const double share = (end - begin) / static_cast<double>(std::max<std::size_t>(1, cell.chords.size()));
  for (std::size_t i = 0; i < cell.chords.size() && !cell.same_as_previous; ++i) {
    Layer chord = name(cell.chords[i], factor_);
    const double x = begin + (static_cast<double>(i) + 0.5) * share - ink_width(chord) / 2;
    layer.add(std::move(chord), x, baseline);
  }
  if (cell.here && to_write_) {
    const double y = baseline + answer_drop;
    layer.rule(Part::answer, {begin + answer_inset, y}, {end - answer_inset, y}, answer_line);
  }
  if (cell.same_as_previous) put_same(layer, (begin + end) / 2, baseline);
  if (cell.here && marked_row) {
    const Words here = type_.set(Role::technique, words::word(setter_.words, words::Word::here), Part::text);
    layer.centred(here, (begin + end) / 2, baseline + here_below());
  }
  return layer;
}

Block Chart::row_block(std::size_t index) {
  const Row& row = rows_[index];
  Layer lines;
  put_shades(row, lines);
  put_lines(index, lines);
  put_repeats(row, lines);
  const bool marked = std::any_of(chart_.bars.begin() + static_cast<std::ptrdiff_t>(row.first),
                                  chart_.bars.begin() + static_cast<std::ptrdiff_t>(row.last),
                                  [](const score::FormCell& cell) { return cell.here; });
  const double cap = type_.cap_height(Role::chord);
  const double baseline = marked ? (height_ - here_below() + cap) / 2 : (height_ + cap) / 2;

  Layer number;
  const Words words = type_.set(Role::bar_number, std::to_string(row.first + 1), Part::bar_number);
  number.words(words, grid_left() - number_right - words.width, (height_ + type_.cap_height(Role::bar_number)) / 2);
  lines.add(std::move(number));
  for (std::size_t i = row.first; i < row.last; ++i) lines.add(cell(i, cell_x(i - row.first), baseline, marked));
  Block block;
  block.items = lines.take();
  block.ascent = outer_line / 2;
  block.height = height_;
  block.descent = outer_line / 2;
  block.clearance = rows_overlap;
  return block;
}

// What the shaded cells mean.
Block Chart::key_block() {
  Layer layer;
  const double size = type_.look().style(Role::caption).size;
  const double half = key_height * size / 2;
  const double left = grid_left();
  const double right = left + key_width * size;
  sheet::Path sample = filled(Part::form_shade, {left, -half, right, half}, ground);
  sample.stroke = sheet::Color{};
  sample.stroke_width = inner_line;
  layer.path(sample, bounds(sample));
  const Words words =
      type_.set(Role::caption, words::fill_number(setter_.words, words::Word::form_here, example_), Part::text);
  layer.words(words, right + key_gap * size, type_.cap_height(Role::caption) / 2);
  Block block;
  block.gap = block.gap_least = block.gap_most = key_drop * size;
  block.ascent = half;
  block.height = type_.cap_height(Role::caption) / 2;
  block.descent = half - block.height;
  block.items.emplace_back(group(Tag::paragraph, std::move(layer)));
  return block;
}

Blocks Chart::blocks(const std::string& words) {
  Blocks blocks;
  const auto count = static_cast<int>(chart_.bars.size());
  blocks.push_back(
      section_heading(title_, words::counted(setter_.words, words::Counted::once_through, count), width_, setter_));
  const Nest figure{setter_.new_group(), Tag::figure, std::nullopt, words.empty() ? title_ : words};
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    Block block = row_block(i);
    block.nests = {figure};
    if (i == 0) block.gap = block.gap_least = block.gap_most = m_.heading_to_form;
    block.keep_with_next = i + 1 < rows_.size() && (rows_.size() <= whole_rows || i == 0 || i + 2 == rows_.size());
    block.part_penalty = 50;
    blocks.push_back(std::move(block));
  }
  if (std::ranges::any_of(chart_.bars, [](const score::FormCell& cell) { return cell.here; })) {
    blocks.back().keep_with_next = true;
    blocks.push_back(key_block());
  }
  blocks.back().part_penalty = 0;
  return blocks;
}

}  // namespace

bool form_fits(const score::Example& example, const score::Naming& naming, double width, Setter& setter) {
  return Chart(example, naming, width, setter).fits();
}

Blocks form_blocks(const score::Example& example, const score::Naming& naming, double width, Setter& setter,
                   const std::string& words) {
  return Chart(example, naming, width, setter).blocks(words);
}

}  // namespace fretsheaf::layout
