#pragma once

#include <string>

#include "lesson/lesson.h"

namespace fretsheaf::exchange::test {

struct Exported {
  lesson::Lesson lesson;
  std::string document;
};

// A lesson text that must be without errors (a logo `lantern.svg` lies beside it), and its MusicXML document.
Exported export_lesson(const std::string& text);

// The document of one of its examples, from 0.
std::string export_example(const std::string& text, std::size_t example);

}  // namespace fretsheaf::exchange::test
