#pragma once

#include <string>
#include <string_view>

namespace fretsheaf::lesson {

// Words of the teacher's for a message: in single quotes, on one line, and not longer than one can read.
std::string shown(std::string_view words);

}  // namespace fretsheaf::lesson
