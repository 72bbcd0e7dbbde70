#include <catch2/catch.hpp>
#include <cstdlib>

#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "support/random_lesson.h"

using namespace fretsheaf;

// Lessons over all instruments, meters and signs: nothing lies on anything else, nothing leaves the text box.
TEST_CASE("no signs of random lessons collide, and none leaves the margins") {
  test::Music music;
  const templates::Measures& m = music.look.measures;
  std::string found;
  for (unsigned seed = 1; seed <= 24; ++seed) {
    const sheet::Sheet sheet = music.pages(test::RandomLesson(seed).write());
    for (std::size_t page = 0; page < sheet.pages.size(); ++page) {
      const sheet::Page& drawn = sheet.pages[page];
      const std::string where = "seed " + std::to_string(seed) + ", page " + std::to_string(page + 1) + ": ";
      for (const test::Collision& collision : test::collisions(drawn, music.fonts)) {
        found += where + test::describe(collision) + "\n";
      }
      const sheet::Box text{m.margin_left, 0, drawn.width - m.margin_right, drawn.height};
      for (const test::InkBox& ink : test::outside(drawn, music.fonts, text, 14)) {
        found += where + "outside: " + test::describe(ink) + "\n";
      }
    }
  }
  CHECK(found == "");
}
