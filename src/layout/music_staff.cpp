#include <algorithm>
#include <numeric>
#include <string>

#include "layout/music_draw.h"

namespace fretsheaf::layout {

using sheet::Part;
using templates::Role;
namespace p = proportion;

namespace {

constexpr double clef_left = 0.727;  // spaces from the staff's left end
constexpr double clef_bar = 0.36;
constexpr double clef_pitch = 0.72;
constexpr double bar_to_meter = 1.1;

struct Gap {
  double left;
  double right;
};

// A staff line from 0 to `width` without what lies in its gaps.
void broken_line(Layer& layer, Part part, double y, double width, double thickness, std::vector<Gap> gaps) {
  std::sort(gaps.begin(), gaps.end(), [](const Gap& a, const Gap& b) { return a.left < b.left; });
  double x = 0;
  for (const Gap& gap : gaps) {
    if (gap.left > x) layer.rule(part, {x, y}, {gap.left, y}, thickness);
    x = std::max(x, gap.right);
  }
  if (x < width) layer.rule(part, {x, y}, {width, y}, thickness);
}

std::vector<Gap> gaps_of(const LinePlan& line, int string) {
  std::vector<Gap> gaps;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    const Stop& stop = line.stops[i];
    if (stop.kind != StopKind::column) continue;
    const auto take = [&](const std::vector<LineGap>& from) {
      for (const LineGap& gap : from) {
        if (gap.string == string) gaps.push_back({stop.centre + gap.left, stop.centre + gap.right});
      }
    };
    take(stop.column->gaps);
    if (i == 1) take(stop.column->tied_gaps);
  }
  return gaps;
}

// The letters T, A, B under each other about the middle of the staff.
void add_tab_sign(Layer& layer, const Context& context) {
  const double cap = context.type.cap_height(Role::tab_sign);
  for (int i = 0; i < 3; ++i) {
    const Words letter = context.type.set(Role::tab_sign, std::string(1, "TAB"[i]), Part::tab_sign);
    layer.centred(letter, context.tab, context.tab_height() / 2 + (i - 1) * context.tab + cap / 2);
  }
}

void add_string_letters(Layer& layer, const Context& context) {
  const double cap = context.type.cap_height(Role::string_letter);
  for (int i = 0; i < context.strings; ++i) {
    const std::string& name = context.score.string_letters[static_cast<std::size_t>(i)];
    const Words letter = context.type.set(Role::string_letter, name, Part::string_letter);
    // A syllable is wider than a letter, and keeps off the staff all the same.
    const double centre = std::max(0.9375 * context.tab, letter.width / 2 + 0.4 * context.tab);
    layer.centred(letter, -centre, i * context.tab + cap / 2);
  }
}

std::string upper_figures(const theory::Meter& meter) {
  std::string text;
  for (const int group : meter.groups) text += (text.empty() ? "" : "+") + std::to_string(group);
  return text;
}

}  // namespace

std::vector<PlacedMeter> meters_in(const Context& context, const LinePlan& line) {
  std::vector<PlacedMeter> meters;
  if (line.meter != nullptr) meters.push_back({line.meter, line.meter_x});
  for (const Stop& stop : line.stops) {
    if (stop.meter != nullptr) meters.push_back({stop.meter, stop.x + bar_to_meter * context.space});
  }
  return meters;
}

void add_meters(Layer& layer, const Context& context, const LinePlan& line, double y) {
  for (const PlacedMeter& meter : meters_in(context, line)) {
    layer.add(time_signature(context, *meter.meter, meter.left, y));
  }
}

sheet::Box tab_sign_box(const Context& context) {
  const double cap = context.type.cap_height(Role::tab_sign);
  double half = 0;
  for (int i = 0; i < 3; ++i) {
    const Words letter = context.type.set(Role::tab_sign, std::string(1, "TAB"[i]), Part::tab_sign);
    half = std::max(half, (letter.ink.right - letter.ink.left) / 2);
  }
  const double gap = p::digit_gap * context.tab;
  const double middle = context.tab_height() / 2;
  const double high = context.tab + cap / 2 + gap;
  return {context.tab - half - gap, middle - high, context.tab + half + gap, middle + high};
}

namespace {

// The two figures fill a space each way from the middle of the staff and keep a hair apart there.
double meter_size(const Context& context) {
  const double size = context.type.look().style(Role::time_signature).size;
  const Words figures = context.type.set(Role::time_signature, "0123456789", Part::time_signature);
  return size * std::min(1.0, 1.9 * context.space / (figures.ink.bottom - figures.ink.top));
}

Words meter_figures(const Context& context, const std::string& text) {
  return context.type.set_at_size(Role::time_signature, meter_size(context), text, Part::time_signature);
}

}  // namespace

double meter_width(const Context& context, const theory::Meter& meter) {
  const Words upper = meter_figures(context, upper_figures(meter));
  const Words lower = meter_figures(context, std::to_string(meter.lower));
  return std::max(upper.width, lower.width);
}

Layer time_signature(const Context& context, const theory::Meter& meter, double left, double y) {
  Layer layer;
  const double centre = left + meter_width(context, meter) / 2;
  const Words upper = meter_figures(context, upper_figures(meter));
  const Words lower = meter_figures(context, std::to_string(meter.lower));
  layer.centred(upper, centre, y - context.space - (upper.ink.top + upper.ink.bottom) / 2);
  layer.centred(lower, centre, y + context.space - (lower.ink.top + lower.ink.bottom) / 2);
  return layer;
}

Layer slash_staff(const Context& context, const LinePlan& line) {
  Layer layer;
  const double sp = context.space;
  broken_line(layer, Part::staff_line, 0, line.width, p::staff_line * sp, gaps_of(line, 0));
  for (int i = 0; i < 2; ++i) {
    const double left = (clef_left + i * clef_pitch) * sp;
    const sheet::Path bar =
        polygon(Part::clef, {{left, -sp}, {left + clef_bar * sp, -sp}, {left + clef_bar * sp, sp}, {left, sp}});
    layer.path(bar, bounds(bar));
  }
  add_meters(layer, context, line, 0);
  return layer;
}

Layer tab_staff(const Context& context, const LinePlan& line) {
  Layer layer;
  const sheet::Box sign = tab_sign_box(context);
  add_tab_sign(layer, context);
  for (int i = 0; i < context.strings; ++i) {
    const double y = i * context.tab;
    std::vector<Gap> gaps = gaps_of(line, i + 1);
    if (sign.top <= y && y <= sign.bottom) gaps.push_back({sign.left, sign.right});
    broken_line(layer, Part::tab_line, y, line.width, p::tab_line * context.tab, std::move(gaps));
  }
  if (line.first_line) add_string_letters(layer, context);
  if (context.staves.tab_rhythm()) add_meters(layer, context, line, context.tab_height() / 2);
  return layer;
}

}  // namespace fretsheaf::layout
