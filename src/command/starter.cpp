#include <array>
#include <string>
#include <vector>

#include "command/command.h"
#include "fretboard/instrument.h"
#include "fretboard/neck.h"

namespace fretsheaf::command {

namespace {

// The starter's tune: pitch classes above C, the column that each stands under, two bars of eight columns.
struct StarterNote {
  std::size_t bar;
  std::size_t column;
  int pitch_class;
};
constexpr std::array<StarterNote, 7> tune = {
    {{0, 0, 0}, {0, 2, 4}, {0, 4, 7}, {0, 6, 4}, {1, 0, 7}, {1, 2, 11}, {1, 4, 7}}};
constexpr std::size_t column_width = 4;
constexpr std::size_t bar_width = 8 * column_width;

// The lowest fret up to the fourth that sounds the pitch class, on the lower strings first; a short string is left out.
fretboard::Place place_of(const fretboard::Neck& neck, int pitch_class) {
  for (int fret = 0; fret <= 4; ++fret) {
    for (int string = neck.strings(); string >= 1; --string) {
      if (!neck.is_short(string) && neck.midi({string, fret}) % 12 == pitch_class) return {string, fret};
    }
  }
  return {1, 0};
}

std::string padded(std::string text, std::size_t width) {
  text.resize(std::max(text.size(), width), ' ');
  return text;
}

std::string grid(const fretboard::Neck& neck) {
  const std::vector<std::string> labels = fretboard::string_labels(neck);
  std::vector<std::string> bars(labels.size() * 2, std::string(bar_width, '-'));
  for (const StarterNote& note : tune) {
    const fretboard::Place place = place_of(neck, note.pitch_class);
    std::string& row = bars[(static_cast<std::size_t>(place.string) - 1) * 2 + note.bar];
    row[note.column * column_width] = static_cast<char>('0' + place.fret);
  }
  const auto count = [](std::string_view words) {
    std::string row;
    for (const char word : words) row += padded(word == ' ' ? "" : std::string(1, word), column_width);
    return row;
  };
  std::string text;
  text += "count | " + count("1 2 3 4 ") + "| " + count("1 2 3 4 ") + "|\n";
  text += "chord | " + padded("I", bar_width) + "| " + padded("V", bar_width) + "|\n";
  for (std::size_t i = 0; i < labels.size(); ++i) {
    text += padded(labels[i], 6) + "|-" + bars[i * 2] + "|-" + bars[i * 2 + 1] + "|\n";
  }
  return text;
}

}  // namespace

std::string starter_lesson(const std::string& instrument) {
  const fretboard::Instrument& chosen = *fretboard::find_instrument(instrument);
  const fretboard::Neck neck{chosen.tuning, chosen.frets, 0, chosen.short_fifth_string};
  return "# A lesson to write over. What follows a # on a line is a remark and is not printed.\n"
         "title      = \"My first handout\"\n"
         "key        = \"C major\"        # a tonic, then major, minor, dorian, mixolydian …\n"
         "instrument = \"" +
         instrument +
         "\"\n"
         "labels     = [\"chord-degrees\", \"counts\"]\n"
         "intro      = \"What this lesson is about, in a sentence or two.\"\n"
         "practice   = [\n"
         "  \"Warm up first, and rest when your hands are tired. Stop if anything hurts.\",\n"
         "  \"Say the counts aloud before you play.\",\n"
         "]\n"
         "\n"
         "# One of these for each example. The count row says when, a string row says where: write a fret under a\n"
         "# count. A count in parentheses, (2), is a rest; & is a half beat later.\n"
         "[[example]]\n"
         "title = \"From the root to the fifth\"\n"
         "tempo = { from = 60, to = 96, step = 12 }\n"
         "tab = '''\n" +
         grid(neck) + "'''\n";
}

}  // namespace fretsheaf::command
