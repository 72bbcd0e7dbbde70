#include "lesson/toml_places.h"

#include <algorithm>

#include "source/utf8.h"

namespace fretsheaf::lesson {

TomlPlaces::TomlPlaces(const source::Text& text) : text_(text) {
  for (int number = 1; number <= text.line_count(); ++number) {
    const std::string_view line = text.line(number);
    const auto begin = static_cast<std::size_t>(line.data() - text.bytes().data());
    first_of_line_.push_back(marks_.size());
    std::size_t column = 0;
    for (std::size_t at = 0; at < line.size(); ++column) {
      if (column % stride == 0) marks_.push_back(begin + at);
      at += source::decode_utf8(line.substr(at)).length;
    }
    if (line.empty()) marks_.push_back(begin);
  }
}

std::size_t TomlPlaces::offset(std::size_t line, std::size_t column) const {
  const std::string& bytes = text_.bytes();
  if (line < 1 || line > first_of_line_.size() || column < 1) return bytes.size();
  const std::size_t first = first_of_line_[line - 1];
  const std::size_t next = line < first_of_line_.size() ? first_of_line_[line] : marks_.size();
  const std::size_t mark = std::min(first + (column - 1) / stride, next - 1);
  const std::string_view whole = text_.line(static_cast<int>(line));
  const auto end = static_cast<std::size_t>(whole.data() - bytes.data()) + whole.size();
  std::size_t at = marks_[mark];
  for (std::size_t left = column - 1 - (mark - first) * stride; left > 0 && at < end; --left) {
    at += source::decode_utf8(std::string_view(bytes).substr(at, end - at)).length;
  }
  return at;
}

}  // namespace fretsheaf::lesson
