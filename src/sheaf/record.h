#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "sheaf/format.h"
#include "sheaf/print.h"
#include "sheaf/traced_system.h"

// What a run remembers for the next: of each lesson what it comes to, of each handout what it was made from and what
// its files were like. All paths are as Places records them.
namespace fretsheaf::sheaf {

// A lesson that was read: what it comes to as long as its fingerprint is the same.
struct LessonEntry {
  std::string lesson;
  Print fingerprint;                  // of the lesson, of all else that was read for it, and of the program
  Print kit;                          // of all else that was read: a kit of this record
  std::string key;                    // its own
  std::vector<std::string> suffixes;  // of its handouts, in its own key and in those of also-in
  std::vector<Format> formats;        // that it asks for

  bool operator==(const LessonEntry&) const = default;
};

// A file that was made, as it was then.
struct FileMark {
  std::string tail;  // what follows the handout's name: ".pdf", ".p2.svg"
  std::uint64_t size = 0;
  std::int64_t changed = 0;  // as platform::FileStatus has it
  Print print;

  bool operator==(const FileMark&) const = default;
};

// A handout in one format that was made.
struct MadeEntry {
  std::string handout;  // its path up to the ending, "unit-1/tide.d-dorian"
  Format format = Format::pdf;
  std::string lesson;
  Print fingerprint;  // of its lesson when it was made
  std::vector<FileMark> files;

  bool operator==(const MadeEntry&) const = default;
};

struct Record {
  std::map<Print, Inputs> kits;  // files that lessons were made with, by the print of them all
  std::map<std::string, LessonEntry> lessons;
  std::map<std::pair<std::string, Format>, MadeEntry> made;

  void add(LessonEntry entry);
  void add(MadeEntry entry);
  bool operator==(const Record&) const = default;
};

// The print of a kit.
Print kit_print(const Inputs& kit);

// One line each, with its line end; each line ends in a print of itself, so that one which was cut short or damaged is
// known and passed over.
std::string line_of(const Print& print, const Inputs& kit);
std::string line_of(const LessonEntry& entry);
std::string line_of(const MadeEntry& entry);

// The whole record as one file: its lines sorted, after a first line that names the form. Kits that no lesson has are
// left out.
std::string text_of(const Record& record);

// Adds the lines of a record or a journal; where two lines are of one thing the later counts. A file in another form
// adds nothing.
void read_record(std::string_view text, Record& into);

// The first line of a record or a journal.
std::string record_heading();

}  // namespace fretsheaf::sheaf
