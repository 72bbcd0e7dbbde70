#include "exchange/exported.h"

#include <catch2/catch.hpp>

#include "exchange/musicxml.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "score/build.h"

namespace fretsheaf::exchange::test {

namespace {

lesson::ReadLesson read(const std::string& text) {
  platform::MemorySystem system;
  system.files["lantern.svg"] = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"9\"/>";
  lesson::ReadLesson read = lesson::read_lesson("a.lesson.toml", text, system);
  std::string problems;
  for (const auto& diagnostic : read.diagnostics.sorted()) problems += source::render(diagnostic, read.files);
  INFO(text << problems);
  REQUIRE(read.lesson);
  return read;
}

// With what exercises hide, of which a student's copy has no document.
score::Score everything_of(lesson::ReadLesson& lesson) {
  return score::build_score(*lesson.lesson, lesson.diagnostics, score::Copy::answer_key);
}

}  // namespace

Exported export_lesson(const std::string& text) {
  lesson::ReadLesson lesson = read(text);
  std::string document = exchange::musicxml(everything_of(lesson));
  return {std::move(*lesson.lesson), std::move(document)};
}

std::string export_example(const std::string& text, std::size_t example) {
  lesson::ReadLesson lesson = read(text);
  return exchange::musicxml(everything_of(lesson), example);
}

}  // namespace fretsheaf::exchange::test
