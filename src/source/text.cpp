#include "source/text.h"

#include <algorithm>
#include <utility>

#include "source/utf8.h"

namespace fretsheaf::source {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::size_t milestone_distance = 64;

}  // namespace

Text::Text(std::string name, std::string bytes) : name_(std::move(name)), bytes_(std::move(bytes)) {
  line_begins_.push_back(std::string_view(bytes_).starts_with(byte_order_mark) ? byte_order_mark.size() : 0);
  for (std::size_t at = bytes_.find('\n'); at != std::string::npos; at = bytes_.find('\n', at + 1)) {
    line_begins_.push_back(at + 1);
  }
  set_milestones();
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

void Text::set_milestones() {
  for (int number = 1; number <= line_count(); ++number) {
    std::string_view rest = line(number);
    if (rest.size() <= milestone_distance) continue;
    Milestone here{line_begins_[static_cast<std::size_t>(number) - 1], 1, 1};
    std::size_t next_milestone = here.offset + milestone_distance;
    std::vector<Milestone>& known = milestones_[number];
    while (!rest.empty()) {
      if (here.offset >= next_milestone) {
        known.push_back(here);
        next_milestone += milestone_distance;
      }
      const auto next = decode_utf8(rest);
      rest.remove_prefix(next.length);
      here.offset += next.length;
      ++here.column;
      here.utf16 += next.code_point >= 0x10000 ? 2 : 1;
    }
  }
}

template <typename Past>
Text::Milestone Text::milestone(int line, Past past) const {
  const Milestone start{line_begins_[static_cast<std::size_t>(line) - 1], 1, 1};
  const auto known = milestones_.find(line);
  if (known == milestones_.end()) return start;
  const auto after = std::partition_point(known->second.begin(), known->second.end(),
                                          [&](const Milestone& milestone) { return !past(milestone); });
  return after == known->second.begin() ? start : *(after - 1);
}

Position Text::position(std::size_t offset) const {
  const auto after = std::upper_bound(line_begins_.begin() + 1, line_begins_.end(), offset);
  const auto number = static_cast<int>(after - line_begins_.begin());
  const std::size_t begin = line_begins_[static_cast<std::size_t>(number) - 1];
  const std::string_view all = line(number);
  const std::size_t end = std::min(std::max(offset, begin), begin + all.size());
  const Milestone from = milestone(number, [&](const Milestone& m) { return m.offset > end; });
  std::string_view rest = all.substr(from.offset - begin, end - from.offset);
  Position place{number, from.column, from.utf16};
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
  if (line_number < 1 || line_number > line_count()) return bytes_.size();
  const std::size_t begin = line_begins_[static_cast<std::size_t>(line_number) - 1];
  const std::string_view all = line(line_number);
  const Milestone from = milestone(line_number, [&](const Milestone& m) { return m.column > column; });
  std::string_view rest = all.substr(from.offset - begin);
  for (int at = from.column; at < column && !rest.empty(); ++at) rest.remove_prefix(decode_utf8(rest).length);
  return begin + (all.size() - rest.size());
}

FileId Files::add(Text text) {
  texts_.push_back(std::move(text));
  return static_cast<FileId>(texts_.size() - 1);
}

}  // namespace fretsheaf::source
