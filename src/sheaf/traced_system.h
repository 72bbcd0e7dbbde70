#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "platform/passing_system.h"
#include "sheaf/print.h"

namespace fretsheaf::sheaf {

// What was read on the way to a handout: path as it was read, to the print of its bytes.
using Inputs = std::map<std::string, Print>;

// Passes everything on to the machine, and remembers which files were read, with the bytes that came. What an output
// depends on is by this what it was made from, and needs no list that could fall behind.
class TracedSystem final : public platform::PassingSystem {
 public:
  using PassingSystem::PassingSystem;

  // What was read since this was called last. A file that was only looked at here and there (a font) is hashed now.
  Inputs take();

  platform::FileResult<std::string> read(const std::string& path, std::size_t limit) const override;
  platform::FileResult<platform::SharedBytes> view(const std::string& path, std::size_t limit) const override;

 private:
  // Reading changes nothing that the reader can see, but what is remembered of it.
  mutable Inputs read_;
  mutable std::vector<std::pair<std::string, platform::SharedBytes>> viewed_;
};

}  // namespace fretsheaf::sheaf
