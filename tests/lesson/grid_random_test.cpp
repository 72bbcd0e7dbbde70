#include <catch2/catch.hpp>

#include "lesson/grid_support.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "support/random_lesson.h"

using namespace fretsheaf;
using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::test;

namespace {

std::string words_text(const std::vector<Word>& words) {
  std::string text;
  for (const Word& word : words) {
    text += " " + word.at.to_string() + ":" + word.text + (word.goes_on ? "-" : "") + "/" + std::to_string(word.row);
  }
  return text;
}

std::string moment_text(const Moment& moment) {
  return std::to_string(moment.bar) + "@" + moment.at.to_string();
}

// All that a model of music says but source ranges.
std::string music_text(const Music& music) {
  std::string text =
      sign_text(music.left) + (music.has_strings ? " strings" : "") + (music.has_finger_row ? " fingers" : "") + "\n";
  for (const Bar& bar : music.bars) {
    text += std::to_string(bar.number) + " " + bar.meter.to_string() + (bar.meter_written ? "! " : " ") +
            bar.begin.to_string() + "-" + bar.end.to_string() + (bar.same_as_previous ? " % " : " ") + bar_text(bar) +
            " " + sign_text(bar.right);
    if (bar.plays) text += " x" + std::to_string(bar.plays->value);
    for (const ChordMark& chord : bar.chords) text += " " + chord.at.to_string() + "=" + theory::to_string(chord.chord);
    text += words_text(bar.texts) + words_text(bar.lyrics) + words_text(bar.sections) + words_text(bar.roads) + "\n";
  }
  for (const Dynamic& dynamic : music.dynamics) text += dynamic.text + " " + moment_text(dynamic.moment) + "\n";
  for (const Span& span : music.spans) {
    text += std::to_string(static_cast<int>(span.kind)) + " " + moment_text(span.first) + " " + moment_text(span.last) +
            "\n";
  }
  for (const Ending& ending : music.endings) {
    text += ending.label + std::to_string(ending.first_bar) + "-" + std::to_string(ending.last_bar) + "\n";
  }
  return text;
}

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
    const Reading reading = read(grid, setting);
    REQUIRE(errors_of(reading) == std::vector<std::string>{});
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
