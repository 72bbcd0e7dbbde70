#include "score/tuplet_spans.h"

#include <algorithm>
#include <cstdint>
#include <numeric>

#include "score/values.h"

namespace fretsheaf::score {
namespace {

using Joints = std::span<const Rational>;
using Spans = std::span<const MetricSpan>;

// More units than could be written in any beat.
constexpr std::int64_t too_many = 1 << 12;

Joints inside(Joints joints, Rational from, Rational to) {
  const auto first = std::upper_bound(joints.begin(), joints.end(), from);
  const auto last = std::lower_bound(joints.begin(), joints.end(), to);
  return first < last ? Joints(first, last) : Joints();
}

bool is_joint(Joints joints, Rational at) {
  return std::binary_search(joints.begin(), joints.end(), at);
}

// Without tuplets only halves of halves of the counts can be written.
bool regular(Rational at) {
  return power_of_two(at.denominator());
}

bool all_regular(Joints joints) {
  return std::all_of(joints.begin(), joints.end(), regular);
}

// The fewest equal parts of a stretch that make each joint one of theirs; `too_many` where they are too many.
std::int64_t units_of(Joints joints, Rational begin, Rational length) {
  std::int64_t units = 1;
  for (const Rational joint : joints) {
    units = std::lcm(units, ((joint - begin) / length).denominator());
    if (units >= too_many) return too_many;
  }
  return units;
}

std::int64_t odd_part(std::int64_t number) {
  while (number % 2 == 0) number /= 2;
  return number;
}

bool has_all_parts(Joints joints, Rational begin, Rational length, std::int64_t parts) {
  for (std::int64_t i = 1; i < parts; ++i) {
    if (!is_joint(joints, begin + length * Rational(i, parts))) return false;
  }
  return true;
}

TupletSpan tuplet_over(Rational begin, Rational length, std::int64_t actual) {
  std::int64_t normal = odd_part(length.numerator());
  while (normal * 2 <= actual) normal *= 2;
  return {begin, length, static_cast<int>(actual), static_cast<int>(normal), value_of(length / Rational(normal))};
}

class Planner {
 public:
  explicit Planner(Joints joints) : joints_(joints) {}

  void plan(const MetricSpan& bar) {
    const std::vector<MetricSpan> beats = beats_of(bar);
    over_neighbours(beats, 4);
    over_neighbours(beats, 2);
    for (const MetricSpan& beat : beats) {
      std::vector<MetricSpan> storage;
      const Spans counts = parts_of(beat, storage);
      if (counts.size() > 2) over_neighbours(counts, 2);
    }
    for (const MetricSpan& beat : beats) over_beat(beat);
    std::sort(found_.begin(), found_.end(), [](const TupletSpan& a, const TupletSpan& b) { return a.begin < b.begin; });
  }

  std::vector<TupletSpan> take() { return std::move(found_); }

 private:
  void over_neighbours(Spans beats, std::size_t width) {
    for (std::size_t i = 0; i + width <= beats.size(); ++i) {
      const bool aligned = i % width == 0 && beats.size() % width == 0;
      over_window(beats.subspan(i, width), aligned);
    }
  }

  void over_window(Spans beats, bool aligned) {
    const Rational begin = beats.front().begin;
    const Rational length = beats.back().end() - begin;
    const Joints within = inside(joints_, begin, begin + length);
    if (within.empty() || all_regular(within) || taken(begin, begin + length)) return;
    if (std::any_of(beats.begin(), beats.end(),
                    [&](const MetricSpan& beat) { return beat.length != beats.front().length; })) {
      return;
    }
    const bool covered = joints_.front() <= begin && begin + length <= joints_.back();
    const bool delimited = is_joint(joints_, begin) && is_joint(joints_, begin + length);
    const std::int64_t units = units_of(within, begin, length);
    if (!covered || !(delimited || aligned) || units == too_many) return;
    if (!is_window_tuplet(within, begin, length, units, beats.size())) return;
    const TupletSpan tuplet = tuplet_over(begin, length, odd_part(units));
    if (tuplet.unit) found_.push_back(tuplet);
  }

  // An odd number of parts, each begun; those of two beats may be divided again, but not where the beats meet.
  bool is_window_tuplet(Joints within, Rational begin, Rational length, std::int64_t units, std::size_t width) const {
    const std::int64_t parts = odd_part(units);
    if (parts < 3 || !has_all_parts(joints_, begin, length, parts)) return false;
    if (width > 2) return static_cast<std::int64_t>(within.size()) == parts - 1 && units == parts;
    return !is_joint(joints_, begin + length / Rational(2));
  }

