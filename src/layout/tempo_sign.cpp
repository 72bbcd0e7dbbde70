#include "layout/tempo_sign.h"

#include <algorithm>
#include <array>
#include <utility>

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Role;

// The note beside a tempo (the house's measures): sizes in its own staff space, which is 0.36 of the number's size.
constexpr double space_of_size = 0.36;
constexpr double stem_height = 3.3;
constexpr double stem_width = 0.12;
constexpr double beam_height = 0.42;
constexpr double beam_step = 0.65;
constexpr double head_middle = 0.54;  // of Noto Music's head above its origin
constexpr double flag_origin = 4.04;  // of Noto Music's flag below its top
constexpr double flag_step = 0.75;
constexpr double equals_gap = 0.4;  // of the number's size, as what follows
constexpr double bracket_rise = 0.26;
constexpr double bracket_line = 0.055;
constexpr double bracket_hook = 0.2;
constexpr double beside_three = 0.16;
constexpr double dot_radius = 0.25;

constexpr char32_t black_head = U'\U0001D158';
constexpr char32_t void_head = U'\U0001D157';
constexpr char32_t whole_head = U'\U0001D15D';
constexpr char32_t flag = U'\U0001D16E';
constexpr char32_t flag_two = U'\U0001D16F';

double size_of(Type& type) {
  return type.look().style(Role::tempo_number).size;
}

double space_of(Type& type) {
  return space_of_size * size_of(type);
}

void take_in(Words& into, const sheet::Box& box) {
  if (into.items.empty()) into.ink = box;
  into.ink = {std::min(into.ink.left, box.left), std::min(into.ink.top, box.top), std::max(into.ink.right, box.right),
              std::max(into.ink.bottom, box.bottom)};
}

// Adds `part` with its origin at (x, y).
void put(Words& into, Words part, double x, double y = 0) {
  if (part.items.empty()) return;
  take_in(into, {part.ink.left + x, part.ink.top + y, part.ink.right + x, part.ink.bottom + y});
  sheet::translate(part.items, x, y);
  for (sheet::Item& item : part.items) into.items.push_back(std::move(item));
}

void put_rule(Words& into, sheet::Point from, sheet::Point to, double width) {
  const double dx = from.x == to.x ? width / 2 : 0;
  const double dy = from.y == to.y ? width / 2 : 0;
  take_in(into, {std::min(from.x, to.x) - dx, std::min(from.y, to.y) - dy, std::max(from.x, to.x) + dx,
                 std::max(from.y, to.y) + dy});
  into.items.emplace_back(sheet::Rule{Part::tempo_mark, from, to, width, {}, 0, 0});
}

void put_dot(Words& into, double x, double y, double radius) {
  constexpr double k = 0.5523;  // a quarter circle as a cubic
  using Kind = sheet::Segment::Kind;
  sheet::Path path;
  path.part = Part::tempo_mark;
  path.fill = sheet::Color{};
  const double r = radius;
  path.segments = {{Kind::move, {x + r, y}, {}, {}},
                   {Kind::curve, {x, y + r}, {x + r, y + k * r}, {x + k * r, y + r}},
                   {Kind::curve, {x - r, y}, {x - k * r, y + r}, {x - r, y + k * r}},
                   {Kind::curve, {x, y - r}, {x - r, y - k * r}, {x - k * r, y - r}},
                   {Kind::curve, {x + r, y}, {x + k * r, y - r}, {x + r, y - k * r}},
                   {Kind::close, {}, {}, {}}};
  take_in(into, {x - r, y - r, x + r, y + r});
  into.items.emplace_back(std::move(path));
}

// A head and, where the value has one, its stem. Returns the stem's x.
double put_head(Words& into, const score::NoteValue& value, double x, Type& type) {
  const double space = space_of(type);
  const char32_t code = value.log2 <= 0 ? whole_head : value.log2 == 1 ? void_head : black_head;
  Words head = type.sign(code, space, Part::tempo_mark);
  const double left = head.ink.left;
  const double right = head.ink.right - left + x;
  put(into, std::move(head), x - left);
  const double stem = right - stem_width * space / 2;
  if (value.log2 <= 0) return right;
  put_rule(into, {stem, -head_middle * space}, {stem, -(head_middle + stem_height) * space}, stem_width * space);
  return stem;
}

double stem_top(double space) {
  return -(head_middle + stem_height) * space;
}

