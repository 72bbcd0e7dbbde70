// The limits that no table of cases has room for: what is at one is read, and one more is an error in its place.
// demo-lessons/README.md tells them all.
#include "lesson/limits.h"

#include <fstream>
#include <iterator>
#include <vector>

#include "lesson/lesson_text.h"
#include "lesson/plain_words.h"
#include "lesson/reader_support.h"
#include "source/utf8.h"
#include "support/project.h"

namespace fretsheaf::lesson::test {
namespace {

std::string repeated(const std::string& part, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += part;
  return all;
}

// A bar of four beats with one word in another row.
std::string with_word(const std::string& label, const std::string& word) {
  const std::string wide(source::count_code_points(word), ' ');
  return "tab = '''\ncount | 1 2 3 4 " + wide + "|\nA     | 5       " + wide + "|\n" + label + " | " + word +
         "        |\n'''";
}

}  // namespace

TEST_CASE("a title has 500 characters at most, however many bytes they are") {
  CHECK(said(read(lesson_with("subtitle = \"" + repeated("é", 500) + "\""))) == "");
  CHECK(said(read(lesson_with("subtitle = \"" + repeated("é", 500) + "xyz\""))) ==
        "4:513-514: error: 'subtitle' has more than 500 characters\n"
        "help: shorten it, or write a part of it elsewhere\n");
  CHECK(said(read(lesson_with("", "blank-bars = 2\ntitle = \"" + repeated("a", 501) + "\""))) ==
        "8:510-511: error: 'title' has more than 500 characters\n"
        "help: shorten it, or write a part of it elsewhere\n");
}

TEST_CASE("a text has 50,000 characters at most, and a list of them 200 items") {
  const std::string lines = repeated("low tide\n", 5555) + "tide\n";
  CHECK(said(read(lesson_with("intro = \"\"\"\n" + lines + "\"\"\""))) == "");
  CHECK(said(read(lesson_with("intro = \"\"\"\n" + lines + "ab\"\"\""))) ==
        "5561:1-2: error: 'intro' has more than 50000 characters\n"
        "help: shorten it, or write a part of it elsewhere\n");
  CHECK(said(read(lesson_with("practice = [" + repeated("'a',", 200) + "]"))) == "");
  CHECK(said(read(lesson_with("practice = [" + repeated("'a',", 202) + "]"))) ==
        "4:813-816: error: 'practice' has more than 200 items\nhelp: write at most so many\n");
  CHECK(said(read(lesson_with("", "blank-bars = 2\nshapes = [" + repeated("'Am7',", 201) + "]"))) ==
        "8:1211-1216: error: 'shapes' has more than 200 items\nhelp: write at most so many\n");
}

TEST_CASE("a word of a grid has 200 characters at most") {
  for (const std::string row : {"lyric", "text "}) {
    CHECK(said(read(lesson_with("", with_word(row, repeated("a", 200))))) == "");
    CHECK(said(read(lesson_with("", with_word(row, repeated("a", 201))))) ==
          "10:9-210: error: this word has more than 200 characters\nhelp: shorten it\n");
  }
  CHECK(said(read(lesson_with("", with_word("text ", "\"" + repeated("a", 201) + "\"")))) ==
        "10:9-212: error: this word has more than 200 characters\nhelp: shorten it\n");
}

TEST_CASE("a form has 2,000 bars at most, and a bar of it 16 chords") {
  const auto lesson = [](const std::string& bars) {
    return lesson_with("",
                       "tab = '''\ncount | 1 |\nA     | 5 |\n'''\nform = { bars = \"" + bars + "\", here = \"1\" }");
  };
  CHECK(said(read(lesson(repeated("i7 ", 2000)))) == "");
  CHECK(said(read(lesson(repeated("i7 ", 2001)))) ==
        "11:17-6022: error: the form has more than 2000 bars\n"
        "help: write chords with a space between bars, as in \"i7 IV7 | i7 v7\"\n");
  CHECK(said(read(lesson("i" + repeated(",i", 15)))) == "");
  CHECK(said(read(lesson("i" + repeated(",i", 17)))) ==
        "11:50-51: error: this is chord 17 of one bar of the form\n"
        "help: write at most 16 in a bar; a space begins the next\n");
}

TEST_CASE("very long words are quoted in part where something is wrong with them") {
  const std::string message = said(read(lesson_with("", with_word(repeated("é", 300), "a"))));
  CHECK(message.starts_with("10:1-301: error: there is no row called `" + repeated("é", 40) + "…`\n"));
}

TEST_CASE("texts that come from elsewhere are cut to what a lesson may hold") {
  CHECK(plain_line(repeated("é", 500)) == repeated("é", 500));
  CHECK(plain_line(repeated("é", 501)) == repeated("é", 499) + "…");
  CHECK(source::count_code_points(plain_line(repeated("{", 400))) <= 500);
  CHECK(toml_quoted(title_markup(repeated("*", 400))) == "\"" + repeated("\\\\*", 249) + "\\\\…\"");
  CHECK(grid_words(repeated("a", 197)) == repeated("a", 197));
  CHECK(grid_words(repeated("a", 198)) == repeated("a", 196) + "…");
}

TEST_CASE("the README of the demo lessons tells every limit") {
  std::ifstream file(fretsheaf::test::project_folder() + "/demo-lessons/README.md");
  std::string text{std::istreambuf_iterator<char>(file), {}};
  const auto begin = text.find("\n## Limits\n");
  REQUIRE(begin != std::string::npos);
  text = text.substr(begin);
  const auto grouped = [](auto number) {
    std::string figures = std::to_string(number);
    if (figures.size() > 3) figures.insert(figures.size() - 3, ",");
    return figures;
  };
  static_assert(limits::bytes == std::size_t{4} << 20);
  const std::vector<std::string> told = {
      "4 MiB",
      grouped(limits::nesting) + " deep",
      grouped(limits::examples) + " examples",
      grouped(limits::bars) + " bars",
      grouped(limits::strip_rows) + " rows",
      grouped(limits::form_chords) + " chords",
      grouped(limits::line) + " characters",
      grouped(limits::text) + " characters",
      grouped(limits::link) + " characters",
      grouped(limits::items) + " items",
      grouped(limits::word) + " characters",
      grouped(limits::pages) + " pages",
      grouped(limits::blank_bars) + " blank bars",
      grouped(limits::log_rows) + " rows",
      grouped(limits::rungs) + " rungs",
      grouped(limits::passes) + " passes",
      "tempo " + grouped(limits::slowest) + " to " + grouped(limits::fastest),
      grouped(limits::frets) + " frets",
      grouped(limits::strings) + " strings",
      grouped(limits::bars_per_line) + " bars in a line",
  };
  for (const std::string& limit : told) {
    INFO(limit);
    CHECK(text.find(limit) != std::string::npos);
  }
}

}  // namespace fretsheaf::lesson::test
