#pragma once

#include <array>
#include <string_view>

#include "words/sentences.h"
#include "words/table.h"

namespace fretsheaf::words {

// One language's patterns, by Sentence.
using SentenceTable = std::array<std::string_view, sentence_count>;
using SentenceEntry = EntryOf<Sentence>;

template <std::size_t size>
consteval SentenceTable sentence_table(const SentenceEntry (&entries)[size]) {
  return filled<sentence_count>(entries);
}

const SentenceTable& sentences_en();
const SentenceTable& sentences_de();
const SentenceTable& sentences_es();
const SentenceTable& sentences_fr();
const SentenceTable& sentences_it();
const SentenceTable& sentences_nl();
const SentenceTable& sentences_pt();

}  // namespace fretsheaf::words
