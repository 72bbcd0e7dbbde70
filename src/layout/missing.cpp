#include "layout/missing.h"

#include <cstdio>
#include <string>

#include "source/utf8.h"

namespace fretsheaf::layout {
namespace {

// "U+2603"
std::string scalar_name(char32_t c) {
  char buffer[16];
  std::snprintf(buffer, sizeof buffer, "U+%04X", static_cast<unsigned>(c));
  return buffer;
}

bool in_comment(std::string_view text, std::size_t at) {
  const std::size_t newline = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
  const std::size_t line = newline == std::string_view::npos ? 0 : newline + 1;
  const std::size_t first = text.find_first_not_of(" \t", line);
  return first < at && text[first] == '#';
}

source::Range place_of(const std::string& character, std::string_view text) {
  for (std::size_t at = 0; (at = text.find(character, at)) != std::string_view::npos; at += character.size()) {
    if (in_comment(text, at)) continue;
    return {static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + character.size()), 0};
  }
  return {};
}

}  // namespace

void report_missing(std::span<const MissingCharacter> missing, std::string_view lesson_text,
                    source::Diagnostics& diagnostics) {
  for (std::size_t i = 0; i < missing.size(); ++i) {
    const char32_t c = missing[i].code_point;
    bool said = false;
    for (std::size_t j = 0; j < i; ++j) said = said || missing[j].code_point == c;
    if (said) continue;
    std::string character;
    source::append_utf8(character, c);
    diagnostics.error(source::Code::character_missing, place_of(character, lesson_text),
                      "no font of the template has the character '" + character + "' (" + scalar_name(c) + ")",
                      "write it another way, or name a font that has it in a template of your own");
  }
}

}  // namespace fretsheaf::layout
