#pragma once

#include <string>
#include <vector>

#include "sheaf/workshop.h"
#include "source/text.h"

namespace fretsheaf::sheaf {

// A diagnostic that has left its file behind, so that another process can show it.
struct Finding {
  bool is_error = true;
  std::string code;
  std::string message;
  std::string help;
  std::string file;
  source::Position begin;
  source::Position end;
  std::string text;  // as source::render writes it

  bool operator==(const Finding&) const = default;
};

// All that a job's reports say, in order.
std::vector<Finding> findings_of(const Made& made);

}  // namespace fretsheaf::sheaf
