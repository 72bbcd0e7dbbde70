#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>

#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "support/project.h"
#include "support/random_lesson.h"

using namespace fretsheaf;

namespace {

// What lies on what in a handout, but for the pairs of the one table.
std::string found_in(const sheet::Sheet& sheet, const std::string& name, typeface::Shaper& shaper) {
  std::string found;
  for (std::size_t page = 0; page < sheet.pages.size(); ++page) {
    for (const test::Collision& collision : test::collisions(sheet.pages[page], shaper)) {
      found += name + ", page " + std::to_string(page + 1) + ": " + test::describe(collision) + "\n";
    }
  }
  return found;
}

}  // namespace

// Lessons over all instruments, meters and signs.
TEST_CASE("nothing lies on anything in three hundred random lessons, and nothing leaves the margins") {
  test::Music music;
  const templates::Measures& m = music.look.measures;
  std::string found;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    const sheet::Sheet sheet = music.pages(test::random_lesson(seed));
    const std::string name = "seed " + std::to_string(seed);
    found += found_in(sheet, name, music.fonts);
    for (const sheet::Page& page : sheet.pages) {
      const sheet::Box text{m.margin_left, 0, page.width - m.margin_right, page.height};
      for (const test::InkBox& ink : test::outside(page, music.fonts, text, 14)) {
        found += name + ", outside: " + test::describe(ink) + "\n";
      }
    }
  }
  CHECK(found == "");
}

TEST_CASE("nothing lies on anything in any demo lesson") {
  test::Music music;
  std::string found;
  int lessons = 0;
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/demo-lessons")) {
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(".lesson.toml")) continue;
    ++lessons;
    const auto text = music.system.read(entry.path().string(), 1 << 22);
    REQUIRE(std::holds_alternative<std::string>(text));
    found += found_in(music.pages(std::get<std::string>(text)), name, music.fonts);
  }
  CHECK(lessons >= 6);
  CHECK(found == "");
}
