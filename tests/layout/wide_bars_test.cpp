// Bars that no line has room for, and lines that have not the bars asked for.
#include <algorithm>
#include <set>

#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "sheet/walk.h"
#include "theory/rational.h"

using namespace fretsheaf;
using sheet::Part;

namespace {

// A 4/4 bar of equal notes, so many to a beat, at frets of two figures.
std::string dense_bar(int in_a_beat) {
  std::string counts = "count |";
  std::string frets = "A     |";
  for (int i = 0; i < 4 * in_a_beat; ++i) {
    const theory::Rational part(i % in_a_beat, in_a_beat);
    std::string count = std::to_string(i / in_a_beat + 1);
    if (part != theory::Rational(0)) count = "+" + part.to_string();
    if (part == theory::Rational(1, 2)) count = "&";
    if (part == theory::Rational(1, 4)) count = "e";
    if (part == theory::Rational(3, 4)) count = "a";
    counts += " " + count + std::string(6 - count.size(), ' ');
    frets += " " + std::to_string(10 + i % 5) + "    ";
  }
  return counts + "|\n" + frets + "|\n";
}

// Where the events of a line's tab begin in their bar, in order.
std::vector<std::string> starts(const layout::MusicLine& line) {
  std::vector<std::pair<double, std::string>> found;
  std::set<const sheet::Group*> seen;
  sheet::walk(sheet::Page{0, 0, line.items}, [&](const sheet::Item&, sheet::GroupChain chain) {
    for (const sheet::Group* group : chain) {
      if (group->event && group->event->staff == "tab" && seen.insert(group).second) {
        found.emplace_back(group->event->x, group->event->at);
      }
    }
  });
  std::sort(found.begin(), found.end());
  std::vector<std::string> at;
  for (auto& [x, where] : found) at.push_back(std::move(where));
  return at;
}

void check_within(test::Music& music, const layout::MusicLine& line, double width) {
  const sheet::Box text{0, -1e6, width, 1e6};
  for (const test::InkBox& ink : test::outside(sheet::Page{0, 0, line.items}, music.fonts, text, 40)) {
    FAIL_CHECK("outside the line: " << test::describe(ink));
  }
}

}  // namespace

TEST_CASE("a bar too wide for a line is broken at its beats, and keeps all its notes") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    for (const int in_a_beat : {4, 8, 16}) {
      INFO(name << ", " << in_a_beat << " notes to a beat");
      test::Music music(name);
      const auto lines = music.lines(test::bass_lesson("", dense_bar(in_a_beat)));
      std::size_t notes = 0;
      for (const layout::MusicLine& line : lines) {
        check_within(music, line, 488);
        const std::vector<std::string> at = starts(line);
        REQUIRE_FALSE(at.empty());
        notes += at.size();
        // Wherever a single beat finds room, a line begins with one.
        if (in_a_beat * (music.look.style(templates::Role::digit).size * 1.3 + 3) < 400) {
          CHECK((at.front() == "0" || at.front() == "1/4" || at.front() == "1/2" || at.front() == "3/4"));
        }
      }
      CHECK(notes == static_cast<std::size_t>(4 * in_a_beat));
    }
  }
}

TEST_CASE("a tuplet that no line has room for is set tighter, and nothing is clipped") {
  test::Music music("large-print");
  std::string counts = "count |";
  std::string frets = "A     |";
  for (int i = 0; i < 28; ++i) {
    const theory::Rational at(i, 7);
    const theory::Rational part = at - theory::Rational(at.floor());
    const std::string count = part == theory::Rational(0) ? std::to_string(at.floor() + 1) : "+" + part.to_string();
    counts += " " + count + std::string(7 - count.size(), ' ');
    frets += " " + std::to_string(10 + i % 5) + "     ";
  }
  std::size_t notes = 0;
  for (const layout::MusicLine& line : music.lines(test::bass_lesson("", counts + "|\n" + frets + "|\n"))) {
    check_within(music, line, 488);
    notes += starts(line).size();
  }
  CHECK(notes == 28);
}

TEST_CASE("long words over and under the music stay within the line") {
  const std::string words =
      "\"These words are too long for any line, and yet a teacher wrote them under the first note "
      "of the bar, because there is much to say of it and no other place where it is read\"";
  for (const char* name : {"music-stand", "large-print"}) {
    for (const char* row : {"text   ", "section"}) {
      INFO(name << ", " << row);
      test::Music music(name);
      const std::string room(words.size() - 7, ' ');
      const std::string grid = "count   | 1 2 3 4" + room + " |\nA       | 5 5 5 5" + room + " |\n" + row + " | " +
                               words + " |\n";
      for (const layout::MusicLine& line : music.lines(test::bass_lesson("", grid))) check_within(music, line, 488);
    }
  }
}

TEST_CASE("bars a line are as asked for in every template, or a warning says where they cannot be") {
  const std::string bar =
      "count | 1   2   3   4   | 1   2   3   4   | 1   2   3   4   | 1   2   3   4   |\n"
      "A     | 5   3   5   7   | 5   3   5   7   | 5   3   5   7   | 5   3   5   7   |\n";
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    for (const int wanted : {1, 2, 3, 4, 6}) {
      INFO(name << ", " << wanted << " bars a line");
      test::Music music(name);
      const std::string keys = "bars-per-line = " + std::to_string(wanted);
      const auto lines = music.lines(test::bass_lesson(keys, bar + "\n" + bar + "\n" + bar));
      bool obeyed = true;
      for (std::size_t i = 0; i < lines.size(); ++i) {
        const int bars = lines[i].last_bar - lines[i].first_bar + 1;
        CHECK(bars <= wanted);
        obeyed = obeyed && (bars == wanted || i + 1 == lines.size());
      }
      CHECK(music.diagnostics.list().empty() == obeyed);
      for (const auto& one : music.diagnostics.list()) {
        CHECK(one.code == source::Code::layout_bars_per_line);
        CHECK(one.range.end > one.range.begin);
      }
      if (std::string(name) != "large-print" && wanted <= 4) CHECK(obeyed);
    }
  }
}
