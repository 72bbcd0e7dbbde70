#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheaf/findings.h"
#include "sheaf/record.h"
#include "sheaf/traced_system.h"
#include "sheaf/workshop.h"

// What the planner asks of a worker, and what that answers: one lesson at a time, so that what its handouts share is
// done once.
namespace fretsheaf::sheaf {

// A handout of a lesson, and the formats in which it is to be made.
struct Wanted {
  std::string suffix;
  std::vector<Format> formats;

  bool operator==(const Wanted&) const = default;
};

struct Task {
  std::string lesson;                         // its file
  std::string handouts;                       // the path of its handouts up to their suffixes
  std::vector<std::string> keys;              // as the command line named them; none: its own and those of also-in
  std::vector<Format> formats;                // as the command line named them; none: those of its sheaf.toml
  bool is_reading = false;                    // only say what it comes to
  std::optional<std::vector<Wanted>> wanted;  // nullopt: all that it comes to

  bool operator==(const Task&) const = default;
};

// What a lesson comes to.
struct Reading {
  std::string key;
  std::vector<std::string> suffixes;  // in its own key and those of also-in
  std::vector<Format> formats;        // of its sheaf.toml
  std::vector<std::string> asked;     // the suffixes of the handouts in the keys that were asked for
  Inputs inputs;                      // the files that were read, the lesson itself among them

  bool operator==(const Reading&) const = default;
};

struct MadeHandout {
  std::string suffix;
  Format format = Format::pdf;
  std::vector<FileMark> files;

  bool operator==(const MadeHandout&) const = default;
};

struct Answer {
  Made::Status status = Made::Status::done;  // the worst of all
  std::vector<Finding> findings;
  std::vector<std::string> refusals;  // a line each
  std::optional<Reading> reading;     // nullopt where the lesson has errors
  std::vector<MadeHandout> made;
  std::vector<std::string> failed;  // suffixes of handouts of which something could not be made

  bool operator==(const Answer&) const = default;
};

// As bytes for a pipe between two processes of one program, and back. REQUIRES, of what is read: it was written here.
std::string packed(const Task& task);
std::string packed(const Answer& answer);
Task unpacked_task(std::string_view bytes);
Answer unpacked_answer(std::string_view bytes);

}  // namespace fretsheaf::sheaf
