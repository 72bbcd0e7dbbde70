// The JSON schema and the reader say the same, as far as a schema can. The schema is checked by Python's jsonschema, an
// implementation of json-schema.org's draft 7 that knows nothing of this project.
#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "command/command.h"
#include "lesson/keys_example.h"
#include "lesson/keys_lesson.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "support/project.h"
#include "support/random_lesson.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using nlohmann::ordered_json;

namespace {

std::string schema_of(const std::string& what) {
  platform::MemorySystem system;
  command::Console console;
  CHECK(command::run({"schema", what}, system, console) == command::Exit::done);
  return console.out;
}

std::vector<std::string> names_in(const ordered_json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  std::sort(names.begin(), names.end());
  return names;
}

std::vector<std::string> sorted(const std::vector<std::string_view>& views) {
  std::vector<std::string> names(views.begin(), views.end());
  std::sort(names.begin(), names.end());
  return names;
}

// What the independent validator refuses: "NAME: PATH", a line each.
std::string refused(const std::string& schema, const std::vector<std::string>& files) {
  const TemporaryFolder folder;
  put(folder / "schema.json", schema);
  std::string command =
      "python3 '" + test::project_folder() + "/tests/command/against_schema.py' '" + folder / "schema.json" + "'";
  for (const std::string& file : files) command += " '" + file + "'";
  command += " 2>&1";
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  std::string said;
  std::array<char, 4096> part{};
  while (const std::size_t size = std::fread(part.data(), 1, part.size(), pipe.get())) said.append(part.data(), size);
  return said;
}

bool reader_accepts(const std::string& text) {
  const platform::MemorySystem system;
  return lesson::read_lesson("a.lesson.toml", text, system).lesson.has_value();
}

// A lesson with one line more at its top, and one in its example.
std::string lesson_with(const std::string& top, const std::string& in_example) {
  const auto has = [&](const std::string& key) { return top.starts_with(key + " "); };
  return std::string(has("title") ? "" : "title = \"Two notes\"\n") + (has("key") ? "" : "key = \"D dorian\"\n") +
         (has("instrument") ? "" : "instrument = \"bass\"\n") + top + "\n[[example]]\n" + in_example +
         "\ntab = '''\ncount | 1   2   |\nA     | 5   5   |\n'''\nmeter = \"2/4\"\n";
}

}  // namespace

TEST_CASE("the schema names the keys that the reader knows, and no others") {
  const ordered_json schema = ordered_json::parse(schema_of("lesson"));
  CHECK(names_in(schema.at("properties")) == sorted(lesson::lesson_key_names()));
  CHECK(names_in(schema.at("definitions").at("example").at("properties")) == sorted(lesson::example_key_names()));
  const ordered_json sheaf = ordered_json::parse(schema_of("sheaf"));
  std::vector<std::string> defaults = names_in(sheaf.at("properties").at("defaults").at("properties"));
  defaults.insert(defaults.end(), {"example", "title"});
  std::sort(defaults.begin(), defaults.end());
  CHECK(defaults == sorted(lesson::lesson_key_names()));
}

TEST_CASE("the schema accepts every demo lesson and what else the reader accepts") {
  const TemporaryFolder folder;
  std::vector<std::string> files = {test::project_folder() + "/tests/command/format-example.lesson.toml"};
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/demo-lessons")) {
    if (entry.path().extension() == ".toml") files.push_back(entry.path().string());
  }
  REQUIRE(files.size() > 6);
  for (unsigned seed = 1; seed <= 100; ++seed) {
    files.push_back(folder / ("random-" + std::to_string(seed) + ".lesson.toml"));
    put(files.back(), test::random_lesson(seed));
  }
  const std::vector<std::pair<std::string, std::string>> odd = {
      {"key = \"D DORIAN\"", ""},
      {"also-in = \"all\"", "bars-per-line = \"auto\""},
      {"swing-ratio = \"3:2\"", "tempo = { from = 60, to = 108, rungs = 5, spacing = \"ratio\", beat = \"half\" }"},
      {"tuning = [\"Eb1\", \"A1\", \"D#2\", \"Bbb2\"]", "labels = []"},
      {"frets = 36\ncapo = 2", "tempo = [80, 100]"},
      {"practice-log = 0\nnumber = 0", "form = { bars = \"i7,IV7 i7 | v7\", here = \"2\", write-out = true }"},
      {"link = \"mailto:shed@eelgrass.example\"", "neck = { of = \"chord i7\", labels = \"none\", frets = \"0-7\" }"},
      {"meter = \"2+2+3/8\"", "shapes = [\"Am7\", \"Dm7 x535\"]\nhide = [\"frets\", \"chords\"]"}};
  for (const auto& [top, in_example] : odd) {
    const std::string text = lesson_with(top, in_example);
    INFO(text);
    CHECK(reader_accepts(text));
    files.push_back(folder / ("odd-" + std::to_string(files.size()) + ".lesson.toml"));
    put(files.back(), text);
  }
  CHECK(refused(schema_of("lesson"), files).empty());
  put(folder / "sheaf.toml",
      "[defaults]\nteacher = \"Eelgrass Strings\"\nkey = \"D dorian\"\n[output]\nfolder = \"out\"\nas = [\"pdf\", "
      "\"mxl\"]\n");
  CHECK(refused(schema_of("sheaf"), {folder / "sheaf.toml"}).empty());
}

