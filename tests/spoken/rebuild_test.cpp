#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <vector>

#include "lesson/reader.h"
#include "platform/disk_system.h"
#include "score/build.h"
#include "spoken/heard.h"
#include "spoken/spoken.h"
#include "spoken/written.h"
#include "support/project.h"
#include "support/random_lesson.h"
#include "theory/keys.h"
#include "transposition/move.h"

// The words are a full equivalent of the page: whoever hears them has every string, fret, onset and duration.
namespace fretsheaf::spoken::test {
namespace {

lesson::Lesson read(const std::string& text) {
  static const platform::DiskSystem system;
  lesson::ReadLesson result =
      lesson::read_lesson(fretsheaf::test::project_folder() + "/demo-lessons/heard.lesson.toml", text, system);
  for (const auto& one : result.diagnostics.list()) {
    if (one.severity == source::Severity::error) FAIL(one.message);
  }
  REQUIRE(result.lesson);
  return std::move(*result.lesson);
}

std::string words_of(lesson::Lesson lesson, const std::string& language) {
  lesson.language = language;
  source::Diagnostics diagnostics;
  // Of an exercise the answer key has all that is played.
  return as_text(walk_through(score::build_score(lesson, diagnostics, score::Copy::answer_key)));
}

// Where two accounts of a lesson first differ; empty where they do not.
std::string difference(const std::vector<std::vector<Heard>>& heard, const std::vector<std::vector<Heard>>& written) {
  if (heard.size() != written.size()) return std::to_string(heard.size()) + " examples heard";
  for (std::size_t i = 0; i < heard.size(); ++i) {
    const std::string example = "example " + std::to_string(i + 1) + ", ";
    const auto [a, b] = std::mismatch(heard[i].begin(), heard[i].end(), written[i].begin(), written[i].end());
    if (a == heard[i].end() && b == written[i].end()) continue;
    return example + (a == heard[i].end() ? "nothing" : to_string(*a)) + " in place of " +
           (b == written[i].end() ? "nothing" : to_string(*b));
  }
  return {};
}

std::string misheard(const lesson::Lesson& lesson, const std::string& words, const Lexicon& lexicon) {
  std::string lost;
  const std::string said = difference(hear(words, lexicon, lost), written(lesson));
  return lost.empty() ? said : "lost: " + lost + said;
}

void check_both_languages(const lesson::Lesson& lesson) {
  CHECK(misheard(lesson, words_of(lesson, "en"), english()) == "");
  CHECK(misheard(lesson, words_of(lesson, "de"), german()) == "");
}

std::size_t notes_of(const lesson::Lesson& lesson) {
  std::size_t notes = 0;
  for (const auto& example : written(lesson)) notes += example.size();
  return notes;
}

std::vector<std::string> lessons_in(const std::string& folder) {
  static const platform::DiskSystem system;
  std::vector<std::string> texts;
  for (const auto& entry : std::filesystem::directory_iterator(fretsheaf::test::project_folder() + folder)) {
    if (!entry.path().string().ends_with(".lesson.toml")) continue;
    const auto bytes = system.read(entry.path().string(), 1 << 22);
    REQUIRE(std::holds_alternative<std::string>(bytes));
    texts.push_back(std::get<std::string>(bytes));
  }
  std::sort(texts.begin(), texts.end());
  return texts;
}

}  // namespace

TEST_CASE("every note of the demo lessons can be rebuilt from their words, in several keys") {
  std::size_t moved_lessons = 0;
  std::size_t notes = 0;
  for (const std::string& text : lessons_in("/demo-lessons")) {
    const lesson::Lesson lesson = read(text);
    CAPTURE(lesson.title.value);
    check_both_languages(lesson);
    notes += notes_of(lesson);
    for (const theory::Key& key : theory::all_keys(lesson.key.mode)) {
      if (key.signature() % 4 != 1) continue;
      CAPTURE(key.to_string());
      source::Diagnostics diagnostics;
      const auto moved = transposition::move(lesson, {key, nullptr, {}}, diagnostics);
      if (!moved || diagnostics.has_errors()) continue;
      ++moved_lessons;
      check_both_languages(moved->lesson);
    }
  }
  CHECK(notes > 550);
  CHECK(moved_lessons > 25);
}

TEST_CASE("every note of the lessons that show each notation can be rebuilt from their words") {
  std::size_t notes = 0;
  for (const std::string& text : lessons_in("/tests/layout/lessons")) {
    const lesson::Lesson lesson = read(text);
    CAPTURE(lesson.title.value);
    check_both_languages(lesson);
    notes += notes_of(lesson);
  }
  CHECK(notes > 500);
}

TEST_CASE("every note of random lessons can be rebuilt from their words") {
  std::size_t notes = 0;
  for (unsigned seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    const lesson::Lesson lesson = read(fretsheaf::test::random_lesson(seed));
    check_both_languages(lesson);
    notes += notes_of(lesson);
  }
  CHECK(notes > 10000);
}

namespace {

constexpr const char* coiled = R"(title = "Coil"
key = "A minor"
instrument = "bass"
[[example]]
tab = '''
count | 1  2 & 3 la li 4 & | 1 (2) & 3   4 | 1  2 & 3 la li 4 & | 1    2 3   | 1 2 3 4 |
G     |    4               |         4     |    6               |            | 7 = 5   |
D     | 5  6 7 5         4 | 4     5     7 | 7  8 9 7         6 | 5    x     | 7 7 7   |
A     |          3  5  7   |               |          5  7  9   |      5 3   | =       |
'''
)";

struct WrongWord {
  const char* right;
  const char* wrong;
};

// The words with the nth place of a word made wrong; empty where there are fewer.
std::string mutated(const std::string& words, const WrongWord& wrong, int nth) {
  std::size_t at = words.find("Bar 1");
  for (; nth >= 0 && at != std::string::npos; --nth) at = words.find(wrong.right, at + 1);
  if (at == std::string::npos) return {};
  std::string result = words;
  return result.replace(at, std::string_view(wrong.right).size(), wrong.wrong);
}

}  // namespace

TEST_CASE("a wrong word anywhere is heard") {
  const lesson::Lesson lesson = read(coiled);
  const std::string words = words_of(lesson, "en");
  REQUIRE(misheard(lesson, words, english()) == "");
  for (const WrongWord& wrong : {WrongWord{"5th fret", "6th fret"},
                                 {"D string", "G string"},
                                 {"half a beat", "1 beat"},
                                 {"a third of a beat", "a quarter of a beat"},
                                 {", 1 beat", ", 2 beats"},
                                 {"Beat 3", "Beat 4"},
                                 {" and:", ":"},
                                 {" and a third:", " and:"},
                                 {"dead note", "open"},
                                 {": rest", ": open"},
                                 {"still held", "open"},
                                 {"As bar 1", "As bar 2"},
                                 {"2 frets higher", "3 frets higher"},
                                 {"higher", "lower"},
                                 {"; ", ", "},
                                 {"Bar 2", "Barre 2"}}) {
    CAPTURE(wrong.right);
    int places = 0;
    for (std::string other; !(other = mutated(words, wrong, places)).empty(); ++places) {
      CAPTURE(places, other);
      CHECK(misheard(lesson, other, english()) != "");
    }
    CHECK(places > 0);
  }
}

}  // namespace fretsheaf::spoken::test
