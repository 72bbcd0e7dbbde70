#include "sheaf/record.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

using namespace fretsheaf::sheaf;

namespace {

Record sample() {
  Record record;
  const Inputs kit = {{"sheaf.toml", print_of("a")}, {"/fonts/one two.otf", print_of("b")}};
  record.kits[kit_print(kit)] = kit;
  LessonEntry lesson;
  lesson.lesson = "unit 1/tab\there\nand \\n there.lesson.toml";
  lesson.fingerprint = print_of("lesson");
  lesson.kit = kit_print(kit);
  lesson.key = "D dorian";
  lesson.suffixes = {".d-dorian", ".e-dorian"};
  lesson.formats = {Format::pdf, Format::mxl};
  record.add(lesson);
  for (const char* name : {"b.d-dorian", "a.e-dorian"}) {
    MadeEntry made;
    made.handout = name;
    made.format = Format::svg;
    made.lesson = lesson.lesson;
    made.fingerprint = lesson.fingerprint;
    made.files = {{".p1.svg", 1234, 1'700'000'000'123'456'789, print_of("1")}, {".p2.svg", 0, -5, print_of("2")}};
    record.add(made);
  }
  return record;
}

Record read_back(const std::string& text) {
  Record record;
  read_record(text, record);
  return record;
}

}  // namespace

TEST_CASE("a record is read back as it was, whatever stands in its names") {
  CHECK(read_back(text_of(sample())) == sample());
}

TEST_CASE("a record is one sorted file, the same in whatever order its lines came") {
  const std::string text = text_of(sample());
  std::istringstream lines(text);
  std::string line;
  std::getline(lines, line);
  CHECK(line == "fretsheaf record 1");
  std::vector<std::string> all;
  while (std::getline(lines, line)) all.push_back(line);
  CHECK(all.size() == 4);
  CHECK(std::is_sorted(all.begin(), all.end()));
  std::string backwards = record_heading();
  for (auto it = all.rbegin(); it != all.rend(); ++it) backwards += *it + "\n";
  CHECK(text_of(read_back(backwards)) == text);
}

TEST_CASE("of a journal that a kill cut short at any byte, every whole line counts and nothing else") {
  const std::string text = text_of(sample());
  for (std::size_t size = 0; size <= text.size(); ++size) {
    const std::string cut = text.substr(0, size);
    const std::size_t lines = static_cast<std::size_t>(std::count(cut.begin(), cut.end(), '\n'));
    const Record record = read_back(cut);
    CAPTURE(size);
    CHECK(record.kits.size() + record.lessons.size() + record.made.size() == (lines == 0 ? 0 : lines - 1));
    // The next run's lines begin after a line end.
    CHECK(read_back(cut + "\n" + text.substr(text.find('\n') + 1)).made.size() ==
          (size + 1 < record_heading().size() ? 0 : 2));
  }
}

TEST_CASE("a damaged line is passed over, whichever byte it is") {
  const std::string text = text_of(sample());
  const std::size_t begin = text.find("made\t");
  const std::size_t end = text.find('\n', begin);
  for (std::size_t at = begin; at < end; ++at) {
    std::string damaged = text;
    damaged[at] = damaged[at] == 'x' ? 'y' : 'x';
    CAPTURE(at);
    CHECK(read_back(damaged).made.size() == 1);
  }
}

TEST_CASE("a record in another form says nothing") {
  std::string text = text_of(sample());
  text.replace(0, record_heading().size(), "fretsheaf record 2\n");
  CHECK(read_back(text) == Record{});
  CHECK(read_back("") == Record{});
}

TEST_CASE("of two lines of one thing the later counts, and a kit that no lesson has is dropped") {
  Record record = sample();
  MadeEntry later = record.made.begin()->second;
  later.files.clear();
  const std::string journal = text_of(record) + line_of(later) + line_of(print_of("old"), {{"old", print_of("o")}});
  Record both = read_back(journal);
  CHECK(both.made.at({later.handout, later.format}) == later);
  CHECK(both.kits.size() == 2);
  CHECK(read_back(text_of(both)).kits.size() == 1);
}
