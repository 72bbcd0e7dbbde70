#pragma once

#include <optional>
#include <string>
#include <vector>

#include "lesson/lesson.h"
#include "lesson/limits.h"
#include "platform/system.h"
#include "source/diagnostic.h"
#include "source/text.h"

namespace fretsheaf::lesson {

// What a sheaf.toml says under [output].
struct SheafOutput {
  std::optional<Located<std::string>> folder;  // in the sheaf.toml's own, and relative to it
  std::vector<Located<std::string>> formats;   // of pdf, svg, musicxml, mxl; empty where it names none
};

// A grid of the lesson, and what it was read against.
struct WrittenGrid {
  Range range;  // the bytes between its quotes
  fretboard::Neck neck;
  theory::Key key;
  theory::Meter meter;
  bool vary = false;
};

struct ReadLesson {
  source::Files files;  // the lesson first, then its sheaf.toml where there is one
  source::Diagnostics diagnostics;
  std::optional<Lesson> lesson;  // only where there are no errors
  // The folder that the paths of templates and logos must stay inside: its sheaf.toml's, or the lesson's own; empty
  // or ending in `/`. A path is relative to the folder of the file that it is written in (its range's).
  std::string root;
  // All that could be read against something known, right or wrong; of a lesson with errors, too.
  std::vector<WrittenGrid> grids;
  SheafOutput output;
};

// Reads a lesson file and all its rules.
// REQUIRES: `bytes` were read from `path`; `path` is how diagnostics name the file.
ReadLesson read_lesson(const std::string& path, std::string bytes, const platform::System& system);

}  // namespace fretsheaf::lesson
