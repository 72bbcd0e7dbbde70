#include <catch2/catch.hpp>

#include "lesson/grid_support.h"
#include "lesson/grid_text.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "support/random_lesson.h"

using namespace fretsheaf;
using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

namespace {

std::vector<std::string> errors_of(const Reading& reading) {
  std::vector<std::string> errors;
  for (const std::string& said : reading.said) {
    if (said.find(": error: ") != std::string::npos) errors.push_back(said);
  }
  return errors;
}

// Music by chance for one of the instruments, and what a grid of it is read in.
struct RandomMusic {
  Setting setting;
  fretsheaf::test::MusicWish wish;
  Music music;
};

RandomMusic random_music(unsigned seed, fretsheaf::test::Dice& dice) {
  const std::vector<std::string> meters = {"4/4", "3/4", "2/2", "6/8", "12/8", "2+2+3/8", "5/4"};
  const auto instruments = fretboard::instruments();
  RandomMusic drawn;
  drawn.setting.instrument = std::string(instruments[seed % instruments.size()].name);
  drawn.setting.meter = meters[seed % meters.size()];
  drawn.setting.capo = seed % 5 == 0 ? 2 : 0;
  drawn.wish.neck = neck_of(drawn.setting.instrument, drawn.setting.capo);
  drawn.wish.meter = *theory::parse_meter(drawn.setting.meter);
  drawn.wish.bars = dice.between(1, 12);
  drawn.wish.strings = seed % 6 != 5;
  drawn.wish.play = seed % 12 == 11;
  drawn.music = fretsheaf::test::random_music(dice, drawn.wish);
  return drawn;
}

// What `%` bars repeat is worked out from the rest, and tested by hand.
Reading read_back(const std::string& grid, const Setting& setting) {
  Reading reading = read(grid, setting);
  reading.music.repeated_dynamics.clear();
  reading.music.repeated_spans.clear();
  return reading;
}

}  // namespace

TEST_CASE("random music written as a grid reads back as that music") {
  for (unsigned seed = 0; seed < 600; ++seed) {
    fretsheaf::test::Dice dice(seed);
    const RandomMusic drawn = random_music(seed, dice);
    const std::string grid =
        fretsheaf::test::write_grid(drawn.music, drawn.wish.neck, dice.between(1, 4), dice.chance(50));
    INFO("seed " << seed << " " << drawn.setting.instrument << "\n" << grid);
    const Reading reading = read_back(grid, drawn.setting);
    REQUIRE(errors_of(reading) == std::vector<std::string>{});
    REQUIRE(music_text(reading.music) == music_text(drawn.music));
  }
}

TEST_CASE("random music as the program writes it reads back as that music") {
  for (unsigned seed = 0; seed < 600; ++seed) {
    fretsheaf::test::Dice dice(seed);
    const RandomMusic drawn = random_music(seed, dice);
    const std::string grid = grid_text(drawn.music, drawn.wish.neck);
    INFO("seed " << seed << " " << drawn.setting.instrument << "\n" << grid);
    const Reading reading = read_back(grid, drawn.setting);
    REQUIRE(errors_of(reading) == std::vector<std::string>{});
    // Every beat is counted, but where a bare count would be a strum.
    const auto unwritten = [](const std::string& said) { return said.find("which is not written") != said.npos; };
    REQUIRE((!drawn.wish.strings || std::none_of(reading.said.begin(), reading.said.end(), unwritten)));
    REQUIRE(music_text(reading.music) == music_text(drawn.music));
  }
}

TEST_CASE("random lessons are lessons without errors, on every instrument") {
  platform::MemorySystem system;
  for (unsigned seed = 0; seed < 200; ++seed) {
    const std::string text = fretsheaf::test::random_lesson(seed);
    const ReadLesson result = read_lesson("random.lesson.toml", text, system);
    std::string errors;
    for (const source::Diagnostic& d : result.diagnostics.sorted()) {
      if (d.severity == source::Severity::error) errors += source::render(d, result.files);
    }
    INFO(text);
    REQUIRE(errors == "");
    REQUIRE(result.lesson);
  }
}
