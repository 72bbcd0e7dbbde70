#include "layout/neck.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "fretboard/reach.h"
#include "layout/heading.h"
#include "layout/ink.h"
#include "layout/music_layer.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using sheet::Point;
using templates::Measures;
using templates::Role;

// Proportions of the picture (the house's measures), in points at a circle's radius of 6.5.
constexpr double nut = 3;
constexpr double wire = 0.6;
constexpr double thinnest_string = 0.55;
constexpr double gauge_step = 0.18;
constexpr double outline = 0.8;         // a circle's
constexpr double square = 6.4;          // half a root's side
constexpr double inlay = 2.1;           // radius, less where
constexpr double inlay_clear = 0.35;    // it would come nearer to a mark over or under it
constexpr double letter_right = 6.6;    // a string letter's right edge
constexpr double beside_nut = 2.5;      // from an open string's mark to the nut, at least
constexpr double beside_letter = 3.2;   // and to the string's letter
constexpr double between_marks = 1.8;   // in neighbouring frets
constexpr double label_padding = 2.2;   // each side, of a label wider than a circle holds
constexpr double natural_radius = 6.5;  // what these are counted in
constexpr double widest = 1.5;          // a fret's share of its natural width where there is room
constexpr double legend_gap = 16;
constexpr sheet::Color white{255, 255, 255};
constexpr sheet::Color inlay_gray{0xAD, 0xAD, 0xAD};

// A fret counted from where strings of unit length begin.
double along(int fret) {
  return fretboard::fret_distance(1, fret);
}

// The frets of one row: spaces `first` to `last`, from 1.
struct Row {
  int first = 1;
  int last = 1;
  bool open = false;  // with the strings' open sound before the nut

  double length() const { return along(last) - along(first - 1); }
  // The share of the narrowest one.
  double narrowest() const { return (along(last) - along(last - 1)) / length(); }
};

class Picture {
 public:
  Picture(const score::NeckPicture& picture, const score::Score& score, Setter& setter)
      : picture_(picture),
        score_(score),
        type_(setter.type),
        m_(setter.measures()),
        scale_(m_.neck_mark / natural_radius) {
    widest_label_ = 0;
    for (const score::NeckMark& mark : picture.marks) {
      widest_label_ = std::max(widest_label_, type_.width(Role::neck_mark, mark.label));
    }
    const double half = half_width(widest_label_);
    open_gap_ = std::max(m_.neck_open, half + (nut + beside_nut) * scale_);
    nut_ = std::max(m_.neck_nut, open_gap_ + half + (letter_right + beside_letter) * scale_);
  }

  // As few rows as hold the picture, as even as they can be.
  std::vector<Row> rows(double width) const {
    const int first = std::max(1, picture_.first);
    const int spaces = std::max(1, picture_.last - first + 1);
    for (int count = 1;; ++count) {
      std::vector<Row> rows = shared_out(first, spaces, count);
      const bool fit =
          std::ranges::all_of(rows, [&](const Row& row) { return row.narrowest() * (width - nut_) >= mark_width(); });
      if (fit || count >= spaces) return rows;
    }
  }

  Block block(const Row& row, double width, bool left_handed);

 private:
  std::vector<Row> shared_out(int first, int spaces, int count) const {
    std::vector<Row> rows;
    for (int i = 0; i < count; ++i) {
      Row row;
      row.first = first + i * spaces / count;
      row.last = first + (i + 1) * spaces / count - 1;
      row.open = i == 0 && picture_.first == 0;
      rows.push_back(row);
    }
    return rows;
  }

