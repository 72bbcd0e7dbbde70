#include <algorithm>
#include <string>

#include "layout/music_draw.h"
#include "layout/music_groups.h"
#include "layout/music_notes.h"

namespace fretsheaf::layout {

using sheet::Part;
namespace p = proportion;

namespace {

// In staff spaces: as on the slash staff (the house's measures), and the last two chosen by eye.
constexpr double beyond = 0.945;  // from stems' tips to the bracket
constexpr double hook = 0.727;
constexpr double number_gap = 0.909;
constexpr double bare_number_gap = 0.45;
constexpr double past_ink = 1.05;  // from all else

// What a tuplet has in this line.
struct Spanned {
  double left = 0;
  double right = 0;
  double above = 0;  // the farthest that stems and heads reach, with the staff
  double below = 0;
  int ups = 0;
  int downs = 0;
};

class Tuplets {
 public:
  Tuplets(const Context& context, const LinePlan& line, const NoteStems& stems)
      : context_(context), line_(line), stems_(stems), sp_(context.space) {}

  Layer draw() {
    for (const TupletHere& here : tuplets_here(context_, line_)) draw_one(here);
    return std::move(layer_);
  }

 private:
  Spanned span(const TupletHere& here) const {
    Spanned spanned;
    spanned.left = line_.stops[here.stops.front()].centre - 0.6 * sp_;
    spanned.right = line_.stops[here.stops.back()].centre + 0.6 * sp_;
    spanned.below = staff_height * sp_;
    for (const std::size_t i : here.stops) take_in(spanned, i);
    return spanned;
  }

  void take_in(Spanned& spanned, std::size_t i) const {
    const Stop& stop = line_.stops[i];
    const std::optional<NoteStem>& stem = stems_.of[i];
    for (const sheet::Box& ink : stop.column->row(Row::notes).ink()) {
      spanned.above = std::min(spanned.above, ink.top + (beyond - past_ink) * sp_);
      spanned.below = std::max(spanned.below, ink.bottom - (beyond - past_ink) * sp_);
    }
    if (stem) {
      ++(stem->up ? spanned.ups : spanned.downs);
      spanned.above = std::min(spanned.above, stem->tip);
      spanned.below = std::max(spanned.below, stem->tip);
    }
  }

  // On the stems' side; above where they differ or there are none.
  void draw_one(const TupletHere& here) {
    const score::Tuplet& tuplet = *here.tuplet;
    const Spanned spanned = span(here);
    const int away = spanned.downs > 0 && spanned.ups == 0 ? 1 : -1;
    const Words number = context_.type.set(templates::Role::tuplet, std::to_string(tuplet.actual), Part::tuplet_number);
    const double height = number.ink.bottom - number.ink.top;
    double y = (away < 0 ? spanned.above : spanned.below) + away * beyond * sp_;
    double centre = (spanned.left + spanned.right) / 2;
    if (!tuplet.bracket) {
      // Over the middle of its beam, from stem to stem.
      centre += (away < 0 ? 0.534 : -0.534) * sp_;
      y = (away < 0 ? spanned.above : spanned.below) + away * (bare_number_gap * sp_ + height / 2);
    }
    layer_.centred(number, centre, y - (number.ink.top + number.ink.bottom) / 2);
    if (tuplet.bracket) bracket(spanned, centre, y, (number.ink.right - number.ink.left) / 2, away);
  }

  void bracket(const Spanned& spanned, double centre, double y, double half_number, int away) {
    const double hole = std::max(number_gap * sp_, half_number + 0.4 * sp_);
    const double foot = y - away * hook * sp_;
    const double width = p::bracket * sp_;
    const auto side = [&](double outer, double inner) {
      const sheet::Path line = stroked(Part::tuplet_bracket, {{outer, foot}, {outer, y}, {inner, y}}, width);
      layer_.path(line, bounds(line));
    };
    if (spanned.left + width >= centre - hole) return;
    side(spanned.left + width / 2, centre - hole);
    side(spanned.right - width / 2, centre + hole);
  }

  const Context& context_;
  const LinePlan& line_;
  const NoteStems& stems_;
  double sp_;
  Layer layer_;
};

}  // namespace

Layer notes_tuplets(const Context& context, const LinePlan& line, const NoteStems& stems) {
  return Tuplets(context, line, stems).draw();
}

}  // namespace fretsheaf::layout
