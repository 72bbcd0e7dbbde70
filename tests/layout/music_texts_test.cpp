// Words that are longer than their place: texts under the music and names of sections stay within the staff.
#include <algorithm>
#include <map>
#include <string>
#include <vector>

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
  for (const auto& [y, line] : lines) text += line.text;
  return text;
}

// A grid from its cells: the label first, then each bar's words. A first bar with a repeat goes back to the beginning.
std::string grid(const std::vector<std::vector<std::string>>& rows, bool repeats = false) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], row[i].size());
  }
  std::string text;
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < widths.size(); ++i) {
      const std::string cell = i < row.size() ? row[i] : "";
      const bool sign = repeats && i == 1 && row[0] == "count";
      text += (i > 0 ? " " : "") + cell + std::string(widths[i] - cell.size(), ' ') + (sign ? ":|" : " |");
    }
    text += "\n";
  }
  return text;
}

const std::vector<std::string> counts = {"count", "1   2   3   4", "1   2   3   4"};
const std::vector<std::string> notes = {"D", "5   5   3   5", "5   5   3   5"};

std::vector<layout::MusicLine> lines_with(test::Music& music, const std::vector<std::string>& row) {
  return music.lines(test::bass_lesson("staves = [\"tab\"]", grid({counts, notes, row})));
}

std::string quoted(const std::string& words) {
  return '"' + words + '"';
}

}  // namespace

TEST_CASE("a text at the staff's end moves left until it ends there") {
  test::Music music;
  const auto line = lines_with(music, {"text", "", "            \"and let it ring\""}).at(0);
  const auto words = words_of(line, Part::text, music.fonts);
  REQUIRE(words.size() == 1);
  CHECK(words.begin()->second.right == Approx(staff_end(line)).margin(0.2));
  check_apart(music, line);
}

TEST_CASE("a text that would move too far from its note is broken into lines under it") {
  test::Music music;
  const std::string long_one = "and let the lowest string of all ring on until the boats are in again";
  const auto line = lines_with(music, {"text", "", "            " + quoted(long_one)}).at(0);
  const auto words = words_of(line, Part::text, music.fonts);
  CHECK(words.size() > 1);
  CHECK(spelled(words) == long_one);
  check_apart(music, line);
}

TEST_CASE("a text wider than the staff has several lines") {
  test::Music music;
  for (const std::vector<std::string>& row : std::vector<std::vector<std::string>>{
           {"text", quoted(tide)}, {"text", "", quoted(tide)}, {"text", "", "            " + quoted(tide)}}) {
    const auto lines = lines_with(music, row);
    REQUIRE(lines.size() == 1);
    const auto words = words_of(lines[0], Part::text, music.fonts);
    CHECK(words.size() > 1);
    CHECK(spelled(words) == tide);
    check_apart(music, lines[0]);
  }
}

TEST_CASE("long texts close to each other, in one row and in two, keep apart") {
  test::Music music;
  const auto lines = music.lines(test::bass_lesson(
      "staves = [\"tab\"]", grid({{"count", "1                       2   3   4", "1   2   3   4"},
                                  {"D", "5                       5   3   5", "5   5   3   5"},
                                  {"text", "\"let the string ring\"   \"and then damp it slowly with the other hand\""},
                                  {"text", "                        \"a second row of words here\"", quoted(tide)}})));
  REQUIRE(lines.size() == 1);
  CHECK(words_of(lines[0], Part::text, music.fonts).size() > 2);
  check_apart(music, lines[0]);
}

TEST_CASE("a text does not push the notes apart for more than a few words") {
  test::Music music;
  const auto bare = lines_with(music, {"text"}).at(0);
  const auto with = lines_with(music, {"text", "", "            " + quoted(tide)}).at(0);
  CHECK(staff_end(bare) == Approx(staff_end(with)));
}

TEST_CASE("a short text still pushes the next one along") {
  test::Music music;
  const auto lines = music.lines(test::bass_lesson(
      "staves = [\"tab\"]",
      grid({{"count", "1       &   2 3 4"}, {"D", "5       5   5 5 5"}, {"text", "slowly  \"and even\""}})));
  const auto words = words_of(lines.at(0), Part::text, music.fonts);
  CHECK(words.size() == 1);
  CHECK(spelled(words) == "slowlyand even");
  check_apart(music, lines.at(0));
}

TEST_CASE("names of sections stay within the staff") {
  test::Music music;
  const std::string name = "Where the boats lie over at low tide, and nobody is about";
  const std::string longer = name + ", and the lamps are out along the whole of the long sea wall";
  const std::vector<std::string> chords = {"chord", "Dm7", "G7"};
  for (const std::string& words : {quoted(name), quoted(longer)}) {
    const std::string grids[] = {
        grid({counts, {"section", words}, notes}),
        grid({counts, {"section", "", words}, notes}),
        grid({counts, {"section", "", words}, chords, notes}),
        grid({counts, {"section", words, words}, chords, notes}),
        grid({counts, {"ending", "1.", "2."}, {"section", "A", words}, {"chord", "", "G7"}, notes}, true),
    };
    for (const std::string& text : grids) {
      INFO(text);
      const auto lines = music.lines(test::bass_lesson("staves = [\"tab\"]", text));
      REQUIRE(lines.size() == 1);
      const auto names = words_of(lines[0], Part::section_box, music.fonts);
      CHECK(spelled(names).find("Where the boats") != std::string::npos);
      CHECK((words != quoted(longer) || names.size() > 1));
      check_apart(music, lines[0]);
    }
  }
}
