#pragma once

#include <string>
#include <string_view>

#include "platform/xml_writer.h"
#include "sheet/sheet.h"

namespace fretsheaf::render {

// Text as XML 1.0 lets it stand (section 2.2): control characters and non-characters become U+FFFD, white space a
// space.
std::string xml_text(std::string_view text);

std::string hex_color(sheet::Color color);  // "#095461"

// Writes a page's elements one after another, without indents. Lengths have two decimals at the most.
class SvgWriter {
 public:
  void open(const char* element) { xml_.open(element); }
  void close() { xml_.close(); }
  void attribute(const char* name, std::string_view value);
  void attribute(const char* name, double value, int decimals = 2);
  void text(std::string_view text);
  // An element that holds only text.
  void text_element(const char* element, std::string_view content);

  // Hands over the page. REQUIRES: every element is closed.
  std::string take() { return xml_.take(); }

 private:
  platform::XmlWriter xml_{0};
};

}  // namespace fretsheaf::render
