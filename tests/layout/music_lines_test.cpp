// What a line of music must be, on the display list, in numbers. What names no source is common practice or the house's
// measure.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "sheet/walk.h"
#include "support/golden.h"

using namespace fretsheaf;
using sheet::Part;

namespace {

sheet::Page page_of(const layout::MusicLine& line) {
  return {0, 0, line.items};
}

// The boxes of a part's ink in a line, from left to right.
std::vector<sheet::Box> boxes(const layout::MusicLine& line, Part part, typeface::Shaper& shaper) {
  std::vector<sheet::Box> found;
  for (const test::InkBox& ink : test::ink_boxes(page_of(line), shaper)) {
    if (ink.part == part) found.push_back(ink.box);
  }
  std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.left < b.left; });
  return found;
}

// The centres of the events of a staff in a line, by where they stand.
std::map<std::string, double> centres(const layout::MusicLine& line, const std::string& staff) {
  std::map<std::string, double> found;
  sheet::walk(page_of(line), [&](const sheet::Item&, sheet::GroupChain chain) {
    for (const sheet::Group* group : chain) {
      if (group->event && group->event->staff == staff) {
        found[std::to_string(group->event->bar) + ":" + group->event->at] = group->event->x;
      }
    }
  });
  return found;
}

double end_of_tab(const layout::MusicLine& line, typeface::Shaper& shaper) {
  double end = 0;
  for (const sheet::Box& box : boxes(line, Part::tab_line, shaper)) end = std::max(end, box.right);
  return end;
}

const std::string eight_bars =
    "count | 1   2   3   4   | 1   & 2   3   | 1   2   3   4   | 1   2   (3) 4   |\n"
    "chord | i7              | IV7           | i7              | v7              |\n"
    "A     | 5   5   3   5   | 5   5 7   5   | 5   3   3   5   | 5   5       7   |\n\n"
    "count | 1   2   3   4   | 1   & 2   3   | 1   2   3   4   | 1   2   (3) 4   |\n"
    "A     | 5   5   3   5   | 5   5 7   5   | 5   3   3   5   | 5   5       7   |\n";

}  // namespace

TEST_CASE("full lines end at the margin, within a tenth of a point") {
  test::Music music;
  const auto lines = music.lines(test::bass_lesson("bars-per-line = 4", eight_bars));
  REQUIRE(lines.size() == 2);
  for (const layout::MusicLine& line : lines) {
    const auto bar_lines = boxes(line, Part::bar_line, music.fonts);
    REQUIRE(!bar_lines.empty());
    double right = 0;
    for (const sheet::Box& box : bar_lines) right = std::max(right, box.right);
    CHECK(right == Approx(488).margin(0.1));
    CHECK(end_of_tab(line, music.fonts) == Approx(488).margin(0.1));
    CHECK(boxes(line, Part::tab_line, music.fonts).front().left == Approx(0).margin(0.1));
  }
}

TEST_CASE("bars to write in share the whole line, however few they are") {
  test::Music music;
  for (const int bars : {2, 4}) {
    const auto lines = music.lines(
        "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n[[example]]\n"
        "blank-bars = " +
        std::to_string(bars) + "\n");
    REQUIRE(lines.size() == 1);
    CHECK(end_of_tab(lines.front(), music.fonts) == Approx(488).margin(0.1));
  }
  const auto hidden = music.lines(test::bass_lesson("hide = [\"rhythm\"]", "count | 1 2 3 4 |\nA     | 5 7     |\n"));
  CHECK(end_of_tab(hidden.front(), music.fonts) == Approx(488).margin(0.1));
}

TEST_CASE("a doubled duration takes about 1.6 times the space") {
  // The MusicXML documentation's engraved examples: 1.60 to 1.64; 1.4 to 1.7 is accepted, and more is never less.
  test::Music music;
  const auto lines = music.lines(test::bass_lesson("",
                                                   "count | 1   2   3 & 4 |\nA     | 5   5   5 5 5 |\n\n"
                                                   "count | 1       3   4 |\nA     | 5       5   5 |\n"));
  REQUIRE(lines.size() == 1);
  const auto at = centres(lines[0], "slash");
  const double eighth = at.at("1:5/8") - at.at("1:1/2");
  const double quarter = at.at("1:1/4") - at.at("1:0");
  const double half = at.at("2:1/2") - at.at("2:0");
  CHECK(quarter / eighth > 1.4);
  CHECK(quarter / eighth < 1.7);
  CHECK(half / quarter > 1.4);
  CHECK(half / quarter < 1.7);
}

