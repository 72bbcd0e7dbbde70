#include <algorithm>
#include <limits>
#include <string>

#include "layout/music_draw.h"
#include "layout/music_groups.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;
namespace p = proportion;

namespace {

constexpr double above_stems = 0.945;  // spaces from the stems' tips to the bracket
constexpr double hook = 0.727;
constexpr double number_gap = 0.909;  // half the hole for the number, at least
constexpr double bare_number_gap = 0.45;

// What a tuplet spans in this line.
struct Spanned {
  double left = 0;
  double right = 0;
  double tip = 0;  // the farthest stem tip
};

// `away` is −1 for brackets above the stems, +1 below.
class Tuplets {
 public:
  Tuplets(const Context& context, const LinePlan& line, int away) : context_(context), line_(line), away_(away) {}

  Layer draw() {
    for (const TupletHere& here : tuplets_here(context_, line_)) draw_one(here);
    return std::move(layer_);
  }

 private:
  Spanned span(const TupletHere& here) const {
    constexpr double far = std::numeric_limits<double>::infinity();
    Spanned spanned{far, -far, -away_ * far};
    for (const std::size_t i : here.stops) {
      const Stop& stop = line_.stops[i];
      const score::Event& event = context_.event(stop.column->bar, stop.column->event);
      double left = stop.centre;
      double right = left;
      if (event.rest) {
        left -= 0.55 * context_.space;
        right += 0.55 * context_.space;
      } else if (away_ < 0) {
        left = right = stop.centre + stem_x(context_, event);
      }
      const double tip = tip_of(stop, event);
      spanned.left = std::min(spanned.left, left);
      spanned.right = std::max(spanned.right, right);
      if (away_ * tip > away_ * spanned.tip) spanned.tip = tip;
    }
    return spanned;
  }

  double tip_of(const Stop& stop, const score::Event& event) const {
    if (away_ > 0) {
      double tip = tab_stem_tip(context_);
      // Articulations and ties lie nearer to the stems.
      for (const sheet::Box& ink : stop.column->row(Row::tab).ink()) tip = std::max(tip, ink.bottom);
      if (event.tie_from || event.tie_to) tip = std::max(tip, tab_stem_tip(context_) + 1.5 * context_.space);
      return tip;
    }
    score::Event plain;
    if (event.rest) return stem_tip(context_, plain);
    return stem_tip(context_, event);
  }

  void draw_one(const TupletHere& here) {
    const score::Tuplet& tuplet = *here.tuplet;
    const Spanned spanned = span(here);
    const double sp = context_.space;
    const Words number = context_.type.set(templates::Role::tuplet, std::to_string(tuplet.actual), Part::tuplet_number);
    const double height = number.ink.bottom - number.ink.top;
    const double centre = (spanned.left + spanned.right) / 2;
    double y = spanned.tip + away_ * above_stems * sp;
    if (!tuplet.bracket) y = spanned.tip + away_ * (bare_number_gap * sp + height / 2);
    layer_.centred(number, centre, y - (number.ink.top + number.ink.bottom) / 2);
    if (tuplet.bracket) bracket(spanned, centre, y, (number.ink.right - number.ink.left) / 2);
  }

  void bracket(const Spanned& spanned, double centre, double y, double half_number) {
    const double sp = context_.space;
    const double hole = std::max(number_gap * sp, half_number + 0.4 * sp);
    const double foot = y - away_ * hook * sp;
    const double width = p::bracket * sp;
    const double left = spanned.left - p::stem * sp / 2;
    const double right = spanned.right + p::stem * sp / 2;
    const auto side = [&](double outer, double inner) {
      const sheet::Path line = stroked(Part::tuplet_bracket, {{outer, foot}, {outer, y}, {inner, y}}, width);
      layer_.path(line, bounds(line));
    };
    if (left + width < centre - hole) {
      side(left + width / 2, centre - hole);
      side(right - width / 2, centre + hole);
    }
  }

  const Context& context_;
  const LinePlan& line_;
  int away_;
  Layer layer_;
};

}  // namespace

Layer slash_tuplets(const Context& context, const LinePlan& line) {
  return Tuplets(context, line, -1).draw();
}
Layer tab_tuplets(const Context& context, const LinePlan& line) {
  return Tuplets(context, line, 1).draw();
}

}  // namespace fretsheaf::layout
