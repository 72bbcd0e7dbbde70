// Every code has a case: what is written, what is said of it and where. The cases lie in cases/codes.txt, which tells
// how they are written; what is said of them in golden/codes.txt.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "sheaf/workshop.h"
#include "source/code.h"
#include "support/cases.h"
#include "support/golden.h"
#include "support/project.h"

using namespace fretsheaf;

namespace {

// All that is said of a lesson and of one handout of it.
struct Said {
  std::vector<std::string> codes;
  std::string text;
};

void add(const std::vector<sheaf::Report>& reports, Said& said) {
  for (const sheaf::Report& report : reports) {
    for (const source::Diagnostic& one : report.diagnostics.sorted()) {
      said.codes.emplace_back(source::code_name(one.code));
      said.text += source::render(one, report.files);
    }
  }
}

Said said_of(const test::WrittenCase& one) {
  static const platform::DiskSystem disk;
  platform::MemorySystem system(disk);
  for (const auto& [name, bytes] : one.files) system.files[name] = bytes;
  sheaf::Request request;
  request.lesson = "a.lesson.toml";
  request.formats = {sheaf::Format::pdf};
  if (!one.key.empty()) request.keys = {one.key};
  sheaf::Workshop workshop(system);
  const sheaf::Plan plan = workshop.plan(request);
  Said said;
  add(plan.made.reports, said);
  for (const sheaf::Job& job : plan.jobs) add(workshop.make(job).reports, said);
  return said;
}

// Codes whose cases are too long for that file: where their tests are.
struct Elsewhere {
  std::string_view code;
  std::string file;
  std::string test;
};
const std::vector<Elsewhere> elsewhere = {
    {"bar-limit", "lesson/grid_mutation_test.cpp",
     "an example holds 2,000 bars, and one more is an error with its place"},
    {"file-too-large", "lesson/reader_bytes_test.cpp", "A file of more than 4 MiB is refused, one of 4 MiB is read"},
    {"file-unreadable", "command/check_test.cpp", "check --json says of a file that cannot be read why, and goes on"},
    {"answers-none", "command/answers_test.cpp", "an answer key is asked of a lesson that hides nothing"},
    {"hidden-from-score", "command/answers_test.cpp",
     "MusicXML of an exercise is made for the answer key alone, and this is said"},
    // Of scores that are taken in, whose rules and places are those of a MusicXML document.
    {"adopt-assumed", "exchange/adopt_scores_test.cpp", "what is not said is taken as the trade does, and said to be"},
    {"adopt-changed", "exchange/adopt_losses_test.cpp", "what a lesson cannot keep of a score is said where it stands"},
    {"adopt-container", "exchange/adopt_hostile_test.cpp",
     "archives that are damaged, name no score, or name one outside are refused"},
    {"adopt-entities", "exchange/adopt_hostile_test.cpp",
     "entities of a document's own are refused, however few lines they take"},
    {"adopt-left-out", "exchange/adopt_scores_test.cpp",
     "what a lesson has no sign for is left out and named, each kind once with its measures"},
    {"adopt-meter", "exchange/adopt_scores_test.cpp", "meters that a lesson has not are errors"},
    {"adopt-neck", "exchange/adopt_losses_test.cpp", "what makes a score no lesson is said where it stands"},
    {"adopt-not-score", "exchange/adopt_hostile_test.cpp", "what is no score is said to be none"},
    {"adopt-not-xml", "exchange/adopt_losses_test.cpp", "what makes a score no lesson is said where it stands"},
    {"adopt-parts", "exchange/adopt_scores_test.cpp",
     "several parts are an error that names them, and one can be chosen"},
    {"adopt-percussion", "exchange/adopt_scores_test.cpp", "percussion has no place on a neck"},
    {"adopt-polyphony", "exchange/adopt_scores_test.cpp",
     "two voices that never sound together are one line, and two that do are an error with its measure"},
    {"adopt-time", "exchange/adopt_scores_test.cpp",
     "a duration before any divisions, and divisions that are none, are errors"},
    {"adopt-too-much", "exchange/adopt_losses_test.cpp", "limits of a lesson hold for scores"},
    {"adopt-tuplet", "exchange/adopt_scores_test.cpp", "tuplets that counts cannot say are errors with their measure"},
    {"adopt-unplayable", "exchange/adopt_scores_test.cpp",
     "what no hand can play on the instrument is an error with its measure"},
};

std::string text_of(const std::string& file) {
  std::ifstream stream(test::project_folder() + "/tests/" + file);
  return {std::istreambuf_iterator<char>(stream), {}};
}

bool has_test(const std::string& file, const std::string& test) {
  return text_of(file).find("TEST_CASE(\"" + test + "\")") != std::string::npos;
}

bool has_case_elsewhere(std::string_view code) {
  for (const Elsewhere& one : elsewhere) {
    if (one.code == code) return has_test(one.file, one.test);
  }
  return false;
}

const std::vector<source::Code> all_codes = {
#define FRETSHEAF_CODE(name) source::Code::name,
#include "source/codes.def"
#undef FRETSHEAF_CODE
};

}  // namespace

TEST_CASE("every code has a case: its input, what is said of it, and where") {
  std::set<std::string, std::less<>> seen;
  std::string report;
  for (const test::WrittenCase& one : test::written_cases("command/cases/codes.txt")) {
    INFO(one.code << ": " << one.what << "\n" << one.files.at("a.lesson.toml"));
    const Said said = said_of(one);
    CHECK(said.codes == std::vector<std::string>{one.code});  // one slip, one finding
    seen.insert(said.codes.begin(), said.codes.end());
    report += "== " + one.code + ": " + one.what + "\n" + said.text;
  }
  for (const source::Code code : all_codes) {
    const std::string_view name = source::code_name(code);
    INFO(name);
    CHECK((seen.contains(name) || has_case_elsewhere(name)));
  }
  check_golden("codes.txt", report);
}

TEST_CASE("every rule of the description that forbids something names a case that breaks it") {
  std::set<std::string> cases;
  for (const test::WrittenCase& one : test::written_cases("command/cases/codes.txt")) {
    cases.insert(one.code + ": " + one.what);
  }
  std::istringstream lines(text_of("command/cases/rules.txt"));
  std::string rule;
  int shown = 1;
  int rules = 0;
  for (std::string line; std::getline(lines, line);) {
    INFO(rule << "\n" << line);
    if (line.starts_with("== ")) {
      CHECK(shown > 0);
      rule = line;
      shown = 0;
      ++rules;
    } else if (line.starts_with("- ")) {
      const auto colon = line.find(": ");
      REQUIRE(colon != std::string::npos);
      std::string code = line.substr(2, colon - 2);
      const std::string what = line.substr(colon + 2);
      const bool in_file = code.ends_with(".cpp");
      if (!in_file) std::replace(code.begin(), code.end(), '_', '-');
      CHECK((in_file ? has_test(code, what) : cases.contains(code + ": " + what)));
      ++shown;
    }
  }
  CHECK(shown > 0);
  CHECK(rules >= 79);
}

TEST_CASE("odd lessons that the description allows are lessons, without an error") {
  int lessons = 0;
  for (const test::WrittenCase& one : test::written_cases("command/cases/odd.txt")) {
    INFO(one.what << "\n" << one.files.at("a.lesson.toml"));
    const Said said = said_of(one);
    CHECK(said.text.find(": error: ") == std::string::npos);
    INFO(said.text);
    ++lessons;
  }
  CHECK(lessons >= 50);
}
