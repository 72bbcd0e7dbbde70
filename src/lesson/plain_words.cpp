#include "lesson/plain_words.h"

#include <string_view>
#include <utility>

#include "lesson/limits.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {

namespace {

struct OneLine {
  std::string words;
  bool whole = true;  // else the beginning, and "…"
};

// One line without control characters or `{{`, blanks one by one; each character as `change` has it. Of more than
// `most` characters the beginning.
template <typename Change>
OneLine one_line(std::string_view text, std::size_t most, Change change) {
  std::string words;
  std::size_t count = 0;
  std::size_t last_kept = 0;  // where the words are cut if there are too many
  while (!text.empty() && count <= most) {
    if (count < most) last_kept = words.size();
    const auto next = source::decode_utf8(text);
    text.remove_prefix(next.length);
    const char32_t own = next.code_point;
    const bool control = own < 0x20 || (own >= 0x7F && own < 0xA0) || own == 0x2028 || own == 0x2029;
    const char32_t character = control ? U' ' : change(own, words);
    if (character == U' ' && (words.empty() || words.ends_with(" "))) continue;
    if (character == U'{' && words.ends_with("{")) {
      words += " ";
      ++count;
    }
    source::append_utf8(words, character);
    ++count;
  }
  if (count > most) return {words.substr(0, last_kept) + "…", false};
  words.erase(words.find_last_not_of(' ') + 1);
  return {std::move(words), true};
}

OneLine line_of(std::string_view text) {
  return one_line(text, limits::line, [](char32_t character, const std::string&) { return character; });
}

OneLine words_of(std::string_view text) {
  constexpr std::size_t quotes_and_hyphen = 3;
  return one_line(text, limits::word - quotes_and_hyphen, [](char32_t character, const std::string& before) {
    constexpr char32_t apostrophe = U'\u2019';
    if (character == U'\'' || character == U'"') return before.ends_with("''") ? apostrophe : U'\'';
    return character;
  });
}

}  // namespace

std::string plain_line(const std::string& text) {
  return line_of(text).words;
}

bool fits_line(const std::string& text) {
  return line_of(text).whole;
}

std::string grid_words(const std::string& text) {
  return words_of(text).words;
}

bool fits_words(const std::string& text) {
  return words_of(text).whole;
}

}  // namespace fretsheaf::lesson
