#include "source/toml_string.h"

#include <string>

namespace fretsheaf::source {
namespace {

bool is_basic(Quotes quotes) {
  return quotes == Quotes::basic || quotes == Quotes::basic_lines;
}
bool is_lines(Quotes quotes) {
  return quotes == Quotes::basic_lines || quotes == Quotes::literal_lines;
}

Quotes quotes_at(std::string_view bytes, std::size_t begin) {
  const char mark = bytes[begin];
  const bool three = bytes.substr(begin, 3) == std::string(3, mark);
  if (mark == '"') return three ? Quotes::basic_lines : Quotes::basic;
  return three ? Quotes::literal_lines : Quotes::literal;
}

std::optional<std::size_t> find_line_close(std::string_view bytes, std::size_t from, Quotes quotes) {
  const char mark = quote_marks(quotes).front();
  for (std::size_t at = from; at < bytes.size() && bytes[at] != '\n'; ++at) {
    if (bytes[at] == mark) return at;
    if (bytes[at] == '\\' && is_basic(quotes)) ++at;
  }
  return {};
}

// Up to two quotes may stand before the closing three: the last three of a run close.
std::optional<std::size_t> find_lines_close(std::string_view bytes, std::size_t from, Quotes quotes) {
  const auto marks = quote_marks(quotes);
  for (std::size_t at = from; at < bytes.size(); ++at) {
    if (bytes.substr(at, 3) == marks) {
      std::size_t more = 0;
      while (more < 2 && at + 3 + more < bytes.size() && bytes[at + 3 + more] == marks.front()) ++more;
      return at + more;
    }
    if (bytes[at] == '\\' && is_basic(quotes)) ++at;
  }
  return {};
}

}  // namespace

std::string_view quote_marks(Quotes quotes) {
  switch (quotes) {
    case Quotes::basic:
      return "\"";
    case Quotes::literal:
      return "'";
    case Quotes::basic_lines:
      return "\"\"\"";
    case Quotes::literal_lines:
      break;
  }
  return "'''";
}

std::optional<TomlString> find_toml_string(std::string_view bytes, std::size_t begin) {
  TomlString result;
  result.quotes = quotes_at(bytes, begin);
  const std::size_t width = quote_marks(result.quotes).size();
  result.begin = begin;
  result.body_begin = begin + width;
  const bool lines = is_lines(result.quotes);
  if (lines && bytes.substr(result.body_begin, 2) == "\r\n") {
    result.body_begin += 2;
  } else if (lines && bytes.substr(result.body_begin, 1) == "\n") {
    result.body_begin += 1;
  }
  const auto close = lines ? find_lines_close(bytes, result.body_begin, result.quotes)
                           : find_line_close(bytes, result.body_begin, result.quotes);
  if (!close) return {};
  result.body_end = *close;
  result.end = *close + width;
  return result;
}

}  // namespace fretsheaf::source
