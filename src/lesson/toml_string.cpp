#include "lesson/toml_string.h"

#include <algorithm>
#include <cstdint>

#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

bool is_basic(Quotes quotes) {
  return quotes == Quotes::basic || quotes == Quotes::basic_lines;
}

// Walks a string's body, a unit at a time: a byte, a line end, or an escape.
class Walk {
 public:
  Walk(std::string_view bytes, const TomlString& string)
      : body_(bytes.substr(0, string.body_end)), at_(string.body_begin), escapes_(is_basic(string.quotes)) {}

  bool done() const { return at_ >= body_.size(); }
  std::size_t at() const { return at_; }

  // Takes one unit and appends what it says.
  void step(std::string& value) {
    if (escapes_ && body_[at_] == '\\' && at_ + 1 < body_.size()) {
      escape(value);
    } else if (body_[at_] == '\r' && at_ + 1 < body_.size() && body_[at_ + 1] == '\n') {
      value += '\n';
      at_ += 2;
    } else {
      value += body_[at_++];
    }
  }

 private:
  void escape(std::string& value) {
    const char letter = body_[at_ + 1];
    constexpr std::string_view letters = "btnfr\"\\";
    constexpr std::string_view meanings = "\b\t\n\f\r\"\\";
    if (letter == 'u' || letter == 'U') {
      const std::size_t digits = letter == 'u' ? 4 : 8;
      source::append_utf8(value, hexadecimal(body_.substr(at_ + 2, digits)));
      at_ = std::min(at_ + 2 + digits, body_.size());
    } else if (const auto index = letters.find(letter); index != std::string_view::npos) {
      value += meanings[index];
      at_ += 2;
    } else {
      // A backslash at the end of a line takes the line end and all white space after it away.
      at_ = std::min(body_.find_first_not_of(" \t\r\n", at_ + 1), body_.size());
    }
  }

  static char32_t hexadecimal(std::string_view digits) {
    std::uint32_t value = 0;
    for (const char digit : digits) {
      value *= 16;
      if (digit >= '0' && digit <= '9') value += static_cast<std::uint32_t>(digit - '0');
      if (digit >= 'a' && digit <= 'f') value += static_cast<std::uint32_t>(digit - 'a' + 10);
      if (digit >= 'A' && digit <= 'F') value += static_cast<std::uint32_t>(digit - 'A' + 10);
    }
    return value;
  }

  std::string_view body_;
  std::size_t at_;
  bool escapes_;
};

}  // namespace

std::string toml_string_value(std::string_view bytes, const TomlString& string) {
  std::string value;
  for (Walk walk(bytes, string); !walk.done();) walk.step(value);
  return value;
}

TextPlaces::TextPlaces(const source::Text& file, source::Range value) : value_(value) {
  const std::string_view bytes = file.bytes();
  if (value.begin >= bytes.size() || (bytes[value.begin] != '"' && bytes[value.begin] != '\'')) return;
  const auto string = find_toml_string(bytes, value.begin);
  if (!string) return;
  end_ = static_cast<std::uint32_t>(string->body_end);
  std::string said;
  for (Walk walk(bytes, *string); !walk.done();) {
    const auto before = static_cast<std::uint32_t>(walk.at());
    walk.step(said);
    places_.resize(said.size(), {before, static_cast<std::uint32_t>(walk.at())});
  }
  start_ = static_cast<std::uint32_t>(string->body_begin);
}

source::Range TextPlaces::range(std::size_t begin, std::size_t end) const {
  if (end_ == 0) return value_;
  std::uint32_t last = end_;
  if (end <= places_.size()) last = end == 0 ? start_ : places_[end - 1].end;
  std::uint32_t first = begin < places_.size() ? places_[begin].begin : end_;
  if (begin >= end) first = last;
  return {first, std::max(first, last), value_.file};
}

source::Range place_in_text(const source::Text& file, source::Range value, std::size_t begin, std::size_t end) {
  return TextPlaces(file, value).range(begin, end);
}

}  // namespace fretsheaf::lesson
