#include "theory/meter.h"

#include <charconv>
#include <numeric>

namespace fretsheaf::theory {

namespace {

// A whole number from 1 to 64 written without a leading zero.
std::optional<int> parse_count(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = error == std::errc{} && end == text.data() + text.size();
  if (!whole || text.front() == '0' || value < 1 || value > most_counts) return std::nullopt;
  return value;
}

bool power_of_two(int value) {
  return (value & (value - 1)) == 0;
}

// How many counts each visible beat has, for one written group.
std::vector<int> counts_per_beat(int counts, const Meter& meter) {
  constexpr int quarter = 4;
  if (meter.compound()) return std::vector<int>(static_cast<std::size_t>(counts) / 3, 3);
  if (meter.lower <= quarter) return std::vector<int>(static_cast<std::size_t>(counts), 1);
  if (meter.groups.size() > 1) return {counts};
  // Counts shorter than a quarter go in quarters; a single one left over joins the last of them (3/8, 2+3 of 5/8).
  const int size = meter.lower / quarter;
  std::vector<int> beats(static_cast<std::size_t>(counts) / static_cast<std::size_t>(size), size);
  const int rest = counts % size;
  if (rest == 1 && !beats.empty()) {
    beats.back() += 1;
  } else if (rest > 0) {
    beats.push_back(rest);
  }
  return beats;
}

}  // namespace

int Meter::upper() const {
  return std::accumulate(groups.begin(), groups.end(), 0);
}

bool Meter::compound() const {
  constexpr int eighth = 8;
  return groups.size() == 1 && lower >= eighth && upper() > 3 && upper() % 3 == 0;
}

std::vector<Rational> Meter::beats() const {
  std::vector<Rational> starts;
  int counts = 0;
  for (const int group : groups) {
    for (const int size : counts_per_beat(group, *this)) {
      starts.emplace_back(counts, lower);
      counts += size;
    }
  }
  return starts;
}

std::string Meter::to_string() const {
  std::string text;
  for (const int group : groups) {
    if (!text.empty()) text += "+";
    text += std::to_string(group);
  }
  return text + "/" + std::to_string(lower);
}

std::optional<Meter> parse_meter(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const std::optional<int> lower = parse_count(text.substr(slash + 1));
  if (!lower || !power_of_two(*lower)) return std::nullopt;

  Meter meter{{}, *lower};
  std::string_view upper = text.substr(0, slash);
  while (true) {
    const std::size_t plus = upper.find('+');
    const std::optional<int> group = parse_count(upper.substr(0, plus));
    if (!group) return std::nullopt;
    meter.groups.push_back(*group);
    if (meter.upper() > most_counts) return std::nullopt;
    if (plus == std::string_view::npos) return meter;
    upper.remove_prefix(plus + 1);
  }
}

std::string count_name(Rational at, Rational count) {
  const Rational counts = at / count;
  const Rational part = counts - Rational(counts.floor());
  if (part == Rational(0)) return std::to_string(counts.floor() + 1);
  if (part == Rational(1, 2)) return "&";
  if (part == Rational(1, 4)) return "e";
  if (part == Rational(3, 4)) return "a";
  if (part == Rational(1, 3)) return "la";
  if (part == Rational(2, 3)) return "li";
  return "+" + part.to_string();
}

}  // namespace fretsheaf::theory