void put_flags(Words& into, int count, double stem, Type& type) {
  const double space = space_of(type);
  const double left = stem - stem_width * space / 2;
  if (count == 2)
    return put(into, type.sign(flag_two, space, Part::tempo_mark), left, stem_top(space) + flag_origin * space);
  for (int i = 0; i < count; ++i) {
    put(into, type.sign(flag, space, Part::tempo_mark), left, stem_top(space) + (flag_origin + i * flag_step) * space);
  }
}

Words note(const score::NoteValue& value, Type& type) {
  const double space = space_of(type);
  Words words;
  const double stem = put_head(words, value, 0, type);
  put_flags(words, value.beams(), stem, type);
  double x = std::max(stem, value.beams() > 0 ? words.ink.right : stem);
  for (int i = 0; i < value.dots; ++i) {
    x += 0.75 * space;
    put_dot(words, x, -head_middle * space, dot_radius * space);
  }
  words.width = words.ink.right;
  return words;
}

// Two heads under one beam.
Words beamed_pair(const score::NoteValue& value, Type& type) {
  const double space = space_of(type);
  Words words;
  const double first = put_head(words, value, 0, type);
  const double second = put_head(words, value, 3.3 * space, type);
  const double half = stem_width * space / 2;
  for (int i = 0; i < value.beams(); ++i) {
    const double y = stem_top(space) + (beam_height / 2 + i * beam_step) * space;
    put_rule(words, {first - half, y}, {second + half, y}, beam_height * space);
  }
  words.width = words.ink.right;
  return words;
}

// The long and the short note under a bracket with its 3.
Words bracketed_pair(const score::NoteValue& value, Type& type) {
  const double space = space_of(type);
  const double size = size_of(type);
  Words words = note({value.log2 - 1, 0}, type);
  put(words, note(value, type), std::max(3.5 * space, words.ink.right + 0.9 * space));
  const double right = words.ink.right;
  const double y = stem_top(space) - bracket_rise * size;
  Words number = type.set_at_size(Role::tempo_number, type.look().least_type, "3", Part::tempo_mark);
  const double middle = right / 2;
  const double hole = number.width / 2 + beside_three * size;
  const double weight = bracket_line * size;
  put_rule(words, {0, y}, {middle - hole, y}, weight);
  put_rule(words, {middle + hole, y}, {right, y}, weight);
  put_rule(words, {weight / 2, y}, {weight / 2, y + bracket_hook * size}, weight);
  put_rule(words, {right - weight / 2, y}, {right - weight / 2, y + bracket_hook * size}, weight);
  const double height = number.ink.bottom - number.ink.top;
  put(words, std::move(number), middle - hole + beside_three * size, y + height / 2);
  words.width = words.ink.right;
  return words;
}

void put_equals(Words& words, Type& type) {
  Words equals = type.set(Role::tempo_number, "=", Part::tempo_mark);
  const double gap = equals_gap * size_of(type);
  const double x = words.width + gap;
  const double end = x + equals.width + gap;
  put(words, std::move(equals), x);
  words.width = end;
}

std::string numbers(const score::TempoMark& tempo) {
  if (tempo.last == tempo.tempo) return std::to_string(tempo.tempo);
  return std::to_string(tempo.tempo) + (tempo.pair ? " / " : "\u2013") + std::to_string(tempo.last);
}

}  // namespace

Words note_sign(const score::NoteValue& value, Type& type) {
  return note(value, type);
}

Words tempo_sign(const score::TempoMark& tempo, Type& type) {
  Words words = note(tempo.beat, type);
  put_equals(words, type);
  Words number = type.set(Role::tempo_number, numbers(tempo), Part::tempo_mark);
  const double end = words.width + number.width;
  put(words, std::move(number), words.width);
  words.width = end;
  return words;
}

std::string spelled_tempo(const score::TempoMark& tempo) {
  // Of Musical Symbols, but for the two that every font knows: whole, half, quarter, eighth, and on to the 128th.
  constexpr std::array notes = {"\U0001D15D", "\U0001D15E", "\u2669",     "\u266A",
                                "\U0001D161", "\U0001D162", "\U0001D163", "\U0001D164"};
  const auto value = static_cast<std::size_t>(std::clamp(tempo.beat.log2, 0, static_cast<int>(notes.size()) - 1));
  return notes.at(value) + std::string(static_cast<std::size_t>(tempo.beat.dots), '.') + " = " + numbers(tempo);
}

Words swing_sign(const score::NoteValue& value, Type& type) {
  Words words = beamed_pair(value, type);
  put_equals(words, type);
  Words uneven = bracketed_pair(value, type);
  const double end = words.width + uneven.width;
  put(words, std::move(uneven), words.width);
  words.width = end;
  return words;
}

}  // namespace fretsheaf::layout
