#include "platform/program_part.h"

#include <dlfcn.h>

#include <filesystem>
#include <system_error>

namespace fretsheaf::platform {

std::variant<void*, std::string> function_of_part(const std::string& part, const char* function) {
  std::error_code none;
  const std::filesystem::path home = std::filesystem::read_symlink("/proc/self/exe", none).parent_path();
  const std::string file = "fretsheaf-" + part + ".so";
  std::filesystem::path path = home / file;
  if (!std::filesystem::exists(path, none)) path = home / "../lib/fretsheaf" / file;
  void* const loaded = ::dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
  if (loaded == nullptr) return std::string(::dlerror());
  void* const found = ::dlsym(loaded, function);
  if (found == nullptr) return std::string(::dlerror());
  return found;
}

}  // namespace fretsheaf::platform
