#pragma once

#include <cstddef>
#include <string>
#include <variant>

#include "source/code.h"

namespace fretsheaf::exchange {

// A MusicXML document in its compressed form (.mxl): a zip archive whose first entry says what it is, stored and
// readable at byte 38, and whose container.xml names the score (MusicXML 4.0, container.xsd). Holds no date: equal
// documents give equal bytes.
std::string mxl(const std::string& document);

// Why an archive gives no score.
struct Unpackable {
  source::Code code{};
  std::string what;
  std::string help;
};

// Whether bytes are an archive, by their first four.
bool is_packed(const std::string& bytes);

// The document that a compressed score's container.xml names first. Nothing is written to disk and no entry but that
// one is unpacked, up to `limit` bytes whatever its header says.
std::variant<std::string, Unpackable> unpack(const std::string& bytes, std::size_t limit);

}  // namespace fretsheaf::exchange
