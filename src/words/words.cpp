#include "words/words.h"

#include "words/table.h"

namespace fretsheaf::words {
namespace {

const Table& table_of(Language language) {
  switch (language) {
    case Language::en:
      break;
    case Language::de:
      return table_de();
    case Language::es:
      return table_es();
    case Language::fr:
      return table_fr();
    case Language::it:
      return table_it();
    case Language::nl:
      return table_nl();
    case Language::pt:
      return table_pt();
  }
  return table_en();
}

}  // namespace

std::string_view word(Language language, Word word) {
  return table_of(language)[static_cast<std::size_t>(word)];
}

void append(std::string& text, std::string_view pattern, std::initializer_list<Hole> holes) {
  while (!pattern.empty()) {
    const auto open = pattern.find('{');
    text += pattern.substr(0, open);
    if (open == std::string_view::npos) break;
    pattern.remove_prefix(open);
    const auto close = pattern.find('}');
    const std::string_view written = pattern.substr(0, close == std::string_view::npos ? close : close + 1);
    std::string_view value = written;
    for (const Hole& hole : holes) {
      if (close != std::string_view::npos && pattern.substr(1, close - 1) == hole.name) value = hole.value;
    }
    text += value;
    pattern.remove_prefix(written.size());
  }
}

std::string fill(std::string_view pattern, std::initializer_list<Hole> holes) {
  std::string out;
  append(out, pattern, holes);
  return out;
}

std::string fill(Language language, Word pattern, std::initializer_list<Hole> holes) {
  return fill(word(language, pattern), holes);
}

std::string fill_number(Language language, Word pattern, int n) {
  return fill(language, pattern, {{"n", std::to_string(n)}});
}

std::string page_of(Language language, int n, int total) {
  return fill(language, Word::page_of, {{"n", std::to_string(n)}, {"total", std::to_string(total)}});
}

}  // namespace fretsheaf::words
