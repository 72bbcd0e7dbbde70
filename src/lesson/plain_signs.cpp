#include "lesson/plain_signs.h"

#include <array>
#include <utility>

#include "theory/chord.h"

namespace fretsheaf::lesson {

std::string with_plain_signs(std::string_view text) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 4> signs = {
      {{"\u266D", "b"}, {"\u266F", "#"}, {"\U0001D12B", "bb"}, {"\U0001D12A", "##"}}};
  std::string plain(text);
  for (const auto& [sign, letters] : signs) {
    for (std::size_t at = 0; (at = plain.find(sign, at)) != std::string::npos; at += letters.size()) {
      plain.replace(at, sign.size(), letters);
    }
  }
  return plain;
}

std::optional<std::string> plain_signs_help(std::string_view written, bool (*known)(std::string_view),
                                            std::string_view open, std::string_view close) {
  const std::string plain = with_plain_signs(written);
  if (plain == written || !known(plain)) return std::nullopt;
  std::string help(plain_signs_rule);
  help.append(": write ").append(open).append(plain).append(close);
  return help;
}

std::optional<std::string> chord_signs_help(std::string_view written, std::string_view open, std::string_view close) {
  return plain_signs_help(
      written, [](std::string_view name) { return theory::parse_chord(name).has_value(); }, open, close);
}

}  // namespace fretsheaf::lesson
