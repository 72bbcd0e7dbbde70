#pragma once

#include <qpdf/QPDFObjectHandle.hh>
#include <set>
#include <string>
#include <vector>

namespace fretsheaf::test {

// What the drawing of a page has of marked content (ISO 32000-1, 14.6), and where it breaks its rules.
struct Drawing {
  std::set<long long> contents;  // their numbers
  std::vector<std::string> faults;
};
Drawing read_drawing(QPDFObjectHandle page);

// Whether a font's way back to Unicode leads to what is no character: U+0000, U+FEFF or U+FFFE (ISO 14289-1, 7.21.7).
bool maps_to_nothing(QPDFObjectHandle to_unicode);

}  // namespace fretsheaf::test
