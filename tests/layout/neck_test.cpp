#include "layout/neck.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "layout/ink.h"
#include "layout/music_fixture.h"
#include "layout/page_fixture.h"

using namespace fretsheaf;
using namespace fretsheaf::test;
using layout::Block;
using layout::Blocks;
using sheet::Part;

namespace {

score::Score on(const char* name) {
  score::Score score;
  const fretboard::Instrument& instrument = *fretboard::find_instrument(name);
  score.neck = {instrument.tuning, instrument.frets, 0, instrument.short_fifth_string};
  score.string_letters = fretboard::string_labels(score.neck);
  return score;
}

score::NeckPicture picture(int first, int last, std::vector<score::NeckMark> marks = {}) {
  return {"D Dorian on the neck", first, last, std::move(marks), {}};
}

// Upright lines from the top string to the last one.
std::vector<sheet::Rule> wires(const Block& block) {
  std::vector<sheet::Rule> found;
  for (const sheet::Rule& rule : all_of<sheet::Rule>(block.items)) {
    if (rule.part == Part::neck && rule.from.x == rule.to.x) found.push_back(rule);
  }
  return found;
}

std::vector<sheet::Rule> strings(const Block& block) {
  std::vector<sheet::Rule> found;
  for (const sheet::Rule& rule : all_of<sheet::Rule>(block.items)) {
    if (rule.part == Part::neck && rule.from.y == rule.to.y) found.push_back(rule);
  }
  return found;
}

sheet::Box ink(Fixed& fixed, const Block& block) {
  return layout::ink_of(block.items, fixed.type).value();
}

}  // namespace

TEST_CASE("frets stand in true proportion") {
  Fixed fixed;
  const Blocks blocks = layout::neck_blocks(picture(5, 12), on("bass"), 488, fixed.setter);
  REQUIRE(blocks.size() == 2);
  const auto found = wires(blocks[1]);
  REQUIRE(found.size() == 9);  // that before the fifth fret, and eight more
  // In equal temperament each fret is shorter than the one before by the twelfth root of two (ISO 16 and the tuning's
  // definition: a semitone is 2^(1/12)).
  for (std::size_t i = 2; i < found.size(); ++i) {
    const double before = found[i - 1].from.x - found[i - 2].from.x;
    CHECK((found[i].from.x - found[i - 1].from.x) / before == Approx(std::pow(2.0, -1.0 / 12)));
  }
}

TEST_CASE("a picture from the nut has the table's measures in a column") {
  Fixed fixed;
  const Blocks blocks =
      layout::neck_blocks(picture(0, 7, {{{1, 0}, "4", false}, {{3, 5}, "1", true}}), on("bass"), 232, fixed.setter);
  REQUIRE(blocks.size() == 2);
  CHECK(blocks[1].gap == 24);
  CHECK(spelled(blocks[0].items) == "D Dorian on the neckfrets 0 to 7root");
  const auto found = wires(blocks[1]);
  REQUIRE(found.size() == 8);
  CHECK(found[0].width == 3);  // the nut
  CHECK(found[1].width == 0.6);
  CHECK(found.back().from.x == Approx(232));
  // Seven frets of 29.1 points on average (the house's measure).
  CHECK(found.back().from.x - (found[0].from.x + 1.5) == Approx(7 * 29.1));
  const auto lines = strings(blocks[1]);
  REQUIRE(lines.size() == 4);
  CHECK(lines[1].from.y - lines[0].from.y == 18);
  const std::vector<double> gauges = {0.55, 0.73, 0.91, 1.09};
  for (std::size_t i = 0; i < 4; ++i) CHECK(lines[i].width == Approx(gauges[i]));
  // Open notes 12 before the nut; fret numbers 19.5 under the last string.
  CHECK(all_of<sheet::Path>(blocks[1].items)[0].segments[0].end.x == Approx(28.3 - 12).margin(6.6));
  for (const auto& run : all_of<sheet::GlyphRun>(blocks[1].items)) {
    CHECK(run.size >= 8);
    if (run.part == Part::neck_number) CHECK(run.glyphs[0].y == Approx(54 + 19.5));
  }
}

