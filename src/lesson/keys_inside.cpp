#include "lesson/keys_inside.h"

#include "lesson/keys_paths.h"

namespace fretsheaf::lesson {

bool stays_inside(const std::string& path, const std::string& root, const platform::System& system) {
  if (!is_inside(path, root)) return false;
  const std::string real_root = system.real_path(root.empty() ? "." : root);
  // What is not there yet is made where the last of its folders that is there leads.
  for (std::string there = path; is_inside(there, root); there.resize(there.rfind('/'))) {
    if (system.exists(there)) return is_inside(system.real_path(there), real_root);
    if (there.find('/') == std::string::npos) return true;
  }
  return true;
}

}  // namespace fretsheaf::lesson
