#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheaf/workshop.h"

namespace fretsheaf::sheaf {

// A part of a course for one machine of several.
struct Share {
  int number = 1;  // from 1
  int of = 1;
};

// What a run of a whole course is asked to do.
struct Order {
  std::string folder = ".";
  std::string to;                   // "" is what the lessons say
  std::vector<std::string> keys;    // none: each lesson's own and those of its also-in
  std::vector<Format> formats;      // none: what each lesson's sheaf.toml says
  int hands = 1;                    // worker processes
  std::optional<std::string> only;  // one job
  std::optional<Share> share;
  bool prune = false;   // remove what is gone
  bool verify = false;  // hash every output, whatever its size and time

  bool is_whole() const { return !only && !share; }
};

}  // namespace fretsheaf::sheaf
