#include "words/words.h"

#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <vector>

using namespace fretsheaf::words;

namespace {

struct Named {
  Word word;
  std::string name;
};

const std::vector<Named> named_words = {
#define FRETSHEAF_WORD(name) {Word::name, #name},
#include "words/words.def"
#undef FRETSHEAF_WORD
};

// The holes of a pattern. A hole's form is not its content: {lower} is the tonic and {nth} the number.
std::set<std::string> holes(std::string_view pattern) {
  std::set<std::string> found;
  for (auto open = pattern.find('{'); open != std::string_view::npos; open = pattern.find('{', open + 1)) {
    const auto close = pattern.find('}', open);
    REQUIRE(close != std::string_view::npos);
    std::string name(pattern.substr(open + 1, close - open - 1));
    if (name == "lower") name = "tonic";
    if (name == "nth") name = "n";
    found.insert(name);
  }
  return found;
}

}  // namespace

TEST_CASE("every language has every word, trimmed") {
  CHECK(named_words.size() == word_count);
  for (const Language language : languages) {
    for (const Named& named : named_words) {
      CAPTURE(language_code(language), named.name);
      const std::string_view text = word(language, named.word);
      REQUIRE_FALSE(text.empty());
      CHECK(text.front() != ' ');
      CHECK(text.back() != ' ');
      CHECK(text.find("  ") == std::string_view::npos);
    }
  }
}

TEST_CASE("a pattern has the same holes in every language") {
  for (const Language language : languages) {
    for (const Named& named : named_words) {
      CAPTURE(language_code(language), named.name);
      CHECK(holes(word(language, named.word)) == holes(word(Language::en, named.word)));
    }
  }
}

TEST_CASE("a pattern's holes are what the code fills") {
  using Names = std::set<std::string>;
  CHECK(holes(word(Language::en, Word::page_of)) == Names{"n", "total"});
  CHECK(holes(word(Language::en, Word::neck_frets)) == Names{"from", "to"});
  CHECK(holes(word(Language::en, Word::bars)) == Names{"from", "to"});
  CHECK(holes(word(Language::en, Word::neck_of)) == Names{"what"});
  CHECK(holes(word(Language::en, Word::place)) == Names{"string", "fret"});
  for (const Word w : {Word::number, Word::capo_at, Word::example, Word::example_caps, Word::times, Word::bar,
                       Word::form_here, Word::once_through_other, Word::write_bars_one, Word::passes_one}) {
    CHECK(holes(word(Language::en, w)) == Names{"n"});
  }
}

TEST_CASE("languages are translated, not copied") {
  // Some words are the same in two languages (Tempo, swing); most are not.
  for (const Language language : languages) {
    if (language == Language::en) continue;
    std::size_t same = 0;
    for (const Named& named : named_words) same += word(language, named.word) == word(Language::en, named.word) ? 1 : 0;
    CAPTURE(language_code(language));
    CHECK(same <= word_count / 5);
  }
}

TEST_CASE("the heads of the practice log fit their narrow columns") {
  for (const Language language : languages) {
    for (const Word head : {Word::date, Word::tempo, Word::clean_passes, Word::note_column}) {
      CHECK(word(language, head).size() <= 12);
    }
  }
}

TEST_CASE("languages are named by their codes") {
  for (const Language language : languages) CHECK(parse_language(language_code(language)) == language);
  CHECK(parse_language("de") == Language::de);
  CHECK_FALSE(parse_language("DE"));
  CHECK_FALSE(parse_language("da"));
  CHECK_FALSE(parse_language(""));
}

TEST_CASE("holes are filled by name, in any order and as often as they stand") {
  CHECK(fill("{b} and {a} and {b}", {{"a", "1"}, {"b", "2"}}) == "2 and 1 and 2");
  CHECK(fill("plain", {{"a", "1"}}) == "plain");
  CHECK(fill("", {}).empty());
  CHECK(fill("{a}", {{"a", "{b}"}, {"b", "x"}}) == "{b}");  // what was filled in is not filled again
}

TEST_CASE("a hole that nobody fills is seen") {
  CHECK(fill("{n} of {total}", {{"n", "1"}}) == "1 of {total}");
  CHECK(fill("open {n", {{"n", "1"}}) == "open {n");
  CHECK(fill("n}", {{"n", "1"}}) == "n}");
}
