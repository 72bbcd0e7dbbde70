#include "lesson/toml_tree.h"

#include <algorithm>
#include <utility>

#include "lesson/toml_guard.h"
#include "lesson/toml_syntax.h"
#include "platform/toml_library.h"

namespace fretsheaf::lesson {
namespace {

using source::Range;

std::size_t offset_of(const source::Text& text, const toml::source_position& place) {
  return text.offset(static_cast<int>(place.line), static_cast<int>(place.column));
}

// Depth is bounded by the guard, so that these may call themselves.
class Converter {
 public:
  Converter(const source::Text& text, source::FileId file) : text_(text), file_(file) {}

  TomlValue value(const toml::node& node) const {
    TomlValue result;
    result.range = range(node.source());
    if (const auto* table = node.as_table()) {
      fill(result, *table);
    } else if (const auto* list = node.as_array()) {
      result.kind = TomlValue::Kind::list;
      for (const toml::node& item : *list) result.items.push_back(value(item));
      result.header = !result.items.empty() && result.items.front().header;
    } else {
      fill_plain(result, node);
    }
    return result;
  }

 private:
  std::uint32_t offset(const toml::source_position& place) const {
    return static_cast<std::uint32_t>(offset_of(text_, place));
  }

  Range range(const toml::source_region& region) const { return {offset(region.begin), offset(region.end), file_}; }

  void fill(TomlValue& result, const toml::table& table) const {
    result.kind = TomlValue::Kind::table;
    result.header = !table.is_inline();
    for (auto&& [key, node] : table) {
      result.entries.push_back({std::string(key.str()), range(key.source()), value(node)});
    }
    // The parser keeps its tables by the alphabet.
    std::sort(result.entries.begin(), result.entries.end(),
              [](const TomlEntry& a, const TomlEntry& b) { return a.key_range.begin < b.key_range.begin; });
  }

  static void fill_plain(TomlValue& result, const toml::node& node) {
    using Kind = TomlValue::Kind;
    if (const auto* text = node.as_string()) {
      result.kind = Kind::text;
      result.text = text->get();
    } else if (const auto* whole = node.as_integer()) {
      result.kind = Kind::whole;
      result.whole = whole->get();
    } else if (const auto* decimal = node.as_floating_point()) {
      result.kind = Kind::decimal;
      result.decimal = decimal->get();
    } else if (const auto* truth = node.as_boolean()) {
      result.kind = Kind::truth;
      result.truth = truth->get();
    } else {
      result.kind = Kind::date;
    }
  }

  const source::Text& text_;
  source::FileId file_;
};

}  // namespace

const TomlValue* find(const TomlValue& table, std::string_view key) {
  for (const TomlEntry& entry : table.entries) {
    if (entry.key == key) return &entry.value;
  }
  return nullptr;
}

std::optional<TomlValue> read_toml(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics) {
  if (!guard_toml(text, file, diagnostics)) return {};
  const toml::parse_result parsed = toml::parse(std::string_view(text.bytes()));
  if (parsed) return Converter(text, file).value(parsed.table());
  const auto& where = parsed.error().source().begin;
  explain_syntax(text, file, offset_of(text, where), diagnostics);
  return {};
}

}  // namespace fretsheaf::lesson
