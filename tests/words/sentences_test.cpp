#include "words/sentences.h"

#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <vector>

#include "words/words.h"

using namespace fretsheaf::words;

namespace {

struct Named {
  Sentence sentence;
  std::string name;
};

const std::vector<Named> named_sentences = {
#define FRETSHEAF_SENTENCE(name) {Sentence::name, #name},
#include "words/sentences.def"
#undef FRETSHEAF_SENTENCE
};

std::multiset<std::string> holes(std::string_view pattern) {
  std::multiset<std::string> found;
  for (auto open = pattern.find('{'); open != std::string_view::npos; open = pattern.find('{', open + 1)) {
    const auto close = pattern.find('}', open);
    REQUIRE(close != std::string_view::npos);
    std::string name(pattern.substr(open + 1, close - open - 1));
    found.insert(name == "nth" ? "n" : name);
  }
  return found;
}

}  // namespace

TEST_CASE("every language has every sentence, with the same holes, once each") {
  CHECK(named_sentences.size() == sentence_count);
  for (const Language language : languages) {
    for (const Named& named : named_sentences) {
      CAPTURE(language_code(language), named.name);
      const std::string_view text = sentence(language, named.sentence);
      REQUIRE_FALSE(text.empty());
      CHECK(text.find("  ") == std::string_view::npos);
      CHECK(text.back() != '.');
      CHECK(holes(text) == holes(sentence(Language::en, named.sentence)));
    }
  }
}

TEST_CASE("sentences are translated, not copied") {
  for (const Language language : languages) {
    if (language == Language::en) continue;
    std::size_t same = 0;
    for (const Named& named : named_sentences) {
      same += sentence(language, named.sentence) == sentence(Language::en, named.sentence) ? 1 : 0;
    }
    CAPTURE(language_code(language));
    CHECK(same <= sentence_count / 5);
  }
}

// A listener who has only the words must tell them apart.
TEST_CASE("no two places, lengths or ways of playing have one name") {
  for (const Language language : languages) {
    std::set<std::string> names;
    int count = 0;
    const auto add_all = [&](Sentence first, Sentence last) {
      names.clear();
      count = 0;
      for (int i = static_cast<int>(first); i <= static_cast<int>(last); ++i, ++count) {
        names.emplace(sentence(language, static_cast<Sentence>(i)));
      }
    };
    CAPTURE(language_code(language));
    add_all(Sentence::beat, Sentence::then);
    CHECK(static_cast<int>(names.size()) == count);
    add_all(Sentence::quarter_beat, Sentence::beats_and_part);
    CHECK(static_cast<int>(names.size()) == count);
    add_all(Sentence::together, Sentence::slide_off_down);
    CHECK(static_cast<int>(names.size()) == count);
    add_all(Sentence::chord_major, Sentence::chord_over);
    CHECK(static_cast<int>(names.size()) == count);
  }
}

TEST_CASE("what is counted has its forms by the plural rules of Unicode CLDR (from memory)") {
  const auto bars = [](Language language, int n) {
    return fill(form(language, Sentence::bars_one, n), {{"n", std::to_string(n)}});
  };
  CHECK(bars(Language::en, 0) == "0 bars");
  CHECK(bars(Language::en, 1) == "1 bar");
  CHECK(bars(Language::en, 2) == "2 bars");
  CHECK(bars(Language::de, 0) == "0 Takte");
  CHECK(bars(Language::de, 1) == "1 Takt");
  CHECK(bars(Language::de, 21) == "21 Takte");
  CHECK(bars(Language::es, 0) == "0 compases");
  CHECK(bars(Language::es, 1) == "1 compás");
  CHECK(bars(Language::fr, 0) == "0 mesure");
  CHECK(bars(Language::fr, 1) == "1 mesure");
  CHECK(bars(Language::fr, 2) == "2 mesures");
  CHECK(bars(Language::it, 0) == "0 battute");
  CHECK(bars(Language::it, 1) == "1 battuta");
  CHECK(bars(Language::nl, 0) == "0 maten");
  CHECK(bars(Language::nl, 1) == "1 maat");
  CHECK(bars(Language::pt, 0) == "0 compasso");
  CHECK(bars(Language::pt, 1) == "1 compasso");
  CHECK(bars(Language::pt, 2) == "2 compassos");
}

TEST_CASE("strings and frets are named alone as they are in a place") {
  for (const Language language : languages) {
    for (const int fret : {0, 1, 5, 12}) {
      CHECK(place_name(language, string_by_letter(language, "A"), fret) == place_by_letter(language, "A", fret));
      CHECK(place_by_number(language, 2, fret) == string_by_number(language, 2) + ", " + fret_name(language, fret));
    }
  }
  CHECK(fret_name(Language::en, 3) == "3rd fret");
  CHECK(fret_name(Language::de, 3) == "3. Bund");
  CHECK(fret_name(Language::pt, 0) == "solta");
  CHECK(string_by_number(Language::fr, 1) == "1re corde");
}

TEST_CASE("a sentence begins with a capital in every language") {
  const auto raised = [](std::string text, std::size_t at = 0) {
    raise(text, at);
    return text;
  };
  CHECK(raised("beat 1") == "Beat 1");
  CHECK(raised("a. beat", 3) == "a. Beat");
  CHECK(raised("étouffé") == "Étouffé");
  CHECK(raised("übermäßig") == "Übermäßig");
  CHECK(raised("Beat") == "Beat");
  CHECK(raised("÷") == "÷");
  CHECK(raised("ÿ") == "ÿ");  // its capital is elsewhere
  CHECK(raised("1st") == "1st");
  CHECK(raised("").empty());
}
