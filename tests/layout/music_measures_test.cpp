// The rules of engraving in numbers, on the display lists of the lessons that show each notation.
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

#include "layout/lesson_files.h"
#include "layout/music_collisions.h"
#include "sheet/walk.h"

using namespace fretsheaf;
using sheet::Part;

namespace {

const std::vector<std::string> all_staves = {"[\"slash\", \"notes\", \"tab\"]", "[\"slash\", \"tab\"]",
                                             "[\"notes\", \"tab\"]", "[\"tab\"]"};

struct Extent {
  double top = 1e9;
  double bottom = -1e9;
  void take(double y) {
    top = std::min(top, y);
    bottom = std::max(bottom, y);
  }
};

// How far the baselines of words and the lines of staves reach, by part. The slash staff is one line.
std::map<Part, Extent> extents(const layout::MusicLine& line) {
  std::map<Part, Extent> found;
  sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
    if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) found[run->part].take(run->glyphs.at(0).y);
    const auto* rule = std::get_if<sheet::Rule>(&item);
    if (rule != nullptr && rule->from.y == rule->to.y) found[rule->part].take(rule->from.y);
  });
  return found;
}

// Calls `visit(line, example, name, is_last)` for each line of each lesson.
template <typename Visit>
void each_line(test::Music& music, const std::string& staves, Visit visit) {
  layout::Type type(music.fonts, music.look, music.by_role);
  for (const test::LessonFile& file : test::lesson_files(music.system)) {
    const score::Score score = music.score_of(test::with_staves(file.text, staves));
    for (const score::Example& example : score.examples) {
      const auto lines = layout::engrave(example, score, 488, type, music.diagnostics);
      for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::string name = file.name + " " + staves + ", example " + std::to_string(example.number) + ", line " +
                                 std::to_string(i + 1);
        visit(lines[i], example, name, i + 1 == lines.size());
      }
    }
  }
}

// The centres of the events of the uppermost staff, by bar and place.
std::map<int, std::map<double, double>> centres(const layout::MusicLine& line) {
  std::map<int, std::map<double, double>> found;
  sheet::walk(line.items, [&](const sheet::Item&, sheet::GroupChain chain) {
    for (const sheet::Group* group : chain) {
      if (!group->event) continue;
      const std::string& at = group->event->at;
      const auto slash = at.find('/');
      const double place =
          slash == std::string::npos ? std::stod(at) : std::stod(at.substr(0, slash)) / std::stod(at.substr(slash + 1));
      found[group->event->bar][place] = group->event->x;
    }
  });
  return found;
}

std::string bass(const std::string& keys, const std::string& grid) {
  return test::bass_lesson(keys, grid);
}

}  // namespace

namespace {

// Common practice from the top to the tab, below it the house's order; what shares one row, or moves among others by
// their outlines, is not asked about.
const std::vector<Part> row_order = {Part::road_sign,   Part::chord_symbol, Part::staff_line, Part::dynamic,
                                     Part::tab_line,    Part::degree_label, Part::note_label, Part::finger_label,
                                     Part::count_label, Part::lyric,        Part::text};

// The pairs of neighbouring rows of a line that do not stand above each other in that order.
std::vector<std::string> misplaced_rows(const layout::MusicLine& line) {
  const std::map<Part, Extent> rows = extents(line);
  std::vector<std::string> found;
  std::optional<Part> above;
  for (const Part part : row_order) {
    if (!rows.contains(part)) continue;
    if (above && rows.at(*above).bottom >= rows.at(part).top) {
      found.push_back(std::string(sheet::part_name(part)) + " over " + std::string(sheet::part_name(*above)));
    }
    above = part;
  }
  return found;
}

void move_part(std::vector<sheet::Item>& items, Part part, double down) {
  for (sheet::Item& item : items) {
    if (auto* group = std::get_if<sheet::Group>(&item)) move_part(group->items, part, down);
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    const auto* rule = std::get_if<sheet::Rule>(&item);
    if ((run != nullptr && run->part == part) || (rule != nullptr && rule->part == part)) {
      sheet::translate(item, 0, down);
    }
  }
}

}  // namespace

