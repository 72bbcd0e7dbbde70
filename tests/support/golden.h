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

// The same for a file that is part of the project itself, such as a picture of a manual: `path` from the project's top.
void check_kept(const std::string& path, std::string_view text);

// Whether files are to be written anew instead of compared.
bool updating_golden();

// Where two texts first differ, in words; empty where they do not.
std::string golden_difference(std::string_view expected, std::string_view actual);