  bool taken(Rational from, Rational to) const {
    return std::any_of(found_.begin(), found_.end(),
                       [&](const TupletSpan& tuplet) { return tuplet.begin < to && from < tuplet.end(); });
  }

  void over_beat(const MetricSpan& span) {
    const Joints within = inside(joints_, span.begin, span.end());
    if (within.empty()) return;
    const std::int64_t units = units_of(within, span.begin, span.length);
    const std::int64_t base = odd_part(span.length.numerator());
    const bool duplet = base == 3 && power_of_two(units);
    if (all_regular(within) && !duplet) return;
    std::vector<MetricSpan> storage;
    const Spans parts = parts_of(span, storage);
    const bool equal = static_cast<std::int64_t>(within.size()) == units - 1;
    const bool one_tuplet = duplet || (equal && (base == 1 || units % base != 0));
    if (!one_tuplet && delimited_by(parts) && (base > 1 || !same_in_all(parts))) {
      for (const MetricSpan& part : parts) over_beat(part);
      return;
    }
    if (taken(span.begin, span.end())) return;
    // Unequal parts read best in the fewest units that the tuplet is made of: "3" over eighth, sixteenth, dotted
    // eighth.
    const std::int64_t fewest = odd_part(units);
    const bool reduced = !equal && fewest >= 3 && fewest != base;
    found_.push_back(tuplet_over(span.begin, span.length, reduced ? fewest : units));
  }

  // Whether each part with irregular joints inside begins and ends at joints, so that it can be a tuplet by itself.
  // Parts that a tuplet holds already count as such.
  bool delimited_by(Spans parts) const {
    return std::all_of(parts.begin(), parts.end(), [&](const MetricSpan& part) {
      return taken(part.begin, part.end()) || all_regular(inside(joints_, part.begin, part.end())) ||
             (at_edge_or_joint(part.begin, parts) && at_edge_or_joint(part.end(), parts));
    });
  }

  bool at_edge_or_joint(Rational at, Spans parts) const {
    return at == parts.front().begin || at == parts.back().end() || is_joint(joints_, at);
  }

  // Whether all parts divide alike, so that one tuplet over all of them is simpler.
  bool same_in_all(Spans parts) const {
    std::int64_t first = 0;
    for (const MetricSpan& part : parts) {
      const std::int64_t odd = odd_part(units_of(inside(joints_, part.begin, part.end()), part.begin, part.length));
      if (first != 0 && odd != first) return false;
      first = odd;
    }
    return true;
  }

  Joints joints_;
  std::vector<TupletSpan> found_;
};

// The roundest place strictly between two: a multiple of the greatest power of two that has one there.
Rational roundest_between(Rational from, Rational to) {
  Rational step(1);
  while (Rational((to / step).floor()) * step > from + step) step = step * Rational(2);
  for (;; step = step / Rational(2)) {
    const Rational next = Rational((from / step).floor() + 1) * step;
    if (next < to) return next;
  }
}

// From and to in units.
bool split_units(NoteValue unit, Rational from, Rational to, bool rest, std::vector<NoteValue>& values) {
  const Rational units = to - from;
  if (units * unit.length() < Rational(1, std::int64_t{1} << shortest_log2)) return false;
  const auto value = value_of(units * unit.length());
  const bool on_own_multiple = (from / units).denominator() == 1;
  if (value && (!rest || (value->dots == 0 && on_own_multiple))) {
    values.push_back(*value);
    return true;
  }
  const Rational middle = roundest_between(from, to);
  return split_units(unit, from, middle, rest, values) && split_units(unit, middle, to, rest, values);
}

}  // namespace

std::vector<TupletSpan> tuplet_spans(const MetricSpan& bar, std::span<const Rational> joints) {
  if (joints.empty()) return {};
  Planner planner(joints);
  planner.plan(bar);
  return planner.take();
}

std::vector<NoteValue> split_in_tuplet(const TupletSpan& tuplet, Rational from, Rational to, bool rest) {
  if (!tuplet.unit) return {};
  const Rational unit = tuplet.length / Rational(tuplet.actual);
  std::vector<NoteValue> values;
  const bool written =
      split_units(*tuplet.unit, (from - tuplet.begin) / unit, (to - tuplet.begin) / unit, rest, values);
  return written ? values : std::vector<NoteValue>();
}

}  // namespace fretsheaf::score
