#pragma once

#include <string>
#include <string_view>

// Values as a PDF writes them (ISO 32000-1, 7.3).
namespace fretsheaf::render {

std::string pdf_reference(int object);         // "12 0 R"
std::string pdf_number(double points);         // two decimals
std::string pdf_ascii(std::string_view text);  // "(a \(b\))". REQUIRES: ASCII
// For people to read: ASCII as it is, all else as UTF-16. REQUIRES: UTF-8.
std::string pdf_text(std::string_view text);

}  // namespace fretsheaf::render
