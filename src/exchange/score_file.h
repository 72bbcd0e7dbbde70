#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "platform/xml_document.h"
#include "source/diagnostic.h"
#include "source/text.h"

namespace fretsheaf::exchange {

// The most bytes of a score that is taken in, packed or not.
inline constexpr std::size_t max_score_bytes = std::size_t{16} * 1024 * 1024;

// A document that was opened: its text in UTF-8 and its elements. `document` is none where it could not be; `text` is
// empty then, unless a place in it is to be shown.
struct ScoreFile {
  source::Text text{"", ""};
  std::optional<platform::XmlDocument> document;
};

// Opens a MusicXML file, plain or compressed, in UTF-8 or UTF-16, and reports why where it cannot: other encodings,
// entities of its own, more than the limits. Takes no more than a fraction of a second and 200 MB for any bytes.
ScoreFile open_score_file(const std::string& name, std::string bytes, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::exchange
