// Clear and large print: sizes after RNIB and UKAAF G003 (clear print 12 points at least, large print 16, better 18),
// contrast after WCAG 2.2 (1.4.3: words 4.5 to 1; 1.4.11: what else must be seen 3 to 1; 1.4.1: nothing by colour
// alone), over the display lists of every demo lesson in every template.
#include <catch2/catch.hpp>
#include <cmath>
#include <set>

#include "layout/lesson_files.h"
#include "layout/music_fixture.h"
#include "layout/page_fixture.h"

using namespace fretsheaf;
using sheet::Color;
using sheet::Part;
using sheet::Point;
using sheet::Tag;

namespace {

constexpr Color black{0, 0, 0};
constexpr Color white{255, 255, 255};

// WCAG 2.2, "relative luminance" and "contrast ratio".
double luminance(Color color) {
  const auto linear = [](std::uint8_t part) {
    const double share = part / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(color.red) + 0.7152 * linear(color.green) + 0.0722 * linear(color.blue);
}

double contrast(Color a, Color b) {
  const double one = luminance(a);
  const double other = luminance(b);
  return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

sheet::Box box_of(const sheet::Path& path) {
  sheet::Box box{1e9, 1e9, -1e9, -1e9};
  for (const sheet::Segment& segment : path.segments) {
    if (segment.kind == sheet::Segment::Kind::close) continue;
    box = {std::min(box.left, segment.end.x), std::min(box.top, segment.end.y), std::max(box.right, segment.end.x),
           std::max(box.bottom, segment.end.y)};
  }
  return box;
}

bool holds(const sheet::Box& box, Point point) {
  return point.x >= box.left && point.x <= box.right && point.y >= box.top && point.y <= box.bottom;
}

// What is filled lies under all that is drawn after it.
class Grounds {
 public:
  Color under(Point point) const {
    for (auto ground = filled_.rbegin(); ground != filled_.rend(); ++ground) {
      if (holds(ground->box, point)) return ground->color;
    }
    return white;
  }

  void add(const sheet::Path& path) { filled_.push_back({box_of(path), *path.fill}); }

 private:
  struct Filled {
    sheet::Box box;
    Color color;
  };
  std::vector<Filled> filled_;
};

// Shades that say nothing by themselves: what they set apart is told by words or lines too.
bool is_shade(const sheet::Path& path) {
  return path.part == Part::form_shade || path.part == Part::answer || path.part == Part::neck;
}

Point middle(const sheet::GlyphRun& run) {
  const double rise = run.size / 3;
  return {(run.glyphs.front().x + run.glyphs.back().x) / 2 + run.size / 4, run.glyphs.front().y - rise};
}

void check_words(const sheet::GlyphRun& run, const Grounds& grounds) {
  if (run.glyphs.empty()) return;
  INFO("\"" << run.text << "\", " << sheet::part_name(run.part));
  CHECK(contrast(run.color, grounds.under(middle(run))) >= 4.5);
}

void check_line(const sheet::Rule& rule, const Grounds& grounds) {
  const Point at{(rule.from.x + rule.to.x) / 2, (rule.from.y + rule.to.y) / 2};
  INFO(sheet::part_name(rule.part));
  CHECK(contrast(rule.color, grounds.under(at)) >= 3);
}

void check_path(const sheet::Path& path, Grounds& grounds) {
  const sheet::Box box = box_of(path);
  const Color ground = grounds.under({(box.left + box.right) / 2, (box.top + box.bottom) / 2});
  INFO(sheet::part_name(path.part));
  if (path.stroke) CHECK(contrast(*path.stroke, ground) >= 3);
  if (!path.fill) return;
  if (!path.stroke && !is_shade(path)) CHECK(contrast(*path.fill, ground) >= 3);
  // A small sign is no ground, and a ring is one within its line.
  if (is_shade(path) || path.part == Part::neck_mark) grounds.add(path);
}

void check_contrast(const sheet::Page& page) {
  Grounds grounds;
  sheet::walk(page, [&](const sheet::Item& item, sheet::GroupChain) {
    if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) check_words(*run, grounds);
    if (const auto* rule = std::get_if<sheet::Rule>(&item)) check_line(*rule, grounds);
    if (const auto* path = std::get_if<sheet::Path>(&item)) check_path(*path, grounds);
  });
}

bool is_in(sheet::GroupChain chain, Tag tag) {
  return std::ranges::any_of(chain, [&](const sheet::Group* group) { return group->tag == tag; });
}

// All colours that there are, and by what else each is told. A new one has to be thought of here.
void check_colours(const sheet::Page& page, Color accent) {
  std::size_t shades = 0;
  sheet::walk(page, [&](const sheet::Item& item, sheet::GroupChain chain) {
    if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) {
      if (run->color == black) return;
      INFO("\"" << run->text << "\"");
      // "EXAMPLE 1" is words; a white label lies on a root, which is square.
      const bool label = run->color == accent && is_in(chain, Tag::heading2);
      const bool root = run->color == white && run->part == Part::neck_label;
      CHECK((label || root));
    }
    if (const auto* rule = std::get_if<sheet::Rule>(&item)) {
      if (rule->color == black) return;
      INFO(sheet::part_name(rule->part));
      CHECK((rule->color == accent && is_in(chain, Tag::link)));  // a link is underlined
    }
    if (const auto* path = std::get_if<sheet::Path>(&item)) {
      if (!path->fill || *path->fill == black || *path->fill == white) return;
      INFO(sheet::part_name(path->part));
      CHECK(is_shade(*path));  // inlays have their frets' numbers, for the rest see below
      if (path->part == Part::form_shade) ++shades;
    }
  });
  // A shaded bar of a form is marked with a word, and under the form it is said what it means.
  if (shades > 0)
    CHECK(test::spelled(page.items).find(std::string(words::word(words::Language::en, words::Word::here))) !=
          std::string::npos);
}

}  // namespace

