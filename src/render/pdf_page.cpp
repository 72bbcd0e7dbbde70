#include "render/pdf_page.h"

#include <array>

#include "render/cairo_image.h"

namespace fretsheaf::render {
namespace {

bool same_pen(const sheet::Rule& one, const sheet::Rule& other) {
  return one.width == other.width && one.color == other.color && one.dash == other.dash && one.gap == other.gap;
}

}  // namespace

// Rules of one pen that follow one another (the lines of a staff, the bar lines on it) are one path: each that is drawn
// takes cairo a good deal of thought.
void PdfPage::draw(const std::vector<sheet::Item>& items) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    const auto* rule = std::get_if<sheet::Rule>(&items[i]);
    const auto* next = i + 1 < items.size() ? std::get_if<sheet::Rule>(&items[i + 1]) : nullptr;
    if (rule != nullptr && next != nullptr && same_pen(*rule, *next)) {
      trace(*rule);
    } else {
      std::visit(*this, items[i]);
    }
  }
}

void PdfPage::operator()(const sheet::GlyphRun& run) {
  cairo_scaled_font_t* const font = fonts_.font(run.font, run.size);
  if (run.glyphs.empty() || font == nullptr) return;
  tags_.ink();
  color(run.color);
  cairo_set_scaled_font(context_, font);
  glyphs_.clear();
  for (const sheet::Glyph& glyph : run.glyphs) glyphs_.push_back({glyph.id, glyph.x, glyph.y});
  const int count = static_cast<int>(glyphs_.size());
  if (run.text.empty()) return cairo_show_glyphs(context_, glyphs_.data(), count);
  clusters_.clear();
  for (const sheet::Cluster& cluster : run.clusters) clusters_.push_back({cluster.bytes, cluster.glyphs});
  cairo_show_text_glyphs(context_, run.text.data(), static_cast<int>(run.text.size()), glyphs_.data(), count,
                         clusters_.data(), static_cast<int>(clusters_.size()), cairo_text_cluster_flags_t{});
}

void PdfPage::operator()(const sheet::Rule& rule) {
  tags_.ink();
  color(rule.color);
  cairo_set_line_width(context_, rule.width);
  cairo_set_line_cap(context_, CAIRO_LINE_CAP_BUTT);
  const std::array<double, 2> dashes = {rule.dash, rule.gap};
  cairo_set_dash(context_, dashes.data(), rule.dash > 0 ? 2 : 0, 0);
  trace(rule);
  cairo_stroke(context_);
}

void PdfPage::operator()(const sheet::Path& path) {
  tags_.ink();
  for (const sheet::Segment& segment : path.segments) trace(segment);
  if (path.fill) {
    color(*path.fill);
    path.stroke ? cairo_fill_preserve(context_) : cairo_fill(context_);
  }
  if (path.stroke) {
    color(*path.stroke);
    cairo_set_line_width(context_, path.stroke_width);
    cairo_set_line_cap(context_, path.round_ends ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    cairo_set_line_join(context_, path.round_ends ? CAIRO_LINE_JOIN_ROUND : CAIRO_LINE_JOIN_MITER);
    cairo_set_dash(context_, nullptr, 0, 0);
    cairo_stroke(context_);
  }
  cairo_new_path(context_);
}

void PdfPage::operator()(const sheet::Link& link) {
  tags_.link(link);
}

void PdfPage::operator()(const sheet::Image& image) {
  tags_.ink();
  draw_image(context_, image);
}

void PdfPage::operator()(const sheet::Group& group) {
  tags_.open(group);
  draw(group.items);
  tags_.close();
}

void PdfPage::color(sheet::Color color) {
  cairo_set_source_rgb(context_, color.red / 255.0, color.green / 255.0, color.blue / 255.0);
}

void PdfPage::trace(const sheet::Rule& rule) {
  cairo_move_to(context_, rule.from.x, rule.from.y);
  cairo_line_to(context_, rule.to.x, rule.to.y);
}

void PdfPage::trace(const sheet::Segment& segment) {
  switch (segment.kind) {
    case sheet::Segment::Kind::move:
      return cairo_move_to(context_, segment.end.x, segment.end.y);
    case sheet::Segment::Kind::line:
      return cairo_line_to(context_, segment.end.x, segment.end.y);
    case sheet::Segment::Kind::curve:
      return cairo_curve_to(context_, segment.control1.x, segment.control1.y, segment.control2.x, segment.control2.y,
                            segment.end.x, segment.end.y);
    case sheet::Segment::Kind::close:
      return cairo_close_path(context_);
  }
}

}  // namespace fretsheaf::render
