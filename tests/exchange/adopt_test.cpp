// A lesson that goes out as MusicXML comes in again as the same music.
#include "exchange/adopt.h"

#include <catch2/catch.hpp>
#include <filesystem>

#include "exchange/container.h"
#include "exchange/exported.h"
#include "exchange/same_music.h"
#include "exchange/sound_lesson.h"
#include "exchange/written_forms.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "support/project.h"
#include "support/random_lesson.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

std::string all_said(const exchange::Adopted& adopted) {
  std::string said;
  for (const source::Diagnostic& one : adopted.diagnostics.sorted()) said += source::render(one, adopted.files);
  return said;
}

lesson::Lesson read_again(const std::string& text) {
  const platform::MemorySystem system;
  lesson::ReadLesson read = lesson::read_lesson("adopted.lesson.toml", text, system);
  std::string problems;
  for (const source::Diagnostic& one : read.diagnostics.sorted()) problems += source::render(one, read.files);
  INFO(text << problems);
  REQUIRE(read.lesson);
  return std::move(*read.lesson);
}

// Nothing is lost on the way, and nothing is said to be.
void check_round_trip(const std::string& text) {
  const Exported exported = export_lesson(text);
  const exchange::Adopted adopted = exchange::adopt("a.musicxml", exported.document, {});
  INFO(text << "\n" << all_said(adopted) << "\n" << adopted.lesson.value_or("nothing"));
  REQUIRE(adopted.lesson);
  REQUIRE(music_lines(read_again(*adopted.lesson)) == music_lines(exported.lesson));
  REQUIRE(all_said(adopted).empty());
}

}  // namespace

TEST_CASE("every demo lesson and the format's example come back from MusicXML as the same music") {
  std::vector<std::string> lessons = {test::project_folder() + "/tests/command/format-example.lesson.toml"};
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/demo-lessons")) {
    if (entry.path().extension() == ".toml") lessons.push_back(entry.path().string());
  }
  REQUIRE(lessons.size() >= 7);
  for (const std::string& path : lessons) {
    INFO(path);
    check_round_trip(bytes_of(path));
  }
}

TEST_CASE("a lesson with something of everything comes back from MusicXML as the same music") {
  check_round_trip(sound_lesson);
}

TEST_CASE("forms that are written out come back from MusicXML as the same music") {
  for (const std::string& lesson : written_forms()) check_round_trip(lesson);
}

TEST_CASE("four hundred generated lessons come back from MusicXML as the same music") {
  for (unsigned seed = 1; seed <= 400; ++seed) check_round_trip(fretsheaf::test::random_lesson(seed));
}

TEST_CASE("a compressed score is taken in as the plain one is") {
  const Exported exported = export_lesson(sound_lesson);
  const auto plain = exchange::adopt("a.musicxml", exported.document, {});
  const auto packed = exchange::adopt("a.mxl", exchange::mxl(exported.document), {});
  REQUIRE(plain.lesson);
  CHECK(plain.lesson == packed.lesson);
}
