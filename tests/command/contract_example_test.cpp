// The example lesson that defines the format, whole: from its file to its handouts. What it must sound was read off its
// grid by hand.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "support/project.h"

using namespace fretsheaf;

namespace {

std::string file_of_the_project(const std::string& name) {
  std::ifstream file(test::project_folder() + "/" + name, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

// Typeset in memory in every format; the logo that it names is there.
struct Handouts {
  platform::DiskSystem disk;
  platform::MemorySystem system{disk};
  command::Console console;
  command::Exit exit;

  Handouts() {
    system.files["low-tide.lesson.toml"] = file_of_the_project("tests/command/format-example.lesson.toml");
    system.files["lantern.svg"] =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"10\" height=\"10\"><path d=\"M0 0h10v10z\"/></svg>";
    exit = command::run({"typeset", "low-tide.lesson.toml", "--as", "pdf,svg,musicxml"}, system, console);
  }
};

// "D2 string 2 fret 0 for 6": a note of the document's tab staff, the second, in one line, a rest as "rest for 12".
std::vector<std::string> notes_of(const std::string& document) {
  std::vector<std::string> notes;
  const std::regex note("<note[^]*?</note>");
  const auto value = [](const std::string& text, const std::string& name) {
    std::smatch found;
    return std::regex_search(text, found, std::regex("<" + name + ">([^<]*)</")) ? found[1].str() : std::string();
  };
  for (std::sregex_iterator it(document.begin(), document.end(), note); it != std::sregex_iterator(); ++it) {
    const std::string text = it->str();
    if (value(text, "staff") != "2") continue;
    std::string line = "rest";
    if (text.find("<rest") == std::string::npos) {
      const std::string alter = value(text, "alter");
      line = value(text, "step") +
             (alter == "1"    ? "#"
              : alter == "-1" ? "b"
                              : "") +
             value(text, "octave") + " string " + value(text, "string") + " fret " + value(text, "fret");
    }
    notes.push_back(line + " for " + value(text, "duration"));
  }
  return notes;
}

}  // namespace

TEST_CASE("the lesson that defines the format is typeset whole, without an error") {
  const Handouts made;
  INFO(made.console.errors);
  CHECK(made.exit == command::Exit::done);
  CHECK(made.console.errors.find("error:") == std::string::npos);
  CHECK(made.system.files.at("low-tide.d-dorian.pdf").substr(0, 5) == "%PDF-");
  CHECK(made.system.files.count("low-tide.d-dorian.p1.svg") == 1);
}

TEST_CASE("the lesson that defines the format sounds what its grid says") {
  const Handouts made;
  const std::string& document = made.system.files.at("low-tide.d-dorian.musicxml");
  // Six divisions to the quarter: its triplet needs three, its eighths two.
  CHECK(document.find("<divisions>6</divisions>") != std::string::npos);
  // The muted note has its open string's pitch; the note of bar 3's "(2)" is a rest, bar 4 ends with two beats of it.
  const std::vector<std::string> expected = {"D2 string 2 fret 0 for 6",
                                             "C2 string 3 fret 3 for 6",
                                             "G1 string 4 fret 3 for 6",
                                             "B1 string 3 fret 2 for 6",
                                             "D2 string 3 fret 5 for 6",
                                             "E2 string 2 fret 2 for 6",
                                             "F2 string 2 fret 3 for 3",
                                             "A1 string 3 fret 0 for 3",
                                             "F#2 string 2 fret 4 for 6",
                                             "D2 string 3 fret 5 for 6",
                                             "rest for 6",
                                             "D2 string 2 fret 0 for 2",
                                             "F2 string 2 fret 3 for 2",
                                             "E2 string 2 fret 2 for 2",
                                             "A2 string 1 fret 2 for 6",
                                             "A1 string 3 fret 0 for 3",
                                             "B1 string 3 fret 2 for 3",
                                             "C2 string 3 fret 3 for 6",
                                             "rest for 12"};
  CHECK(notes_of(document) == expected);
}
