#include "render/image.h"

#include <algorithm>
#include <cstring>
#include <memory>
#include <string_view>

#include "render/cairo_image.h"
#include "render/cairo_types.h"
#include "render/rsvg_library.h"

namespace fretsheaf::render {
namespace {

using Kind = sheet::Image::Kind;

// What is still to be read of a file in memory.
cairo_status_t read_on(void* rest, unsigned char* into, unsigned length) {
  auto& bytes = *static_cast<std::string_view*>(rest);
  if (bytes.size() < length) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(into, bytes.data(), length);
  bytes.remove_prefix(length);
  return CAIRO_STATUS_SUCCESS;
}

CairoSurface open_png(const std::string& bytes) {
  std::string_view rest = bytes;
  CairoSurface surface(cairo_image_surface_create_from_png_stream(read_on, &rest));
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return nullptr;
  return surface;
}

struct Unref {
  void operator()(RsvgHandle* handle) const { rsvg_library()->unref(handle); }
};
using SvgHandle = std::unique_ptr<RsvgHandle, Unref>;

SvgHandle open_svg(const std::string& bytes) {
  const RsvgLibrary* const rsvg = rsvg_library();
  if (rsvg == nullptr) return nullptr;
  return SvgHandle(
      rsvg->new_from_data(reinterpret_cast<const guint8*>(bytes.data()), static_cast<gsize>(bytes.size()), nullptr));
}

std::optional<ImageSize> svg_size(RsvgHandle* handle) {
  const RsvgLibrary& rsvg = *rsvg_library();
  ImageSize size;
  if (rsvg.size_in_pixels(handle, &size.width, &size.height)) return size;
  gboolean has_width = 0;
  gboolean has_height = 0;
  gboolean has_view_box = 0;
  RsvgLength width{};
  RsvgLength height{};
  RsvgRectangle view_box{};
  rsvg.dimensions(handle, &has_width, &width, &has_height, &height, &has_view_box, &view_box);
  if (!has_view_box) return std::nullopt;
  return ImageSize{view_box.width, view_box.height};
}

void draw_png(cairo_t* context, const sheet::Image& image) {
  const CairoSurface surface = open_png(*image.bytes);
  if (!surface) return;
  cairo_translate(context, image.area.left, image.area.top);
  cairo_scale(context, (image.area.right - image.area.left) / cairo_image_surface_get_width(surface.get()),
              (image.area.bottom - image.area.top) / cairo_image_surface_get_height(surface.get()));
  cairo_set_source_surface(context, surface.get(), 0, 0);
  cairo_paint(context);
}

void draw_svg(cairo_t* context, const sheet::Image& image) {
  const SvgHandle handle = open_svg(*image.bytes);
  if (!handle) return;
  const RsvgRectangle area{image.area.left, image.area.top, image.area.right - image.area.left,
                           image.area.bottom - image.area.top};
  rsvg_library()->render_document(handle.get(), context, &area, nullptr);
}

std::string base64(std::string_view bytes) {
  constexpr std::string_view figures = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t count = std::min<std::size_t>(3, bytes.size() - i);
    unsigned group = 0;
    for (std::size_t j = 0; j < 3; ++j) {
      group = group << 8 | (j < count ? static_cast<unsigned char>(bytes[i + j]) : 0U);
    }
    for (std::size_t j = 0; j < 4; ++j) out += j <= count ? figures[group >> (18 - 6 * j) & 63] : '=';
  }
  return out;
}

}  // namespace

std::optional<ImageSize> image_size(Kind kind, const std::string& bytes) {
  std::optional<ImageSize> size;
  if (kind == Kind::png) {
    const CairoSurface surface = open_png(bytes);
    if (!surface) return std::nullopt;
    size = ImageSize{static_cast<double>(cairo_image_surface_get_width(surface.get())),
                     static_cast<double>(cairo_image_surface_get_height(surface.get()))};
  } else {
    const SvgHandle handle = open_svg(bytes);
    if (!handle) return std::nullopt;
    size = svg_size(handle.get());
  }
  if (!size || !(size->width > 0) || !(size->height > 0)) return std::nullopt;
  return size;
}

void draw_image(cairo_t* context, const sheet::Image& image) {
  cairo_save(context);
  image.kind == Kind::png ? draw_png(context, image) : draw_svg(context, image);
  cairo_restore(context);
}

std::string data_uri(const sheet::Image& image) {
  return std::string("data:image/") + (image.kind == Kind::png ? "png" : "svg+xml") + ";base64," + base64(*image.bytes);
}

}  // namespace fretsheaf::render
