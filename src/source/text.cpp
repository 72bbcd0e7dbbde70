#include "source/text.h"

#include <algorithm>
#include <utility>

#include "source/utf8.h"

namespace fretsheaf::source {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

}  // namespace

Text::Text(std::string name, std::string bytes) : name_(std::move(name)), bytes_(std::move(bytes)) {
  line_begins_.push_back(std::string_view(bytes_).starts_with(byte_order_mark) ? byte_order_mark.size() : 0);
  for (std::size_t at = bytes_.find('\n'); at != std::string::npos; at = bytes_.find('\n', at + 1)) {
    line_begins_.push_back(at + 1);
  }
}

std::string_view Text::line(int line) const {
  const auto index = static_cast<std::size_t>(line) - 1;
  const std::size_t begin = line_begins_[index];
  const bool last = index + 1 == line_begins_.size();
  std::string_view found = std::string_view(bytes_).substr(begin);
  if (last) return found;
  found = found.substr(0, line_begins_[index + 1] - begin - 1);
  if (found.ends_with('\r')) found.remove_suffix(1);
  return found;
}

Position Text::position(std::size_t offset) const {
  const auto after = std::upper_bound(line_begins_.begin() + 1, line_begins_.end(), offset);
  const auto number = static_cast<int>(after - line_begins_.begin());
  const std::size_t begin = line_begins_[static_cast<std::size_t>(number) - 1];
  std::string_view rest = line(number);
  if (offset > begin) {
    rest = rest.substr(0, offset - begin);
  } else {
    rest = {};
  }
  Position place{number, 1, 1};
  while (!rest.empty()) {
    const auto next = decode_utf8(rest);
    // An offset inside a code point is that code point's place.
    if (!next.valid) break;
    rest.remove_prefix(next.length);
    ++place.column;
    place.utf16 += next.code_point >= 0x10000 ? 2 : 1;
  }
  return place;
}

std::size_t Text::offset(int line_number, int column) const {
  if (line_number > line_count()) return bytes_.size();
  std::string_view rest = line(line_number);
  const std::string_view all = rest;
  for (int at = 1; at < column && !rest.empty(); ++at) rest.remove_prefix(decode_utf8(rest).length);
  return line_begins_[static_cast<std::size_t>(line_number) - 1] + (all.size() - rest.size());
}

FileId Files::add(Text text) {
  texts_.push_back(std::move(text));
  return static_cast<FileId>(texts_.size() - 1);
}

}  // namespace fretsheaf::source
