#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "layout/music_draw.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {

using lesson::Approach;
using sheet::Box;
using sheet::Part;

namespace {

// In tab gaps: the house's measures.
constexpr double slur_above = 0.5625;
constexpr double slur_inside = 0.125;
constexpr double slur_rise = 0.2875;
// Where something is in its way, a slur lies lower, between its own digits: chosen by eye, as are the last three.
constexpr double low_slur_above = 0.26;
constexpr double low_slur_rise = 0.16;
constexpr double slur_middle = 0.119;
constexpr double slur_ends = 0.05;
constexpr double slide_gap = 0.275;
constexpr double slide_slope = 0.3375;
constexpr double slide_line = 0.125;
constexpr double short_slide = 1.3;  // of one that has no room to begin at its first note
constexpr double come_in = 2.2;      // of what comes from the line before
constexpr double keep_off = 0.0375;  // between a curve and anything else

const Stop* find_stop(const LinePlan& line, int bar, int event) {
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::column && stop.column->bar == bar && stop.column->event == event) return &stop;
  }
  return nullptr;
}

bool touch(const Box& a, const Box& b, double gap) {
  return a.left < b.right + gap && b.left < a.right + gap && a.top < b.bottom + gap && b.top < a.bottom + gap;
}

// A level stretch of the tab from one x to another.
struct Reached {
  double left = 0;
  double right = 0;
  bool cut = false;  // does not begin at its first note
};

class Drawer {
 public:
  Drawer(const Context& context, const LinePlan& line)
      : context_(context), line_(line), tab_(context.tab), obstacles_(tab_obstacles(context, line)) {}

  void joint(const Joint& joint, bool slides) {
    const bool is_slide = joint.approach == Approach::slide_up || joint.approach == Approach::slide_down;
    if (is_slide != slides) return;
    const Stop* from = find_stop(line_, joint.from_bar, joint.from_event);
    const Stop* to = find_stop(line_, joint.bar, joint.event);
    if (from == nullptr && to == nullptr) return;
    if (is_slide) {
      slide(joint, from, to);
    } else if (const std::optional<Reached> drawn = slur(joint.string, from, to); drawn && to != nullptr) {
      // The letter stands once, over the part that ends at the note.
      letter(*to, (drawn->left + drawn->right) / 2, joint.approach == Approach::hammer_on ? "h" : "p");
    }
  }

  // A note that is held on while another string is struck: a tie on the tab, since the slash above has none.
  void held(const score::Note& note, const Stop* from, const Stop* to) { slur(note.place.string, from, to); }

  Techniques take() {
    Techniques drawn;
    drawn.on_tab = std::move(layer_);
    for (const Letter& letter : letters_) {
      const Words words = context_.type.set(templates::Role::technique, letter.text, Part::technique);
      Layer layer;
      layer.centred(words, beside_bar_line(letter.x, (words.ink.right - words.ink.left) / 2), 0);
      drawn.letters.push_back(std::move(layer));
    }
    return drawn;
  }

 private:
  struct Letter {
    const Stop* to;
    double x;
    std::string text;
  };

  // A bar line runs through all staves: a letter about it stands on that side of it which is nearer.
  double beside_bar_line(double x, double half) const {
    const double gap = half + 0.25 * tab_;
    for (const Stop& stop : line_.stops) {
      if (stop.kind != StopKind::bar_line) continue;
      const double left = stop.x - bar_line_width(context_, stop.sign);
      if (x + gap <= left || stop.x <= x - gap) continue;
      return x < (left + stop.x) / 2 ? left - gap : stop.x + gap;
    }
    return x;
  }

  // What is drawn is in the way of what comes after it.
  void add(sheet::Path path) {
    Layer one;
    one.thin(std::move(path));
    obstacles_.insert(obstacles_.end(), one.ink().begin(), one.ink().end());
    layer_.add(std::move(one));
  }

  double line_of(int string) const { return (string - 1) * tab_; }

  // How far a string's digit reaches from its column's centre, with the gap of its line; 0 where it has none.
  double digit_reach(const Stop& stop, int string) const {
    const auto reach = [&](const std::vector<LineGap>& gaps) {
      const auto own = [&](const LineGap& gap) { return gap.string == string; };
      const auto gap = std::find_if(gaps.begin(), gaps.end(), own);
      return gap == gaps.end() ? 0 : gap->right;
    };
    const double tied = &stop == &line_.stops[1] ? reach(stop.column->tied_gaps) : 0;
    return std::max(reach(stop.column->gaps), tied);
  }