  double half_width(double label) const { return std::max(m_.neck_mark, label / 2 + label_padding); }
  double mark_width() const { return 2 * half_width(widest_label_) + between_marks * scale_; }
  int strings() const { return score_.neck.strings(); }
  // Between two strings an inlay keeps clear of the marks on both.
  double inlay_radius() const {
    const double mark = m_.neck_mark + (outline / 2 + inlay_clear) * scale_;
    const bool between = strings() % 2 == 0;
    return between ? std::clamp(m_.neck_string / 2 - mark, inlay * scale_ / 3, inlay * scale_) : inlay * scale_;
  }
  double string_y(int string) const { return (string - 1) * m_.neck_string; }
  double bottom() const { return string_y(strings()); }
  double gauge(int string) const;

  void put_answer_ground();
  void put_wires(const Row& row);
  void put_inlays(const Row& row);
  void put_strings(const Row& row);
  void put_numbers(const Row& row);
  void put_marks(const Row& row);
  void put_mark(const score::NeckMark& mark, double x, double y);
  void put_label(const score::NeckMark& mark, double x, double y);
  bool is_shown(const score::NeckMark& mark, const Row& row) const;

  // Measured from the nut's side of the row, then from the picture's left edge.
  double wire_at(int fret) const { return nut_ + neck_width_ * (along(fret) - along(row_.first - 1)) / row_.length(); }
  double side(double x) const { return left_handed_ ? nut_ + neck_width_ - x : x; }
  double space_at(int fret) const { return (wire_at(fret - 1) + wire_at(fret)) / 2; }
  double open_at(int string) const { return wire_at(score_.neck.nut(string)) - open_gap_; }

  const score::NeckPicture& picture_;
  const score::Score& score_;
  Type& type_;
  const Measures& m_;
  double scale_;
  double widest_label_ = 0;
  double open_gap_ = 0;  // from the nut to the marks of open strings
  double nut_ = 0;       // from the letters' left edge
  Row row_;
  double neck_width_ = 0;
  bool left_handed_ = false;
  Layer layer_;
};

double Picture::gauge(int string) const {
  int thinner = 0;
  for (int other = 1; other <= strings(); ++other) {
    if (score_.neck.open_pitch(other).midi() > score_.neck.open_pitch(string).midi()) ++thinner;
  }
  return (thinnest_string + gauge_step * thinner) * scale_;
}

// As far as the marks reach, so that all of them lie on it.
void Picture::put_answer_ground() {
  if (!picture_.answers) return;
  const double left = std::min(side(nut_), side(nut_ + neck_width_));
  const double over = m_.neck_mark + outline;
  const sheet::Box box{left, -over, left + neck_width_, bottom() + over};
  layer_.path(filled(Part::answer, box, ground), box);
}

void Picture::put_wires(const Row& row) {
  for (int fret = row.first - 1; fret <= row.last; ++fret) {
    const bool is_nut = fret == 0;
    const double width = (is_nut ? nut : wire) * scale_;
    // The nut lies before the first fret, so that this one keeps its length.
    const double x = side(wire_at(fret) - (is_nut ? width / 2 : 0));
    const double over = is_nut ? width / 4 : 0;
    layer_.rule(Part::neck, {x, -over}, {x, bottom() + over}, width);
  }
}

void Picture::put_inlays(const Row& row) {
  const double middle = bottom() / 2;
  const bool even = strings() % 2 == 0;
  const double apart = (even ? (strings() >= 6 ? 2 : 1) : 1.5) * m_.neck_string;
  for (const fretboard::Inlay& mark : picture_.inlays) {
    if (mark.fret < row.first || mark.fret > row.last) continue;
    for (const int direction : mark.two ? std::vector{-1, 1} : std::vector{0}) {
      const Point centre{side(space_at(mark.fret)), middle + direction * apart};
      sheet::Path path = disc(Part::neck, centre, inlay_radius());
      path.fill = inlay_gray;
      layer_.path(path, bounds(path));
    }
  }
}

