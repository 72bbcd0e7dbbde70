// The manual and the tutorial of the demo lessons: what stands in them is read without a word, and each picture is what
// the program makes of the lines before it (tests/run --update-golden draws them anew).
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "command/help.h"
#include "command/snippets.h"
#include "lesson/keys_example.h"
#include "lesson/reader.h"
#include "support/golden.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using test::Snippet;

namespace {

const std::string manual = "demo-lessons/manual";
const std::string tutorial = "demo-lessons/tutorial";

std::string document(const std::string& folder) {
  return bytes_of(test::project_folder() + "/" + folder + "/README.md");
}

std::string said_of(const std::string& lesson) {
  const lesson::ReadLesson read = lesson::read_lesson("a.lesson.toml", lesson, platform::DiskSystem());
  std::string said;
  for (const auto& one : read.diagnostics.sorted()) said += source::render(one, read.files);
  return said;
}

// The pictures that lie beside a document, without those that it shows.
std::set<std::string> left_over(const std::string& folder, const std::vector<Snippet>& all) {
  std::set<std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/" + folder)) {
    files.insert(entry.path().filename().string());
  }
  files.erase("README.md");
  for (const Snippet& one : all) files.erase(one.picture);
  return files;
}

void check_pictures(const std::string& folder) {
  const std::vector<Snippet> all = test::snippets(document(folder));
  std::set<std::string> names;
  for (const Snippet& one : all) {
    INFO(folder << "/README.md:" << one.line);
    CHECK(said_of(test::whole_lesson(one)) == "");
    REQUIRE(one.picture.ends_with(".svg"));
    CHECK(names.insert(one.picture).second);
    test::Music music;
    check_kept(folder + "/" + one.picture, test::picture_of(one, music));
    CHECK(music.diagnostics.list().empty());
  }
  CHECK(left_over(folder, all).empty());
}

// What stands in the rows of one kind in all grids of a document.
std::string rows_of(const std::vector<Snippet>& all, const std::string& row) {
  std::string found;
  for (const Snippet& one : all) {
    std::istringstream lines(one.text);
    for (std::string line; std::getline(lines, line);) {
      const std::string label = line.substr(0, line.find_first_of(" |"));
      if (line.find('|') == std::string::npos) continue;
      if (row == "string" ? label.size() == 1 : label == row) found += line.substr(label.size()) + "\n";
    }
  }
  return found;
}

}  // namespace

TEST_CASE("the manual's pictures are what the program engraves") {
  check_pictures(manual);
}

TEST_CASE("the tutorial's pictures are what the program engraves, in five steps") {
  check_pictures(tutorial);
  CHECK(test::snippets(document(tutorial)).size() == 5);
}

TEST_CASE("the manual shows every row and every sign in a picture") {
  const std::vector<Snippet> all = test::snippets(document(manual));
  const std::string text = document(manual);
  for (const command::HelpEntry& entry : command::help_entries()) {
    if (entry.kind != command::HelpKind::sign && entry.kind != command::HelpKind::row) continue;
    CAPTURE(entry.word, entry.of);
    const bool is_row = entry.kind == command::HelpKind::row;
    const std::string rows = rows_of(all, std::string(is_row ? entry.word : entry.of));
    CHECK_FALSE(rows.empty());
    if (is_row) continue;
    for (std::string word : command::spellings(entry)) {
      CAPTURE(word);
      // Told in the text, and used in a grid.
      CHECK(text.find("`" + word + "`") != std::string::npos);
      if (word == "\" \"") word = "\"";
      if (word == "\"D.S.\"" || word == "\"D.C.\"") word = word.substr(0, word.size() - 1);
      word.resize(std::min(word.find("---"), word.size()));
      CHECK(rows.find(word) != std::string::npos);
    }
  }
}

TEST_CASE("the manual shows every key of an example and every placeholder") {
  std::string all;
  for (const Snippet& one : test::snippets(document(manual))) all += "\n" + one.text;
  for (const std::string_view key : lesson::example_key_names()) {
    CAPTURE(key);
    CHECK(all.find("\n" + std::string(key) + " ") != std::string::npos);
  }
  for (const command::HelpEntry& entry : command::help_entries()) {
    if (entry.kind != command::HelpKind::filled_in) continue;
    CAPTURE(entry.word);
    CHECK(all.find("{{" + std::string(entry.word)) != std::string::npos);
  }
}

TEST_CASE("lessons in a document are found with their pictures") {
  const std::vector<Snippet> all =
      test::snippets("a\n```toml\nx = 1\n```\n\n![b](c.svg)\n```\ny\n```\n```toml\nz\n```\nno\n![d](e.svg)\n");
  REQUIRE(all.size() == 2);
  CHECK(all[0].text == "x = 1\n");
  CHECK(all[0].picture == "c.svg");
  CHECK(all[0].line == 2);
  CHECK(all[1].picture.empty());
}
