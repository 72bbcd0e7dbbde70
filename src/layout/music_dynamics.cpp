#include <string>

#include "layout/music_signs.h"

namespace fretsheaf::layout {
namespace {

constexpr double letter_scale = 0.95;

std::optional<char32_t> letter_sign(char letter) {
  switch (letter) {
    case 'p':
      return U'\U0001D18F';
    case 'm':
      return U'\U0001D190';
    case 'f':
      return U'\U0001D191';
    case 's':
      return U'\U0001D18D';
    case 'z':
      return U'\U0001D18E';
    case 'r':
      return U'\U0001D18C';
    default:
      return {};
  }
}

}  // namespace

Layer dynamic_sign(const Context& context, const std::string& text) {
  Layer layer;
  const double space = letter_scale * context.space;
  // The font's letters stand on the line 1.4 spaces up.
  const double baseline = 1.4 * space;
  double x = 0;
  for (const char c : text) {
    const std::optional<char32_t> code_point = letter_sign(c);
    if (!code_point) continue;
    const Words letter = context.type.sign(*code_point, space, sheet::Part::dynamic);
    layer.words(letter, x, baseline);
    x += letter.width;
  }
  // Its first letter begins left of the head; a single letter is centred under it.
  const double shift = text.size() == 1 ? x / 2 : 0.95 * context.space;
  layer.move(-shift, 0);
  return layer;
}

}  // namespace fretsheaf::layout
