#include <array>
#include <cstdlib>

#include "layout/music_draw.h"
#include "layout/music_notes.h"

namespace fretsheaf::layout {

using sheet::Part;
namespace p = proportion;

namespace {

// In staff spaces: the clefs and the gap after them are the house's measures, the steps of the signs chosen by eye.
constexpr double clef_left = 0.727;  // from the staff's left end
constexpr double bass_scale = 1.08;
constexpr double clef_to_key = 1.0;
constexpr double sharp_width = 1.22;  // from one sign to the next: the zigzag lets them overlap
constexpr double flat_width = 1.02;
constexpr double last_sign = 0.3;  // what the last one is wider

// Where the signs stand under a G clef, by steps from the middle line, in the circle's order; two steps lower under an
// F clef (common practice: F C G D A E B sharpened, B E A D G C F flattened).
constexpr std::array<int, 7> sharp_steps = {4, 1, 5, 2, -1, 3, 0};
constexpr std::array<int, 7> flat_steps = {0, 3, -1, 2, -2, 1, -3};

// U+1D120 and U+1D11E: a G clef with and without an 8 under it; U+1D124 and U+1D122: an F clef.
Words clef_sign(const Context& context) {
  const bool octave = context.score.sounds_octave_lower;
  if (context.score.clef == fretboard::Clef::bass) {
    return context.type.sign(U'\U0001D122', bass_scale * context.space, Part::clef);
  }
  return context.type.sign(octave ? U'\U0001D120' : U'\U0001D11E', context.space, Part::clef);
}

// The sign's own origin, from the staff's top line: a G clef's is on the bottom line. The dots of an F clef have its
// line, the fourth, between them; in the font they lie 2.578 spaces above the origin.
double clef_y(const Context& context) {
  const double sp = context.space;
  return context.score.clef == fretboard::Clef::bass ? (1 + 2.578 * bass_scale) * sp : staff_height * sp;
}

double clef_right(const Context& context) {
  const Words clef = clef_sign(context);
  return clef_left * context.space + clef.ink.right - clef.ink.left;
}

double key_left(const Context& context) {
  return clef_right(context) + clef_to_key * context.space;
}

void add_key_signature(Layer& layer, const Context& context) {
  const int signature = context.example.key.signature();
  const int lower = context.score.clef == fretboard::Clef::bass ? 2 : 0;
  double x = key_left(context);
  for (int i = 0; i < std::abs(signature) && i < 7; ++i) {
    const auto at = static_cast<std::size_t>(i);
    const int step = (signature > 0 ? sharp_steps[at] : flat_steps[at]) - lower;
    const double width = (signature > 0 ? sharp_width : flat_width) * context.space;
    // Signs have their right edge where the next one begins, or a little beyond it.
    Layer sign;
    const double left =
        add_accidental(sign, context, signature > 0 ? 1 : -1, 0, step_y(context, step), Part::key_signature);
    layer.add(std::move(sign), x - left, 0);
    x += width;
  }
}

}  // namespace

double notes_prefix(const Context& context) {
  const int signs = std::abs(context.example.key.signature());
  if (signs == 0) return clef_right(context);
  const double width = context.example.key.signature() > 0 ? sharp_width : flat_width;
  return key_left(context) + (width * signs + last_sign) * context.space;
}

Layer notes_staff(const Context& context, const LinePlan& line) {
  Layer layer;
  const double sp = context.space;
  for (int i = 0; i <= 4; ++i) {
    layer.rule(Part::staff_line, {0, i * sp}, {line.width, i * sp}, p::staff_line * sp);
  }
  const Words clef = clef_sign(context);
  layer.words(clef, clef_left * sp - clef.ink.left, clef_y(context));
  add_key_signature(layer, context);
  add_meters(layer, context, line, 2 * sp);
  return layer;
}

}  // namespace fretsheaf::layout
