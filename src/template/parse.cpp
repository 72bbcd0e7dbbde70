#include "template/parse.h"

// Debian's toml++ library is built with exceptions; without them its headers hold everything.
#undef TOML_HEADER_ONLY
#undef TOML_SHARED_LIB
#define TOML_HEADER_ONLY 1
#define TOML_EXCEPTIONS 0
#include <toml++/toml.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "source/nearest.h"
#include "template/check.h"

namespace fretsheaf::templates {
namespace {

using source::Code;
using source::Range;

class Parser {
 public:
  Parser(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics)
      : text_(text), file_(file), diagnostics_(diagnostics) {}

  Template parse();

 private:
  Range range(const toml::source_region& region) const;
  void top_level(const toml::table& root);
  void measure_group(std::string_view group, const toml::table& table);
  void type(const toml::table& table);
  void style(std::size_t role, const toml::table& table);
  void footer(const toml::node& node);
  void footer_pattern(const toml::node& node, std::string& into);
  void fonts(const toml::node& node, std::vector<std::string>& into);
  void accent(const toml::node& node);

  std::optional<double> number(const toml::node& node, std::string_view key, double least, double most);
  void flag(const toml::node& node, std::string_view key, bool& into);
  void wrong_kind(const toml::node& node, std::string_view key, std::string_view wanted);
  void unknown(const toml::key& key, const std::vector<std::string_view>& known);

