#include <catch2/catch.hpp>

#include "lesson/not_drawn.h"
#include "lesson/reader_support.h"

// Nothing that is read and not drawn is passed over in silence. What gets drawn loses its row, and then its place here.
namespace fretsheaf::lesson::test {
namespace {

std::string warnings(ReadLesson found) {
  INFO(said(found));
  REQUIRE(found.lesson);
  warn_not_drawn(*found.lesson, found.diagnostics);
  return said(found);
}

}  // namespace

TEST_CASE("a plain lesson gets no warning") {
  CHECK(warnings(read(lesson_with(""))) == "");
}

}  // namespace fretsheaf::lesson::test
