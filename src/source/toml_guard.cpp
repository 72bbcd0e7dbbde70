#include "source/toml_guard.h"

#include <algorithm>
#include <cctype>

#include "source/toml_string.h"

namespace fretsheaf::source {
namespace {

// Reads just enough to know where strings and comments are. What it cannot follow it leaves to the parser, which stops
// there too.
class GuardScan {
 public:
  GuardScan(std::string_view bytes, int deepest) : bytes_(bytes), deepest_(deepest) {
    if (bytes_.starts_with("\xEF\xBB\xBF")) at_ = 3;
  }

  // Whether the scan came to the end of what it can follow; else it stands at what the parser must not see.
  bool run() {
    while (at_ < bytes_.size()) {
      if (is_beyond_ascii(bytes_[at_]) || hides_in_a_value()) return false;
      if (!step()) return true;
      if (too_deep()) {
        --at_;
        return false;
      }
    }
    return true;
  }
  bool too_deep() const { return depth_ > deepest_ || dots_ >= deepest_; }
  std::size_t at() const { return at_; }

 private:
  static bool is_beyond_ascii(char c) { return static_cast<unsigned char>(c) >= 0x80; }

  // Whether a quotation mark stands here in the middle of a word: the parser takes it for no string, and looks at each
  // character of what it seems to hold.
  bool hides_in_a_value() const {
    if (at_ == 0 || (bytes_[at_] != '"' && bytes_[at_] != '\'')) return false;
    constexpr std::string_view of_words = "_+-:\"'";
    const char before = bytes_[at_ - 1];
    const bool in_word = std::isalnum(static_cast<unsigned char>(before)) != 0 ||
                         of_words.find(before) != std::string_view::npos || (before == '.' && in_value_);
    if (!in_word) return false;
    const auto string = find_toml_string(bytes_, at_);
    const std::string_view held = bytes_.substr(at_, string ? string->end - at_ : std::string_view::npos);
    return std::any_of(held.begin(), held.end(), is_beyond_ascii);
  }

  // False where a string is not closed.
  bool step() {
    const char c = bytes_[at_];
    if (c == '"' || c == '\'') {
      const auto string = find_toml_string(bytes_, at_);
      if (!string) return false;
      at_ = string->end;
      return true;
    }
    if (c == '#') {
      at_ = std::min(bytes_.find('\n', at_), bytes_.size());
      return true;
    }
    ++at_;
    if (c == '[' || c == '{') ++depth_;
    if ((c == ']' || c == '}') && depth_ > 0) --depth_;
    if (c == '.') ++dots_;
    if (c == '=') in_value_ = true;
    if (c == '\n' || c == ',' || c == '{') in_value_ = false;
    if (c == '=' || c == ',' || c == '\n' || c == '[' || c == '{') dots_ = 0;
    return true;
  }

  std::string_view bytes_;
  int deepest_;
  std::size_t at_ = 0;
  int depth_ = 0;
  int dots_ = 0;
  bool in_value_ = false;
};

}  // namespace

std::optional<UnsafeToml> unsafe_toml(std::string_view bytes, int deepest) {
  GuardScan scan(bytes, deepest);
  if (scan.run()) return {};
  return UnsafeToml{scan.at(), scan.too_deep()};
}

}  // namespace fretsheaf::source
