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
  std::u32string letters;
  for (const char c : text) {
    if (const std::optional<char32_t> code_point = letter_sign(c)) letters += *code_point;
  }
  Words word = context.type.signs(letters, space, sheet::Part::dynamic, text);
  // Letters that stand for signs are a stretch of their own: some readers lose what follows them in the same one.
  sheet::Group stretch;
  stretch.tag = sheet::Tag::span;
  stretch.items = std::move(word.items);
  word.items.clear();
  word.items.emplace_back(std::move(stretch));
  layer.words(word, 0, baseline);
  // Its first letter begins left of the head; a single letter is centred under it.
  const double shift = text.size() == 1 ? word.width / 2 : 0.95 * context.space;
  layer.move(-shift, 0);
  return layer;
}

}  // namespace fretsheaf::layout
