#include "layout/music_draw.h"

namespace fretsheaf::layout {

using lesson::BarSign;
using sheet::Part;
namespace p = proportion;

namespace {

class BarLines {
 public:
  BarLines(const Context& context, StaffSpan span, const std::vector<DotHeights>& dots)
      : sp_(context.space), span_(span), dots_(dots) {}

  // A stroke whose right edge is at x; returns its left edge.
  double stroke(double x, double width) {
    layer_.rule(Part::bar_line, {x - width / 2, span_.top}, {x - width / 2, span_.bottom}, width);
    return x - width;
  }
  double thin(double x) { return stroke(x, p::thin_bar * sp_); }
  double thick(double x) { return stroke(x, p::thick_bar * sp_); }
  double gap() const { return p::bar_gap * sp_; }
  // `side`: −1 left of the stroke's edge, +1 right of it.
  void dots(double edge, int side) {
    for (const DotHeights& heights : dots_) {
      for (const double y : heights.y) {
        const sheet::Path dot = disc(Part::repeat_dot, {edge + side * 0.55 * sp_, y}, heights.space);
        layer_.path(dot, bounds(dot));
      }
    }
  }

  void sign(BarSign sign, double x) {
    switch (sign) {
      case BarSign::plain:
        thin(x);
        break;
      case BarSign::doubled:
        thin(thin(x) - gap());
        break;
      case BarSign::final:
        thin(thick(x) - gap());
        break;
      case BarSign::repeat_end:
        dots(thin(thick(x) - gap()), -1);
        break;
      case BarSign::repeat_begin:
        dots(x, 1);
        thick(thin(x) - gap());
        break;
      case BarSign::repeat_both:
        dots(x, 1);
        dots(thin(thick(thin(x) - gap()) - gap()), -1);
        break;
    }
  }

  Layer take() { return std::move(layer_); }

 private:
  double sp_;
  StaffSpan span_;
  const std::vector<DotHeights>& dots_;
  Layer layer_;
};

}  // namespace

std::vector<double> tab_dots(const Context& context) {
  // They lie in spaces about the middle of the tab: the first and third of four lines.
  const int spaces = context.strings - 1;
  const double middle = context.tab_height() / 2;
  double apart = spaces % 2 == 1 ? 1 : 0.5;
  if (spaces == 6) apart = 1.5;
  if (spaces < 2) return {middle};
  return {middle - apart * context.tab, middle + apart * context.tab};
}

Layer bar_lines(const Context& context, const LinePlan& line, StaffSpan span, const std::vector<DotHeights>& dots) {
  BarLines lines(context, span, dots);
  lines.thin(p::thin_bar * context.space);
  if (line.opens_repeat) {
    lines.sign(BarSign::repeat_begin, line.prefix + bar_line_width(context, BarSign::repeat_begin));
  }
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::bar_line) lines.sign(stop.sign, stop.x);
  }
  return lines.take();
}

}  // namespace fretsheaf::layout
