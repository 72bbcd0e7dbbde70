// Whole lines of music as they are placed.
#include "layout/music_fixture.h"
#include "layout/sample_lines.h"
#include "support/golden.h"

using namespace fretsheaf;

namespace {

std::string placed(const std::string& lesson) {
  test::Music music;
  sheet::Sheet sheet;
  for (layout::MusicLine& line : music.lines(lesson)) {
    sheet.pages.push_back({488, line.bottom - line.top, std::move(line.items)});
  }
  return sheet::dump(sheet, music.fonts.names());
}

}  // namespace

TEST_CASE("the display list of a line with notes") {
  check_golden("line-notes.txt", placed(test::notes_sample));
}

TEST_CASE("the display list of a line with techniques") {
  check_golden("line-techniques.txt", placed(test::techniques_sample));
}

TEST_CASE("the display list of a line with repeats and endings") {
  check_golden("line-structure.txt", placed(test::structure_sample));
}

TEST_CASE("the display list of a line of strums") {
  check_golden("line-strum.txt", placed(test::strum_sample));
}
