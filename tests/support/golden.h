#pragma once

#include <cstddef>
#include <string>
#include <string_view>

// The name of a golden file. Made of a literal only (nothing else compiles), so that the house test which looks for
// files that no test claims finds every name in the sources.
struct GoldenName {
  consteval GoldenName(const char* literal) : text(literal) {}  // NOLINT(google-explicit-constructor)
  std::string_view text;
};

// A golden file may be so large, in bytes: a larger one is read by nobody.
inline constexpr std::size_t golden_size_cap = 200'000;

// Checks that `text` is what tests/golden/NAME holds, and says where it first differs. With FRETSHEAF_UPDATE_GOLDEN=1
// in the environment the file is written instead.
void check_golden(GoldenName name, std::string_view text);

// Where two texts first differ, in words; empty where they do not.
std::string golden_difference(std::string_view expected, std::string_view actual);
