// What demo-lessons/README.md says of keys, held to what the reader knows.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "lesson/keys_example.h"
#include "lesson/keys_lesson.h"
#include "support/project.h"

namespace fretsheaf::lesson::test {
namespace {

std::string readme() {
  std::ifstream file(fretsheaf::test::project_folder() + "/demo-lessons/README.md", std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// The section under a heading, up to the next one.
std::string section(const std::string& heading) {
  const std::string text = readme();
  const std::size_t begin = text.find("\n## " + heading + "\n");
  REQUIRE(begin != std::string::npos);
  return text.substr(begin, text.find("\n## ", begin + 1) - begin);
}

// The keys of a section's table, sorted: what stands first in each row, in backquotes.
std::vector<std::string> rows(const std::string& heading) {
  const std::string text = section(heading);
  const std::string begin = "\n| `";
  std::vector<std::string> keys;
  for (std::size_t at = 0; (at = text.find(begin, at)) != std::string::npos;) {
    at += begin.size();
    keys.push_back(text.substr(at, text.find('`', at) - at));
  }
  std::sort(keys.begin(), keys.end());
  return keys;
}

std::vector<std::string> sorted(std::vector<std::string_view> names) {
  std::vector<std::string> all(names.begin(), names.end());
  std::sort(all.begin(), all.end());
  return all;
}

}  // namespace

TEST_CASE("the README of the demo lessons explains every key of a lesson, and no other") {
  CHECK(rows("Keys of a lesson") == sorted(lesson_key_names()));
}

TEST_CASE("the README of the demo lessons explains every key of an example, and no other") {
  CHECK(rows("Keys of an example") == sorted(example_key_names()));
}

TEST_CASE("the README of the demo lessons names every instrument") {
  const std::string text = section("Keys of a lesson");
  for (const fretboard::Instrument& instrument : fretboard::instruments()) {
    INFO(instrument.name);
    CHECK(text.find("`\"" + std::string(instrument.name) + "\"`") != std::string::npos);
  }
}

}  // namespace fretsheaf::lesson::test
