#include <catch2/catch.hpp>
#include <optional>
#include <vector>

#include "layout/fill.h"
#include "support/dice.h"

using namespace fretsheaf;
using layout::Block;
using layout::Blocks;
using layout::fill_pages;
using layout::PagePlan;
using layout::PageRoom;

namespace {

constexpr PageRoom room{44, 60, 90, 760, 760};

Block block(double height, double gap = 20) {
  Block b;
  b.height = height;
  b.ascent = 8;
  b.descent = 3;
  b.gap = gap;
  b.gap_least = gap * 0.8;
  b.gap_most = gap * 1.25;
  return b;
}

double gap_least(const Block& above, const Block& below) {
  return std::max(below.gap_least, above.descent + below.ascent + below.clearance);
}

double start(const Block& b, bool first) {
  if (first) return room.first_top + std::max(0.0, b.ascent);
  return std::max(room.later_origin + std::min(0.0, b.ascent), room.later_top + b.ascent);
}

// Whether blocks [begin, end) fit on one page with their gaps at their least.
bool fits(const Blocks& blocks, std::size_t begin, std::size_t end) {
  double y = start(blocks[begin], begin == 0);
  for (std::size_t i = begin; i < end; ++i) {
    if (i > begin) y += gap_least(blocks[i - 1], blocks[i]);
    y += blocks[i].height;
  }
  return y + blocks[end - 1].descent <= room.bottom + 1e-9;
}

// The fewest pages that hold all blocks with none parted from its next, by trying every way; nullopt where there is
// none.
std::optional<int> fewest_pages(const Blocks& blocks) {
  const std::size_t n = blocks.size();
  std::optional<int> best;
  for (unsigned cuts = 0; cuts < (1U << (n - 1)); ++cuts) {
    int pages = 1;
    bool good = true;
    std::size_t begin = 0;
    for (std::size_t i = 0; i < n && good; ++i) {
      const bool cut = i + 1 == n || (cuts >> i & 1U) != 0;
      if (!cut) continue;
      good = fits(blocks, begin, i + 1) && (i + 1 == n || !blocks[i].keep_with_next);
      begin = i + 1;
      if (i + 1 < n) ++pages;
    }
    if (good && (!best || pages < *best)) best = pages;
  }
  return best;
}

void check_plan(const Blocks& blocks, const std::vector<PagePlan>& pages) {
  std::size_t next = 0;
  for (const PagePlan& page : pages) {
    REQUIRE_FALSE(page.empty());
    for (std::size_t i = 0; i < page.size(); ++i) {
      REQUIRE(page[i].block == next++);
      if (i == 0) continue;
      const Block& above = blocks[page[i - 1].block];
      const Block& here = blocks[page[i].block];
      const double gap = page[i].y - page[i - 1].y - above.height;
      CHECK(gap >= gap_least(above, here) - 1e-6);
      CHECK(gap <= std::max(here.gap_most, above.descent + here.ascent + here.clearance) + 1e-6);
    }
    const Block& last = blocks[page.back().block];
    const Block& first = blocks[page.front().block];
    CHECK(page.front().y - first.ascent >= room.first_top - 1e-6);
    if (page.size() > 1) CHECK(page.back().y + last.height + last.descent <= room.bottom + 1e-6);
  }
  CHECK(next == blocks.size());
}

Blocks random_blocks(test::Dice& dice, int count) {
  Blocks blocks;
  for (int i = 0; i < count; ++i) {
    Block b = block(dice.between(0, 260), dice.between(8, 40));
    b.ascent = dice.between(-10, 30);
    b.clearance = dice.between(0, 14);
    b.keep_with_next = dice.chance(30);
    b.part_penalty = dice.between(0, 120);
    blocks.push_back(b);
  }
  return blocks;
}

}  // namespace

TEST_CASE("no blocks make no pages") {
  CHECK(fill_pages({}, room).empty());
}

TEST_CASE("what fits stands on one page at its natural gaps") {
  const Blocks blocks = {block(100), block(50), block(0)};
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 1);
  CHECK(pages[0][0].y == 52);
  CHECK(pages[0][1].y == 52 + 100 + 20);
  CHECK(pages[0][2].y == 172 + 50 + 20);
}

TEST_CASE("gaps give way before a page more is taken") {
  Blocks blocks(7, block(86));  // natural 7·86 + 6·20 = 722 of 705; at the least 698
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 1);
  CHECK(pages[0].back().y + 86 + 3 == Approx(room.bottom));
}

TEST_CASE("every page but the last is filled to its foot where gaps can do it") {
  Blocks blocks(16, block(80));
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() >= 2);
  for (std::size_t i = 0; i + 1 < pages.size(); ++i) {
    CHECK(pages[i].back().y + 83 == Approx(room.bottom));
  }
  const auto& last = pages.back();
  for (std::size_t i = 1; i < last.size(); ++i) CHECK(last[i].y - last[i - 1].y == Approx(100));
}

TEST_CASE("a later page begins under the running head") {
  Blocks blocks(2, block(600));
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[1][0].y == 90);
  blocks[1].ascent = 50;  // its ink reaches far up
  CHECK(fill_pages(blocks, room)[1][0].y == 110);
}

TEST_CASE("a line of music without a chord row stands no lower on its page than one with chords") {
  Blocks blocks(2, block(600));
  blocks[1].ascent = -17;  // its ink begins 17 under where chords would stand
  CHECK(fill_pages(blocks, room)[1][0].y == 90 - 17);
}

