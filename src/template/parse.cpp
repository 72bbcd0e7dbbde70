#include "template/parse.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "platform/toml_library.h"
#include "source/nearest.h"
#include "source/toml_guard.h"
#include "source/utf8.h"
#include "template/check.h"

namespace fretsheaf::templates {
namespace {

using source::Code;
using source::Range;

// The words that a key knows, each with what it means.
template <typename Value, std::size_t count>
using Names = std::array<std::pair<std::string_view, Value>, count>;

constexpr Names<Paper, 2> papers = {{{"a4", Paper::a4}, {"letter", Paper::letter}}};
constexpr Names<bool, 2> label_places = {{{"above", false}, {"beside", true}}};
constexpr Names<HeadPart, 4> head_parts = {{{"top-line", HeadPart::top_line},
                                            {"title", HeadPart::title},
                                            {"subtitle", HeadPart::subtitle},
                                            {"facts", HeadPart::facts}}};
constexpr Names<FactName, 4> fact_names = {
    {{"key", FactName::key}, {"meter", FactName::meter}, {"tuning", FactName::tuning}, {"capo", FactName::capo}}};

// The holes of a pattern.
std::vector<std::string_view> holes_of(std::string_view key) {
  if (key == "top-line") return {"series", "number", "level"};
  return {"title", "series", "number", "level", "teacher", "copyright", "link", "page"};
}

std::string pattern_wanted(std::string_view key) {
  if (key == "top-line") return "a text";
  return key == "footer" ? "three texts: left, centre, right" : "two texts: left, right";
}

std::string listed(const std::vector<std::string_view>& names, std::string_view between) {
  std::string text;
  for (const std::string_view name : names) {
    if (!text.empty()) text += between;
    text += name;
  }
  return text;
}

class Parser {
 public:
  Parser(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics)
      : text_(text), file_(file), diagnostics_(diagnostics) {}

  Template parse();

