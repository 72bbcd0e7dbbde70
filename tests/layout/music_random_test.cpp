#include <catch2/catch.hpp>
#include <cstdlib>

#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "support/random_lesson.h"

using namespace fretsheaf;

namespace {

// Glyphs of one row: digits and what brackets them are one row, every other part is a row of its own.
bool of_one_row(const test::Collision& collision) {
  const auto row = [](sheet::Part part) { return part == sheet::Part::digit_mark ? sheet::Part::digit : part; };
  return row(collision.a.part) == row(collision.b.part);
}

}  // namespace

// Lessons over all instruments, meters and signs: no two glyphs of a row lie on each other, nothing leaves the text
// box.
TEST_CASE("no glyphs of one row of two hundred random lessons collide, and none leaves the margins") {
  test::Music music;
  const templates::Measures& m = music.look.measures;
  std::string found;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    const sheet::Sheet sheet = music.pages(test::RandomLesson(seed).write());
    for (std::size_t page = 0; page < sheet.pages.size(); ++page) {
      const sheet::Page& drawn = sheet.pages[page];
      const std::string where = "seed " + std::to_string(seed) + ", page " + std::to_string(page + 1) + ": ";
      for (const test::Collision& collision : test::collisions(drawn, music.fonts)) {
        if (of_one_row(collision)) found += where + test::describe(collision) + "\n";
      }
      const sheet::Box text{m.margin_left, 0, drawn.width - m.margin_right, drawn.height};
      for (const test::InkBox& ink : test::outside(drawn, music.fonts, text, 14)) {
        found += where + "outside: " + test::describe(ink) + "\n";
      }
    }
  }
  CHECK(found == "");
}
