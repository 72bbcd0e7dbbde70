#include <catch2/catch.hpp>

#include "lesson/grid_support.h"
#include "source/utf8.h"
#include "support/random_lesson.h"

using namespace fretsheaf;
using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

namespace {

// A character or two changed, put in, taken out or copied from elsewhere: the slips of a hand, and worse.
std::string mutated(fretsheaf::test::Dice& dice, std::string text) {
  const std::vector<std::string> bits = {
      " ",     "-", "|", ":|", "|:", "||",   "%", "(", ")", "\"", "5",   "12",   "h",   "p",    "/",
      "\\",    "=", "x", "<",  ">",  "^1/2", "~", "&", "e", "a",  "la",  "+1/3", "\n",  "\n\n", "\t",
      "count", "♭", "–", "“",  "\r", "1",    "4", "_", ".", ",",  "ppp", "PM--", "4/4",
  };
  for (int times = dice.between(1, 4); times > 0; --times) {
    const auto at = static_cast<std::size_t>(dice.below(static_cast<int>(text.size()) + 1));
    const auto length = std::min<std::size_t>(static_cast<std::size_t>(dice.below(4)), text.size() - at);
    switch (dice.below(4)) {
      case 0:
        text.insert(at, dice.pick(bits));
        break;
      case 1:
        text.erase(at, length);
        break;
      case 2:
        text.replace(at, length, dice.pick(bits));
        break;
      default:
        text.insert(at, text.substr(static_cast<std::size_t>(dice.below(static_cast<int>(text.size()) + 1)), 12));
    }
  }
  return text;
}

// What a bar promises: events in order from its beginning to its end, without a gap, each with something in it.
void check_sound(const Bar& bar, bool strings) {
  theory::Rational at = bar.begin;
  for (const Event& event : bar.events) {
    REQUIRE(event.at == at);
    REQUIRE(event.length > theory::Rational(0));
    at += event.length;
    if (event.kind == EventKind::rest) REQUIRE(event.notes.empty());
    if (event.kind == EventKind::struck && strings) REQUIRE_FALSE(event.notes.empty());
    if (event.kind == EventKind::struck && !strings) REQUIRE(event.strum);
  }
  REQUIRE(at == bar.end);
  REQUIRE(bar.end <= bar.meter.bar());
}

}  // namespace

TEST_CASE("whatever is written, places lie in the grid and sound music adds up") {
  int sound = 0;
  for (unsigned seed = 0; seed < 1500; ++seed) {
    fretsheaf::test::Dice dice(seed);
    fretsheaf::test::MusicWish wish;
    Setting setting;
    setting.instrument = dice.pick<std::string>({"bass", "guitar", "banjo", "ukulele"});
    wish.neck = neck_of(setting.instrument);
    wish.meter = *theory::parse_meter(setting.meter);
    wish.bars = dice.between(1, 4);
    wish.strings = !dice.chance(15);
    wish.play = dice.chance(50);
    const Music music = fretsheaf::test::random_music(dice, wish);
    std::string grid = mutated(dice, fretsheaf::test::write_grid(music, wish.neck, 2, true));
    if (!source::is_valid_utf8(grid)) continue;
    INFO("seed " << seed << "\n" << grid);
    const source::Text text("grid", grid);
    const auto size = static_cast<std::uint32_t>(grid.size());
    const GridContext context{wish.neck, *theory::parse_key("D dorian"), wish.meter};
    source::Diagnostics diagnostics;
    const Music read = read_grid(text, {0, size, 0}, context, diagnostics);
    for (const source::Diagnostic& d : diagnostics.list()) {
      REQUIRE(d.range.begin <= d.range.end);
      REQUIRE(d.range.end <= size);
      REQUIRE_FALSE(d.message.empty());
      REQUIRE_FALSE(d.help.empty());
    }
    if (diagnostics.has_errors()) continue;
    ++sound;
    for (const Bar& bar : read.bars) check_sound(bar, read.has_strings);
  }
  // Most slips are seen, and some change nothing that matters.
  CHECK(sound > 15);
  CHECK(sound < 1200);
}

namespace {

std::string repeated(const std::string& text, int times) {
  std::string result;
  for (int i = 0; i < times; ++i) result += text;
  return result;
}

}  // namespace

TEST_CASE("an example holds 2,000 bars, and one more is an error with its place") {
  const std::string strip = "count | 1 2 3 4 |\nG     | 5 7 5 7 |\n\n";
  const Reading most = read(repeated(strip, 2000));
  CHECK(most.said.empty());
  CHECK(most.music.bars.size() == 2000);
  CHECK(most.music.bars.back().number == 2000);
  CHECK(
      read(repeated(strip, 2001)).said ==
      std::vector<std::string>{"6001:8: error: this example has more than 2000 bars; divide it into several examples"});
  const Reading row = read("count |" + repeated(" 1 |", 2002) + "\nG     |" + repeated(" 5 |", 2002) + "\n");
  CHECK(row.said == std::vector<std::string>{
                        "1:8008: error: this example has more than 2000 bars; divide it into several examples"});
}

TEST_CASE("an example holds 100,000 counts, and one more is an error with its place") {
  const auto bar = [](int counts) {
    std::string text = " 1";
    for (int i = 1; i < counts; ++i) text += " +" + std::to_string(i) + "/64";
    return text + " |";
  };
  const auto strip = [](const std::string& bar, int times) {
    const std::string held = " 5" + std::string(bar.size() - 3, ' ') + "|";
    return "count |" + repeated(bar, times) + "\nG     |" + repeated(held, times) + "\n\n";
  };
  const std::string whole = strip(bar(64), 1562);
  CHECK(read(whole + strip(bar(32), 1)).said.empty());
  CHECK(read(whole + strip(bar(33), 1)).said ==
        std::vector<std::string>{
            "4:219: error: this example has more than 100000 counts; divide it into several examples"});
}

// Each is about a megabyte, and is gone through in well under a second; work that grows with the square of the size
// would run into the runner's own limit.
TEST_CASE("large and odd grids are read to their end, and what is wrong with them is said") {
  const auto complaints = [](const std::string& grid) { return read(grid).said.size(); };
  CHECK(complaints("count | 1 2 3 4 |\nG     |" + std::string(1000000, '5') + "|\n") > 0);
  CHECK(complaints("count |" + repeated(" 1", 400000) + " |\nG     |" + repeated(" 5", 400000) + " |\n") > 0);
  CHECK(complaints("count | 1 |\n" + repeated("G | 5 |\n", 3000)) > 0);
  CHECK(complaints("count | 1 |\n" + repeated("mark | f |\n", 3000)) > 0);
  CHECK(complaints(repeated("nothing but words\n", 50000)) > 0);
  CHECK(complaints("count | 1 |\ntext | " + std::string(1000000, '"') + " |\n") > 0);
}
