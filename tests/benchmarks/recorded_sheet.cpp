#include "recorded_sheet.h"

#include <cstdarg>
#include <cstdio>

namespace fretsheaf::benchmarks {

namespace {

class Recorder {
 public:
  std::string text;

  __attribute__((format(printf, 2, 3))) void line(const char* format, ...) {
    char buffer[512];
    va_list arguments;
    va_start(arguments, format);
    const int length = std::vsnprintf(buffer, sizeof buffer, format, arguments);
    va_end(arguments);
    text.append(buffer, static_cast<std::size_t>(length));
    text += '\n';
  }

  void operator()(const sheet::GlyphRun& run) {
    line("G %d %.3f %d %d %d %zu", run.font, run.size, run.color.red, run.color.green, run.color.blue,
         run.glyphs.size());
    for (const sheet::Glyph& glyph : run.glyphs) line("%u %.3f %.3f", glyph.id, glyph.x, glyph.y);
  }

  void operator()(const sheet::Rule& rule) {
    line("R %.3f %.3f %.3f %.3f %.3f %.3f %.3f %d %d %d", rule.from.x, rule.from.y, rule.to.x, rule.to.y, rule.width,
         rule.dash, rule.gap, rule.color.red, rule.color.green, rule.color.blue);
  }

  void operator()(const sheet::Path& path) {
    const sheet::Color fill = path.fill.value_or(sheet::Color{});
    line("P %d %.3f %d %d %d %zu", path.fill ? 1 : 0, path.stroke ? path.stroke_width : 0, fill.red, fill.green,
         fill.blue, path.segments.size());
    for (const sheet::Segment& segment : path.segments) {
      line("%d %.3f %.3f %.3f %.3f %.3f %.3f", static_cast<int>(segment.kind), segment.control1.x, segment.control1.y,
           segment.control2.x, segment.control2.y, segment.end.x, segment.end.y);
    }
  }

  void operator()(const sheet::Link&) {}
  void operator()(const sheet::Image&) {}

  void operator()(const sheet::Group& group) {
    for (const sheet::Item& item : group.items) std::visit(*this, item);
  }
};

}  // namespace

std::string record(const sheet::Sheet& sheet, const std::vector<std::string>& font_paths) {
  Recorder recorder;
  for (const std::string& path : font_paths) recorder.line("F %s", path.c_str());
  for (const sheet::Page& page : sheet.pages) {
    recorder.line("N %.2f %.2f", page.width, page.height);
    for (const sheet::Item& item : page.items) std::visit(recorder, item);
  }
  return recorder.text;
}

}  // namespace fretsheaf::benchmarks
