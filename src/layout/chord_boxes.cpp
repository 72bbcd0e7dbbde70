#include "layout/chord_boxes.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "layout/columns.h"
#include "layout/heading.h"
#include "layout/ink.h"
#include "layout/music_layer.h"
#include "layout/music_signs.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using sheet::Point;
using templates::Measures;
using templates::Role;

// In radii of a mark.
constexpr double line = 0.15;
constexpr double nut = 0.62;
constexpr double barre = 0.76;      // half its thickness
constexpr double square = 0.94;     // half a root's side
constexpr double open_mark = 0.62;  // the radius of an open string's ring
constexpr double muted_mark = 0.6;  // half the width of a muted string's x
constexpr double mark_line = 0.22;
constexpr double marks_above = 1.6;  // the centre of those, above the nut
constexpr int least_frets = 4;
constexpr double name_gap = 10;  // between the names of neighbouring chords
constexpr double number_gap = 1.6;
// What a page break between rows hurts: of two rows neither is left alone, short of a page more (fill.cpp).
constexpr double row_penalty = 70;
constexpr double two_rows_penalty = 400;

struct Stretch {
  int first = 1;  // the fret of the box's first space
  int frets = least_frets;
};

Stretch shown(const score::ChordBox& box) {
  int lowest = 0;
  int highest = 0;
  for (const auto& fret : box.shape.frets) {
    if (fret.value_or(0) == 0) continue;
    lowest = lowest == 0 ? *fret : std::min(lowest, *fret);
    highest = std::max(highest, *fret);
  }
  const int first = highest <= least_frets ? 1 : lowest;
  return {first, std::max(least_frets, highest - first + 1)};
}

// "x32010", or with dashes from fret 10 up.
std::string written(const fretboard::ShapeFrets& frets) {
  const bool dashes = std::ranges::any_of(frets, [](const auto& fret) { return fret.value_or(0) > 9; });
  std::string text;
  for (const auto& fret : frets) {
    if (dashes && !text.empty()) text += '-';
    text += fret ? std::to_string(*fret) : "x";
  }
  return text;
}

// One box around its middle: x = 0 between its outer strings, y = 0 the baseline of its name.
class Box {
 public:
  Box(const score::ChordBox& box, int frets, const score::Score& score, Type& type)
      : box_(box),
        part_(shown(box)),
        frets_(frets),
        left_handed_(score.left_handed),
        naming_(score.naming),
        type_(type),
        m_(type.measures()) {}

  Layer draw() {
    put_name();
    put_lines();
    put_barre();
    for (std::size_t i = 0; i < box_.shape.frets.size(); ++i) put_string(i);
    put_first_fret();
    return std::move(layer_);
  }

 private:
  double string_x(std::size_t i) const {
    const double from_middle = static_cast<double>(i) - (static_cast<double>(box_.shape.frets.size()) - 1) / 2;
    return (left_handed_ ? -from_middle : from_middle) * m_.box_string;
  }
  double half() const { return std::abs(string_x(0)); }
  double wire_y(int space) const { return m_.box_head + space * m_.box_fret; }
  double stop_y(int fret) const { return wire_y(fret - part_.first) + m_.box_fret / 2; }

  void put_name() {
    Layer name = chord_symbol(type_, score::ChordMark{{}, box_.chord, box_.fingered}, naming_);
    sheet::Box ink{0, 0, 0, 0};
    for (const sheet::Box& piece : name.ink()) ink = joined(ink, piece);
    layer_.add(std::move(name), -ink.right / 2, 0);
  }

  void put_lines() {
    const double weight = line * m_.box_mark;
    for (std::size_t i = 0; i < box_.shape.frets.size(); ++i) {
      layer_.rule(Part::chord_box, {string_x(i), wire_y(0)}, {string_x(i), wire_y(frets_)}, weight);
    }
    for (int space = 0; space <= frets_; ++space) {
      const bool at_nut = space == 0 && part_.first == 1;
      const double thick = (at_nut ? nut : line) * m_.box_mark;
      const double y = wire_y(space) - (at_nut ? (thick - weight) / 2 : 0);
      layer_.rule(Part::chord_box, {-half() - weight / 2, y}, {half() + weight / 2, y}, thick);
    }
  }

  void put_barre() {
    if (!box_.shape.barre) return;
    std::vector<double> under;
    for (std::size_t i = 0; i < box_.shape.fingers.size(); ++i) {
      if (box_.shape.fingers[i] == 1) under.push_back(string_x(i));
    }
    if (under.size() < 2) return;
    const auto [left, right] = std::ranges::minmax(under);
    const double y = stop_y(box_.shape.barre->fret);
    sheet::Path path = stroked(Part::chord_box, {{left, y}, {right, y}}, 2 * barre * m_.box_mark);
    path.round_ends = true;
    layer_.path(path, bounds(path));
  }

  void put_string(std::size_t i) {
    const std::optional<int> fret = box_.shape.frets[i];
    const double x = string_x(i);
    const double above = m_.box_head - marks_above * m_.box_mark;
    if (!fret) {
      const sheet::Path mark = cross(Part::chord_box, {x, above}, muted_mark * m_.box_mark, mark_line * m_.box_mark);
      layer_.path(mark, bounds(mark));
    } else if (*fret == 0) {
      put_mark({x, above}, open_mark * m_.box_mark, box_.roots[i], true);
    } else {
      put_mark({x, stop_y(*fret)}, (box_.roots[i] ? square : 1) * m_.box_mark, box_.roots[i], false);
    }
    if (box_.shape.fingers[i] == 0) return;
    const Words finger = type_.set(Role::box_finger, std::to_string(box_.shape.fingers[i]), Part::box_finger);
    layer_.centred(finger, x, wire_y(frets_) + m_.box_finger_drop);
  }