TEST_CASE("all that belongs to an event shares one centre") {
  test::Music music;
  const auto lines = music.lines(
      test::bass_lesson("labels = [\"key-degrees\", \"counts\"]",
                        "count | 1 & 2 3 la li 4 |\nG     |   2        4    |\nA     | 5   5 12 5    5 |\n"));
  REQUIRE(lines.size() == 1);
  const auto slash = centres(lines[0], "slash");
  const auto tab = centres(lines[0], "tab");
  REQUIRE(slash.size() == 7);
  for (const auto& [where, x] : tab) {
    INFO(where);
    CHECK(x == Approx(slash.at(where)).margin(0.01));
    const auto counts = boxes(lines[0], Part::count_label, music.fonts);
    const bool under = std::any_of(counts.begin(), counts.end(), [&, centre = x](const sheet::Box& b) {
      return b.left - 1 < centre && centre < b.right + 1;
    });
    CHECK(under);
  }
}

TEST_CASE("of labels that are hidden the rows keep their names, each with a line to write on under every note") {
  const std::string grid =
      "count  | 1   2   3   (4) |\n"
      "chord  | i7              |\n"
      "finger | 1   4           |\n"
      "A      | 5   8   10      |\n";
  const std::string no_fingers =
      "count  | 1   2   3   (4) |\n"
      "chord  | i7              |\n"
      "A      | 5   8   10      |\n";
  struct Hidden {
    std::string labels;
    std::string grid;
    std::string names;
    std::size_t lines;  // a rest is counted, and has neither degree nor finger
  };
  const std::vector<Hidden> all = {
      {"[\"notes\"]", no_fingers, "note, ", 3},
      {"[\"chord-degrees\"]", grid, "degree, finger, ", 6},
      {"[\"key-degrees\", \"chord-degrees\", \"notes\", \"fingers\", \"counts\"]", grid,
       "in key, in chord, note, finger, count, ", 16},
      {"[]", no_fingers, "", 0},
  };
  for (const Hidden& hidden : all) {
    INFO(hidden.labels);
    test::Music music;
    const auto lines = music.lines(test::bass_lesson("hide = [\"labels\"]\nlabels = " + hidden.labels, hidden.grid));
    REQUIRE(lines.size() == 1);
    std::string names;
    std::vector<double> baselines;
    sheet::walk(page_of(lines[0]), [&](const sheet::Item& item, sheet::GroupChain) {
      const auto* run = std::get_if<sheet::GlyphRun>(&item);
      if (run == nullptr || run->part != Part::row_name) return;
      names += run->text + ", ";
      baselines.push_back(run->glyphs.front().y);
    });
    CHECK(names == hidden.names);
    // Room to write above each line.
    for (std::size_t i = 1; i < baselines.size(); ++i) CHECK(baselines[i] - baselines[i - 1] >= 16);
    CHECK(boxes(lines[0], Part::answer, music.fonts).size() == hidden.lines);
    for (const Part part : {Part::degree_label, Part::note_label, Part::finger_label, Part::count_label}) {
      CHECK(boxes(lines[0], part, music.fonts).empty());
    }
  }
}

TEST_CASE("no tab line runs through a digit") {
  test::Music music;
  const auto lines =
      music.lines(test::bass_lesson("", "count | 1  2 3   4 |\nG     | 12 x (3) 5 |\nD     | 10       4 |\n"));
  const auto digits = boxes(lines[0], Part::digit, music.fonts);
  const auto tab_lines = boxes(lines[0], Part::tab_line, music.fonts);
  REQUIRE(digits.size() >= 7);
  for (const sheet::Box& digit : digits) {
    for (const sheet::Box& line : tab_lines) {
      const bool level = line.top < digit.bottom && digit.top < line.bottom;
      CHECK_FALSE((level && line.left < digit.right && digit.left < line.right));
    }
  }
}

TEST_CASE("stems are at least two and a half spaces long") {
  // Gould, Behind Bars (2011), p. 14: three and a half from the head's centre, never under two and a half.
  test::Music music;
  const auto lines = music.lines(test::bass_lesson("", "count | 1 e & a 2 & 3   4 |\nA     | 5 5 5 5 5 5 (5) x |\n"));
  const double space = music.look.measures.space;
  const auto stems = boxes(lines[0], Part::stem, music.fonts);
  REQUIRE(stems.size() == 8);
  for (const sheet::Box& stem : stems) CHECK(stem.bottom - stem.top >= 2.5 * space);
}

TEST_CASE("a tied note has no digit, and a smaller one where a new line begins") {
  test::Music music;
  const std::string grid = "count | 1 2 3 4 | 1 2 3 4 |\nA     | 5 5 5 5 |   5 5 5 |\n";
  const auto one = music.lines(test::bass_lesson("bars-per-line = 2", grid));
  REQUIRE(one.size() == 1);
  CHECK(boxes(one[0], Part::digit, music.fonts).size() == 7);
  const auto two = music.lines(test::bass_lesson("bars-per-line = 1", grid));
  REQUIRE(two.size() == 2);
  const auto digits = boxes(two[1], Part::digit, music.fonts);
  REQUIRE(digits.size() == 4);
  const double tied = digits[0].bottom - digits[0].top;
  const double full = digits[1].bottom - digits[1].top;
  // 80 %, but never under the template's least type.
  CHECK(tied / full == Approx(std::max(0.8, music.look.least_type / 10)).margin(0.01));
}

