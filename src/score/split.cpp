#include "score/split.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>

#include "score/values.h"

namespace fretsheaf::score {
namespace {

using Parts = std::span<const MetricSpan>;

// A stretch of time inside a span, longer than any one part of it, or all of it.
struct Stretch {
  Rational from;
  Rational to;

  Rational length() const { return to - from; }
};

bool starts_part(Parts parts, Rational at) {
  return std::any_of(parts.begin(), parts.end(), [&](const MetricSpan& part) { return part.begin == at; });
}

bool ends_part(Parts parts, Rational at) {
  return std::any_of(parts.begin(), parts.end(), [&](const MetricSpan& part) { return part.end() == at; });
}

bool alike(Parts parts) {
  return std::all_of(parts.begin(), parts.end(),
                     [&](const MetricSpan& part) { return part.length == parts.front().length; });
}

bool fits_two(const MetricSpan& span, Stretch note) {
  const Rational quarter = span.length / Rational(4);
  if (!power_of_two(quarter.numerator())) return false;  // of dotted halves
  const bool dotted = note.length() == quarter * Rational(3);
  const bool around_middle = note.length() == quarter * Rational(2) && note.from == span.begin + quarter;
  return around_middle || (dotted && (note.from == span.begin || (span.within_beat && note.to == span.end())));
}

// Three parts, or five and more, which nothing groups.
bool fits_several(const MetricSpan& span, Parts parts, Stretch note) {
  const Rational part = parts.front().length;
  const bool from_joint = starts_part(parts, note.from);
  const bool to_joint = ends_part(parts, note.to);
  if (from_joint && to_joint) return note.length() <= part * Rational(3);
  if (!power_of_two(part.numerator())) return false;
  if (note.length() == part * Rational(3, 2)) return from_joint || (to_joint && span.within_beat);
  return note.length() == part && starts_part(parts, note.from + part / Rational(2));
}

bool fits_note(const MetricSpan& span, Parts parts, Stretch note) {
  if (!alike(parts)) return starts_part(parts, note.from) && ends_part(parts, note.to);
  return parts.size() == 2 ? fits_two(span, note) : fits_several(span, parts, note);
}

bool fits_rest(const MetricSpan& span, Parts parts, Stretch rest) {
  return span.within_beat && parts.size() == 3 && rest.from == span.begin && rest.to == parts[1].end();
}

std::optional<NoteValue> single(const MetricSpan& span, Parts parts, Stretch stretch, Sound sound) {
  const bool all = stretch.from == span.begin && stretch.to == span.end();
  const bool fits = all || (sound == Sound::note ? fits_note(span, parts, stretch) : fits_rest(span, parts, stretch));
  return fits ? value_of(stretch.length()) : std::nullopt;
}

struct Way {
  std::vector<NoteValue> values;
  bool possible = false;

  // The sum of squared lengths.
  Rational unevenness() const {
    Rational sum;
    for (const NoteValue& value : values) sum += value.length() * value.length();
    return sum;
  }
};

// Fewer values are better. Of as few, an earlier way (with the longer beginning) stays, but where nothing groups five
// parts or more, the most even one is taken: 5/4 is 3+2, 7/4 is 3+2+2.
bool better(const Way& way, const Way& than, bool ungrouped) {
  if (!than.possible) return true;
  if (way.values.size() != than.values.size()) return way.values.size() < than.values.size();
  return ungrouped && way.unevenness() < than.unevenness();
}

Way extended(Way way, const std::vector<NoteValue>& values) {
  way.values.insert(way.values.end(), values.begin(), values.end());
  return way;
}

std::vector<NoteValue> split_in(const MetricSpan& span, Stretch stretch, Sound sound);

// One stretch between two neighbouring or further joints of a span.
std::vector<NoteValue> piece_in(const MetricSpan& span, Parts parts, Stretch piece, Sound sound) {
  for (const MetricSpan& part : parts) {
    if (part.holds(piece.from, piece.to)) return split_in(part, piece, sound);
  }
  if (const auto value = single(span, parts, piece, sound)) return {*value};
  return {};
}

// The best way to cut the stretch at the span's joints.
std::vector<NoteValue> cut_at_joints(const MetricSpan& span, Parts parts, Stretch stretch, Sound sound) {
  std::vector<Rational> joints = {stretch.from};
  for (const MetricSpan& part : parts) {
    if (stretch.from < part.begin && part.begin < stretch.to) joints.push_back(part.begin);
  }
  joints.push_back(stretch.to);
  std::vector<Way> ways(joints.size());
  ways.front().possible = true;
  for (std::size_t to = 1; to < joints.size(); ++to) {
    for (std::size_t from = to; from-- > 0;) {
      const bool whole = from == 0 && to + 1 == joints.size();
      if (whole || !ways[from].possible) continue;
      const std::vector<NoteValue> piece = piece_in(span, parts, {joints[from], joints[to]}, sound);
      if (piece.empty()) continue;
      Way way = extended(ways[from], piece);
      if (better(way, ways[to], parts.size() >= 5)) ways[to] = std::move(way);
    }
  }
  return ways.back().values;
}

std::vector<NoteValue> split_in(const MetricSpan& span, Stretch stretch, Sound sound) {
  // A span shorter than the shortest value cannot be cut into values.
  if (span.length < Rational(1, std::int64_t{1} << shortest_log2)) return {};
  std::vector<MetricSpan> storage;
  const Parts parts = parts_of(span, storage);
  for (const MetricSpan& part : parts) {
    if (part.holds(stretch.from, stretch.to)) return split_in(part, stretch, sound);
  }
  if (const auto value = single(span, parts, stretch, sound)) return {*value};
  return cut_at_joints(span, parts, stretch, sound);
}

}  // namespace

std::vector<NoteValue> split(const MetricSpan& bar, Rational from, Rational to, Sound sound) {
  return split_in(bar, {from, to}, sound);
}

}  // namespace fretsheaf::score
