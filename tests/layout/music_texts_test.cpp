// Words that are longer than their place: texts under the music and names of sections stay within the staff.
#include <algorithm>

#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "sheet/walk.h"

using namespace fretsheaf;
using sheet::Part;

namespace {

const std::string tide =
    "when the tide comes in over the flats, lift the hand a little and let the low string ring on until it is still";

// The baselines of a part's words and how far they reach.
struct Line {
  double left = 1e9;
  double right = -1e9;
  std::string text;
};
std::map<double, Line> words_of(const layout::MusicLine& line, Part part, typeface::Shaper& shaper) {
  std::map<double, Line> found;
  sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    if (run == nullptr || run->part != part) return;
    Line& at = found[run->glyphs.at(0).y];
    at.text += run->text;
    for (const sheet::Glyph& glyph : run->glyphs) {
      const typeface::Extents e = shaper.extents(run->font, glyph.id, run->size);
      if (e.right <= e.left) continue;
      at.left = std::min(at.left, glyph.x + e.left);
      at.right = std::max(at.right, glyph.x + e.right);
    }
  });
  return found;
}

double staff_end(const layout::MusicLine& line) {
  double end = 0;
  sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* rule = std::get_if<sheet::Rule>(&item);
    if (rule != nullptr && rule->part == Part::tab_line) end = std::max(end, rule->to.x);
  });
  return end;
}

void check_apart(test::Music& music, const layout::MusicLine& line) {
  for (const test::Collision& collision : test::collisions({0, 0, line.items}, music.fonts)) {
    UNSCOPED_INFO(test::describe(collision));
    CHECK(false);
  }
  for (const test::InkBox& ink : test::outside({0, 0, line.items}, music.fonts, {0, -1e9, staff_end(line), 1e9}, 14)) {
    UNSCOPED_INFO(test::describe(ink));
    CHECK(false);
  }
}

std::string spelled(const std::map<double, Line>& lines) {
  std::string text;
  for (const auto& [y, line] : lines) text += (text.empty() ? "" : " ") + line.text;
  return text;
}

const std::string notes = "count | 1   2   3   4   | 1   2   3   4   |\nD     | 5   5   3   5   | 5   5   3   5   |\n";

std::string with_row(const std::string& row) {
  return test::bass_lesson("staves = [\"tab\"]", notes + row);
}

}  // namespace

TEST_CASE("a text at the staff's end moves left until it ends there") {
  test::Music music;
  const auto line = music.lines(with_row("text  |                 |             \"and let it ring\" |\n")).at(0);
  const auto words = words_of(line, Part::text, music.fonts);
  REQUIRE(words.size() == 1);
  CHECK(words.begin()->second.right == Approx(staff_end(line)).margin(1));
  check_apart(music, line);
}

TEST_CASE("a text that would move too far from its note is broken into lines under it") {
  test::Music music;
  const auto line =
      music.lines(with_row("text  |                 |             \"and let the lowest string of all ring on\" |\n"))
          .at(0);
  const auto words = words_of(line, Part::text, music.fonts);
  CHECK(words.size() > 1);
  CHECK(spelled(words) == "and let the lowest string of all ring on");
  check_apart(music, line);
}

TEST_CASE("a text wider than the staff has several lines") {
  test::Music music;
  for (const char* row : {"text  | \"WORDS\"         |                 |\n", "text  |                 | \"WORDS\" |\n",
                          "text  |                 |             \"WORDS\" |\n"}) {
    std::string text = row;
    text.replace(text.find("WORDS"), 5, tide);
    const auto lines = music.lines(with_row(text));
    REQUIRE(lines.size() == 1);
    const auto words = words_of(lines[0], Part::text, music.fonts);
    CHECK(words.size() > 1);
    CHECK(spelled(words) == tide);
    check_apart(music, lines[0]);
  }
}

TEST_CASE("long texts close to each other, in one row and in two, keep apart") {
  test::Music music;
  const std::string beats =
      "count | 1                     2 3 4 | 1 2 3 4 |\n"
      "D     | 5                     5 3 5 | 5 5 3 5 |\n"
      "text  | \"let the string ring\" \"and then damp it slowly with the other hand\" | |\n"
      "text  |                       \"a second row of words here\" | \"and more\" |\n";
  const auto lines = music.lines(test::bass_lesson("staves = [\"tab\"]", beats));
  REQUIRE(lines.size() == 1);
  CHECK(words_of(lines[0], Part::text, music.fonts).size() >= 2);
  check_apart(music, lines[0]);
}

TEST_CASE("a text does not push the notes apart for more than a few words") {
  test::Music music;
  const auto bare = music.lines(with_row("")).at(0);
  const auto with = music.lines(with_row("text  |                 |             \"" + tide + "\" |\n")).at(0);
  CHECK(staff_end(bare) == Approx(staff_end(with)));
}

TEST_CASE("a short text still pushes the next one along") {
  test::Music music;
  const auto lines = music.lines(test::bass_lesson(
      "staves = [\"tab\"]", "count | 1       & 2 3 4 |\nD     | 5       5 5 5 5 |\ntext  | slowly  \"and even\" |\n"));
  CHECK(words_of(lines.at(0), Part::text, music.fonts).size() == 1);
  check_apart(music, lines.at(0));
}

TEST_CASE("names of sections stay within the staff") {
  test::Music music;
  const std::string name = "Where the boats lie over at low tide, and nobody is about";
  const std::string longer = name + ", and the lamps are out along the whole of the long sea wall";
  const std::string rows[] = {
      "section | \"NAME\" | |\n",
      "section | | \"NAME\" |\n",
      "section | | \"NAME\" |\nchord   | Dm7 | G7 |\n",
      "section | \"NAME\" | \"NAME\" |\nchord   | Dm7 | G7 |\n",
      "section | A | \"NAME\" |\nchord   | | G7 |\nending  | 1. | 2. |\n",
  };
  for (const std::string& row : rows) {
    for (const std::string& text : {name, longer}) {
      std::string filled = row;
      for (std::size_t at = 0; (at = filled.find("NAME", at)) != std::string::npos;) filled.replace(at, 4, text);
      const bool ends = row.find("ending") != std::string::npos;
      const std::string grid =
          ends ? "count |: 1   2   3   4  :| 1   2   3   4   |\nD     |  5   5   3   5  :| 5   5   3   5   |\n" : notes;
      INFO(filled);
      const auto lines = music.lines(test::bass_lesson("staves = [\"tab\"]", grid + filled));
      REQUIRE(lines.size() == 1);
      std::string spelled_all = spelled(words_of(lines[0], Part::section_box, music.fonts));
      CHECK(spelled_all.find("Where the boats") != std::string::npos);
      check_apart(music, lines[0]);
    }
  }
}
