#include "layout/chord_boxes.h"

#include <catch2/catch.hpp>
#include <string>
#include <variant>

#include "layout/ink.h"
#include "layout/page_fixture.h"
#include "theory/chord.h"

using namespace fretsheaf;
using namespace fretsheaf::test;
using layout::Block;
using layout::Blocks;
using sheet::Part;

namespace {

score::ChordBox box(const std::string& chord, const std::string& frets, const std::string& fingers,
                    const std::string& roots) {
  score::ChordBox made;
  made.chord = std::get<theory::Chord>(*theory::parse_chord(chord));
  for (const char c : frets) made.shape.frets.push_back(c == 'x' ? std::nullopt : std::optional<int>(c - '0'));
  for (const char c : fingers) made.shape.fingers.push_back(c - '0');
  for (const char c : roots) made.roots.push_back(c == 'r');
  return made;
}

const score::ChordBox open_c = box("C", "x32010", "032010", "-r--r-");

score::Score held(bool left_handed = false) {
  score::Score score;
  score.left_handed = left_handed;
  return score;
}

std::vector<std::string> figures(const Block& block) {
  std::vector<std::string> names;
  for (const auto& group : all_of<sheet::Group>(block.items)) names.push_back(group.alternative);
  return names;
}

// The runs of a part with where they begin: "3@4.75 …", rounded to whole points.
std::string placed(const Block& block, Part part) {
  std::string out;
  for (const auto& run : all_of<sheet::GlyphRun>(block.items)) {
    if (run.part == part) out += run.text + "@" + std::to_string(std::lround(run.glyphs[0].x)) + " ";
  }
  return out;
}

std::vector<sheet::Rule> across(const Block& block) {
  std::vector<sheet::Rule> found;
  for (const auto& rule : all_of<sheet::Rule>(block.items)) {
    if (rule.from.y == rule.to.y) found.push_back(rule);
  }
  return found;
}

}  // namespace

TEST_CASE("a box says its chord, its strings, its frets and its fingers") {
  Fixed fixed;
  const Blocks blocks = layout::box_blocks({open_c}, held(), 488, fixed.setter);
  REQUIRE(blocks.size() == 2);
  CHECK(spelled(blocks[0].items) == "Chord shapes");
  CHECK(spelled(blocks[1].items) == "C321");
  CHECK(figures(blocks[1]) == std::vector<std::string>{"C x32010"});
  const auto wires = across(blocks[1]);
  REQUIRE(wires.size() == 5);  // the nut and four frets
  CHECK(wires[0].width > 2 * wires[1].width);
  CHECK(wires[2].from.y - wires[1].from.y == 12.5);
  // A cross, three rings or squares for open strings, three stopped places.
  std::size_t open = 0;
  std::size_t stopped = 0;
  for (const auto& path : all_of<sheet::Path>(blocks[1].items)) {
    if (!path.fill) ++open;
    if (path.fill && path.segments[0].end.y > wires[0].from.y) ++stopped;
  }
  CHECK(stopped == 3);
  CHECK(open >= 2);
}

TEST_CASE("a left-handed box has its bottom line at the right") {
  Fixed fixed;
  const auto ink_of_fingers = [&](bool left) {
    return placed(layout::box_blocks({open_c}, held(left), 488, fixed.setter)[1], Part::box_finger);
  };
  // Strings are 9.5 apart: fingers 3, 2, 1 on the second, third and fifth of six.
  // The cross and the ring over the outer strings reach further out, and the text begins with them.
  CHECK(ink_of_fingers(false) == "3@10 2@20 1@39 ");
  CHECK(ink_of_fingers(true) == "3@39 2@29 1@10 ");
}

TEST_CASE("up the neck a box has no nut, and its first fret beside it") {
  Fixed fixed;
  score::ChordBox barred = box("Dm7", "x57565", "013121", "-r----");
  barred.shape.barre = fretboard::Barre{5, 5};
  const Block block = layout::box_blocks({barred}, held(), 488, fixed.setter)[1];
  const auto wires = across(block);
  CHECK(wires[0].width == wires[1].width);
  CHECK(placed(block, Part::neck_number).substr(0, 2) == "5@");
  // The barre is one stroke over all strings that the first finger stops.
  double longest = 0;
  for (const auto& path : all_of<sheet::Path>(block.items)) {
    if (path.stroke && path.round_ends) longest = path.segments[1].end.x - path.segments[0].end.x;
  }
  CHECK(longest == Approx(4 * 9.5));
}

TEST_CASE("boxes go on in further rows and none is lost or leaves the text") {
  Fixed fixed;
  for (const double width : {488.0, 232.0}) {
    for (std::size_t count = 1; count <= 20; ++count) {
      std::vector<score::ChordBox> boxes(count, open_c);
      boxes.back() = box("C#m7b5/G", "x45464", "012131", "-r----");
      std::size_t drawn = 0;
      const Blocks blocks = layout::box_blocks(boxes, held(), width, fixed.setter);
      for (std::size_t i = 1; i < blocks.size(); ++i) {
        drawn += figures(blocks[i]).size();
        const sheet::Box ink = layout::ink_of(blocks[i].items, fixed.type).value();
        CHECK(ink.left >= -0.5);
        CHECK(ink.right <= width + 0.5);
      }
      CHECK(drawn == count);
      CHECK(layout::boxes_fit(boxes, held(), width, fixed.setter) == (blocks.size() == 2));
    }
  }
}

TEST_CASE("rows of boxes are even, and two of them stay together") {
  Fixed fixed;
  const auto rows = [&](std::size_t count) {
    std::vector<std::size_t> sizes;
    const std::vector<score::ChordBox> boxes(count, open_c);
    const Blocks blocks = layout::box_blocks(boxes, held(), 232, fixed.setter, {});
    for (std::size_t i = 1; i < blocks.size(); ++i) sizes.push_back(figures(blocks[i]).size());
    return sizes;
  };
  const std::size_t fit = rows(20).front();
  REQUIRE(fit >= 3);
  CHECK(rows(fit) == std::vector<std::size_t>{fit});
  CHECK(rows(fit + 1) == std::vector<std::size_t>{(fit + 2) / 2, fit + 1 - (fit + 2) / 2});
  const std::vector<score::ChordBox> boxes(fit + 1, open_c);
  // A half-empty page hurts less than that (fill.cpp), a page more hurts more.
  CHECK(layout::box_blocks(boxes, held(), 232, fixed.setter, {})[1].part_penalty == 400);
}
