#pragma once

#include <string>
#include <string_view>

#include "platform/machine.h"

namespace fretsheaf::sheaf {

// "a" and "b" → "a/b"; the folder "." or "" adds nothing.
std::string joined(const std::string& folder, const std::string& name);

// What comes before the file's name, without the slash: "a/b/c" → "a/b", "c" → "".
std::string folder_part(const std::string& path);

// The paths of one run, in the two ways that they are named: as a run works with them (from where it was started), and
// as the record keeps them, which is from the folder that the record lies in, so that a course can be moved as a whole
// and the record is the same wherever a run is started. Paths outside the course (fonts, templates of the program) are
// recorded from the root on.
class Places {
 public:
  // `folder` holds the lessons, `root` the record, `top` all that the lessons share (their sheaf.toml's folder).
  Places(const std::string& folder, const std::string& root, const std::string& top, const platform::Machine& system);

  const std::string& folder() const { return folder_; }
  const std::string& root() const { return root_; }

  std::string recorded(const std::string& path) const;
  std::string working(const std::string& recorded) const;

  // Whether a recorded path lies in the folder of this run's lessons.
  bool is_in_folder(const std::string& recorded) const;

 private:
  std::string folder_;
  std::string root_;
  std::string whole_folder_;  // from the root of the machine on
  std::string whole_root_;
  std::string whole_top_;
  std::string recorded_folder_;
  const platform::Machine& system_;
};

}  // namespace fretsheaf::sheaf