  // Where a curve may come in from the line before, and where it goes out to the next one.
  double line_begin(double right) const { return std::max(line_.prefix, right - come_in * tab_); }
  double line_end() const {
    for (std::size_t i = line_.stops.size(); i-- > 0;) {
      if (line_.stops[i].kind == StopKind::bar_line) return line_.stops[i].x - 0.4 * tab_;
    }
    return line_.width - 0.4 * tab_;
  }

  bool free(const sheet::Path& path) const {
    Layer layer;
    layer.thin(path);
    return std::none_of(layer.ink().begin(), layer.ink().end(), [&](const Box& piece) {
      return std::any_of(obstacles_.begin(), obstacles_.end(),
                         [&](const Box& other) { return touch(piece, other, keep_off * tab_); });
    });
  }

  // The longest part of a stretch between two heights in which nothing stands.
  Reached free_part(Reached whole, double top, double bottom) const {
    const double gap = keep_off * tab_;
    std::vector<Box> inside;
    for (const Box& other : obstacles_) {
      if (touch({whole.left, top, whole.right, bottom}, other, gap)) inside.push_back(other);
    }
    std::sort(inside.begin(), inside.end(), [](const Box& a, const Box& b) { return a.left < b.left; });
    inside.push_back({whole.right + 2 * gap, 0, whole.right, 0});
    Reached best{whole.left, whole.left, false};
    double left = whole.left;
    for (const Box& other : inside) {
      const double right = std::min(other.left - 2 * gap, whole.right);
      if (right - left > best.right - best.left) best = {left, right, left > whole.left};
      left = std::max(left, other.right + 2 * gap);
    }
    return best;
  }

  sheet::Path arc(Reached x, double y, double most) const {
    const double rise = std::min(most * tab_, 0.25 * (x.right - x.left));
    return crescent(Part::slur, {x.left, y}, {x.right, y}, rise, slur_middle * tab_, slur_ends * tab_);
  }

  std::optional<Reached> slur(int string, const Stop* from, const Stop* to) {
    const double inside = slur_inside * tab_;
    Reached high;
    high.right = to ? to->centre - inside : line_end();
    high.left = from ? from->centre + inside : line_begin(high.right);
    const double y = line_of(string);
    const sheet::Path over = arc(high, y - slur_above * tab_, slur_rise);
    if (free(over)) {
      add(over);
      return high;
    }
    Reached low;
    low.right = to ? to->centre - digit_reach(*to, string) : line_end();
    low.left = from ? from->centre + digit_reach(*from, string) : line_begin(low.right);
    const double foot = y - low_slur_above * tab_;
    const double top = foot - (low_slur_rise + slur_middle / 2) * tab_;
    low = free_part(low, top, foot + slur_ends * tab_);
    if (low.right - low.left < 0.5 * tab_) return {};
    add(arc(low, foot, low_slur_rise));
    return low;
  }

  void slide(const Joint& joint, const Stop* from, const Stop* to) {
    // A digit's reach holds the gap of its line already.
    const double inset = (slide_gap - proportion::digit_gap) * tab_;
    const double y = line_of(joint.string);
    Reached x;
    x.right = to ? to->centre - digit_reach(*to, joint.string) - inset : line_end();
    x.left = from ? from->centre + digit_reach(*from, joint.string) + inset : line_begin(x.right);
    const double reach = (slide_slope + slide_line / 2) * tab_;
    x = free_part(x, y - reach, y + reach);
    if (x.cut) x.left = std::max(x.left, x.right - short_slide * tab_);
    if (x.right - x.left < 0.4 * tab_) return;
    const double slope = (joint.approach == Approach::slide_up ? slide_slope : -slide_slope) * tab_;
    add(stroked(Part::slide, {{x.left, y + slope}, {x.right, y - slope}}, slide_line * tab_));
  }

  // Several strings that do the same share their letter; where they do not, both are named.
  void letter(const Stop& to, double x, const std::string& text) {
    const auto same = [&](const Letter& other) { return other.to == &to; };
    const auto found = std::find_if(letters_.begin(), letters_.end(), same);
    if (found == letters_.end()) {
      letters_.push_back({&to, x, text});
    } else if (found->text.find(text) == std::string::npos) {
      found->text += " " + text;
    }
  }

