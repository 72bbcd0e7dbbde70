#include "lesson/toml_guard.h"

#include <algorithm>
#include <cctype>
#include <optional>
#include <string>
#include <string_view>

#include "lesson/limits.h"
#include "lesson/toml_string.h"
#include "lesson/toml_syntax.h"
#include "lesson/toml_tree.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

// Reads just enough to know where strings and comments are. What it cannot follow it leaves to the parser, which stops
// there too.
class GuardScan {
 public:
  explicit GuardScan(std::string_view bytes) : bytes_(bytes) {
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
  bool too_deep() const { return depth_ > limits::nesting || dots_ >= limits::nesting; }
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
  std::size_t at_ = 0;
  int depth_ = 0;
  int dots_ = 0;
  bool in_value_ = false;
};

source::Range one_byte(std::size_t at, source::FileId file) {
  return {static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + 1), file};
}

std::string mebibytes(std::size_t bytes) {
  constexpr std::size_t mebi = std::size_t{1024} * 1024;
  return std::to_string(bytes / mebi) + " MiB";
}

void report_encoding(const std::string& bytes, std::size_t at, source::FileId file, source::Diagnostics& diagnostics) {
  const bool utf16 = bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF");
  diagnostics.error(Code::file_encoding, one_byte(at, file),
                    utf16 ? "this file is UTF-16, not UTF-8" : "from here on this file is not UTF-8",
                    "save it again with the encoding UTF-8");
}

}  // namespace

bool guard_toml(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics) {
  GuardScan scan(text.bytes());
  if (scan.run()) return true;
  if (scan.too_deep()) {
    diagnostics.error(Code::nested_too_deeply, one_byte(scan.at(), file),
                      "this is nested more than " + std::to_string(limits::nesting) + " deep",
                      "write it as the description of lesson files has it");
  } else {
    explain_syntax(text, file, scan.at(), diagnostics);
  }
  return false;
}

SoundBytes check_bytes(std::string bytes, std::size_t limit, source::FileId file) {
  SoundBytes result;
  if (bytes.size() > limit) {
    result.diagnostics.error(Code::file_too_large, {0, 0, file},
                             "this file is larger than " + mebibytes(limit) + ", the most that is read",
                             "split it into several");
    return result;
  }
  if (const auto at = source::first_invalid_utf8(bytes)) {
    report_encoding(bytes, *at, file, result.diagnostics);
    for (std::size_t i = *at; i < bytes.size(); ++i) {
      if (static_cast<unsigned char>(bytes[i]) >= 0x80) bytes[i] = '?';
    }
  } else if (const auto nul = bytes.find('\0'); nul != std::string::npos) {
    result.diagnostics.error(Code::nul_character, one_byte(nul, file), "this file holds a NUL character",
                             "it is not a text file, or was damaged: take the character out");
  }
  result.shown = std::move(bytes);
  return result;
}

}  // namespace fretsheaf::lesson
