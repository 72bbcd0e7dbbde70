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

}  // namespace

TEST_CASE("random music written as a grid reads back as that music") {
  const std::vector<std::string> meters = {"4/4", "3/4", "2/2", "6/8", "12/8", "2+2+3/8", "5/4"};
  for (unsigned seed = 0; seed < 600; ++seed) {
    fretsheaf::test::Dice dice(seed);
    const auto instruments = fretboard::instruments();
    const fretboard::Instrument& instrument = instruments[seed % instruments.size()];
    Setting setting;
    setting.instrument = std::string(instrument.name);
    setting.meter = meters[seed % meters.size()];
    setting.capo = seed % 5 == 0 ? 2 : 0;
    fretsheaf::test::MusicWish wish;
    wish.neck = neck_of(setting.instrument, setting.capo);
    wish.meter = *theory::parse_meter(setting.meter);
    wish.bars = dice.between(1, 12);
    wish.strings = seed % 6 != 5;
    wish.play = seed % 12 == 11;
    const Music music = fretsheaf::test::random_music(dice, wish);
    const std::string grid = fretsheaf::test::write_grid(music, wish.neck, dice.between(1, 4), dice.chance(50));
    INFO("seed " << seed << " " << setting.instrument << "\n" << grid);
    Reading reading = read(grid, setting);
    // Worked out from the rest, and tested by hand.
    reading.music.repeated_dynamics.clear();
    reading.music.repeated_spans.clear();
    REQUIRE(errors_of(reading) == std::vector<std::string>{});
    REQUIRE(music_text(reading.music) == music_text(music));
  }
}

TEST_CASE("random music as the program writes it reads back as that music") {
  const std::vector<std::string> meters = {"4/4", "3/4", "2/2", "6/8", "12/8", "2+2+3/8", "5/4"};
  for (unsigned seed = 0; seed < 600; ++seed) {
    fretsheaf::test::Dice dice(seed);
    const auto instruments = fretboard::instruments();
    const fretboard::Instrument& instrument = instruments[seed % instruments.size()];
    Setting setting;
    setting.instrument = std::string(instrument.name);
    setting.meter = meters[seed % meters.size()];
    setting.capo = seed % 5 == 0 ? 2 : 0;
    fretsheaf::test::MusicWish wish;
    wish.neck = neck_of(setting.instrument, setting.capo);
    wish.meter = *theory::parse_meter(setting.meter);
    wish.bars = dice.between(1, 12);
    wish.strings = seed % 6 != 5;
    wish.play = seed % 12 == 11;
    const Music music = fretsheaf::test::random_music(dice, wish);
    const std::string grid = grid_text(music, wish.neck);
    INFO("seed " << seed << " " << setting.instrument << "\n" << grid);
    Reading reading = read(grid, setting);
    reading.music.repeated_dynamics.clear();
    reading.music.repeated_spans.clear();
    REQUIRE(errors_of(reading) == std::vector<std::string>{});
    // Every beat is counted, but where a bare count would be a strum.
    const auto unwritten = [](const std::string& said) { return said.find("which is not written") != said.npos; };
    REQUIRE((!wish.strings || std::none_of(reading.said.begin(), reading.said.end(), unwritten)));
    REQUIRE(music_text(reading.music) == music_text(music));
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