TEST_CASE("a title takes a line of music along before it stands alone") {
  // The demo of the five lanterns in large print, once: title and text, a heading, then lines of which one fits.
  Blocks blocks = {block(400), block(30), block(130), block(130), block(130), block(130)};
  blocks[1].bookmark = "Example 1";
  blocks[1].keep_with_next = true;
  blocks[2].part_penalty = blocks[4].part_penalty = 120;
  blocks[3].part_penalty = 25;
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].size() == 3);
}

TEST_CASE("a block taller than a page comes out on one of its own") {
  const Blocks blocks = {block(50), block(2000), block(50)};
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 3);
  check_plan(blocks, pages);
}

TEST_CASE("a lone last line is avoided by taking the line before it along") {
  // Four lines of music of one example, of which three fit; the first may not stand alone either.
  Blocks blocks(4, block(190));
  blocks[0].part_penalty = blocks[2].part_penalty = 120;
  blocks[1].part_penalty = 25;
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].size() == 2);
}

TEST_CASE("an example is parted from its ladder before half a page is left blank") {
  // The demo of the ferry queue, once: a page of one example, then one whose music still fits and whose ladder does
  // not.
  Blocks blocks = {block(380), block(220), block(170), block(170)};
  blocks[1].part_penalty = 60;
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].size() == 2);
}

TEST_CASE("two lines of music stay together, though half a page is left blank") {
  Blocks blocks = {block(330), block(220), block(220), block(100)};
  blocks[1].part_penalty = 240;
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].size() == 1);
}

TEST_CASE("but not where a page would stay nearly empty, nor at the price of a further page") {
  Blocks blocks = {block(130), block(330), block(330)};
  blocks[1].part_penalty = 240;
  auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].size() == 2);

  blocks = {block(330), block(250), block(250), block(330), block(30)};
  blocks[1].part_penalty = 240;
  blocks[2].keep_with_next = blocks[3].keep_with_next = true;
  pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].size() == 2);
}

TEST_CASE("no page holds one line of music alone between pages that have more of it") {
  // A heading with one line fills the first page; then two lines stand on the next, not one.
  Blocks blocks = {block(250), block(300), block(300), block(300), block(300), block(20)};
  blocks[0].keep_with_next = true;
  for (std::size_t i = 1; i <= 4; ++i) blocks[i].nests = {{7, sheet::Tag::figure, std::nullopt}};
  blocks[1].part_penalty = blocks[3].part_penalty = 120;
  blocks[2].part_penalty = 25;
  blocks[4].part_penalty = 60;
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 3);
  CHECK(pages[0].size() == 2);
  CHECK(pages[1].size() == 2);
  CHECK(pages[2].size() == 2);
}

TEST_CASE("a last page of a few lines takes some along from the page before") {
  // Twelve such lines fill a page, tightened; of thirteen the last page has more than one.
  Blocks blocks(13, block(44));
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[1].size() >= 3);
  CHECK(fill_pages(Blocks(12, block(44)), room).size() == 1);
}

TEST_CASE("the first page has a foot of its own") {
  const PageRoom with_cautions{44, 60, 90, 740, 760};
  const Blocks blocks(20, block(80));
  const auto pages = fill_pages(blocks, with_cautions);
  REQUIRE(pages.size() >= 3);
  CHECK(pages[0].back().y + 83 == Approx(740));
  CHECK(pages[1].back().y + 83 == Approx(760));
}

TEST_CASE("the second page may have a foot of its own, and no page after it has") {
  const PageRoom with_cautions{44, 60, 90, 760, 760, 755};
  // Seven such blocks fill a page, and no fewer pages hold them.
  const auto pages = fill_pages(Blocks(28, block(80)), with_cautions);
  REQUIRE(pages.size() == 4);
  CHECK(pages[0].back().y + 83 == Approx(760));
  CHECK(pages[1].back().y + 83 == Approx(755));
  CHECK(pages[2].back().y + 83 == Approx(760));
}

TEST_CASE("a heading goes over with what it heads") {
  Blocks blocks(4, block(190));
  blocks[2] = block(0);
  blocks[2].keep_with_next = true;
  blocks[3] = block(300);
  const auto pages = fill_pages(blocks, room);
  REQUIRE(pages.size() == 2);
  CHECK(pages[1].front().block == 2);
}

TEST_CASE("random blocks: each once, in order, apart, within the page, on the fewest pages, none parted in vain") {
  test::Dice dice(20240);
  for (int round = 0; round < 400; ++round) {
    const Blocks blocks = random_blocks(dice, dice.between(1, 11));
    const auto pages = fill_pages(blocks, room);
    INFO("round " << round);
    check_plan(blocks, pages);
    const std::optional<int> fewest = fewest_pages(blocks);
    if (!fewest) continue;
    CHECK(static_cast<int>(pages.size()) == *fewest);
    for (std::size_t i = 0; i + 1 < pages.size(); ++i) CHECK_FALSE(blocks[pages[i].back().block].keep_with_next);
  }
}

TEST_CASE("ten thousand blocks are filled") {
  test::Dice dice(7);
  const Blocks blocks = random_blocks(dice, 10000);
  check_plan(blocks, fill_pages(blocks, room));
}
