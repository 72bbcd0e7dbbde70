#include "layout/missing.h"

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>
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

using Places = std::map<char32_t, source::Range>;

void add_places(std::string_view line, std::size_t begin, Places& places) {
  for (std::size_t at = 0; at < line.size();) {
    const auto next = source::decode_utf8(line.substr(at));
    const auto offset = static_cast<std::uint32_t>(begin + at);
    at += next.length;
    places.try_emplace(next.code_point, source::Range{offset, static_cast<std::uint32_t>(begin + at), 0});
  }
}

// Where each character stands first. In one walk: a lesson in another script may lack thousands.
Places first_places(std::string_view text) {
  Places places;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string_view line = text.substr(begin, end - begin);
    const std::size_t ink = line.find_first_not_of(" \t");
    if (ink != std::string_view::npos && line[ink] != '#') add_places(line, begin, places);
    begin = end + 1;
  }
  return places;
}

}  // namespace

void report_missing(std::span<const MissingCharacter> missing, std::string_view lesson_text,
                    source::Diagnostics& diagnostics) {
  if (missing.empty()) return;
  const Places places = first_places(lesson_text);
  std::set<char32_t> said;
  for (const MissingCharacter& one : missing) {
    if (!said.insert(one.code_point).second) continue;
    std::string character;
    source::append_utf8(character, one.code_point);
    const auto place = places.find(one.code_point);
    diagnostics.error(
        source::Code::character_missing, place == places.end() ? source::Range{} : place->second,
        "no font of the template has the character '" + character + "' (" + scalar_name(one.code_point) + ")",
        "write it another way, or name a font that has it in a template of your own");
  }
}

}  // namespace fretsheaf::layout
