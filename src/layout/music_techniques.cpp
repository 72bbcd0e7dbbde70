#include <algorithm>
#include <string>

#include "layout/music_draw.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {

using lesson::Approach;
using sheet::Part;

namespace {

// In tab gaps (engraving.md, "Techniques": points there, at a gap of 8).
constexpr double slur_above = 0.5625;
constexpr double slur_inside = 0.125;
constexpr double slur_rise = 0.2875;
// Where the string above has a digit too, the slur lies lower, between its own digits.
constexpr double low_slur_above = 0.3;
constexpr double low_slur_rise = 0.2;
constexpr double slide_gap = 0.275;
constexpr double slide_slope = 0.3375;
constexpr double slide_line = 0.125;

const Stop* find_stop(const LinePlan& line, int bar, int event) {
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::column && stop.column->bar == bar && stop.column->event == event) return &stop;
  }
  return nullptr;
}

bool has_digit(const Stop* stop, int string) {
  return stop != nullptr && std::any_of(stop->column->gaps.begin(), stop->column->gaps.end(),
                                        [&](const LineGap& gap) { return gap.string == string; });
}

// How far the digit on a string reaches to each side of its column.
double digit_reach(const Column& column, int string) {
  const auto own = [&](const LineGap& gap) { return gap.string == string; };
  const auto gap = std::find_if(column.gaps.begin(), column.gaps.end(), own);
  return gap == column.gaps.end() ? 0 : gap->right;
}

class Drawer {
 public:
  Drawer(const Context& context, const LinePlan& line) : context_(context), line_(line), tab_(context.tab) {}

  void joint(const Joint& joint) {
    const Stop* from = find_stop(line_, joint.from_bar, joint.from_event);
    const Stop* to = find_stop(line_, joint.bar, joint.event);
    if (!joint.neighbours) from = nullptr;
    if (from == nullptr && to == nullptr) return;
    if (joint.approach == Approach::slide_up || joint.approach == Approach::slide_down) {
      slide(joint, from, to);
    } else {
      slur(joint, from, to);
    }
  }

  // A note that is held on while another string is struck: a tie on the tab, since the slash above has none.
  void held(const score::Note& note, const Stop* from, const Stop& to) {
    const bool low = has_digit(from, note.place.string - 1) || has_digit(&to, note.place.string - 1);
    const double y = (note.place.string - 1 - (low ? low_slur_above : slur_above)) * tab_;
    const double reach = from ? digit_reach(*from->column, note.place.string) : 0;
    const double left = from ? from->centre + (low ? reach : slur_inside * tab_) : to.centre - 2.2 * tab_;
    const double right = to.centre - slur_inside * tab_;
    const double rise = std::min((low ? low_slur_rise : slur_rise) * tab_, 0.25 * (right - left));
    const sheet::Path tie = crescent(Part::slur, {left, y}, {right, y}, rise, 0.119 * tab_, 0.05 * tab_);
    drawn_.on_tab.path(tie, bounds(tie));
  }

  Techniques take() { return std::move(drawn_); }

 private:
  void slur(const Joint& joint, const Stop* from, const Stop* to) {
    if (from == nullptr && to == nullptr) return;
    const bool low = has_digit(from, joint.string - 1) || has_digit(to, joint.string - 1);
    const auto inside = [&](const Stop& stop) {
      return low ? digit_reach(*stop.column, joint.string) : slur_inside * tab_;
    };
    const double y = (joint.string - 1 - (low ? low_slur_above : slur_above)) * tab_;
    const double right = to ? to->centre - inside(*to) : line_.width - 0.4 * tab_;
    // What began in an earlier line comes in from the left.
    const double left = from ? from->centre + inside(*from) : std::max(line_.prefix, right - 2 * tab_);
    const double rise = std::min((low ? low_slur_rise : slur_rise) * tab_, 0.25 * (right - left));
    const sheet::Path slur = crescent(Part::slur, {left, y}, {right, y}, rise, 0.119 * tab_, 0.05 * tab_);
    drawn_.on_tab.path(slur, bounds(slur));
    // The letter stands once, over the part that ends at the note.
    if (to == nullptr) return;
    const char* letter = joint.approach == Approach::hammer_on ? "h" : "p";
    drawn_.words.centred(context_.type.set(templates::Role::technique, letter, Part::technique), (left + right) / 2, 0);
  }

  void slide(const Joint& joint, const Stop* from, const Stop* to) {
    const double y = (joint.string - 1) * tab_;
    const double left = from ? from->centre + digit_reach(*from->column, joint.string) : to->centre - 2.6 * tab_;
    const double right = to ? to->centre - digit_reach(*to->column, joint.string) : line_.width - 0.4 * tab_;
    // A digit's reach holds the gap of its line already.
    const double inset = (slide_gap - proportion::digit_gap) * tab_;
    const double slope = (joint.approach == Approach::slide_up ? slide_slope : -slide_slope) * tab_;
    const sheet::Path line =
        stroked(Part::slide, {{left + inset, y + slope}, {right - inset, y - slope}}, slide_line * tab_);
    drawn_.on_tab.path(line, bounds(line));
  }

  const Context& context_;
  const LinePlan& line_;
  double tab_;
  Techniques drawn_;
};

}  // namespace

Techniques techniques(const Context& context, const LinePlan& line) {
  Drawer drawer(context, line);
  const int first = line.stops.front().bar;
  const int last = line.stops.back().bar;
  for (const Joint& joint : context.joints) {
    if (joint.bar >= first && joint.from_bar <= last) drawer.joint(joint);
  }
  const Stop* before = nullptr;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    if (!line.is_event(i)) continue;
    const Stop& stop = line.stops[i];
    const score::Event& event = context.event(stop.column->bar, stop.column->event);
    for (const score::Note& note : event.notes) {
      if (note.tie_from && !event.tie_from) drawer.held(note, before, stop);
    }
    before = &stop;
  }
  return drawer.take();
}

}  // namespace fretsheaf::layout
