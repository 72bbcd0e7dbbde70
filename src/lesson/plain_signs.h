#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace fretsheaf::lesson {

// A name with its accidentals as lessons write them: "Bb7" of "B♭7", "C#m7b5" of "C♯m7♭5".
std::string with_plain_signs(std::string_view text);

// How every help begins that puts them right.
inline constexpr std::string_view plain_signs_rule = "a flat is written `b`, and a sharp `#`";

// The help for a chord that is no chord for its signs; nullopt where it has none, or is none with letters for them.
std::optional<std::string> chord_signs_help(std::string_view written);

}  // namespace fretsheaf::lesson
