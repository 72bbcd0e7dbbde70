#include "generated_course.h"

#include <filesystem>
#include <fstream>
#include <random>

namespace fretsheaf::benchmarks {

namespace {

// One strip of four bars: a line that wanders over the A and D strings, in quarters and eighths.
std::string strip(std::mt19937& dice) {
  std::string count = "count |";
  std::string chord = "chord |";
  std::string d = "D     |";
  std::string a = "A     |";
  const char* const chords[] = {" i7", " IV7", " v7", " bVII"};
  for (int bar = 0; bar < 4; ++bar) {
    const bool eighths = dice() % 2 == 0;
    const std::string counts = eighths ? " 1   &   2   &   3   &   4   &   |" : " 1       2       3       4       |";
    count += counts;
    std::string name = chords[dice() % 4];
    name.resize(32, ' ');
    chord += name + " |";
    std::string upper(33, ' ');
    std::string lower(33, ' ');
    for (std::size_t column = 1; column < 33; column += eighths ? 4 : 8) {
      const char fret = static_cast<char>('2' + dice() % 6);
      (dice() % 2 == 0 ? upper : lower)[column] = fret;
    }
    d += upper + "|";
    a += lower + "|";
  }
  return count + "\n" + chord + "\n" + d + "\n" + a + "\n\n";
}

}  // namespace

std::string generated_lesson(int number) {
  std::mt19937 dice(static_cast<unsigned>(number));
  std::string text =
      "title = \"Lesson " + std::to_string(number) +
      "\"\nteacher = \"Eelgrass Strings\"\nseries = \"Long course\"\nnumber = " + std::to_string(number % 1000) +
      "\nkey = \"D dorian\"\nalso-in = \"all\"\ninstrument = \"bass\"\nlabels = [\"chord-degrees\", "
      "\"counts\"]\nintro = \"Lean on {{degree b3}} of {{key}}, and let the line walk *slowly*.\"\n"
      "practice = [\"Warm up first, and rest before your hands ask for it.\"]\n";
  const int examples = 2 + number % 2;
  for (int example = 0; example < examples; ++example) {
    text +=
        "\n[[example]]\ntitle = \"Walk " + std::to_string(example + 1) +
        "\"\ntempo = { from = 60, to = 96, step = 12 }\npractice = [\"Land on {{note 1.1}} together.\"]\ntab = '''\n";
    for (int i = 0; i < 2; ++i) text += strip(dice);
    text += "'''\n";
  }
  return text;
}

std::string generated_path(const std::string& folder, int number) {
  return folder + "/unit-" + std::to_string(number / 50) + "/lesson-" + std::to_string(number) + ".lesson.toml";
}

void generate_course(const std::string& folder, int lessons) {
  for (int i = 0; i < lessons; ++i) {
    const std::string path = generated_path(folder, i);
    std::filesystem::create_directories(std::filesystem::path(path).parent_path());
    std::ofstream(path) << generated_lesson(i);
  }
}

}  // namespace fretsheaf::benchmarks
