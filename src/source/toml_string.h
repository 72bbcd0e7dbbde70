#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

// TOML's four kinds of string as they stand in a file.
namespace fretsheaf::source {

enum class Quotes { basic, literal, basic_lines, literal_lines };  // "…" '…' """…""" '''…'''

std::string_view quote_marks(Quotes quotes);

struct TomlString {
  Quotes quotes = Quotes::basic;
  std::size_t begin = 0;       // of the opening quotes, bytes in the file
  std::size_t body_begin = 0;  // after them and the line end that may follow them
  std::size_t body_end = 0;
  std::size_t end = 0;  // after the closing quotes
};

// The string whose opening quote is at `begin`; nullopt where it is not closed (one of a single line: on its line).
// REQUIRES: bytes[begin] is a quote, " or '.
std::optional<TomlString> find_toml_string(std::string_view bytes, std::size_t begin);

}  // namespace fretsheaf::source
