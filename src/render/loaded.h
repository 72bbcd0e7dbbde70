#pragma once

#include <dlfcn.h>

namespace fretsheaf::render {

// A function of a library that is loaded rather than linked; false where it has none of this name.
template <typename Function>
bool find(void* library, const char* name, Function& function) {
  function = reinterpret_cast<Function>(dlsym(library, name));
  return function != nullptr;
}

}  // namespace fretsheaf::render