  const Context& context_;
  const LinePlan& line_;
  double tab_;
  std::vector<Box> obstacles_;
  Layer layer_;
  std::vector<Letter> letters_;
};

}  // namespace

std::vector<Box> tab_obstacles(const Context& context, const LinePlan& line) {
  std::vector<Box> boxes{tab_sign_box(context)};
  const auto take = [&](const Layer& layer, double dx) {
    for (const Box& ink : layer.ink()) boxes.push_back(moved(ink, dx, 0));
  };
  const auto dots = [&](double x) {
    const double radius = 0.22 * context.space;
    for (const double y : tab_dots(context)) boxes.push_back({x - radius, y - radius, x + radius, y + radius});
  };
  const double sp = context.space;
  if (line.opens_repeat) dots(line.prefix + bar_line_width(context, lesson::BarSign::repeat_begin) + 0.55 * sp);
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    const Stop& stop = line.stops[i];
    if (stop.kind == StopKind::column) {
      take(stop.column->row(Row::tab), stop.centre);
      if (i == 1) take(stop.column->tied_digits, stop.centre);
    }
    if (stop.kind != StopKind::bar_line) continue;
    const bool both = stop.sign == lesson::BarSign::repeat_both;
    if (both || stop.sign == lesson::BarSign::repeat_begin) dots(stop.x + 0.55 * sp);
    if (both || stop.sign == lesson::BarSign::repeat_end) {
      dots(stop.x - bar_line_width(context, stop.sign) - 0.55 * sp);
    }
  }
  if (!context.staves.tab_rhythm()) return boxes;
  for (const PlacedMeter& meter : meters_in(context, line)) {
    take(time_signature(context, *meter.meter, meter.left, context.tab_height() / 2), 0);
  }
  return boxes;
}

namespace {

// Strings that are held while others are struck. What is tied as a whole has its tie on the staff above, so that the
// tab has ties only where a string is held by itself; but then from its digit on to where it ends.
void draw_held(const Context& context, const LinePlan& line, Drawer& drawer) {
  struct Held {
    std::vector<std::array<const Stop*, 2>> waiting;  // ties of everything, so far
    bool alone = false;
  };
  std::vector<Held> strings(static_cast<std::size_t>(context.strings) + 1);
  const auto tie = [&](const score::Note& note, bool with_all, const Stop* from, const Stop* to) {
    Held& held = strings[static_cast<std::size_t>(std::clamp(note.place.string, 1, context.strings))];
    held.alone = held.alone || !with_all;
    held.waiting.push_back({from, to});
    if (!held.alone) return;
    for (const auto& [begin, end] : held.waiting) drawer.held(note, begin, end);
    held.waiting.clear();
  };
  const Stop* before = nullptr;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    if (!line.is_event(i)) continue;
    const Stop& stop = line.stops[i];
    const score::Event& event = context.event(stop.column->bar, stop.column->event);
    std::vector<Held> now(strings.size());
    for (const score::Note& note : event.notes) {
      const auto string = static_cast<std::size_t>(std::clamp(note.place.string, 1, context.strings));
      if (!note.tie_from) continue;
      tie(note, event.tie_from, before, &stop);
      now[string] = std::move(strings[string]);
    }
    strings = std::move(now);
    before = &stop;
  }
  if (before == nullptr || line.last_line) return;
  const score::Event& event = context.event(before->column->bar, before->column->event);
  for (const score::Note& note : event.notes) {
    if (note.tie_to) tie(note, event.tie_to, before, nullptr);
  }
}

}  // namespace

Techniques techniques(const Context& context, const LinePlan& line) {
  Drawer drawer(context, line);
  const int first = line.stops.front().bar;
  const int last = line.stops.back().bar;
  // Slides have one place only; slurs find theirs around them.
  for (const bool slides : {true, false}) {
    for (const Joint& joint : context.joints_into(first, last)) drawer.joint(joint, slides);
    for (const Joint& joint : context.joints_out_of(first, last)) {
      if (joint.bar > last) drawer.joint(joint, slides);
    }
  }
  draw_held(context, line, drawer);
  return drawer.take();
}

}  // namespace fretsheaf::layout