TEST_CASE("the rows of every line stand in their order") {
  test::Music music;
  for (const std::string& staves : all_staves) {
    each_line(music, staves, [&](const layout::MusicLine& line, const score::Example&, const std::string& name, bool) {
      INFO(name);
      CHECK(misplaced_rows(line) == std::vector<std::string>{});
      const std::map<Part, Extent> rows = extents(line);
      if (rows.contains(Part::chord_symbol)) {
        // A raised part of a symbol and the bar's number share the row.
        const Extent& chords = rows.at(Part::chord_symbol);
        CHECK(chords.bottom - chords.top < 5);
      }
    });
  }
}

TEST_CASE("a row over the one it belongs under is caught") {
  test::Music music;
  const auto line =
      music
          .lines(bass("labels = [\"key-degrees\", \"notes\", \"fingers\", \"counts\"]",
                      "count  | 1    2   3   4   |\nchord  | Dm7              |\nroad   | segno            |\n"
                      "mark   | mf               |\nD      | 5    5   3   5   |\nfinger | 3    3   1   3   |\n"
                      "lyric  | low  low sea is  |\ntext   | slowly           |\n"))
          .at(0);
  CHECK(misplaced_rows(line).empty());
  const std::map<Part, Extent> rows = extents(line);
  int seeded = 0;
  for (std::size_t i = 1; i < row_order.size(); ++i) {
    INFO(sheet::part_name(row_order[i]));
    REQUIRE(rows.contains(row_order[i]));
    layout::MusicLine wrong = line;
    // Up until its lowest stands where the topmost of the row above does.
    move_part(wrong.items, row_order[i], rows.at(row_order[i - 1]).top - rows.at(row_order[i]).bottom);
    const std::vector<std::string> found = misplaced_rows(wrong);
    const std::string expected =
        std::string(sheet::part_name(row_order[i])) + " over " + std::string(sheet::part_name(row_order[i - 1]));
    CHECK(std::find(found.begin(), found.end(), expected) != found.end());
    ++seeded;
  }
  CHECK(seeded == 10);
}

TEST_CASE("rows keep the measured distances where nothing is in their way") {
  // The house's measures, in points.
  test::Music music;
  const std::string grid =
      "count | 1   2   3   4   |\nchord | i7              |\nmark  | mf              |\nD     | 5   5   3   5   |\n";
  const auto slash =
      extents(music.lines(bass("labels = [\"key-degrees\", \"counts\"]\nstaves = [\"slash\", \"tab\"]", grid)).at(0));
  const auto y = [](const std::map<Part, Extent>& rows, Part part) { return rows.at(part); };
  CHECK(y(slash, Part::staff_line).top - y(slash, Part::chord_symbol).bottom == Approx(31));
  CHECK(y(slash, Part::tab_line).top - y(slash, Part::staff_line).top == Approx(34));
  CHECK(y(slash, Part::tab_line).bottom - y(slash, Part::tab_line).top == Approx(24));
  CHECK(y(slash, Part::degree_label).top - y(slash, Part::tab_line).bottom == Approx(17));
  CHECK(y(slash, Part::count_label).top - y(slash, Part::degree_label).top == Approx(12));
  const auto notes = extents(music.lines(bass("staves = [\"slash\", \"notes\", \"tab\"]", grid)).at(0));
  // The slash staff's line is the topmost of the six.
  CHECK(y(notes, Part::staff_line).bottom - y(notes, Part::staff_line).top == Approx(29 + 22));
  CHECK(y(notes, Part::tab_line).top - y(notes, Part::staff_line).bottom == Approx(31));
}

