#include "typeface/face.h"

#include <ft2build.h>
#include FT_FREETYPE_H
#include <hb-ot.h>

#include <utility>

#include "typeface/bounds.h"

namespace fretsheaf::typeface {
namespace {

// Collects an outline; HarfBuzz turns quadratic curves into cubic ones by itself.
struct Pen {
  std::vector<OutlineSegment> outline;
  double scale = 1;

  OutlineSegment& add(OutlineSegment::Kind kind, double x, double y) {
    return outline.emplace_back(OutlineSegment{kind, x * scale, -y * scale});
  }
};

void move_to(hb_draw_funcs_t*, void* pen, hb_draw_state_t*, float x, float y, void*) {
  static_cast<Pen*>(pen)->add(OutlineSegment::Kind::move, x, y);
}

void line_to(hb_draw_funcs_t*, void* pen, hb_draw_state_t*, float x, float y, void*) {
  static_cast<Pen*>(pen)->add(OutlineSegment::Kind::line, x, y);
}

void curve_to(hb_draw_funcs_t*, void* data, hb_draw_state_t*, float x1, float y1, float x2, float y2, float x, float y,
              void*) {
  Pen& pen = *static_cast<Pen*>(data);
  OutlineSegment& curve = pen.add(OutlineSegment::Kind::curve, x, y);
  curve.x1 = x1 * pen.scale;
  curve.y1 = -y1 * pen.scale;
  curve.x2 = x2 * pen.scale;
  curve.y2 = -y2 * pen.scale;
}

void close_path(hb_draw_funcs_t*, void* pen, hb_draw_state_t*, void*) {
  static_cast<Pen*>(pen)->add(OutlineSegment::Kind::close, 0, 0);
}

struct DrawFuncsDeleter {
  void operator()(hb_draw_funcs_t* funcs) const { hb_draw_funcs_destroy(funcs); }
};
using DrawFuncs = std::unique_ptr<hb_draw_funcs_t, DrawFuncsDeleter>;

DrawFuncs draw_funcs() {
  DrawFuncs funcs(hb_draw_funcs_create());
  hb_draw_funcs_set_move_to_func(funcs.get(), move_to, nullptr, nullptr);
  hb_draw_funcs_set_line_to_func(funcs.get(), line_to, nullptr, nullptr);
  hb_draw_funcs_set_cubic_to_func(funcs.get(), curve_to, nullptr, nullptr);
  hb_draw_funcs_set_close_path_func(funcs.get(), close_path, nullptr, nullptr);
  return funcs;
}

// The owner of an FT_Face: its library and the bytes that FreeType reads from, which must outlive it.
struct NativeFace {
  explicit NativeFace(platform::SharedBytes shared) : bytes(std::move(shared)) {
    if (FT_Init_FreeType(&library) != 0) return;
    const auto* start = reinterpret_cast<const FT_Byte*>(bytes.bytes.data());
    if (FT_New_Memory_Face(library, start, static_cast<FT_Long>(bytes.bytes.size()), 0, &face) != 0) face = nullptr;
  }
  ~NativeFace() {
    if (face != nullptr) FT_Done_Face(face);
    if (library != nullptr) FT_Done_FreeType(library);
  }
  NativeFace(const NativeFace&) = delete;
  NativeFace& operator=(const NativeFace&) = delete;

  platform::SharedBytes bytes;
  FT_Library library = nullptr;
  FT_Face face = nullptr;
};

struct BlobDeleter {
  void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
};
struct FaceDeleter {
  void operator()(hb_face_t* face) const { hb_face_destroy(face); }
};

}  // namespace

std::unique_ptr<Face> Face::open(std::string name, platform::SharedBytes bytes) {
  const std::unique_ptr<hb_blob_t, BlobDeleter> blob(hb_blob_create(
      bytes.bytes.data(), static_cast<unsigned>(bytes.bytes.size()), HB_MEMORY_MODE_READONLY, nullptr, nullptr));
  const std::unique_ptr<hb_face_t, FaceDeleter> face(hb_face_create(blob.get(), 0));
  if (hb_face_get_glyph_count(face.get()) == 0) return nullptr;

  std::unique_ptr<Face> opened(new Face);
  opened->name_ = std::move(name);
  opened->bytes_ = std::move(bytes);
  const auto units = static_cast<int>(hb_face_get_upem(face.get()));
  opened->units_per_em_ = units;
  opened->font_.reset(hb_font_create(face.get()));
  hb_ot_font_set_funcs(opened->font_.get());
  hb_font_set_scale(opened->font_.get(), units, units);
  return opened;
}

Face::~Face() = default;

std::optional<std::uint32_t> Face::glyph(char32_t code_point) const {
  hb_codepoint_t glyph = 0;
  if (!hb_font_get_nominal_glyph(font_.get(), code_point, &glyph)) return std::nullopt;
  return glyph;
}

// HarfBuzz's own extents of a CFF glyph are its control points'; the ink is what the outline covers.
Extents Face::measure(std::uint32_t glyph) const {
  Extents extents;
  extents.advance = hb_font_get_glyph_h_advance(font_.get(), glyph);
  Bounds bounds;
  for (const OutlineSegment& segment : outline(glyph, units_per_em_)) {
    switch (segment.kind) {
      case OutlineSegment::Kind::move:
        bounds.move_to(segment.x, segment.y);
        break;
      case OutlineSegment::Kind::line:
        bounds.line_to(segment.x, segment.y);
        break;
      case OutlineSegment::Kind::curve:
        bounds.curve_to(segment.x1, segment.y1, segment.x2, segment.y2, segment.x, segment.y);
        break;
      case OutlineSegment::Kind::close:
        break;
    }
  }
  if (const auto& box = bounds.box()) {
    extents = {box->left, box->top, box->right, box->bottom, extents.advance};
  }
  return extents;
}

Extents Face::extents(std::uint32_t glyph, double size) {
  auto found = measured_.find(glyph);
  if (found == measured_.end()) found = measured_.emplace(glyph, measure(glyph)).first;
  const Extents& units = found->second;
  const double scale = size / units_per_em_;
  return {units.left * scale, units.top * scale, units.right * scale, units.bottom * scale, units.advance * scale};
}

std::vector<OutlineSegment> Face::outline(std::uint32_t glyph, double size) const {
  Pen pen;
  pen.scale = size / units_per_em_;
  static const DrawFuncs funcs = draw_funcs();
  hb_font_get_glyph_shape(font_.get(), glyph, funcs.get(), &pen);
  return std::move(pen.outline);
}

std::shared_ptr<FT_FaceRec_> Face::native() {
  if (!native_) {
    auto owner = std::make_shared<NativeFace>(bytes_);
    native_ = std::shared_ptr<FT_FaceRec_>(owner, owner->face);
  }
  return native_;
}

}  // namespace fretsheaf::typeface
