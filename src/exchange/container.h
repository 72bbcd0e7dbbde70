#pragma once

#include <string>

namespace fretsheaf::exchange {

// A MusicXML document in its compressed form (.mxl): a zip archive whose first entry says what it is, stored and
// readable at byte 38, and whose container.xml names the score (MusicXML 4.0, container.xsd). Holds no date: equal
// documents give equal bytes.
std::string mxl(const std::string& document);

}  // namespace fretsheaf::exchange
