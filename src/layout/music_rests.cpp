#include <algorithm>

#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;

namespace {

// A whole rest hangs from its line, a half rest sits on it (common practice); both 1.1 by 0.5 spaces, chosen
// by eye.
sheet::Path block_rest(double sp, double y, bool hangs) {
  const double half = 0.55 * sp;
  const double far = y + (hangs ? 0.5 : -0.5) * sp;
  return polygon(Part::rest, {{-half, y}, {half, y}, {half, far}, {-half, far}});
}

}  // namespace

Layer rest_sign(const Context& context, const score::Event& event, double y) {
  Layer layer;
  const double sp = context.space;
  const int log2 = event.whole_bar_rest ? 0 : event.value.log2;
  double right = 0.55 * sp;
  if (log2 <= 1) {
    const sheet::Path block = block_rest(sp, y, log2 <= 0);
    layer.path(block, bounds(block));
  } else {
    // U+1D13D is the quarter rest; shorter ones follow. The font draws them for a staff whose middle is 2 spaces up.
    const char32_t code_point = U'\U0001D13D' + static_cast<char32_t>(std::min(log2, 7) - 2);
    const Words rest = context.type.sign(code_point, sp, Part::rest);
    layer.centred(rest, 0, y + 2 * sp);
    right = (rest.ink.right - rest.ink.left) / 2;
  }
  if (event.whole_bar_rest) return layer;
  for (int i = 0; i < event.value.dots; ++i) {
    const double x = right + (proportion::dot_right - 0.15 + 0.6 * i) * sp;
    const sheet::Path dot = disc(Part::dot, {x, y - 0.5 * sp}, proportion::dot_radius * sp);
    layer.path(dot, bounds(dot));
  }
  return layer;
}

Layer bar_repeat_sign(const Context& context, double y) {
  Layer layer;
  const double sp = context.space;
  sheet::Path sign =
      polygon(Part::rest, {{-1.05 * sp, y + sp}, {-0.45 * sp, y + sp}, {1.05 * sp, y - sp}, {0.45 * sp, y - sp}});
  for (const double side : {-1.0, 1.0}) add_disc(sign, {side * 0.95 * sp, y + side * 0.5 * sp}, 0.24 * sp);
  layer.path(sign, bounds(sign));
  return layer;
}

}  // namespace fretsheaf::layout
