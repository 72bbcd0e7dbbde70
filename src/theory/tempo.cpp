#include "theory/tempo.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace fretsheaf::theory {

namespace {

constexpr std::array<std::string_view, 4> feels = {"straight", "swing", "shuffle", "swing-16"};

struct NoteValue {
  std::string_view name;
  int part;  // of a whole note
};

constexpr std::array<NoteValue, 5> note_values = {
    {{"whole", 1}, {"half", 2}, {"quarter", 4}, {"eighth", 8}, {"sixteenth", 16}}};
constexpr std::string_view dotted = "dotted ";

std::vector<int> rungs_by_step(int first, int goal, int step) {
  std::vector<int> rungs;
  for (int tempo = first; tempo < goal; tempo += step) rungs.push_back(tempo);
  rungs.push_back(goal);
  return rungs;
}

// The rung before rounding is a root of a whole number, never halfway between two: as its power (2k+1)^n is odd and the
// other side even. So floating point rounds it the same way on every machine.
int rung_by_ratio(int first, int goal, int index, int intervals) {
  const double part = static_cast<double>(index) / intervals;
  return static_cast<int>(std::lround(first * std::pow(static_cast<double>(goal) / first, part)));
}

int rung_by_difference(int first, int goal, int index, int intervals) {
  const Rational exact = Rational(first) + Rational(goal - first) * Rational(index, intervals);
  return static_cast<int>((exact + Rational(1, 2)).floor());
}

std::vector<int> rungs_by_number(int first, int goal, int number, RungSpacing spacing) {
  if (number < 2) return {goal};
  std::vector<int> rungs;
  rungs.reserve(static_cast<std::size_t>(number));
  for (int index = 0; index < number; ++index) {
    rungs.push_back(spacing == RungSpacing::ratio ? rung_by_ratio(first, goal, index, number - 1)
                                                  : rung_by_difference(first, goal, index, number - 1));
  }
  return rungs;
}

}  // namespace

std::string_view feel_name(Feel feel) {
  return feels[static_cast<std::size_t>(feel)];
}

std::vector<std::string_view> feel_names() {
  return {feels.begin(), feels.end()};
}

std::optional<Feel> parse_feel(std::string_view text) {
  const auto* const found = std::ranges::find(feels, text);
  if (found == feels.end()) return std::nullopt;
  return static_cast<Feel>(found - feels.begin());
}

std::optional<Rational> parse_beat_unit(std::string_view text) {
  const bool with_dot = text.starts_with(dotted);
  if (with_dot) text.remove_prefix(dotted.size());
  const auto* const found = std::ranges::find(note_values, text, &NoteValue::name);
  if (found == note_values.end()) return std::nullopt;
  const Rational plain(1, found->part);
  return with_dot ? plain * Rational(3, 2) : plain;
}

std::vector<std::string> beat_unit_names() {
  std::vector<std::string> names;
  for (const NoteValue& value : note_values) {
    names.emplace_back(value.name);
    names.push_back(std::string(dotted) + std::string(value.name));
  }
  return names;
}

Rational beat_unit(const Meter& meter) {
  return meter.compound() ? meter.count() * Rational(3) : meter.count();
}

std::vector<int> ladder_rungs(const Tempo& tempo) {
  const auto [first, goal] = std::minmax(tempo.from, tempo.to);
  std::vector<int> rungs = {first, goal};
  if (!tempo.pair && tempo.step && *tempo.step > 0) {
    rungs = rungs_by_step(first, goal, *tempo.step);
  } else if (!tempo.pair && tempo.rungs) {
    rungs = rungs_by_number(first, goal, *tempo.rungs, tempo.spacing);
  }
  rungs.erase(std::unique(rungs.begin(), rungs.end()), rungs.end());
  return rungs;
}

Rational quarters_per_minute(int tempo, Rational beat) {
  return Rational(tempo) * beat * Rational(4);
}

}  // namespace fretsheaf::theory
