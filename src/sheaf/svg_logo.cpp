#include "sheaf/svg_logo.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <variant>

#include "platform/xml_document.h"
#include "sheaf/svg_name.h"
#include "sheaf/svg_repeats.h"

namespace fretsheaf::sheaf {
namespace {

constexpr std::array<std::string_view, 4> text_elements = {"text", "tspan", "textPath", "foreignObject"};
constexpr std::array<std::string_view, 2> script_elements = {"script", "handler"};

bool is_one_of(std::string_view name, auto names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

std::string lower(std::string_view text) {
  std::string out;
  for (const char c : text) out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return out;
}

// CSS that fetches: an @import, or a url() of anything but a part of this file.
bool css_fetches(std::string_view css) {
  const std::string text = lower(css);
  if (text.find("@import") != std::string::npos) return true;
  for (std::size_t at = 0; (at = text.find("url(", at)) != std::string::npos; at += 4) {
    const std::size_t target = text.find_first_not_of(" \t\n\r'\"", at + 4);
    if (target == std::string::npos || text[target] != '#') return true;
  }
  return false;
}

bool is_outside(std::string_view address) {
  const auto begin = address.find_first_not_of(" \t\n\r");
  return begin != std::string_view::npos && address[begin] != '#' && !address.substr(begin).starts_with("data:");
}

constexpr const char* outside = "needs parts outside its file";

std::optional<std::string> attribute_problem(const platform::XmlAttribute& attribute) {
  const std::string_view name = local_name(attribute.name);
  if (css_fetches(attribute.value)) return outside;
  if ((name == "href" || name == "src") && is_outside(attribute.value)) return outside;
  if (lower(name).starts_with("on")) return "holds a script";
  return std::nullopt;
}

// Of an element and all that is in it.
std::optional<std::string> element_problem(const platform::XmlElement& element) {
  const std::string_view name = local_name(element.name);
  if (name == "style" && css_fetches(element.text)) return outside;
  if (is_one_of(name, script_elements)) return "holds a script";
  if (is_one_of(name, text_elements)) return "holds text, which every machine would set in fonts of its own";
  for (const platform::XmlAttribute& attribute : element.attributes) {
    if (auto problem = attribute_problem(attribute)) return problem;
  }
  for (const platform::XmlElement& child : element.children) {
    if (auto problem = element_problem(child)) return problem;
  }
  return std::nullopt;
}

}  // namespace

std::optional<std::string> svg_problem(const std::string& bytes) {
  // Their text would come in where no check has seen it.
  if (bytes.find("<!ENTITY") != std::string::npos) return "defines entities";
  const auto parsed = platform::parse_xml(bytes, platform::XmlEncoding::declared);
  const auto* document = std::get_if<platform::XmlDocument>(&parsed);
  if (document == nullptr || local_name(document->root.name) != "svg") return "is not an SVG file that can be read";
  for (const std::string& target : document->instructions) {
    if (target == "xml-stylesheet") return outside;
  }
  if (auto problem = element_problem(document->root)) return problem;
  if (repeats_too_much(document->root)) return "has its parts drawn more than 10000 times by reference";
  return std::nullopt;
}

}  // namespace fretsheaf::sheaf
