#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "theory/rational.h"

namespace fretsheaf::theory {

// A time signature. `groups` are the written upper figures ("2+2+3/8" is {2, 2, 3}; "4/4" is {4}).
struct Meter {
  std::vector<int> groups = {4};
  int lower = 4;

  int upper() const;                                     // the sum of the groups: how many counts a bar has
  Rational count() const { return Rational(1, lower); }  // what one count lasts
  Rational bar() const { return Rational(upper(), lower); }
  // 6, 9, 12 … over 8 or more (not grouped by hand): three counts make a beat (common practice).
  bool compound() const;
  // Where the beats begin that notation keeps visible and beams do not cross, from 0 up, each in whole notes: quarters
  // in 4/4, dotted quarters in 6/8, the written groups in 2+2+3/8 (common practice). Counts of a quarter or longer are
  // each a beat, grouped or not. Shorter ones that no group joins go in quarters, an odd one with the last: 3/8 is one
  // beat, 5/8 is 2+3; another grouping is written as such.
  std::vector<Rational> beats() const;
  std::string to_string() const;  // "2+2+3/8"

  bool operator==(const Meter&) const = default;
};

// A place of a bar as it is counted: the beat's number, or after a beat its part: "&" a half, "e" and "a" the first and
// last quarter, "la" and "li" the thirds, "+2/5" any other. `count` is what one count lasts.
std::string count_name(Rational at, Rational count);

inline constexpr int most_counts = 64;  // of a bar

// "4/4", "2+2+3/8"; 1 to 64 counts over 1, 2, 4 … 64. The whole text, else nullopt.
std::optional<Meter> parse_meter(std::string_view text);

}  // namespace fretsheaf::theory
