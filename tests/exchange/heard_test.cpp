// What is heard in a document is what the lesson's model says, to the last fraction: every demo lesson, the format's
// own example and hundreds of generated lessons, read by a second reader.
#include "exchange/heard.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "exchange/exported.h"
#include "exchange/written_forms.h"
#include "support/project.h"
#include "support/random_lesson.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

// The staff of each bar that says all of it: the TAB staff, and the first one in a rhythm, which has no tab.
std::vector<int> full_staves(const lesson::Lesson& lesson, const WrittenPart& part) {
  std::vector<int> staves;
  for (const lesson::Example& example : lesson.examples) {
    const auto slashes = slashes_around(example);
    staves.insert(staves.end(), slashes.before, 1);
    staves.insert(staves.end(), example.music.bars.size(), example.music.has_strings ? *part.tab_staves.begin() : 1);
    staves.insert(staves.end(), slashes.after, 1);
  }
  return staves;
}

void check_heard(const std::string& text) {
  INFO(text);
  const Exported exported = export_lesson(text);
  const WrittenPart part = read_part(exported.document);
  std::vector<std::string> problems = part.problems;
  REQUIRE(bars_in(part) == bars_in(exported.lesson));
  const bool strings = std::any_of(exported.lesson.examples.begin(), exported.lesson.examples.end(),
                                   [](const lesson::Example& example) { return example.music.has_strings; });
  REQUIRE(part.tab_staves.size() == (strings ? 1 : 0));
  REQUIRE(heard_on(part, full_staves(exported.lesson, part), problems) == heard_in(exported.lesson));
  // Where there are two staves, both say the same sounds.
  for (int staff = 1; staff < part.staves; ++staff) {
    REQUIRE(pitches_on(part, staff, problems) == pitches_on(part, part.staves, problems));
  }
  REQUIRE(problems == std::vector<std::string>{});
}

}  // namespace

TEST_CASE("every demo lesson and the format's example are heard in their documents as they are written") {
  std::vector<std::string> lessons = {test::project_folder() + "/tests/command/format-example.lesson.toml"};
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/demo-lessons")) {
    if (entry.path().extension() == ".toml") lessons.push_back(entry.path().string());
  }
  REQUIRE(lessons.size() >= 7);
  for (const std::string& path : lessons) check_heard(bytes_of(path));
}

TEST_CASE("forms that are written out are heard as slashes around their music") {
  for (const std::string& lesson : written_forms()) check_heard(lesson);
}

TEST_CASE("four hundred generated lessons are heard in their documents as they are written") {
  for (unsigned seed = 1; seed <= 400; ++seed) check_heard(fretsheaf::test::random_lesson(seed));
}

TEST_CASE("the second reader hears a wrong fret, string, pitch, value and a lost tie") {
  const Exported exported = export_lesson(
      "title = \"a\"\nkey = \"C major\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\n"
      "count | 1 2 3 & 4 |\nA     | 3 0   2   |\n'''\n");
  const auto heard = [&](const std::string& from, const std::string& to) {
    std::string document = exported.document;
    // The last of its kind is on the TAB staff.
    const auto at = document.rfind(from);
    REQUIRE(at != std::string::npos);
    document.replace(at, from.size(), to);
    const WrittenPart part = read_part(document);
    std::vector<std::string> problems;
    std::string text = heard_on(part, full_staves(exported.lesson, part), problems);
    for (const std::string& problem : problems) text += problem + "\n";
    return text;
  };
  REQUIRE(heard("", "") == heard_in(exported.lesson));
  for (const auto& [from, to] : std::vector<std::pair<std::string, std::string>>{
           {"<fret>2</fret>", "<fret>3</fret>"},
           {"<string>3</string>", "<string>4</string>"},
           {"<step>B</step>", "<step>A</step>"},
           {"<octave>1</octave>", "<octave>2</octave>"},
           {"<duration>2</duration>", "<duration>3</duration>"},
           {"<tie type=\"stop\"/>", ""},
           {"<tie type=\"start\"/>", ""},
       }) {
    INFO(from);
    CHECK(heard(from, to) != heard_in(exported.lesson));
  }
}
