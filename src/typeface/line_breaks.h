#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace fretsheaf::typeface {

// Where a line of a paragraph may end: the byte offsets (rising, none at 0 or at the end) at which the next line would
// begin, after Unicode Standard Annex #14 (as of Unicode 6.2, by libunibreak). `language` ("de") moves a few rules on
// quotation marks. A break after a soft hyphen (U+00AD) is among them: whoever breaks there draws the hyphen.
std::vector<std::size_t> line_breaks(std::string_view utf8, const std::string& language);

}  // namespace fretsheaf::typeface
