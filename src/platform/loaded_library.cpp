#include "platform/loaded_library.h"

#include <dlfcn.h>

namespace fretsheaf::platform {

LoadedLibrary::LoadedLibrary(const char* file)
    : library_(::dlopen(file, RTLD_LAZY | RTLD_LOCAL)), has_all_(library_ != nullptr) {}

void* LoadedLibrary::address(const char* name) {
  // Without a library, dlsym would look among those that the program was started with.
  void* const found = library_ == nullptr ? nullptr : ::dlsym(library_, name);
  has_all_ = has_all_ && found != nullptr;
  return found;
}

}  // namespace fretsheaf::platform
