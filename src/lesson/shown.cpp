#include "lesson/shown.h"

#include "source/utf8.h"

namespace fretsheaf::lesson {

std::string shown(std::string_view words) {
  constexpr std::size_t most = 40;
  std::string result;
  std::size_t count = 0;
  while (!words.empty() && count++ < most) {
    const auto next = source::decode_utf8(words);
    result += next.code_point < 0x20 ? " " : words.substr(0, next.length);
    words.remove_prefix(next.length);
  }
  if (!words.empty()) result += "…";
  return "'" + result + "'";
}

}  // namespace fretsheaf::lesson
