#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "theory/chord.h"
#include "theory/key.h"
#include "theory/pitch.h"

// Short ways to write musical values in this room's tests. Each throws where the text is none.
namespace fretsheaf::theory::testing {

inline NoteName name(std::string_view text) {
  return parse_note_name(text).value();
}
inline Pitch pitch(std::string_view text) {
  return parse_pitch(text).value();
}
inline Key key(std::string_view text) {
  return parse_key(text).value();
}
inline Chord chord(std::string_view text) {
  return std::get<Chord>(parse_chord(text).value());
}
inline RomanNumeral numeral(std::string_view text) {
  return std::get<RomanNumeral>(parse_chord(text).value());
}

// "C Eb G": the values' texts, a space between.
template <typename Values>
std::string joined(const Values& values) {
  std::string text;
  for (const auto& value : values) text += (text.empty() ? "" : " ") + value.to_string();
  return text;
}

}  // namespace fretsheaf::theory::testing
