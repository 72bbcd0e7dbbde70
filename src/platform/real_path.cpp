#include "platform/real_path.h"

#include <cstdlib>

namespace fretsheaf::platform {

std::string real_path(const std::string& path) {
  char* real = ::realpath(path.c_str(), nullptr);
  if (real == nullptr) return path;
  std::string result(real);
  std::free(real);
  return result;
}

}  // namespace fretsheaf::platform