TEST_CASE("roots are black squares with white figures, other places circles") {
  Fixed fixed;
  const Blocks blocks =
      layout::neck_blocks(picture(5, 9, {{{1, 7}, "1", true}, {{2, 7}, "5", false}}), on("bass"), 232, fixed.setter);
  std::vector<sheet::Path> marks;
  for (const auto& path : all_of<sheet::Path>(blocks[1].items)) {
    if (path.part == Part::neck_mark) marks.push_back(path);
  }
  REQUIRE(marks.size() == 2);
  const auto curved = [](const sheet::Path& path) {
    return std::any_of(path.segments.begin(), path.segments.end(),
                       [](const auto& segment) { return segment.kind == sheet::Segment::Kind::curve; });
  };
  CHECK_FALSE(curved(marks[0]));
  CHECK(marks[0].fill == sheet::Color{});
  CHECK(curved(marks[1]));
  CHECK(marks[1].fill == sheet::Color{255, 255, 255});
  for (const auto& run : all_of<sheet::GlyphRun>(blocks[1].items)) {
    if (run.part == Part::neck_label) CHECK((run.color == sheet::Color{255, 255, 255}) == (run.text == "1"));
  }
}

TEST_CASE("what the squares mean stands over the right end of a picture that is narrower than the page") {
  Fixed fixed;
  const auto key_end = [&](const Blocks& blocks) {
    double end = 0;
    for (const sheet::GlyphRun& run : all_of<sheet::GlyphRun>(blocks[0].items)) {
      if (run.text == "root") end = layout::ink_of(std::vector<sheet::Item>{run}, fixed.type)->right;
    }
    return end;
  };
  const std::vector<score::NeckMark> root = {{{4, 3}, "1", true}};
  const Blocks wide = layout::neck_blocks(picture(0, 12, root), on("bass"), 488, fixed.setter);
  CHECK(key_end(wide) == Approx(488).margin(1));
  score::NeckPicture brief = picture(2, 5, root);
  brief.title = "G";
  const Blocks narrow = layout::neck_blocks(brief, on("bass"), 488, fixed.setter);
  CHECK(ink(fixed, narrow[1]).right < 400);
  CHECK(key_end(narrow) == Approx(ink(fixed, narrow[1]).right).margin(1));
  // Nothing of it over the heading's words.
  score::NeckPicture wordy = picture(2, 3, root);
  wordy.title = "Everything that the first finger reaches without a shift";
  const Blocks beside = layout::neck_blocks(wordy, on("bass"), 488, fixed.setter);
  CHECK(key_end(beside) > ink(fixed, beside[1]).right + 10);
  CHECK(key_end(beside) <= 488.5);
}

TEST_CASE("up the neck there is no nut, and the frets say where it is") {
  Fixed fixed;
  const Blocks blocks = layout::neck_blocks(picture(7, 11), on("guitar"), 232, fixed.setter);
  for (const sheet::Rule& wire : wires(blocks[1])) CHECK(wire.width == 0.6);
  std::string numbers;
  for (const auto& run : all_of<sheet::GlyphRun>(blocks[1].items)) {
    if (run.part == Part::neck_number) numbers += run.text + " ";
  }
  CHECK(numbers == "7 8 9 10 11 ");
}

TEST_CASE("a left-handed neck is the mirror image") {
  Fixed fixed;
  score::Score score = on("guitar");
  const score::NeckPicture shown = picture(0, 5, {{{1, 0}, "1", true}, {{6, 3}, "3", false}});
  const Blocks right = layout::neck_blocks(shown, score, 232, fixed.setter);
  score.left_handed = true;
  const Blocks left = layout::neck_blocks(shown, score, 232, fixed.setter);
  const auto a = wires(right[1]);
  const auto b = wires(left[1]);
  REQUIRE(a.size() == b.size());
  const double whole = a[1].from.x + b[1].from.x;
  for (std::size_t i = 0; i < a.size(); ++i) CHECK(a[i].from.x + b[i].from.x == Approx(whole));
  CHECK(b[0].from.x > b[5].from.x);
  CHECK(ink(fixed, left[1]).left >= -0.5);
  // Figures are no mirror images: the same glyphs.
  CHECK(spelled(left[1].items) == spelled(right[1].items));
}

