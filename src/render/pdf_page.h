#pragma once

#include <vector>

#include "render/cairo_fonts.h"
#include "render/pdf_tags.h"
#include "sheet/sheet.h"

namespace fretsheaf::render {

// Draws items onto a cairo context whose unit is the point: the one switch over item kinds of the PDF.
class PdfPage {
 public:
  // All must outlive it.
  PdfPage(cairo_t* context, CairoFonts& fonts, PdfTags& tags) : context_(context), fonts_(fonts), tags_(tags) {}

  void draw(const std::vector<sheet::Item>& items);

  void operator()(const sheet::GlyphRun& run);
  void operator()(const sheet::Rule& rule);
  void operator()(const sheet::Path& path);
  void operator()(const sheet::Link& link);
  void operator()(const sheet::Image& image);
  void operator()(const sheet::Group& group);

 private:
  void color(sheet::Color color);
  void trace(const sheet::Rule& rule);
  void trace(const sheet::Segment& segment);

  cairo_t* context_;
  CairoFonts& fonts_;
  PdfTags& tags_;
  std::vector<cairo_glyph_t> glyphs_;           // reused from run to run
  std::vector<cairo_text_cluster_t> clusters_;  // likewise
};

}  // namespace fretsheaf::render