void Picture::put_strings(const Row& row) {
  for (int string = 1; string <= strings(); ++string) {
    // A short string begins at its own nut, a peg in the neck's side.
    const int begin = std::max(row.first - 1, score_.neck.nut(string));
    const double y = string_y(string);
    if (begin <= row.last) {
      layer_.rule(Part::neck, {side(wire_at(begin)), y}, {side(wire_at(row.last)), y}, gauge(string));
      if (begin > row.first - 1 && begin < row.last) {  // on the last wire it would stand out of the picture
        sheet::Path peg = disc(Part::neck, {side(wire_at(begin)), y}, inlay * scale_);
        layer_.path(peg, bounds(peg));
      }
    }
    const Words letter = type_.set(Role::string_letter, score_.string_letters[static_cast<std::size_t>(string) - 1],
                                   Part::string_letter);
    const double x = left_handed_ ? side(letter_right * scale_) : letter_right * scale_ - letter.ink.right;
    layer_.words(letter, x, y + type_.cap_height(Role::string_letter) / 2);
  }
}

void Picture::put_numbers(const Row& row) {
  for (int fret = row.first; fret <= row.last; ++fret) {
    const Words number = type_.set(Role::caption, std::to_string(fret), Part::neck_number);
    layer_.centred(number, side(space_at(fret)), bottom() + m_.neck_number);
  }
}

bool Picture::is_shown(const score::NeckMark& mark, const Row& row) const {
  if (mark.place.fret > 0) return mark.place.fret >= row.first && mark.place.fret <= row.last;
  const int begin = score_.neck.nut(mark.place.string);
  return begin == 0 ? row.open : begin >= row.first && begin <= row.last;
}

void Picture::put_marks(const Row& row) {
  for (const score::NeckMark& mark : picture_.marks) {
    if (!is_shown(mark, row)) continue;
    const double x = mark.place.fret == 0 ? open_at(mark.place.string) : space_at(mark.place.fret);
    put_mark(mark, side(x), string_y(mark.place.string));
  }
}

sheet::Path rounded(Point centre, double half_width, double radius) {
  if (half_width <= radius) return disc(Part::neck_mark, centre, radius);
  using Kind = sheet::Segment::Kind;
  constexpr double k = 0.5523;  // of a quarter circle's handles
  const double r = radius;
  const double flat = half_width - r;
  const auto at = [&](double x, double y) { return Point{centre.x + x, centre.y + y}; };
  sheet::Path path;
  path.part = Part::neck_mark;
  path.segments = {
      {Kind::move, at(-flat, -r), {}, {}},
      {Kind::line, at(flat, -r), {}, {}},
      {Kind::curve, at(flat + r, 0), at(flat + k * r, -r), at(flat + r, -k * r)},
      {Kind::curve, at(flat, r), at(flat + r, k * r), at(flat + k * r, r)},
      {Kind::line, at(-flat, r), {}, {}},
      {Kind::curve, at(-flat - r, 0), at(-flat - k * r, r), at(-flat - r, k * r)},
      {Kind::curve, at(-flat, -r), at(-flat - r, -k * r), at(-flat - k * r, -r)},
      {Kind::close, {}, {}, {}},
  };
  return path;
}

void Picture::put_mark(const score::NeckMark& mark, double x, double y) {
  const double half = half_width(type_.width(Role::neck_mark, mark.label));
  if (mark.root) {
    const double side_x = std::max(square * scale_, half);
    const double side_y = square * scale_;
    layer_.path(
        polygon(
            Part::neck_mark,
            {{x - side_x, y - side_y}, {x + side_x, y - side_y}, {x + side_x, y + side_y}, {x - side_x, y + side_y}}),
        {x - side_x, y - side_y, x + side_x, y + side_y});
  } else {
    // White inside, so that the string ends at its edge.
    sheet::Path ring = rounded({x, y}, half, m_.neck_mark);
    ring.fill = white;
    ring.stroke = sheet::Color{};
    ring.stroke_width = outline * scale_;
    layer_.path(ring, bounds(ring));
  }
  put_label(mark, x, y);
}

