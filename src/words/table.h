#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "words/words.h"

namespace fretsheaf::words {

// One language's words, by Word.
using Table = std::array<std::string_view, word_count>;

struct Entry {
  Word word;
  std::string_view text;
};

// Puts a language's entries in their places. A language that lacks a word, or has one twice, does not compile.
template <std::size_t size>
consteval Table table(const Entry (&entries)[size]) {
  static_assert(size == word_count, "this language lacks a word, or has one too many");
  Table result{};
  for (const Entry& entry : entries) {
    std::string_view& place = result[static_cast<std::size_t>(entry.word)];
    if (!place.empty() || entry.text.empty()) throw "a word stands twice, or is empty";
    place = entry.text;
  }
  return result;
}

const Table& table_en();
const Table& table_de();
const Table& table_es();
const Table& table_fr();
const Table& table_it();
const Table& table_nl();
const Table& table_pt();

}  // namespace fretsheaf::words