TEST_CASE("a string held while another is struck has a tie on the tab, and no digit") {
  test::Music music;
  const auto with = music.lines(test::bass_lesson("", "count | 1 2 3 4 |\nG     | 5 = 7   |\nA     | 3 5     |\n"));
  const auto without = music.lines(test::bass_lesson("", "count | 1 2 3 4 |\nG     | 5   7   |\nA     | 3 5     |\n"));
  CHECK(boxes(with[0], Part::slur, music.fonts).size() > 0);
  CHECK(boxes(without[0], Part::slur, music.fonts).empty());
  CHECK(boxes(with[0], Part::digit, music.fonts).size() == boxes(without[0], Part::digit, music.fonts).size());
}

TEST_CASE("rows of one kind lie on one baseline") {
  test::Music music;
  const auto lines = music.lines(test::bass_lesson("labels = [\"counts\"]", eight_bars));
  std::map<Part, std::set<long>> baselines;
  for (const layout::MusicLine& line : {lines[0]}) {
    sheet::walk(page_of(line), [&](const sheet::Item& item, sheet::GroupChain) {
      if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) {
        if (run->part == Part::count_label || run->part == Part::row_name) {
          baselines[Part::count_label].insert(std::lround(run->glyphs.at(0).y * 100));
        }
      }
    });
  }
  CHECK(baselines[Part::count_label].size() == 1);
}

TEST_CASE("lines have the bars that are asked for, and a warning where they cannot") {
  test::Music music;
  CHECK(music.lines(test::bass_lesson("bars-per-line = 2", eight_bars)).size() == 4);
  CHECK(music.diagnostics.list().empty());
  std::string dense = "count | 1e&a2e&a3e&a4e&a |";
  std::string notes = "A     | 5555555555555555 |";
  dense += " 1e&a2e&a3e&a4e&a | 1e&a2e&a3e&a4e&a | 1e&a2e&a3e&a4e&a |\n";
  notes = "D     | 5 5 5 5 5 5 5 5  | 5 5 5 5 5 5 5 5  | 5 5 5 5 5 5 5 5  | 5 5 5 5 5 5 5 5  |\n";
  const auto lines = music.lines(test::bass_lesson("bars-per-line = 8", dense + notes + "\n" + dense + notes));
  CHECK(lines.size() > 1);
  REQUIRE(music.diagnostics.list().size() == 1);
  CHECK(music.diagnostics.list()[0].code == source::Code::layout_bars_per_line);
  CHECK(music.diagnostics.list()[0].message == "not every line of example 1 has room for 8 bars");
}

TEST_CASE("seeded collisions are caught") {
  test::Music music;
  const auto lines = music.lines(test::bass_lesson("", "count | 1 2 3 4 |\nA     | 5 5 5 5 |\n"));
  sheet::Page page = page_of(lines[0]);
  CHECK(test::collisions(page, music.fonts).empty());
  // A digit set on another, and a rule drawn through the counts' row.
  layout::Type type(music.fonts, music.look, music.by_role);
  layout::Words digit = type.set(templates::Role::digit, "5", Part::digit);
  const auto digits = boxes(lines[0], Part::digit, music.fonts);
  for (sheet::Item& item : digit.items) {
    sheet::translate(item, digits[0].left + 1, digits[0].bottom);
    page.items.push_back(item);
  }
  const auto caught = [&](Part a, Part b) {
    const std::vector<test::Collision> all = test::collisions(page, music.fonts);
    return std::any_of(all.begin(), all.end(), [&](const test::Collision& one) {
      return (one.a.part == a && one.b.part == b) || (one.a.part == b && one.b.part == a);
    });
  };
  CHECK(caught(Part::digit, Part::digit));
  CHECK_FALSE(caught(Part::hairpin, Part::digit));
  const double y = digits[2].top + 3;
  page.items.emplace_back(sheet::Rule{Part::hairpin, {digits[2].left - 2, y}, {digits[2].right + 2, y}, 0.8, {}, 0, 0});
  CHECK(caught(Part::hairpin, Part::digit));
}

TEST_CASE("a small lesson's whole display list") {
  test::Music music;
  const sheet::Sheet sheet =
      music.pages(test::bass_lesson("title = \"The pulse\"\nlabels = [\"key-degrees\", \"counts\"]\ntempo = 92",
                                    "count |: 1   & 2 & (3) &   4   | 1   & 2  la li (3) 4 :|\n"
                                    "chord |  i7                    | IV7                  |\n"
                                    "mark  |  mf                    | <------  f           |\n"
                                    "D     |          7             |          h9          |\n"
                                    "A     |  5>            (3) 5   | 3     5     x      2_|\n"));
  check_golden("small-lesson.txt", sheet::dump(sheet, music.fonts.names()));
}
