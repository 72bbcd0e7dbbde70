// Every demo lesson and the contract's example, in every template, on both papers, with and without a capo: what holds
// of a page whatever stands on it.
#include <algorithm>
#include <map>
#include <set>

#include "layout/frame.h"
#include "layout/lesson_files.h"
#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "sheet/walk.h"

using namespace fretsheaf;
using sheet::Part;

namespace {

sheet::Box text_box(const sheet::Page& page, const layout::Frame& frame, const templates::Template& look, int number) {
  const double left = frame.text_left(number);
  return {left, look.measures.margin_top, left + frame.text_width, page.height - look.measures.margin_bottom};
}

// The lowest a letter reaches under the footer's baseline, and the highest an accidental over the running head.
constexpr double overhang = 0.3;

void check_inside(test::Music& music, const sheet::Page& page, sheet::Box box) {
  const double size = music.look.style(templates::Role::footer).size;
  box.top -= overhang * size;
  box.bottom += overhang * size;
  for (const test::InkBox& ink : test::outside(page, music.fonts, box, 2 * music.look.measures.tab_gap)) {
    // The last line of a chart and the last wire of a neck have their middle on the margin, as their cells
    // and frets are counted; half of the stroke lies beyond it.
    const bool on_margin = (ink.part == sheet::Part::form_chart || ink.part == sheet::Part::neck) &&
                           ink.box.left >= box.left - 0.75 && ink.box.right <= box.right + 0.75;
    if (on_margin) continue;
    FAIL_CHECK("outside the margins: " << test::describe(ink));
  }
}

// Text is black unless it is large enough for colour, and never under the least size.
void check_type(const test::Music& music, const sheet::Page& page) {
  std::set<int> music_fonts;
  for (const typeface::FontId font : music.by_role[static_cast<std::size_t>(templates::Role::music)]) {
    music_fonts.insert(font);
  }
  sheet::walk(page, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    if (run == nullptr || music_fonts.count(run->font) > 0) return;
    INFO(run->text);
    CHECK(run->size >= music.look.least_type - 1e-6);
    const bool black = run->color.red == 0 && run->color.green == 0 && run->color.blue == 0;
    const bool white = run->color == sheet::Color{255, 255, 255};  // in a filled mark
    CHECK((black || white || run->size >= 9));
  });
}

// For each example the lines of music that it has on each page.
using Lines = std::map<int, std::map<std::size_t, std::set<int>>>;

Lines lines_of(const sheet::Sheet& sheet) {
  Lines lines;
  for (std::size_t page = 0; page < sheet.pages.size(); ++page) {
    sheet::walk(sheet.pages[page], [&](const sheet::Item&, sheet::GroupChain chain) {
      int example = 0;
      for (const sheet::Group* group : chain) {
        if (group->example) example = group->example->number;
        if (group->event) lines[example][page].insert(group->event->line);
      }
    });
  }
  return lines;
}

// No single line of an example stands alone on a page.
void check_no_lone_line(const sheet::Sheet& sheet) {
  for (const auto& [example, pages] : lines_of(sheet)) {
    if (pages.size() < 2) continue;
    for (const auto& [page, lines] : pages) {
      INFO("example " << example << " on page " << page + 1);
      CHECK(lines.size() > 1);
    }
  }
}

void check_pages(test::Music& music, const sheet::Sheet& sheet, const layout::Frame& frame) {
  for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
    INFO("page " << i + 1);
    const sheet::Page& page = sheet.pages[i];
    check_inside(music, page, text_box(page, frame, music.look, static_cast<int>(i)));
    check_type(music, page);
    for (const test::Collision& collision : test::collisions(page, music.fonts)) {
      FAIL_CHECK(test::describe(collision));
    }
  }
}

void check_template(const std::string& name) {
  test::Music music(name);
  for (const test::LessonFile& lesson : test::demo_lessons(music.system)) {
    for (const lesson::Paper paper : {lesson::Paper::a4, lesson::Paper::letter}) {
      INFO(name << ", " << lesson.name << ", " << (paper == lesson::Paper::a4 ? "A4" : "Letter"));
      score::Score score = music.score_of(lesson.text);
      score.paper = paper;
      const sheet::Sheet sheet = layout::lay_out(score, {}, music.look, music.fonts, music.by_role, music.diagnostics);
      check_pages(music, sheet, layout::make_frame(paper, music.look));
      // A page of large print often has no room for a heading and two lines.
      if (!music.look.one_thing_a_line) check_no_lone_line(sheet);
    }
  }
  for (const auto& one : music.diagnostics.list()) {
    // The contract's example asks for four bars a line.
    if (one.code != source::Code::layout_bars_per_line) FAIL_CHECK(one.message);
  }
}

}  // namespace

TEST_CASE("music-stand holds every demo lesson on A4 and Letter") {
  check_template("music-stand");
}

TEST_CASE("no letter of a title reaches what stands under it, in any template, with a subtitle or without") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    for (const std::string more : {"", "series = \"Quay gang\"\n", "subtitle = \"Jigging by the quay\"\n"}) {
      CAPTURE(name, more);
      test::Music music(name);
      const auto pages = music.pages("title = \"Jiggy quay\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n" + more +
                                     "[[example]]\nblank-bars = 2\n");
      // The ink of the title and what is beside it, and the first of the words under them.
      const std::vector<test::InkBox> page = test::ink_boxes(pages.pages.front(), music.fonts);
      double under = 1e6;
      for (const test::InkBox& ink : page) {
        if (ink.part == sheet::Part::text) under = std::min(under, ink.box.top);
      }
      double lowest = 0;
      for (const test::InkBox& ink : page) {
        if (ink.part == sheet::Part::heading && ink.box.top < under) lowest = std::max(lowest, ink.box.bottom);
      }
      CHECK(under - lowest >= 1.5);
    }
  }
}

TEST_CASE("compact holds every demo lesson on A4 and Letter") {
  check_template("compact");
}

TEST_CASE("large print holds every demo lesson on A4 and Letter") {
  check_template("large-print");
}

TEST_CASE("chords as sounding and as fingered find room in every template") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    test::Music music(name);
    for (const int capo : {1, 3}) {
      INFO(name << ", capo " << capo);
      const std::string chords =
          "title = \"Jetty\"\nkey = \"Bb major\"\ninstrument = \"guitar\"\ncapo = " + std::to_string(capo) +
          "\n[[example]]\ntab = '''\n"
          "count | 1    2    3    4     | 1    2    3    4     | 1    2    3    4     | 1    2    3    4     |\n"
          "chord | Bbmaj7         Gm7   | Ebmaj9    F13        | Bb/D      G7b9       | Cm7b5          F7#5  |\n"
          "B     | 1    3    1    3     | 1    3    1    3     | 1    3    1    3     | 1    3    1    3     |\n'''\n";
      const score::Score score = music.score_of(chords);
      const sheet::Sheet sheet = layout::lay_out(score, {}, music.look, music.fonts, music.by_role, music.diagnostics);
      check_pages(music, sheet, layout::make_frame(score.paper, music.look));
    }
  }
}
