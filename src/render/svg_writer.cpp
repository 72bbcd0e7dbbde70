#include "render/svg_writer.h"

#include "sheet/number.h"

namespace fretsheaf::render {

std::string xml_text(std::string_view text) {
  constexpr std::string_view replacement = "\uFFFD";
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const std::string_view three = text.substr(i, 3);
    if (byte == '\t' || byte == '\n' || byte == '\r') {
      out += ' ';
    } else if (byte < 0x20) {
      out += replacement;
    } else if (three == "\xEF\xBF\xBE" || three == "\xEF\xBF\xBF") {
      out += replacement;
      i += 2;
    } else {
      out += text[i];
    }
  }
  return out;
}

std::string hex_color(sheet::Color color) {
  constexpr std::string_view hex = "0123456789abcdef";
  std::string out = "#";
  for (const int part : {color.red, color.green, color.blue}) (out += hex[part >> 4]) += hex[part & 15];
  return out;
}

void SvgWriter::attribute(const char* name, std::string_view value) {
  xml_.attribute(name, xml_text(value));
}

void SvgWriter::attribute(const char* name, double value, int decimals) {
  xml_.attribute(name, sheet::shortest(value, decimals));
}

void SvgWriter::text(std::string_view text) {
  xml_.text(xml_text(text));
}

void SvgWriter::text_element(const char* element, std::string_view content) {
  open(element);
  text(content);
  close();
}

}  // namespace fretsheaf::render
