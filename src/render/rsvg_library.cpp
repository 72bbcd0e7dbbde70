#include "render/rsvg_library.h"

#include <dlfcn.h>

namespace fretsheaf::render {
namespace {

template <typename Function>
bool find(void* library, const char* name, Function& function) {
  function = reinterpret_cast<Function>(dlsym(library, name));
  return function != nullptr;
}

bool load(RsvgLibrary& rsvg) {
  void* const library = dlopen("librsvg-2.so.2", RTLD_LAZY | RTLD_LOCAL);
  return library != nullptr && find(library, "rsvg_handle_new_from_data", rsvg.new_from_data) &&
         find(library, "rsvg_handle_get_intrinsic_size_in_pixels", rsvg.size_in_pixels) &&
         find(library, "rsvg_handle_get_intrinsic_dimensions", rsvg.dimensions) &&
         find(library, "rsvg_handle_render_document", rsvg.render_document) &&
         find(library, "g_object_unref", rsvg.unref);
}

}  // namespace

const RsvgLibrary* rsvg_library() {
  static RsvgLibrary rsvg;
  static const bool loaded = load(rsvg);
  return loaded ? &rsvg : nullptr;
}

}  // namespace fretsheaf::render
