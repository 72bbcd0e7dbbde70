#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "source/diagnostic.h"
#include "source/range.h"
#include "source/text.h"

// A TOML document as a small tree of plain values, each with its place in bytes. The parser's own headers stay in one
// file of this room.
namespace fretsheaf::lesson {

struct TomlEntry;

struct TomlValue {
  enum class Kind { text, whole, decimal, truth, date, list, table };
  Kind kind = Kind::text;
  std::string text;
  std::int64_t whole = 0;
  double decimal = 0;
  bool truth = false;
  std::vector<TomlValue> items;    // of a list
  std::vector<TomlEntry> entries;  // of a table, in the file's order
  bool header = false;             // a table under `[name]` or `[[name]]`
  source::Range range;             // as written; of a table under a header, the header
};

struct TomlEntry {
  std::string key;
  source::Range key_range;
  TomlValue value;
};

// nullptr where the table has no such key.
const TomlValue* find(const TomlValue& table, std::string_view key);

// Reads a whole document. A file that nests too deeply or breaks TOML's syntax gets one error, in our own words, and
// nothing is returned. REQUIRES: the text is UTF-8 without NUL.
std::optional<TomlValue> read_toml(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::lesson
