#include "render/rsvg_library.h"

#include "platform/loaded_library.h"

namespace fretsheaf::render {
namespace {

bool load(RsvgLibrary& rsvg) {
  platform::LoadedLibrary library("librsvg-2.so.2");
  library.find("rsvg_handle_new_from_data", rsvg.new_from_data);
  library.find("rsvg_handle_get_intrinsic_size_in_pixels", rsvg.size_in_pixels);
  library.find("rsvg_handle_get_intrinsic_dimensions", rsvg.dimensions);
  library.find("rsvg_handle_render_document", rsvg.render_document);
  library.find("g_object_unref", rsvg.unref);
  return library.has_all();
}

}  // namespace

const RsvgLibrary* rsvg_library() {
  static RsvgLibrary rsvg;
  static const bool loaded = load(rsvg);
  return loaded ? &rsvg : nullptr;
}

}  // namespace fretsheaf::render
