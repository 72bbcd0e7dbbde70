#include <catch2/catch.hpp>

#include "lesson/reader_support.h"
#include "lesson/toml_string.h"

// Files that are no lessons at all, and lessons that are enormous.
namespace fretsheaf::lesson::test {
namespace {

std::string repeated(const std::string& what, std::size_t times) {
  std::string result;
  result.reserve(what.size() * times);
  for (std::size_t i = 0; i < times; ++i) result += what;
  return result;
}

}  // namespace

TEST_CASE("A file that is not UTF-8 is refused at the first byte that is not") {
  CHECK(said(read("title = \"Caf\xC3\xA9\"\nkey = \"\xE9\"\n")) ==
        "2:8-9: error: from here on this file is not UTF-8\nhelp: save it again with the encoding UTF-8\n");
  CHECK(said(read(std::string("\xFF\xFEt\0i\0", 6))) ==
        "1:1-2: error: this file is UTF-16, not UTF-8\nhelp: save it again with the encoding UTF-8\n");
}

TEST_CASE("A NUL is refused at its place") {
  CHECK(said(read(std::string("title = \"ä\0\"\n", 14))) ==
        "1:11-12: error: this file holds a NUL character\n"
        "help: it is not a text file, or was damaged: take the character out\n");
}

TEST_CASE("A quotation mark in the middle of a value leads the parser to nothing beyond ASCII") {
  CHECK(said(read("copyright = 8\"© Eelgrass\"\n")) ==
        "1:13-26: error: a text needs quotes around it\nhelp: write copyright = '8\"© Eelgrass\"'\n");
}

// The parser's own tables are wrong for these letters (platform/toml_library.h); what sanitizers find is in the seeds.
TEST_CASE("A letter beyond ASCII behind a backslash is told by its place, and may begin a line that goes on") {
  const std::string help = "help: write \\\\ for a backslash, or put the text between ' and '\n";
  CHECK(said(read("title = \"caf\\é\"\n")) == "1:13-15: error: '\\é' has no meaning in a text in \" quotes\n" + help);
  CHECK(said(read("title = \"\"\"caf\\°\"\"\"\n")) ==
        "1:15-17: error: '\\°' has no meaning in a text in \" quotes\n" + help);
  CHECK(said(read(lesson_with("intro = \"\"\"low \\\n  été, α\"\"\""))) == "");
}

TEST_CASE("A file of more than 4 MiB is refused, one of 4 MiB is read") {
  const std::string lesson = lesson_with("");
  std::string large = lesson + "#" + std::string(limits::bytes - lesson.size() - 1, 'x');
  CHECK(said(read(large)) == "");
  large += 'x';
  CHECK(said(read(large)) ==
        "1:1-1: error: this file is larger than 4 MiB, the most that is read\nhelp: split it into several\n");
}

TEST_CASE("What nests too deeply is refused before it is parsed") {
  const std::string too_deep =
      " error: this is nested more than 32 deep\nhelp: write it as the description of lesson files has it\n";
  CHECK(said(read(repeated("a.", 100'000) + "a = 1\n")) == "1:64-65:" + too_deep);
  CHECK(said(read("[" + repeated("a.", 100'000) + "a]\n")) == "1:65-66:" + too_deep);
  CHECK(said(read(repeated("\"a\" . ", 100'000) + "a = 1\n")) == "1:191-192:" + too_deep);
  CHECK(said(read("a = " + repeated("[", 100'000))) == "1:37-38:" + too_deep);
  CHECK(said(read("a = " + repeated("{ a = ", 100'000))) == "1:197-198:" + too_deep);
}

TEST_CASE("Brackets and dots in texts and comments do not nest") {
  const std::string dots = repeated(".", 100) + repeated("[", 100);
  CHECK(said(read(lesson_with("subtitle = \"" + dots + "\" # " + dots))) == "");
  CHECK(said(read(lesson_with("intro = '''\n" + dots + "\n'''"))) == "");
}

// Both take about a second; work that grows with the square of the line would run into the runner's own limit.
TEST_CASE("Places are found in lines of megabytes") {
  const std::size_t many = 199;
  const std::string note = "\"" + repeated("ä", 9000) + "\", ";
  const ReadLesson list = read(lesson_with("practice = [" + repeated(note, many) + "\"z\"]"));
  CHECK(said(list) == "");
  REQUIRE(list.lesson);
  CHECK(list.lesson->practice.size() == many + 1);
  const Range last = list.lesson->practice.back().range;
  CHECK(list.files[0].bytes().substr(last.begin, last.end - last.begin) == "\"z\"");
  const std::string keys = "\"" + repeated("{{key}} ", 6000) + "\", ";
  const ReadLesson braces = read(lesson_with("practice = [" + repeated(keys, 80) + "]"));
  CHECK(said(braces) == "");
}

TEST_CASE("Example 501 is one too many") {
  const std::string example = "[[example]]\nblank-bars = 1\n";
  CHECK(said(read(base + repeated(example, 500))) == "");
  CHECK(said(read(base + repeated(example, 501))) ==
        "1004:1-12: error: this is example 501, and a lesson has at most 500\nhelp: split it into several lessons\n");
}

TEST_CASE("A place in a text is the place in its file") {
  struct Quoted {
    std::string toml;
    std::string where;
  };
  const Quoted one =
      GENERATE(Quoted{R"("say NOW")", "NOW"}, Quoted{R"("\u266d\t\"NOW")", "NOW"}, Quoted{"'a NOW'", "NOW"},
               Quoted{"\"\"\"\r\na\r\nNOW\"\"\"", "NOW"}, Quoted{"\"\"\"a\\\n   NOW\"\"\"", "NOW"},
               Quoted{"'''\na \\ NOW''''", "NOW"}, Quoted{R"("\u004e\U0000004fW")", R"(\u004e\U0000004fW)"});
  const source::Text file("x", "key = " + one.toml + "\n");
  const auto string = find_toml_string(file.bytes(), 6);
  REQUIRE(string);
  CHECK(string->end == file.bytes().size() - 1);
  const std::string value = toml_string_value(file.bytes(), *string);
  const auto at = value.find("NOW");
  REQUIRE(at != std::string::npos);
  const Range place = place_in_text(file, {6, static_cast<std::uint32_t>(string->end), 0}, at, at + 3);
  CHECK(file.bytes().substr(place.begin, place.end - place.begin) == one.where);
}

TEST_CASE("Our reading of TOML's strings is the parser's") {
  const std::string value = GENERATE(R"("a \"b\" \\ \t\u00e9\U0001F3B8")", "'a \\ b'", "\"\"\"\na \\\n\n   b\"\"\"\"\"",
                                     "'''\r\na\r\n'b''''");
  const ReadLesson found = read(lesson_with("intro = " + value));
  INFO(said(found));
  REQUIRE(found.lesson);
  const auto string = find_toml_string(found.files[0].bytes(), found.lesson->intro->range.begin);
  REQUIRE(string);
  CHECK(toml_string_value(found.files[0].bytes(), *string) == found.lesson->intro->value);
  CHECK(string->end == found.lesson->intro->range.end);
}

}  // namespace fretsheaf::lesson::test