TEST_CASE("space grows with duration, by 1.4 to 1.7 where it doubles, wherever no clearance is at work") {
  // The engraved examples of the MusicXML documentation have 1.60 to 1.64.
  test::Music music;
  layout::Type type(music.fonts, music.look, music.by_role);
  const std::string grid =
      "count | 1   e   &   a   2   &   3   | 1   2   3   | 1   &   2   & a 3   4   | 1   a   2   &   3 e 4 |\n"
      "A     | 5   5   5   5   5   5   5   | 5   5   5   | 5   5   5   5 5 5   5   | 5   5   5   5   5 5 5 |\n\n"
      "count | 1   2   4   | 1   4   | 1   &   3   & 4   & | 1   2   &   4   |\n"
      "A     | 5   5   5   | 5   5   | 5   5   5   5 5   5 | 5   5   5   5   |\n";
  for (const std::string& staves : all_staves) {
    for (const int bars : {1, 2, 3}) {
      const auto lines = music.lines(bass("staves = " + staves + "\nbars-per-line = " + std::to_string(bars), grid));
      for (const layout::MusicLine& line : lines) {
        std::map<double, std::set<double>> spaces;  // by duration
        for (const auto& [bar, places] : centres(line)) {
          for (auto at = places.begin(); at != places.end() && std::next(at) != places.end(); ++at) {
            spaces[std::next(at)->first - at->first].insert(std::next(at)->second - at->second);
          }
        }
        // Where two events stand as close as digits may, the clearance decides.
        const double least = type.width(templates::Role::digit, "12") + music.look.measures.clearance;
        double before = 0;
        for (const auto& [duration, found] : spaces) {
          INFO(staves << ", " << bars << " bars, duration " << duration);
          if (*found.begin() <= least + 0.05) continue;
          CHECK(*found.rbegin() - *found.begin() < 0.1);
          CHECK(*found.begin() > before);
          before = *found.rbegin();
          const auto twice = spaces.find(2 * duration);
          if (twice == spaces.end()) continue;
          CHECK(*twice->second.begin() / *found.begin() > 1.4);
          CHECK(*twice->second.begin() / *found.begin() < 1.7);
        }
      }
    }
  }
}

TEST_CASE("stems of every lesson are at least two and a half spaces long") {
  // Gould, Behind Bars (2011), p. 14 (as check-values has it). Grace notes have thinner stems; the half notes of a tab
  // alone have half a stem.
  test::Music music;
  const double space = music.look.measures.space;
  int stems = 0;
  for (const std::string& staves : {all_staves[0], all_staves[2]}) {
    each_line(music, staves, [&](const layout::MusicLine& line, const score::Example&, const std::string& name, bool) {
      sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
        const auto* rule = std::get_if<sheet::Rule>(&item);
        if (rule == nullptr || rule->part != Part::stem || rule->width < 0.11 * space) return;
        ++stems;
        INFO(name);
        CHECK(std::abs(rule->to.y - rule->from.y) >= 2.5 * space - 1e-6);
      });
    });
  }
  CHECK(stems > 1000);
}

TEST_CASE("beams slant by a space at most, and are level over slashes") {
  test::Music music;
  const double space = music.look.measures.space;
  int slanted = 0;
  each_line(music, all_staves[0],
            [&](const layout::MusicLine& line, const score::Example&, const std::string& name, bool) {
              sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
                INFO(name);
                if (const auto* rule = std::get_if<sheet::Rule>(&item); rule != nullptr && rule->part == Part::beam) {
                  CHECK(rule->from.y == rule->to.y);
                }
                const auto* path = std::get_if<sheet::Path>(&item);
                if (path == nullptr || path->part != Part::beam) return;
                const sheet::Point a = path->segments.at(0).end;
                const sheet::Point b = path->segments.at(1).end;
                // A beam reaches half a stem beyond its stems at either end.
                const double beyond = (b.x - a.x) / (b.x - a.x - 0.12 * space);
                CHECK(std::abs(b.y - a.y) <= space * beyond + 1e-6);
                CHECK(std::abs(b.y - a.y) <= 0.2 * (b.x - a.x) + 1e-6);
                if (a.y != b.y) ++slanted;
              });
            });
  CHECK(slanted > 20);
}

TEST_CASE("every full line of every lesson ends at the margin, within a tenth of a point") {
  test::Music music;
  int full = 0;
  for (const std::string& staves : all_staves) {
    each_line(
        music, staves, [&](const layout::MusicLine& line, const score::Example&, const std::string& name, bool last) {
          double end = 0;
          sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
            const auto* rule = std::get_if<sheet::Rule>(&item);
            const bool staff = rule != nullptr && (rule->part == Part::staff_line || rule->part == Part::tab_line);
            if (staff) end = std::max(end, rule->to.x);
          });
          INFO(name);
          CHECK(end < 488.1);
          if (last) return;
          CHECK(end == Approx(488).margin(0.1));
          ++full;
        });
  }
  CHECK(full > 40);
}
