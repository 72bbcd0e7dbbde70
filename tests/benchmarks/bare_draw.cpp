#include "bare_draw.h"

#include <cairo-ft.h>
#include <cairo-pdf.h>
#include <cairo.h>

#include <cstdlib>
#include <map>
#include <memory>
#include <vector>

namespace fretsheaf::benchmarks {

namespace {

cairo_status_t count_bytes(void* total, const unsigned char*, unsigned int length) {
  *static_cast<std::size_t*>(total) += length;
  return CAIRO_STATUS_SUCCESS;
}

// Fonts that are opened when a run first asks for them.
class Fonts {
 public:
  Fonts() { FT_Init_FreeType(&library_); }
  ~Fonts() {
    for (auto& [path, open] : open_) {
      cairo_font_face_destroy(open.second);
      FT_Done_Face(open.first);
    }
    FT_Done_FreeType(library_);
  }
  Fonts(const Fonts&) = delete;
  Fonts& operator=(const Fonts&) = delete;

  cairo_font_face_t* get(const std::string& path) {
    const auto found = open_.find(path);
    if (found != open_.end()) return found->second.second;
    FT_Face face = nullptr;
    if (FT_New_Face(library_, path.c_str(), 0, &face) != 0) std::abort();
    cairo_font_face_t* font = cairo_ft_font_face_create_for_ft_face(face, FT_LOAD_NO_HINTING);
    open_[path] = {face, font};
    return font;
  }

 private:
  FT_Library library_ = nullptr;
  std::map<std::string, std::pair<FT_Face, cairo_font_face_t*>> open_;
};

class Player {
 public:
  Player(const std::string& recording, Fonts& fonts) : at_(recording.c_str()), fonts_(fonts) {
    surface_ = cairo_pdf_surface_create_for_stream(count_bytes, &bytes_, 595, 842);
    cairo_ = cairo_create(surface_);
  }

  std::size_t play() {
    while (*at_ != '\0') step(*at_++);
    if (pages_ > 0) cairo_show_page(cairo_);
    cairo_destroy(cairo_);
    cairo_surface_finish(surface_);
    cairo_surface_destroy(surface_);
    return bytes_;
  }

 private:
  double number() {
    char* end = nullptr;
    const double value = std::strtod(at_, &end);
    at_ = end;
    return value;
  }
  int whole() { return static_cast<int>(number()); }

  void color() {
    const double red = number() / 255;
    const double green = number() / 255;
    cairo_set_source_rgb(cairo_, red, green, number() / 255);
  }

  void step(char command) {
    switch (command) {
      case 'F':
        font();
        break;
      case 'N':
        page();
        break;
      case 'G':
        glyphs();
        break;
      case 'R':
        rule();
        break;
      case 'P':
        path();
        break;
      default:
        break;
    }
  }

  void font() {
    const char* begin = ++at_;
    while (*at_ != '\n') ++at_;
    paths_.emplace_back(begin, at_);
  }

  void page() {
    if (pages_++ > 0) cairo_show_page(cairo_);
    const double width = number();
    cairo_pdf_surface_set_size(surface_, width, number());
  }

  void glyphs() {
    cairo_set_font_face(cairo_, fonts_.get(paths_[static_cast<std::size_t>(whole())]));
    cairo_set_font_size(cairo_, number());
    color();
    std::vector<cairo_glyph_t> run(static_cast<std::size_t>(whole()));
    for (cairo_glyph_t& glyph : run) {
      glyph.index = static_cast<unsigned long>(number());
      glyph.x = number();
      glyph.y = number();
    }
    cairo_show_glyphs(cairo_, run.data(), static_cast<int>(run.size()));
  }

  void rule() {
    double ends[4];
    for (double& end : ends) end = number();
    cairo_set_line_width(cairo_, number());
    const double dash[2] = {number(), number()};
    cairo_set_dash(cairo_, dash, dash[0] > 0 ? 2 : 0, 0);
    color();
    cairo_move_to(cairo_, ends[0], ends[1]);
    cairo_line_to(cairo_, ends[2], ends[3]);
    cairo_stroke(cairo_);
  }

  void path() {
    const bool filled = whole() != 0;
    const double stroke = number();
    color();
    for (int segments = whole(); segments > 0; --segments) {
      const int kind = whole();
      double p[6];
      for (double& value : p) value = number();
      if (kind == 0) cairo_move_to(cairo_, p[4], p[5]);
      if (kind == 1) cairo_line_to(cairo_, p[4], p[5]);
      if (kind == 2) cairo_curve_to(cairo_, p[0], p[1], p[2], p[3], p[4], p[5]);
      if (kind == 3) cairo_close_path(cairo_);
    }
    if (filled) cairo_fill_preserve(cairo_);
    cairo_set_dash(cairo_, nullptr, 0, 0);
    cairo_set_line_width(cairo_, stroke);
    if (stroke > 0) cairo_stroke(cairo_);
    cairo_new_path(cairo_);
  }

  const char* at_;
  std::size_t bytes_ = 0;
  int pages_ = 0;
  std::vector<std::string> paths_;
  Fonts& fonts_;
  cairo_surface_t* surface_ = nullptr;
  cairo_t* cairo_ = nullptr;
};

}  // namespace

std::size_t bare_draw(const std::string& recording) {
  Fonts fonts;
  return Player(recording, fonts).play();
}

struct BareDrawing::State {
  Fonts fonts;
};

BareDrawing::BareDrawing() : state_(std::make_unique<State>()) {}
BareDrawing::~BareDrawing() = default;

std::size_t BareDrawing::draw(const std::string& recording) {
  return Player(recording, state_->fonts).play();
}

}  // namespace fretsheaf::benchmarks
