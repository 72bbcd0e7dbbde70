#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "words/words.h"

namespace fretsheaf::words {

// One language's words, by Word.
using Table = std::array<std::string_view, word_count>;

template <typename Name>
struct EntryOf {
  Name name;
  std::string_view text;
};
using Entry = EntryOf<Word>;

// Puts a language's entries in their places. A language that lacks one, or has one twice, does not compile.
template <std::size_t count, typename Name, std::size_t size>
consteval std::array<std::string_view, count> filled(const EntryOf<Name> (&entries)[size]) {
  static_assert(size == count, "this language lacks an entry, or has one too many");
  std::array<std::string_view, count> result{};
  for (const EntryOf<Name>& entry : entries) {
    std::string_view& place = result[static_cast<std::size_t>(entry.name)];
    if (!place.empty() || entry.text.empty()) throw "an entry stands twice, or is empty";
    place = entry.text;
  }
  return result;
}

template <std::size_t size>
consteval Table table(const Entry (&entries)[size]) {
  return filled<word_count>(entries);
}

const Table& table_en();
const Table& table_de();
const Table& table_es();
const Table& table_fr();
const Table& table_it();
const Table& table_nl();
const Table& table_pt();

}  // namespace fretsheaf::words