void Picture::put_label(const score::NeckMark& mark, double x, double y) {
  const Words label = type_.set(Role::neck_mark, mark.label, Part::neck_label, mark.root ? white : sheet::Color{});
  layer_.centred(label, x, y + type_.cap_height(Role::neck_mark) / 2);
}

Block Picture::block(const Row& row, double width, bool left_handed) {
  row_ = row;
  left_handed_ = left_handed;
  const double natural = m_.neck_fret * (row.last - row.first + 1);
  const double needed = mark_width() / row.narrowest();
  neck_width_ = std::min(width - nut_, std::max({natural, std::min(widest * natural, width), needed}));
  layer_ = {};
  put_answer_ground();
  put_inlays(row);
  put_wires(row);
  put_strings(row);
  put_marks(row);
  put_numbers(row);
  Block block;
  block.ascent = m_.neck_mark + outline / 2 * scale_;
  block.height = bottom() + m_.neck_number;
  block.clearance = between_marks;
  block.items = layer_.take();
  return block;
}

std::string frets_shown(const score::NeckPicture& picture, Setter& setter) {
  return words::fill(setter.words, words::Word::neck_frets,
                     {{"from", std::to_string(picture.first)}, {"to", std::to_string(picture.last)}});
}

// What the squares mean, in the heading's last line: flush with the picture's right end `end`, or beside the heading
// where that reaches farther.
Block heading_with_key(const score::NeckPicture& picture, double width, double end, Setter& setter) {
  const bool roots = std::ranges::any_of(picture.marks, [](const score::NeckMark& mark) { return mark.root; });
  if (!roots) return section_heading(picture.title, frets_shown(picture, setter), width, setter);
  Type& type = setter.type;
  const Words word = type.set(Role::caption, words::word(setter.words, words::Word::root), Part::text);
  const double side = type.cap_height(Role::caption) * 1.2;
  const double gap = side / 2;
  const double key_width = side + gap + word.width;
  Block block = section_heading(picture.title, frets_shown(picture, setter), width - key_width - legend_gap, setter);
  const std::optional<sheet::Box> words = ink_of(block.items, type);
  const double beside = words ? words->right + legend_gap + key_width : 0;
  const double left = std::min(width, std::max(end, beside)) - key_width;
  const double y = block.height - type.cap_height(Role::caption) / 2;
  Layer key;
  key.path(
      polygon(Part::neck_mark,
              {{left, y - side / 2}, {left + side, y - side / 2}, {left + side, y + side / 2}, {left, y + side / 2}}),
      {left, y - side / 2, left + side, y + side / 2});
  key.words(word, left + side + gap, block.height);
  sheet::Group group;
  group.tag = sheet::Tag::paragraph;
  group.items = key.take();
  block.items.emplace_back(std::move(group));
  return block;
}

}  // namespace

bool neck_fits(const score::NeckPicture& picture, double width, Setter& setter) {
  const score::Score none;
  return Picture(picture, none, setter).rows(width).size() == 1;
}

Blocks neck_blocks(const score::NeckPicture& picture, const score::Score& score, double width, Setter& setter,
                   const std::string& words) {
  const Measures& m = setter.measures();
  Blocks blocks;
  double end = 0;
  Picture drawn(picture, score, setter);
  const Nest figure{setter.new_group(), sheet::Tag::figure, std::nullopt,
                    words.empty() ? picture.title + ", " + frets_shown(picture, setter) : words};
  for (const Row& row : drawn.rows(width)) {
    Block block = drawn.block(row, width, score.left_handed);
    block.nests = {figure};
    block.gap = block.gap_least = block.gap_most = blocks.empty() ? m.heading_to_neck : m.neck_row_gap;
    block.keep_with_next = true;
    if (const auto ink = ink_of(block.items, setter.type)) end = std::max(end, ink->right);
    blocks.push_back(std::move(block));
  }
  blocks.back().keep_with_next = false;
  blocks.insert(blocks.begin(), heading_with_key(picture, width, end, setter));
  return blocks;
}

}  // namespace fretsheaf::layout
