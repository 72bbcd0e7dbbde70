#include "platform/loaded_library.h"

#include <dlfcn.h>

#include <stdexcept>

namespace fretsheaf::platform {

LoadedLibrary::LoadedLibrary(const char* file)
    : file_(file), library_(::dlopen(file, RTLD_LAZY | RTLD_LOCAL)), has_all_(library_ != nullptr) {}

void* LoadedLibrary::address(const char* name) {
  // Without a library, dlsym would look among those that the program was started with.
  void* const found = library_ == nullptr ? nullptr : ::dlsym(library_, name);
  has_all_ = has_all_ && found != nullptr;
  return found;
}

void LoadedLibrary::require_all(const std::string& need) const {
  if (!has_all_) throw std::runtime_error(std::string(file_) + " cannot be loaded: " + need);
}

}  // namespace fretsheaf::platform
