// The lessons that show each notation, set in every template, with every choice of staves, on both papers.
#include <filesystem>

#include "layout/lesson_files.h"
#include "layout/music_collisions.h"

using namespace fretsheaf;

namespace {

std::vector<std::string> template_names() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/templates")) {
    if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
  }
  return names;
}

void check_lesson(test::Music& music, const std::string& text, const std::string& name) {
  const templates::Measures& m = music.look.measures;
  std::string found;
  for (const sheet::Page& page : music.pages(text).pages) {
    for (const test::Collision& one : test::collisions(page, music.fonts)) found += test::describe(one) + "\n";
    const sheet::Box inside{m.margin_left, 0, page.width - m.margin_right, page.height};
    for (const test::InkBox& ink : test::outside(page, music.fonts, inside, 2 * m.tab_gap)) {
      found += "outside: " + test::describe(ink) + "\n";
    }
  }
  INFO(name);
  CHECK(found == "");
}

}  // namespace

TEST_CASE("nothing lies on anything in the lessons of each notation, in any template, with any staves") {
  const auto names = template_names();
  REQUIRE(!names.empty());
  for (const std::string& name : names) {
    test::Music music(name);
    const auto files = test::lesson_files(music.system);
    REQUIRE(files.size() >= 12);
    for (const test::LessonFile& file : files) {
      for (const char* staves : {"[\"slash\", \"notes\", \"tab\"]", "[\"slash\", \"tab\"]", "[\"notes\", \"tab\"]",
                                 "[\"tab\"]", "[\"notes\"]"}) {
        const std::string text = test::with_staves(file.text, staves);
        check_lesson(music, text, name + ", " + file.name + ", " + staves);
      }
      check_lesson(music, "paper = \"letter\"\n" + file.text, name + ", " + file.name + ", letter");
    }
  }
}

TEST_CASE("every instrument's staff holds what it plays without a collision") {
  // One lesson of places that all of them have.
  test::Music music;
  for (const fretboard::Instrument& instrument : fretboard::instruments()) {
    const std::string name(instrument.name);
    const std::string text = "title = \"Low tide\"\nkey = \"Eb major\"\ninstrument = \"" + name +
                             "\"\nstaves = [\"slash\", \"notes\", \"tab\"]\nlabels = [\"notes\"]\n[[example]]\n"
                             "tab = '''\n"
                             "count | 1   &   2   &   3   la  li  4   | 1   2   3    4  |\n"
                             "1     | 0   7   12  10              9   | 0   7   <12> 8  |\n"
                             "2     | 1           8   7   8       12  | 1   9   <12> 10 |\n"
                             "3     | 2           7   9       7       | 2   9        x  |\n"
                             "4     | 0                               | 0       12      |\n"
                             "'''\n";
    check_lesson(music, text, name);
  }
}