TEST_CASE("what a schema can refuse is refused by the schema and by the reader") {
  struct Wrong {
    std::string top;
    std::string in_example;
    std::string path;
  };
  const std::vector<Wrong> wrongs = {{"titel = \"x\"", "", "$"},
                                     {"title = \"\"", "", "$.title"},
                                     {"subtitle = 7", "", "$.subtitle"},
                                     {"teacher = \"a\\nb\"", "", "$.teacher"},
                                     {"number = -1", "", "$.number"},
                                     {"key = \"D\"", "", "$.key"},
                                     {"key = \"H major\"", "", "$.key"},
                                     {"meter = \"4/5\"", "", "$.meter"},
                                     {"feel = \"swung\"", "", "$.feel"},
                                     {"swing-ratio = \"2-1\"", "", "$.swing-ratio"},
                                     {"instrument = \"cello\"", "", "$.instrument"},
                                     {"tuning = [\"E\"]", "", "$.tuning[0]"},
                                     {"frets = 37", "", "$.frets"},
                                     {"capo = -1", "", "$.capo"},
                                     {"staves = []", "", "$.staves"},
                                     {"labels = [\"degrees\"]", "", "$.labels[0]"},
                                     {"bars-per-line = 0", "", "$.bars-per-line"},
                                     {"paper = \"a3\"", "", "$.paper"},
                                     {"language = \"xx\"", "", "$.language"},
                                     {"note-names = \"numbers\"", "", "$.note-names"},
                                     {"handed = \"both\"", "", "$.handed"},
                                     {"name-line = \"yes\"", "", "$.name-line"},
                                     {"practice = \"one\"", "", "$.practice"},
                                     {"practice-log = 61", "", "$.practice-log"},
                                     {"", "tempo = 19", "$.example[0].tempo"},
                                     {"", "tempo = [80]", "$.example[0].tempo"},
                                     {"", "tempo = { from = 60, two = 90 }", "$.example[0].tempo"},
                                     {"", "build-up = \"all\"", "$.example[0].build-up"},
                                     {"", "form = { here = \"1\" }", "$.example[0].form"},
                                     {"", "neck = { frets = \"7\" }", "$.example[0].neck.frets"},
                                     {"", "hide = [\"notes\"]", "$.example[0].hide[0]"},
                                     {"", "hide = [\"frets\", \"frets\"]", "$.example[0].hide"},
                                     {"", "vary = 0", "$.example[0].vary"},
                                     {"", "teacher = \"x\"", "$.example[0]"}};
  const TemporaryFolder folder;
  std::vector<std::string> files;
  std::string expected;
  for (std::size_t i = 0; i < wrongs.size(); ++i) {
    const std::string text = lesson_with(wrongs[i].top, wrongs[i].in_example);
    INFO(text);
    CHECK_FALSE(reader_accepts(text));
    files.push_back(folder / (std::to_string(i) + ".toml"));
    put(files.back(), text);
    expected += std::to_string(i) + ".toml: " + wrongs[i].path + "\n";
  }
  CHECK(refused(schema_of("lesson"), files) == expected);
}

TEST_CASE("there is no third schema") {
  platform::MemorySystem system;
  command::Console console;
  CHECK(command::run({"schema", "template"}, system, console) == command::Exit::request_wrong);
  CHECK(console.errors == "fretsheaf: error: schema template: there is a schema of a lesson and of a sheaf\n");
}
