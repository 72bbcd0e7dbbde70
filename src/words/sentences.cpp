#include "words/sentences.h"

#include "words/sentence_table.h"

namespace fretsheaf::words {
namespace {

const SentenceTable& table_of(Language language) {
  switch (language) {
    case Language::en:
      break;
    case Language::de:
      return sentences_de();
    case Language::es:
      return sentences_es();
    case Language::fr:
      return sentences_fr();
    case Language::it:
      return sentences_it();
    case Language::nl:
      return sentences_nl();
    case Language::pt:
      return sentences_pt();
  }
  return sentences_en();
}

}  // namespace

std::string_view sentence(Language language, Sentence sentence) {
  return table_of(language)[static_cast<std::size_t>(sentence)];
}

std::string_view form(Language language, Sentence one, int n) {
  const auto row = static_cast<std::size_t>(one) + (is_one(language, n) ? 0 : 1);
  return table_of(language)[row];
}

void raise(std::string& text, std::size_t place) {
  if (place >= text.size()) return;
  char& first = text[place];
  if (first >= 'a' && first <= 'z') {
    first = static_cast<char>(first - 'a' + 'A');
    return;
  }
  // U+00E0 to U+00FE stand in UTF-8 as C3 A0 to C3 BE, their capitals 32 before them; U+00F7 is a sign.
  if (first != '\xC3' || place + 1 >= text.size()) return;
  const auto second = static_cast<unsigned char>(text[place + 1]);
  if (second >= 0xA0 && second <= 0xBE && second != 0xB7) text[place + 1] = static_cast<char>(second - 0x20);
}

}  // namespace fretsheaf::words
