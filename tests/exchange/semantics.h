#pragma once

#include <string>
#include <vector>

namespace fretsheaf::exchange::test {

// What the schema cannot say of a document and the annotations of the W3C Community Group's MusicXML 4.0 do, and what
// makes music of it: "measure 3: …" for everything that is wrong. Written against the standard, without the exporter.
// A banjo's short fifth string, of which the standard knows nothing, is told by `short_fifth_string`: its frets are
// the neck's.
std::vector<std::string> complaints(const std::string& document, bool short_fifth_string = false);

}  // namespace fretsheaf::exchange::test
