#include "render/cairo_fonts.h"

#include <cairo-ft.h>

namespace fretsheaf::render {
namespace {

constexpr cairo_user_data_key_t face_owner_key{};

struct OptionsDeleter {
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};

void release_owner(void* owner) {
  const std::unique_ptr<std::shared_ptr<void>> last(static_cast<std::shared_ptr<void>*>(owner));
}

}  // namespace

// cairo remembers faces after the last page is drawn, so its face keeps FreeType's alive: else a later font at the same
// address would be drawn with the glyphs of this one.
cairo_font_face_t* CairoFonts::face(typeface::FontId font) {
  CairoFace& face = faces_[font];
  if (face) return face.get();
  auto owner = std::make_unique<std::shared_ptr<void>>(fonts_.shared_native_face(font));
  if (*owner == nullptr) return nullptr;
  face.reset(cairo_ft_font_face_create_for_ft_face(static_cast<FT_Face>(owner->get()), FT_LOAD_NO_HINTING));
  if (cairo_font_face_set_user_data(face.get(), &face_owner_key, owner.get(), release_owner) == CAIRO_STATUS_SUCCESS) {
    (void)owner.release();
  }
  return face.get();
}

cairo_scaled_font_t* CairoFonts::font(typeface::FontId font, double size) {
  CairoFont& scaled = sizes_[{font, size}];
  if (scaled) return scaled.get();
  cairo_font_face_t* const drawn = face(font);
  if (drawn == nullptr) return nullptr;
  cairo_matrix_t to_size;
  cairo_matrix_t to_page;
  cairo_matrix_init_scale(&to_size, size, size);
  cairo_matrix_init_identity(&to_page);
  const std::unique_ptr<cairo_font_options_t, OptionsDeleter> options(cairo_font_options_create());
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  scaled.reset(cairo_scaled_font_create(drawn, &to_size, &to_page, options.get()));
  return scaled.get();
}

}  // namespace fretsheaf::render