  void put_mark(Point at, double radius, bool root, bool open) {
    sheet::Path path = root ? polygon(Part::chord_box, {{at.x - radius, at.y - radius},
                                                        {at.x + radius, at.y - radius},
                                                        {at.x + radius, at.y + radius},
                                                        {at.x - radius, at.y + radius}})
                            : disc(Part::chord_box, at, radius);
    if (open) {
      path.fill.reset();
      path.stroke = sheet::Color{};
      path.stroke_width = mark_line * m_.box_mark;
    }
    layer_.path(path, bounds(path));
  }

  void put_first_fret() {
    if (part_.first == 1) return;
    const Words number = type_.set(Role::caption, std::to_string(part_.first), Part::neck_number);
    const double gap = half() + number_gap * m_.box_mark;
    const double x = left_handed_ ? gap - number.ink.left : -gap - number.ink.right;
    layer_.words(number, x, stop_y(part_.first) + type_.cap_height(Role::caption) / 2);
  }

  const score::ChordBox& box_;
  Stretch part_;
  int frets_;
  bool left_handed_;
  const score::Naming& naming_;
  Type& type_;
  const Measures& m_;
  Layer layer_;
};

// All boxes drawn, and how they share out a line.
class Boxes {
 public:
  Boxes(const std::vector<score::ChordBox>& boxes, const score::Score& score, Setter& setter)
      : boxes_(boxes), setter_(setter) {
    const Measures& m = setter.measures();
    for (const score::ChordBox& box : boxes) frets_ = std::max(frets_, shown(box).frets);
    for (const score::ChordBox& box : boxes) {
      drawn_.push_back(Box(box, frets_, score, setter.type).draw());
      const double half = (static_cast<double>(box.shape.frets.size()) - 1) / 2 * m.box_string;
      double ink_left = 0;
      double ink_right = 0;
      for (const sheet::Box& ink : drawn_.back().ink()) {
        ink_left = std::min(ink_left, ink.left);
        ink_right = std::max(ink_right, ink.right);
      }
      left_ = std::max(left_, -ink_left);
      right_ = std::max(right_, ink_right);
      pitch_ = std::max(pitch_, 2 * half + m.box_gap);
    }
    pitch_ = std::max(pitch_, left_ + right_ + name_gap);
  }

  std::size_t in_a_row(double width) const {
    const double room = width - left_ - right_;
    return room < 0 ? 1 : 1 + static_cast<std::size_t>(std::floor((room + 1e-6) / pitch_));
  }

  Block row(std::size_t first, std::size_t last, const std::vector<std::string>& words);

 private:
  const std::vector<score::ChordBox>& boxes_;
  Setter& setter_;
  int frets_ = least_frets;  // the same for all
  std::vector<Layer> drawn_;
  double left_ = 0;  // ink from a box's middle, of any
  double right_ = 0;
  double pitch_ = 0;
};

Block Boxes::row(std::size_t first, std::size_t last, const std::vector<std::string>& words) {
  const Measures& m = setter_.measures();
  Block block;
  for (std::size_t i = first; i < last; ++i) {
    sheet::Group group;
    group.tag = sheet::Tag::figure;
    group.alternative = i < words.size() ? words[i] : std::string();
    if (group.alternative.empty()) {
      group.alternative = theory::to_string(boxes_[i].chord) + " " + written(boxes_[i].shape.frets);
    }
    Layer layer = std::move(drawn_[i]);
    layer.move(left_ + static_cast<double>(i - first) * pitch_, 0);
    group.items = layer.take();
    block.items.emplace_back(std::move(group));
  }
  block.height = m.box_head + frets_ * m.box_fret + m.box_finger_drop;
  if (const auto ink = ink_of(block.items, setter_.type)) block.ascent = -ink->top;
  block.part_penalty = row_penalty;
  return block;
}

}  // namespace

bool boxes_fit(const std::vector<score::ChordBox>& boxes, const score::Score& score, double width, Setter& setter) {
  return Boxes(boxes, score, setter).in_a_row(width) >= boxes.size();
}

Blocks box_blocks(const std::vector<score::ChordBox>& boxes, const score::Score& score, double width, Setter& setter,
                  const std::vector<std::string>& words) {
  const Measures& m = setter.measures();
  Blocks blocks;
  blocks.push_back(
      section_heading(std::string(words::word(setter.words, words::Word::chord_shapes)), {}, width, setter));
  Boxes drawn(boxes, score, setter);
  const std::size_t columns = even_columns(boxes.size(), drawn.in_a_row(width));
  for (std::size_t first = 0; first < boxes.size(); first += columns) {
    Block block = drawn.row(first, std::min(first + columns, boxes.size()), words);
    block.gap = block.gap_least = block.gap_most = first == 0 ? m.heading_to_box : m.box_row_gap;
    blocks.push_back(std::move(block));
  }
  constexpr std::size_t two_rows = 3;  // and the heading
  if (blocks.size() == two_rows) blocks[1].part_penalty = two_rows_penalty;
  blocks.back().part_penalty = 0;
  return blocks;
}

}  // namespace fretsheaf::layout
