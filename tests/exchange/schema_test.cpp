// Every demo lesson, the format's signs and a few hundred generated lessons against the W3C's MusicXML 4.0 schema
// (schema/), by xmllint of libxml2.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "exchange/exported.h"
#include "support/project.h"
#include "support/random_lesson.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using exchange::test::export_lesson;

namespace {

const std::string project = fretsheaf::test::project_folder();
const std::string schema_folder = project + "/tests/exchange/schema";

std::string exported(const std::string& text) {
  return export_lesson(text).document;
}

// xmllint's exit status for a document, or for several in one run; its complaints go to the test's output.
bool valid(const TemporaryFolder& folder, const std::vector<std::string>& documents) {
  int number = 0;
  for (const std::string& document : documents) put(folder / (std::to_string(++number) + ".musicxml"), document);
  const std::string command = "cd '" + folder.path() + "' && XML_CATALOG_FILES='" + schema_folder +
                              "/catalog.xml' xmllint --nonet --noout --schema '" + schema_folder +
                              "/musicxml.xsd' *.musicxml 2> complaints";
  const bool fine = std::system(command.c_str()) == 0;
  if (!fine) WARN(bytes_of(folder / "complaints"));
  return fine;
}

}  // namespace

TEST_CASE("every demo lesson exports to a document that the W3C schema accepts") {
  std::vector<std::string> documents;
  for (const auto& entry : std::filesystem::directory_iterator(project + "/demo-lessons")) {
    if (entry.path().extension() == ".toml") documents.push_back(exported(bytes_of(entry.path().string())));
  }
  REQUIRE(documents.size() >= 6);
  CHECK(valid(TemporaryFolder(), documents));
}

TEST_CASE("two hundred generated lessons export to documents that the W3C schema accepts") {
  std::vector<std::string> documents;
  for (unsigned seed = 1; seed <= 200; ++seed) documents.push_back(exported(test::random_lesson(seed)));
  CHECK(valid(TemporaryFolder(), documents));
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
  CHECK(valid(TemporaryFolder(), {good}));
  std::string broken = good;
  const auto duration = broken.find("<duration>");
  REQUIRE(duration != std::string::npos);
  broken.erase(duration, broken.find("</duration>") + 11 - duration);
  const TemporaryFolder folder;
  put(folder / "1.musicxml", broken);
  const std::string command = "XML_CATALOG_FILES='" + schema_folder +
                              "/catalog.xml' xmllint --nonet --noout --schema '" + schema_folder + "/musicxml.xsd' '" +
                              (folder / "1.musicxml") + "' 2> '" + (folder / "complaints") + "'";
  CHECK(std::system(command.c_str()) != 0);
}
