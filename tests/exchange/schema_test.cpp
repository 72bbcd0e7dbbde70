// Every demo lesson, the format's signs and a few hundred generated lessons against the W3C's MusicXML 4.0 schema
// (schema/), by xmllint of libxml2.
#include "exchange/schema.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <vector>

#include "exchange/exported.h"
#include "support/project.h"
#include "support/random_lesson.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

const std::string project = fretsheaf::test::project_folder();

std::string exported(const std::string& text) {
  return export_lesson(text).document;
}

}  // namespace

TEST_CASE("every demo lesson exports to a document that the W3C schema accepts") {
  std::vector<std::string> documents;
  for (const auto& entry : std::filesystem::directory_iterator(project + "/demo-lessons")) {
    if (entry.path().extension() == ".toml") documents.push_back(exported(bytes_of(entry.path().string())));
  }
  REQUIRE(documents.size() >= 6);
  CHECK(schema_accepts(documents));
}

TEST_CASE("two hundred generated lessons export to documents that the W3C schema accepts") {
  std::vector<std::string> documents;
  for (unsigned seed = 1; seed <= 200; ++seed) documents.push_back(exported(test::random_lesson(seed)));
  CHECK(schema_accepts(documents));
}

TEST_CASE("the feel is said where it changes, and nowhere else") {
  const std::string example = "[[example]]\ntab = '''\ncount | 1 2 3 4 |\nA     | 3   2   |\n'''\n";
  const std::string keys = "title = \"a\"\nkey = \"C major\"\ninstrument = \"bass\"\n";
  const auto count = [](const std::string& text, const std::string& word) {
    int found = 0;
    for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) ++found;
    return found;
  };
  CHECK(count(exported(keys + example + example), "<swing>") == 0);
  CHECK(count(exported(keys + "feel = \"swing\"\n" + example + example), "<first>2</first>") == 1);
  const std::string straight = "[[example]]\nfeel = \"straight\"\n" + example.substr(12);
  CHECK(count(exported(keys + "feel = \"swing\"\n" + example + straight), "<straight") == 1);
}

TEST_CASE("the schema check can fail: a note without a duration, an unknown element") {
  const std::string good = exported(
      "title = \"a\"\nkey = \"C major\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\ncount | 1 2 3 4 |\n"
      "A     | 3   2   |\n'''\n");
  CHECK(schema_accepts({good}));
  std::string broken = good;
  const auto duration = broken.find("<duration>");
  REQUIRE(duration != std::string::npos);
  broken.erase(duration, broken.find("</duration>") + 11 - duration);
  CHECK_FALSE(schema_accepts({good, broken}, "musicxml.xsd", true));
}
