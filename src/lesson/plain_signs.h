#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace fretsheaf::lesson {

// A name with its accidentals as lessons write them: "Bb7" of "B♭7", "C#m7b5" of "C♯m7♭5".
std::string with_plain_signs(std::string_view text);

// How every help begins that puts them right.
inline constexpr std::string_view plain_signs_rule = "a flat is written `b`, and a sharp `#`";

// The help for a name that is none for its signs, with what to write between `open` and `close`; nullopt where it has
// no such signs, or is not known with letters for them either.
std::optional<std::string> plain_signs_help(std::string_view written, bool (*known)(std::string_view),
                                            std::string_view open = "\"", std::string_view close = "\"");

// The same for a chord.
std::optional<std::string> chord_signs_help(std::string_view written, std::string_view open = "\"",
                                            std::string_view close = "\"");

}  // namespace fretsheaf::lesson