TEST_CASE("contrast is reckoned as WCAG has it") {
  const auto on_white = [](int grey) {
    const auto part = static_cast<std::uint8_t>(grey);
    return contrast({part, part, part}, white);
  };
  CHECK(on_white(0) == Approx(21));
  CHECK(on_white(0x76) == Approx(4.54).margin(0.005));
  CHECK(on_white(0x77) == Approx(4.48).margin(0.005));
  CHECK(on_white(0x94) == Approx(3.03).margin(0.005));
  CHECK(on_white(0x95) < 3);
}

TEST_CASE("every colour of a page stands out from its ground, and none says anything alone") {
  for (const std::string name : {"music-stand", "compact", "large-print"}) {
    test::Music music(name);
    const Color accent{music.look.accent.red, music.look.accent.green, music.look.accent.blue};
    for (const test::LessonFile& lesson : test::demo_lessons(music.system)) {
      INFO(name << ", " << lesson.name);
      for (const sheet::Page& page : music.pages(lesson.text).pages) {
        check_contrast(page);
        check_colours(page, accent);
      }
    }
  }
}

TEST_CASE("large print has no words under 16 points, and tab digits of 16 at least") {
  test::Music music("large-print");
  const auto& music_fonts = music.by_role[static_cast<std::size_t>(templates::Role::music)];
  std::size_t digits = 0;
  for (const test::LessonFile& lesson : test::demo_lessons(music.system)) {
    for (const sheet::Page& page : music.pages(lesson.text).pages) {
      for (const sheet::GlyphRun& run : test::all_of<sheet::GlyphRun>(page.items)) {
        // Signs of the music font are as large as the staff asks.
        if (std::ranges::find(music_fonts, run.font) != music_fonts.end()) continue;
        INFO(lesson.name << ": \"" << run.text << "\", " << sheet::part_name(run.part));
        CHECK(run.size >= 16 - 1e-9);
        digits += run.part == Part::digit ? 1 : 0;
      }
    }
  }
  CHECK(digits > 300);
}

TEST_CASE("a root on a neck is told by its shape") {
  test::Music music;
  const auto sheet = music.pages(
      "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n[[example]]\nneck = { of = \"key\" }\ntab = "
      "'''\n"
      "count | 1 2 3 4 |\nA     | 5 7 5 8 |\n'''\n");
  std::set<std::pair<bool, bool>> kinds;  // filled black, all straight
  for (const sheet::Path& path : test::all_of<sheet::Path>(sheet.pages.at(0).items)) {
    if (path.part != Part::neck_mark) continue;
    const bool straight = std::ranges::none_of(
        path.segments, [](const sheet::Segment& segment) { return segment.kind == sheet::Segment::Kind::curve; });
    kinds.insert({path.fill == black, straight});
  }
  CHECK(kinds == std::set<std::pair<bool, bool>>{{true, true}, {false, false}});
}
