#include <algorithm>

#include "layout/music_draw.h"
#include "layout/music_notes.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;

struct TieStyle {
  double y = 0;      // of its ends
  double inset = 0;  // from the columns' centres
  double under = 0;  // of its ends where it passes a time signature
  double aside = 0;  // and how far they then stand from the centres, beside what hangs under the heads
  bool may_rise = false;
};

// In staff spaces, chosen by eye: a tie over the heads.
constexpr double before_stem = 0.1;  // its end, from the head's centre
constexpr double stem_gap = 0.3;     // its beginning, from the stem
constexpr double flag_width = 0.9;
constexpr double stroke_width = 0.4;
constexpr double beside_strokes = 0.85;  // from the centre of a head with strokes over it
constexpr double least_above = 1.6;

// What a tie joins; null where it comes from the line before or goes on in the next.
struct Tied {
  const Stop* from = nullptr;
  const Stop* to = nullptr;
  bool passes_meter = false;
};

class Ties {
 public:
  Ties(const Context& context, const LinePlan& line, const TieStyle& style)
      : context_(context), line_(line), style_(style) {}

  Layer draw() {
    const Stop* before = nullptr;
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      if (!line_.is_event(i)) continue;
      const Stop& stop = line_.stops[i];
      if (event(stop).tie_from && before == nullptr) {
        tie({nullptr, &stop});
      } else if (event(stop).tie_from && event(*before).tie_to) {
        const bool passes = std::any_of(before, &stop, [](const Stop& s) { return s.meter != nullptr; });
        tie({before, &stop, passes});
      }
      before = &stop;
    }
    if (before != nullptr && event(*before).tie_to && !line_.last_line) tie({before, nullptr});
    return std::move(layer_);
  }

 private:
  double sp() const { return context_.space; }
  const score::Event& event(const Stop& stop) const { return context_.event(stop.column->bar, stop.column->event); }

  // Where the line's last bar ends: a change of meter may be announced after it.
  double end() const { return line_end(line_) - 0.6 * sp(); }
  double begin(const Stop& to) const { return std::max(to.x - 3 * sp(), line_.prefix); }

  void tie(const Tied& tied) {
    if (style_.may_rise && !tied.passes_meter && notes_tie_above(context_, tied.from, tied.to) && above(tied)) return;
    const double inset = tied.passes_meter ? style_.aside : style_.inset;
    const double left = tied.from ? tied.from->x + inset : begin(*tied.to);
    const double right = tied.to ? tied.to->x - inset : end();
    arc(left, right, tied.passes_meter ? style_.under : style_.y, -1);
  }

  // Where the tie of the notes staff lies above its heads, the two would face each other like the lids of an eye
  // (engraving.md, rule 6): this one then goes over the heads, from stem to stem. False where it has no room there.
  bool above(const Tied& tied) {
    const double left = tied.from ? tied.from->x + past_stem(event(*tied.from)) : begin(*tied.to);
    const double right = tied.to ? tied.to->x + before_end(event(*tied.to)) : end();
    if (right - left < least_above * sp()) return false;
    arc(left, right, -style_.y, 1);
    return true;
  }

  // Before a stem with its strokes, or before strokes that stand over the head.
  double before_end(const score::Event& event) const {
    return (context_.in_tremolo(event) && !has_stem(context_, event) ? -beside_strokes : before_stem) * sp();
  }

  // Where what hangs on a slash's stem ends.
  double past_stem(const score::Event& event) const {
    if (context_.in_tremolo(event) && !has_stem(context_, event)) return beside_strokes * sp();
    double past = has_stem(context_, event) ? stem_x(context_, event) + stem_gap * sp() : style_.inset;
    if (event.value.beams() > 0 && !event.beamed()) past += flag_width * sp();
    if (context_.in_tremolo(event)) past += stroke_width * sp();
    return past;
  }

  void arc(double from, double to, double y, int up) {
    const double rise = std::min(p::tie_drop * sp(), 0.3 * (to - from));
    const sheet::Path path = crescent(sheet::Part::tie, {from, y}, {to, y}, up * rise, 0.22 * sp(), 0.09 * sp());
    if (up > 0) {
      layer_.thin(path);
    } else {
      layer_.path(path, bounds(path));
    }
  }

  const Context& context_;
  const LinePlan& line_;
  TieStyle style_;
  Layer layer_;
};

}  // namespace

Layer slash_ties(const Context& context, const LinePlan& line) {
  const double sp = context.space;
  return Ties(context, line, {1.25 * sp, 0.3 * sp, 2.25 * sp, 0.9 * sp, context.staves.notes}).draw();
}

Layer tab_ties(const Context& context, const LinePlan& line) {
  const double y = tab_stem_tip(context) + 0.4 * context.space;
  return Ties(context, line, {y, 0.5 * context.space, y, 0.5 * context.space, false}).draw();
}

}  // namespace fretsheaf::layout
