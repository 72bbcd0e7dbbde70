#pragma once

#include <tinyxml2.h>

#include <string>
#include <string_view>

#include "sheet/sheet.h"

namespace fretsheaf::render {

// Text as XML 1.0 lets it stand (section 2.2): control characters and non-characters become U+FFFD, white space a
// space.
std::string xml_text(std::string_view text);

std::string hex_color(sheet::Color color);  // "#095461"

// Writes elements one after another: no tree is held. Lengths have two decimals at the most.
class SvgWriter : private tinyxml2::XMLPrinter {
 public:
  SvgWriter();

  void open(const char* element) { OpenElement(element); }
  void close() { CloseElement(); }
  void attribute(const char* name, std::string_view value);
  void attribute(const char* name, double value, int decimals = 2);
  void text(std::string_view text);
  // An element that holds only text.
  void text_element(const char* element, std::string_view text);

  std::string take() const;

 private:
  // Every element on a line of its own, without indents.
  void PrintSpace(int) override {}
};

}  // namespace fretsheaf::render
