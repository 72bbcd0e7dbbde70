#include "support/project.h"

namespace fretsheaf::test {

const std::string& project_folder() {
  static const std::string folder = FRETSHEAF_PROJECT_DIR;
  return folder;
}

const std::string& program() {
  static const std::string path = FRETSHEAF_PROGRAM;
  return path;
}

}  // namespace fretsheaf::test