 private:
  Range range(const toml::source_region& region) const;
  void syntax(const Range& stopped);
  void top_level(const toml::table& root);
  void measure_group(std::string_view group, const toml::table& table);
  void type(const toml::table& table);
  void style(std::size_t role, const toml::table& table);
  void group(std::string_view name, const toml::node& node);
  bool page_key(std::string_view name, const toml::node& node);
  void least_type(const toml::node& node);
  void head(const toml::node& node);
  void pattern(const toml::node& node, std::string_view key, std::string& into);
  template <std::size_t count>
  void patterns(const toml::node& node, std::string_view key, std::array<std::string, count>& into);
  template <typename Value, std::size_t count>
  void choice(const toml::node& node, std::string_view key, const Names<Value, count>& names, Value& into);
  template <typename Value, std::size_t count>
  void choices(const toml::node& node, std::string_view key, const Names<Value, count>& names,
               std::vector<Value>& into);
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
void Parser::pattern(const toml::node& node, std::string_view key, std::string& into) {
  const auto text = node.value_exact<std::string>();
  if (!text) return wrong_kind(node, key, pattern_wanted(key));
  const std::vector<std::string_view> holes = holes_of(key);
  for (std::size_t at = 0; (at = text->find('{', at)) != std::string::npos; ++at) {
    const std::size_t end = text->find('}', at);
    const bool closed = end != std::string::npos;
    const std::string name = text->substr(at + 1, closed ? end - at - 1 : end);
    if (closed && std::find(holes.begin(), holes.end(), name) != holes.end()) continue;
    const std::string near = closed ? source::nearest(name, holes) : std::string();
    diagnostics_.error(Code::template_hole, range(node.source()),
                       closed ? "'" + std::string(key) + "' knows no '{" + name + "}'"
                              : "'" + std::string(key) + "' has a '{' that is not closed",
                       near.empty() ? "it knows {" + listed(holes, "}, {") + "}" : "did you mean '{" + near + "}'?");
    return;
  }
  into = *text;
}

template <std::size_t count>
void Parser::patterns(const toml::node& node, std::string_view key, std::array<std::string, count>& into) {
  const toml::array* list = node.as_array();
  if (list == nullptr || list->size() != count) return wrong_kind(node, key, pattern_wanted(key));
  for (std::size_t i = 0; i < count; ++i) pattern((*list)[i], key, into[i]);
}

template <typename Value, std::size_t count>
void Parser::choice(const toml::node& node, std::string_view key, const Names<Value, count>& names, Value& into) {
  const auto word = node.value_exact<std::string>();
  for (const auto& [name, value] : names) {
    if (word && *word == name) {
      into = value;
      return;
    }
  }
  std::vector<std::string_view> known;
  for (const auto& [name, value] : names) known.push_back(name);
  if (!word) return wrong_kind(node, key, "one of \"" + listed(known, "\", \"") + "\"");
  const std::string near = source::nearest(*word, known);
  diagnostics_.error(Code::template_choice, range(node.source()), "'" + std::string(key) + "' knows no '" + *word + "'",
                     near.empty() ? "it knows " + listed(known, ", ") : "did you mean '" + near + "'?");
}

template <typename Value, std::size_t count>
void Parser::choices(const toml::node& node, std::string_view key, const Names<Value, count>& names,
                     std::vector<Value>& into) {
  const toml::array* list = node.as_array();
  if (list == nullptr) return wrong_kind(node, key, "a list");
  std::vector<Value> chosen;
  for (const toml::node& item : *list) {
    Value value = names.front().second;
    const std::size_t before = diagnostics_.list().size();
    choice(item, key, names, value);
    if (diagnostics_.list().size() > before) continue;
    if (std::find(chosen.begin(), chosen.end(), value) != chosen.end()) {
      diagnostics_.error(Code::template_choice, range(item.source()),
                         "'" + std::string(key) + "' names this a second time", "take one of them out");
    }
    chosen.push_back(value);
  }
  into = std::move(chosen);
}

void Parser::head(const toml::node& node) {
  choices(node, "head", head_parts, look_.head);
  if (node.is_array() && std::find(look_.head.begin(), look_.head.end(), HeadPart::title) == look_.head.end()) {
    diagnostics_.error(Code::template_choice, range(node.source()), "'head' leaves out the title",
                       "every handout says what it is: put \"title\" in");
  }
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

void Parser::least_type(const toml::node& node) {
  const auto size = number(node, "least-type", 4, 40);
  if (!size) return;
  look_.least_type = *size;
  places_.least_type = range(node.source());
}

void Parser::group(std::string_view name, const toml::node& node) {
  const toml::table* table = node.as_table();
  if (table == nullptr) {
    wrong_kind(node, name, "a table of its own, [" + std::string(name) + "]");
  } else if (name == "type") {
    type(*table);
  } else {
    measure_group(name, *table);
  }
}

// The keys that stand at the top of the file, each with what reads it.
bool Parser::page_key(std::string_view name, const toml::node& node) {
  if (name == "paper") {
    choice(node, name, papers, look_.paper);
  } else if (name == "two-sided") {
    flag(node, name, look_.two_sided);
  } else if (name == "cautions") {
    flag(node, name, look_.cautions);
  } else if (name == "one-thing-a-line") {
    flag(node, name, look_.one_thing_a_line);
  } else if (name == "head") {
    head(node);
  } else if (name == "facts") {
    choices(node, name, fact_names, look_.facts);
  } else if (name == "fact-labels") {
    choice(node, name, label_places, look_.labels_beside);
  } else if (name == "top-line") {
    pattern(node, name, look_.top_line);
  } else if (name == "later-pages") {
    patterns(node, name, look_.later_pages);
  } else if (name == "footer") {
    patterns(node, name, look_.footer);
  } else {
    return false;
  }
  return true;
}

void Parser::top_level(const toml::table& root) {
  constexpr std::array groups = {"type", "page", "header", "ladder", "neck", "form", "staff"};
  for (const auto& [key, node] : root) {
    const std::string_view name = key.str();
    if (name == "accent") {
      accent(node);
    } else if (name == "least-type") {
      least_type(node);
    } else if (std::find(groups.begin(), groups.end(), name) != groups.end()) {
      group(name, node);
    } else if (!page_key(name, node)) {
      std::vector<std::string_view> known(top_keys.begin(), top_keys.end());
      known.insert(known.end(), groups.begin(), groups.end());
      unknown(key, known);
    }
  }
}

void Parser::syntax(const Range& stopped) {
  diagnostics_.error(Code::template_syntax, stopped, "this template cannot be read as TOML from here on",
                     "look here and just before for a missing quote, bracket or '=', or a key written twice");
}

Template Parser::parse() {
  constexpr int deepest = 32;  // far more than any key has
  if (const auto unsafe = source::unsafe_toml(text_.bytes(), deepest)) {
    const auto at = static_cast<std::uint32_t>(unsafe->at);
    syntax({at, at + static_cast<std::uint32_t>(source::decode_utf8(text_.bytes().substr(unsafe->at)).length), file_});
    return std::move(look_);
  }
  const toml::parse_result result = toml::parse(text_.bytes(), text_.name());
  if (!result) {
    syntax(range(result.error().source()));
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
