#include <catch2/catch.hpp>

#include "lesson/not_drawn.h"
#include "lesson/reader_support.h"

// Nothing that is read and not drawn is passed over in silence. What gets drawn loses its row, and then its place here.
namespace fretsheaf::lesson::test {
namespace {

std::string warnings(const std::string& text) {
  ReadLesson found = read(text);
  INFO(said(found));
  REQUIRE(found.lesson);
  warn_not_drawn(*found.lesson, found.diagnostics);
  return said(found);
}

const std::string music = "tab = '''\ncount | 1 2 3 4 |\nA     | 5   5   |\n'''";

}  // namespace

TEST_CASE("a plain lesson gets no warning") {
  CHECK(warnings(lesson_with("", music)) == "");
}

TEST_CASE("what is read and not drawn yet is said, with its place") {
  struct Row {
    std::string top;
    std::string in_example;
    std::string said;
  };
  const std::vector<Row> rows = {
      {"link = \"https://eelgrass.example/7\"", music, "4:8-36: warning: the QR code of a link is"},
      {"practice-log = 3", music, "4:16-17: warning: a practice log is"},
      {"", "hide = [\"labels\"]\n" + music, "7:8-18: warning: what 'hide' asks for is"},
      {"", "blank-bars = 4", "7:14-15: warning: blank bars are"},
      {"", "build-up = \"pairs\"\n" + music, "7:12-19: warning: a build-up is"},
  };
  for (const Row& row : rows) {
    CHECK(warnings(lesson_with(row.top, row.in_example)) == row.said + " read but not drawn yet\n");
  }
}

TEST_CASE("a logo is read and not drawn yet") {
  platform::MemorySystem system;
  system.files["lantern.svg"] = "<svg/>";
  ReadLesson found = read(lesson_with("logo = \"lantern.svg\"\nlogo-alt = \"A lantern\"", music), system);
  REQUIRE(found.lesson);
  warn_not_drawn(*found.lesson, found.diagnostics);
  CHECK(said(found) == "4:8-21: warning: a logo is read but not drawn yet\n");
}

}  // namespace fretsheaf::lesson::test
