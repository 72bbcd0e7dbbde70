#pragma once

#include <map>
#include <optional>
#include <string>

#include "platform/machine.h"
#include "sheaf/places.h"
#include "sheaf/print.h"
#include "sheaf/record.h"

namespace fretsheaf::sheaf {

// The prints of what handouts are made from, each file's taken once a run.
class Fingerprints {
 public:
  Fingerprints(const Places& places, const platform::Machine& system);

  // Of the lesson file as it is now; nullopt where it cannot be read.
  struct LessonFile {
    Print print;
    std::size_t bytes = 0;
  };
  std::optional<LessonFile> lesson(const std::string& path) const;

  // Of a lesson with its kit, made by this program.
  Print fingerprint(const Print& lesson, const Print& kit) const;

  // Whether all files of a kit (with recorded paths) are as they were.
  bool is_intact(const Print& print, const Inputs& kit);

 private:
  std::optional<Print> current(const std::string& recorded);

  const Places& places_;
  const platform::Machine& system_;
  Print program_;
  std::map<std::string, std::optional<Print>> files_;
  std::map<Print, bool> kits_;
};

}  // namespace fretsheaf::sheaf
