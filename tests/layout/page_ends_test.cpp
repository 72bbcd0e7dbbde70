// Where pages end: every demo lesson and every lesson that shows a notation, on both papers.
#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include "layout/frame.h"
#include "layout/furniture.h"
#include "layout/ink.h"
#include "layout/lesson_files.h"
#include "sheet/walk.h"

using namespace fretsheaf;

namespace {

std::vector<test::LessonFile> all_lessons(platform::System& system) {
  std::vector<test::LessonFile> files = test::lesson_files(system);
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/demo-lessons")) {
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(".lesson.toml")) continue;
    const auto read = system.read(entry.path().string(), 1 << 22);
    REQUIRE(std::holds_alternative<std::string>(read));
    files.push_back({name, std::get<std::string>(read)});
  }
  return files;
}

// What an example has on a page.
struct Part {
  std::set<int> lines;  // of music, from 1
  double top = 1e9;     // of all its ink
  double bottom = -1e9;
};
using Parts = std::map<std::size_t, Part>;  // by page

// The parts of each example.
std::map<int, Parts> parts_of(test::Music& music, const sheet::Sheet& sheet) {
  layout::Type type(music.fonts, music.look, music.by_role);
  std::map<int, Parts> found;
  for (std::size_t page = 0; page < sheet.pages.size(); ++page) {
    sheet::walk(sheet.pages[page], [&](const sheet::Item& item, sheet::GroupChain chain) {
      const auto in_example = [](const sheet::Group* group) { return group->example.has_value(); };
      const auto example = std::find_if(chain.begin(), chain.end(), in_example);
      if (example == chain.end()) return;
      Part& part = found[(*example)->example->number][page];
      for (const sheet::Group* group : chain) {
        if (group->event) part.lines.insert(group->event->line);
      }
      const std::vector<sheet::Item> one = {item};
      if (const auto ink = layout::ink_of(one, type)) {
        part.top = std::min(part.top, ink->top);
        part.bottom = std::max(part.bottom, ink->bottom);
      }
    });
  }
  return found;
}

// Lays every lesson out on both papers.
template <typename Visit>
void each_sheet(test::Music& music, Visit visit) {
  for (const test::LessonFile& file : all_lessons(music.system)) {
    for (const lesson::Paper paper : {lesson::Paper::a4, lesson::Paper::letter}) {
      score::Score score = music.score_of(file.text);
      score.paper = paper;
      const sheet::Sheet sheet = layout::lay_out(score, {}, music.look, music.fonts, music.by_role, music.diagnostics);
      INFO(music.look.name << ", " << file.name << ", " << (paper == lesson::Paper::a4 ? "A4" : "Letter"));
      visit(score, sheet);
    }
  }
}

}  // namespace

TEST_CASE("a heading stands on the page of its first line of music") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    test::Music music(name);
    each_sheet(music, [&](const score::Score&, const sheet::Sheet& sheet) {
      for (const auto& [example, parts] : parts_of(music, sheet)) {
        INFO("example " << example);
        CHECK(sheet.bookmarks.at(static_cast<std::size_t>(example) - 1).page == static_cast<int>(parts.begin()->first));
      }
    });
  }
}

TEST_CASE("under every title there is music, or text that fills the page") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    test::Music music(name);
    layout::Type type(music.fonts, music.look, music.by_role);
    layout::Setter setter{type, "en", words::Language::en, 1};
    each_sheet(music, [&](const score::Score& score, const sheet::Sheet& sheet) {
      if (sheet.bookmarks.at(0).page == 0) return;
      const layout::Frame frame = layout::make_frame(score.paper, music.look);
      const double foot = layout::Furniture(score, frame, 88, setter).room().first_bottom;
      double text = 0;
      sheet::walk(sheet.pages.at(0), [&](const sheet::Item& item, sheet::GroupChain) {
        const auto* run = std::get_if<sheet::GlyphRun>(&item);
        if (run != nullptr && run->glyphs.front().y < foot) text = std::max(text, run->glyphs.front().y);
      });
      CHECK(text > 0.7 * foot);
    });
  }
}

TEST_CASE(
    "in large print two lines of music are parted only where a page would have no room or leave much of itself blank") {
  test::Music music("large-print");
  layout::Type type(music.fonts, music.look, music.by_role);
  layout::Setter setter{type, "en", words::Language::en, 1};
  int together = 0;
  each_sheet(music, [&](const score::Score& score, const sheet::Sheet& sheet) {
    const layout::Frame frame = layout::make_frame(score.paper, music.look);
    const layout::PageRoom room = layout::Furniture(score, frame, 88, setter).room();
    for (const auto& [example, parts] : parts_of(music, sheet)) {
      std::size_t lines = 0;
      for (const auto& [page, part] : parts) lines += part.lines.size();
      if (lines != 2) continue;
      if (parts.size() == 1) {
        ++together;
        continue;
      }
      const Part& first = parts.begin()->second;
      const Part& second = parts.rbegin()->second;
      const double stood = first.bottom - sheet.bookmarks.at(static_cast<std::size_t>(example) - 1).y;
      const double needed = stood + music.look.measures.line_gap + second.bottom - second.top;
      const double free = room.bottom - sheet.bookmarks.at(static_cast<std::size_t>(example) - 1).y;
      INFO("example " << example << " needs " << needed << " and would leave " << free << " of "
                      << room.bottom - room.later_top);
      CHECK((needed > room.bottom - room.later_top || free > 0.4 * (room.bottom - room.later_top)));
    }
  });
  CHECK(together > 15);
}

TEST_CASE("where title, heading and two lines have no room, one line stands under the title rather than nothing") {
  test::Music music("large-print");
  const std::string grid =
      "count | 1   2   3   4   | 1   2   3   4   |\n"
      "A     | 5   3   5   7   | 5   3   5   7   |\n";
  const sheet::Sheet sheet = music.pages(test::bass_lesson(
      "staves = [\"slash\", \"notes\", \"tab\"]\nlabels = [\"counts\"]\nbars-per-line = 1\ntitle = \"Drift\"", grid));
  const auto parts = parts_of(music, sheet);
  REQUIRE(parts.at(1).size() == 2);
  CHECK(parts.at(1).at(0).lines.size() == 1);
  CHECK(parts.at(1).at(1).lines.size() == 1);
  CHECK(sheet.bookmarks.at(0).page == 0);
}
