#pragma once

#include <string>
#include <string_view>

namespace fretsheaf::lesson {

// A name with its accidentals as lessons write them: "Bb7" of "B♭7", "C#m7b5" of "C♯m7♭5".
std::string with_plain_signs(std::string_view text);

}  // namespace fretsheaf::lesson
