#include "sheaf/svg_logo.h"

#include <tinyxml2.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace fretsheaf::sheaf {
namespace {

constexpr std::array<std::string_view, 4> text_elements = {"text", "tspan", "textPath", "foreignObject"};
constexpr std::array<std::string_view, 2> script_elements = {"script", "handler"};

bool is_one_of(std::string_view name, auto names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// Its name without a namespace prefix.
std::string_view local_name(std::string_view name) {
  const auto colon = name.rfind(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
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

class SvgCheck : public tinyxml2::XMLVisitor {
 public:
  std::optional<std::string> problem;

  bool VisitEnter(const tinyxml2::XMLElement& element, const tinyxml2::XMLAttribute* attribute) override {
    const std::string_view name = local_name(element.Name());
    if (is_one_of(name, text_elements)) problem = "holds text, which every machine would set in fonts of its own";
    if (is_one_of(name, script_elements)) problem = "holds a script";
    const char* const style = name == "style" ? element.GetText() : nullptr;
    if (style != nullptr && css_fetches(style)) problem = outside;
    for (; attribute != nullptr && !problem; attribute = attribute->Next()) check(*attribute);
    return !problem;
  }

  using tinyxml2::XMLVisitor::Visit;
  bool Visit(const tinyxml2::XMLDeclaration& declaration) override {
    if (std::string_view(declaration.Value()).starts_with("xml-stylesheet")) problem = outside;
    return !problem;
  }

 private:
  static constexpr const char* outside = "needs parts outside its file";

  void check(const tinyxml2::XMLAttribute& attribute) {
    const std::string_view name = local_name(attribute.Name());
    if (lower(name).starts_with("on")) problem = "holds a script";
    if ((name == "href" || name == "src") && is_outside(attribute.Value())) problem = outside;
    if (css_fetches(attribute.Value())) problem = outside;
  }
};

}  // namespace

std::optional<std::string> svg_problem(const std::string& bytes) {
  // Their text would come in where no check has seen it.
  if (bytes.find("<!ENTITY") != std::string::npos) return "defines entities";
  tinyxml2::XMLDocument document;
  if (document.Parse(bytes.data(), bytes.size()) != tinyxml2::XML_SUCCESS) return "is not an SVG file that can be read";
  const tinyxml2::XMLElement* root = document.RootElement();
  if (root == nullptr || local_name(root->Name()) != "svg") return "is not an SVG file that can be read";
  SvgCheck check;
  document.Accept(&check);
  return check.problem;
}

}  // namespace fretsheaf::sheaf