  const source::Text& text_;
  source::FileId file_;
  source::Diagnostics& diagnostics_;
  Template look_;
  Places places_;
};

Range Parser::range(const toml::source_region& region) const {
  const auto at = [&](const toml::source_position& place) {
    return static_cast<std::uint32_t>(text_.offset(static_cast<int>(place.line), static_cast<int>(place.column)));
  };
  if (!region.begin) return {0, 0, file_};
  return {at(region.begin), region.end ? at(region.end) : at(region.begin), file_};
}

void Parser::unknown(const toml::key& key, const std::vector<std::string_view>& known) {
  const std::string near = source::nearest(key.str(), known);
  std::string help;
  if (!near.empty()) {
    help = "did you mean '" + near + "'?";
  } else if (known.size() <= 8) {
    for (const std::string_view name : known) help += (help.empty() ? "known here: " : ", ") + std::string(name);
  } else {
    help = "templates/README.md lists the keys";
  }
  diagnostics_.error(Code::template_unknown_key, range(key.source()),
                     "a template has no key '" + std::string(key.str()) + "' here", std::move(help));
}

void Parser::wrong_kind(const toml::node& node, std::string_view key, std::string_view wanted) {
  diagnostics_.error(Code::template_value, range(node.source()),
                     "'" + std::string(key) + "' takes " + std::string(wanted));
}

std::optional<double> Parser::number(const toml::node& node, std::string_view key, double least, double most) {
  const std::optional<double> value = node.is_number() ? node.value<double>() : std::nullopt;
  if (!value) {
    wrong_kind(node, key, "a number");
    return std::nullopt;
  }
  if (*value >= least && *value <= most) return value;  // not for NaN
  diagnostics_.error(
      Code::template_range, range(node.source()),
      "'" + std::string(key) + "' must lie between " + plain_number(least) + " and " + plain_number(most));
  return std::nullopt;
}

void Parser::flag(const toml::node& node, std::string_view key, bool& into) {
  if (const auto value = node.value_exact<bool>()) {
    into = *value;
  } else {
    wrong_kind(node, key, "true or false");
  }
}

void Parser::fonts(const toml::node& node, std::vector<std::string>& into) {
  const toml::array* list = node.as_array();
  std::vector<std::string> names;
  bool good = list != nullptr && !list->empty();
  for (std::size_t i = 0; good && i < list->size(); ++i) {
    const auto name = (*list)[i].value_exact<std::string>();
    good = name && !name->empty();
    if (good) names.push_back(*name);
  }
  if (good) {
    into = std::move(names);
  } else {
    wrong_kind(node, "fonts", "a list of font names, such as [\"charis-regular\"]");
  }
}

void Parser::style(std::size_t role, const toml::table& table) {
  TypeStyle& style = look_.type[role];
  for (const auto& [key, node] : table) {
    if (key == "fonts") {
      fonts(node, style.fonts);
    } else if (key == "size") {
      const auto size = number(node, "size", 1, 144);
      if (size) style.size = *size;
      if (size) places_.sizes[role] = range(node.source());
    } else if (key == "tracking") {
      if (const auto tracking = number(node, "tracking", -5, 20)) style.tracking = *tracking;
    } else if (key == "tabular") {
      flag(node, "tabular", style.tabular);
    } else {
      unknown(key, {"fonts", "size", "tracking", "tabular"});
    }
  }
}

void Parser::type(const toml::table& table) {
  const auto& keys = role_keys();
  for (const auto& [key, node] : table) {
    const auto found = std::find(keys.begin(), keys.end(), key.str());
    if (found == keys.end()) {
      unknown(key, {keys.begin(), keys.end()});
    } else if (const toml::table* values = node.as_table()) {
      style(static_cast<std::size_t>(found - keys.begin()), *values);
    } else {
      wrong_kind(node, key.str(), "a table, such as { size = 10, fonts = [\"charis-regular\"] }");
    }
  }
}

void Parser::measure_group(std::string_view group, const toml::table& table) {
  const auto& entries = measure_entries();
  for (const auto& [key, node] : table) {
    std::vector<std::string_view> known;
    std::size_t found = entries.size();
    for (std::size_t i = 0; i < entries.size(); ++i) {
      if (entries[i].group != group) continue;
      known.push_back(entries[i].key);
      if (entries[i].key == key.str()) found = i;
    }
    if (found == entries.size()) {
      unknown(key, known);
    } else if (const auto value = number(node, key.str(), entries[found].least, entries[found].most)) {
      look_.measures.*entries[found].value = *value;
      places_.measures[found] = range(node.source());
    }
  }
}

// A hole that is none of ours would be printed as it stands on every page.
void Parser::footer_pattern(const toml::node& node, std::string& into) {
  const auto pattern = node.value_exact<std::string>();
  if (!pattern) return wrong_kind(node, "footer", "three texts: left, centre, right");
  static const std::vector<std::string_view> holes = {"copyright", "teacher", "link", "page"};
  for (std::size_t at = 0; (at = pattern->find('{', at)) != std::string::npos; ++at) {
    const std::size_t end = pattern->find('}', at);
    const std::string name = pattern->substr(at + 1, end == std::string::npos ? end : end - at - 1);
    if (end != std::string::npos && std::find(holes.begin(), holes.end(), name) != holes.end()) continue;
    const std::string near = source::nearest(name, holes);
    diagnostics_.error(
        Code::template_footer, range(node.source()),
        end == std::string::npos ? "this footer has a '{' that is not closed" : "a footer knows no '{" + name + "}'",
        near.empty() || end == std::string::npos ? "it knows {copyright}, {teacher}, {link} and {page}"
                                                 : "did you mean '{" + near + "}'?");
    return;
  }
  into = *pattern;
}

void Parser::footer(const toml::node& node) {
  const toml::array* list = node.as_array();
  if (list == nullptr || list->size() != look_.footer.size()) {
    return wrong_kind(node, "footer", "three texts: left, centre, right");
  }
  for (std::size_t i = 0; i < look_.footer.size(); ++i) footer_pattern((*list)[i], look_.footer[i]);
}

void Parser::accent(const toml::node& node) {
  const auto text = node.value_exact<std::string>();
  const std::optional<Rgb> color = text ? parse_color(*text) : std::nullopt;
  if (color) {
    look_.accent = *color;
    places_.accent = range(node.source());
  } else {
    diagnostics_.error(Code::template_accent, range(node.source()), "'accent' takes a colour in hexadecimal figures",
                       "write it as \"#095461\": red, green and blue, two figures each");
  }
}

void Parser::top_level(const toml::table& root) {
  for (const auto& [key, node] : root) {
    const std::string_view name = key.str();
    if (name == "accent") {
      accent(node);
    } else if (name == "least-type") {
      const auto size = number(node, name, 4, 40);
      if (size) look_.least_type = *size;
      if (size) places_.least_type = range(node.source());
    } else if (name == "two-sided") {
      flag(node, name, look_.two_sided);
    } else if (name == "footer") {
      footer(node);
    } else if (name == "type" || name == "page" || name == "header" || name == "ladder" || name == "staff") {
      const toml::table* table = node.as_table();
      if (table == nullptr) {
        wrong_kind(node, name, "a table of its own, [" + std::string(name) + "]");
      } else if (name == "type") {
        type(*table);
      } else {
        measure_group(name, *table);
      }
    } else {
      unknown(key, {"accent", "least-type", "two-sided", "footer", "type", "page", "header", "ladder", "staff"});
    }
  }
}

Template Parser::parse() {
  const toml::parse_result result = toml::parse(text_.bytes(), text_.name());
  if (!result) {
    diagnostics_.error(Code::template_syntax, range(result.error().source()),
                       "this template cannot be read as TOML from here on",
                       "look here and just before for a missing quote, bracket or '=', or a key written twice");
    return std::move(look_);
  }
  top_level(result.table());
  if (!diagnostics_.has_errors()) check_template(look_, places_, diagnostics_);
  return std::move(look_);
}

}  // namespace

Template parse_template(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics) {
  return Parser(text, file, diagnostics).parse();
}

}  // namespace fretsheaf::templates