TEST_CASE("where frets would be too narrow for their marks the neck goes on below") {
  Fixed fixed;
  CHECK(layout::neck_fits(picture(0, 7), 232, fixed.setter));
  CHECK_FALSE(layout::neck_fits(picture(0, 24), 232, fixed.setter));
  const Blocks blocks = layout::neck_blocks(picture(0, 24), on("bass"), 488, fixed.setter);
  CHECK(blocks.size() == 3);
  std::string numbers;
  for (const Block& block : blocks) {
    for (const auto& run : all_of<sheet::GlyphRun>(block.items)) {
      if (run.part == Part::neck_number) numbers += run.text + " ";
    }
  }
  CHECK(numbers == "1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 ");
}

TEST_CASE("no mark touches another, whatever they say and wherever they lie") {
  Fixed fixed;
  for (const char* name : {"bass", "guitar-7", "ukulele", "banjo"}) {
    const score::Score score = on(name);
    for (const std::string label : {"1", "♭3", "♯♯4", "sol♯"}) {
      for (int first = 0; first < score.neck.frets; ++first) {
        for (const int frets : {1, 7, 24}) {
          const int last = std::min(first + frets, score.neck.frets);
          score::NeckPicture shown = picture(first, last);
          for (int string = 1; string <= score.neck.strings(); ++string) {
            for (int fret = first; fret <= last; ++fret) {
              // A short string is not seen before the fret where it begins.
              if (score.neck.is_short(string) && fret == 0 && last < score.neck.nut(string)) continue;
              if (score.neck.has({string, fret})) shown.marks.push_back({{string, fret}, label, fret % 3 == 0});
            }
          }
          std::size_t marks = 0;
          for (const Block& block : layout::neck_blocks(shown, score, 232, fixed.setter)) {
            std::vector<sheet::Box> boxes;
            for (const auto& path : all_of<sheet::Path>(block.items)) {
              const std::vector<sheet::Item> item = {path};
              if (path.part == Part::neck_mark) boxes.push_back(*layout::ink_of(item, fixed.type));
            }
            const bool heading = boxes.size() == 1 && block.keep_with_next && block.height < 30;
            marks += heading ? 0 : boxes.size();
            REQUIRE(ink(fixed, block).right <= 232.6);
            for (std::size_t i = 0; i < boxes.size(); ++i) {
              for (std::size_t j = i + 1; j < boxes.size(); ++j) {
                const bool apart = boxes[i].right <= boxes[j].left || boxes[j].right <= boxes[i].left ||
                                   boxes[i].bottom <= boxes[j].top || boxes[j].bottom <= boxes[i].top;
                if (!apart) FAIL(name << " " << label << " " << first << "-" << last);
              }
            }
          }
          REQUIRE(marks == shown.marks.size());
        }
      }
    }
  }
}

TEST_CASE("an inlay between two strings touches no mark on them, in any template") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    test::Music music(name);
    layout::Type type(music.fonts, music.look, music.by_role);
    layout::Setter setter{type, "en", words::Language::en, 1};
    const score::NeckMark above{{2, 5}, "5", false};
    const score::NeckMark below{{3, 5}, "1", true};
    score::NeckPicture neck = picture(0, 7, {above, below});
    neck.inlays = {{5, false}};
    const Blocks blocks = layout::neck_blocks(neck, on("bass"), 488, setter);
    std::vector<sheet::Box> dots;
    std::vector<sheet::Box> marks;
    for (const auto& path : all_of<sheet::Path>(blocks[1].items)) {
      if (path.part != Part::neck && path.part != Part::neck_mark) continue;
      const std::vector<sheet::Item> alone = {path};
      (path.part == Part::neck ? dots : marks).push_back(layout::ink_of(alone, type).value());
    }
    INFO(name);
    REQUIRE(dots.size() == 1);
    REQUIRE(marks.size() >= 2);
    CHECK(dots[0].bottom - dots[0].top > 2);
    for (const sheet::Box& mark : marks) CHECK((mark.bottom < dots[0].top - 0.2 || mark.top > dots[0].bottom + 0.2));
  }
}
