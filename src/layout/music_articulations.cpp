#include <algorithm>

#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;

void add_staccato(Layer& layer, double sp, double y) {
  const sheet::Path dot = disc(Part::articulation, {0, y}, 0.2 * sp);
  layer.path(dot, bounds(dot));
}

void add_tenuto(Layer& layer, double sp, double y) {
  layer.rule(Part::articulation, {-0.65 * sp, y}, {0.65 * sp, y}, 0.17 * sp);
}

void add_accent(Layer& layer, double sp, double y) {
  const sheet::Path accent = stroked(
      Part::articulation, {{-0.75 * sp, y - 0.42 * sp}, {0.75 * sp, y}, {-0.75 * sp, y + 0.42 * sp}}, 0.15 * sp);
  layer.path(accent, bounds(accent));
}

Layer articulations(const Context& context, const score::Event& event, double y, int direction) {
  const auto any = [&](bool score::Note::*flag) {
    return std::any_of(event.notes.begin(), event.notes.end(), [&](const score::Note& note) { return note.*flag; });
  };
  const score::Touch touch = event.touch.value_or(score::Touch{});
  Layer layer;
  const double sp = context.space;
  const auto next = [&](double step) { y += direction * step * sp; };
  if (any(&score::Note::staccato) || touch.staccato) {
    add_staccato(layer, sp, y - direction * 0.1 * sp);
    next(0.7);
  }
  if (any(&score::Note::tenuto) || touch.tenuto) {
    add_tenuto(layer, sp, y - direction * 0.05 * sp);
    next(0.7);
  }
  const bool accented = any(&score::Note::accent) || touch.accent || event.strum == lesson::Strum::accented;
  if (accented) add_accent(layer, sp, y);
  return layer;
}

namespace {

// Tremolo strokes, in spaces, chosen by eye.
constexpr double stroke_step = 0.5;  // from one to the next
constexpr double stroke_rise = 0.13;
constexpr double stroke_thick = 0.25;
constexpr double stroke_half = 0.55;

int strokes(const score::Event& event) {
  return std::max(1, 3 - event.value.beams());
}

}  // namespace

double tremolo_reach(const Context& context, const score::Event& event) {
  return ((strokes(event) - 1) * stroke_step / 2 + stroke_rise + stroke_thick / 2) * context.space;
}

Layer tremolo_sign(const Context& context, const score::Event& event, sheet::Point centre) {
  Layer layer;
  const double sp = context.space;
  const int count = strokes(event);
  const double half = stroke_half * sp;
  const double thick = stroke_thick / 2 * sp;
  for (int i = 0; i < count; ++i) {
    const double y = centre.y + (i - (count - 1) / 2.0) * stroke_step * sp;
    const double left = y + stroke_rise * sp;
    const double right = y - stroke_rise * sp;
    const sheet::Path stroke = polygon(Part::articulation, {{centre.x - half, left + thick},
                                                            {centre.x + half, right + thick},
                                                            {centre.x + half, right - thick},
                                                            {centre.x - half, left - thick}});
    layer.path(stroke, bounds(stroke));
  }
  return layer;
}

Layer stroke_sign(const Context& context, const score::Event& event) {
  Layer layer;
  if (!event.stroke) return layer;
  const double sp = context.space;
  if (*event.stroke == lesson::Stroke::down) {
    // Outer corners 1.0 by 0.95 spaces, the bar on top 0.36, the legs 0.12.
    const double w = 0.5 * sp;
    const double leg = 0.12 * sp;
    const sheet::Path down = polygon(Part::articulation, {{-w, 0},
                                                          {-w, -0.95 * sp},
                                                          {w, -0.95 * sp},
                                                          {w, 0},
                                                          {w - leg, 0},
                                                          {w - leg, -0.59 * sp},
                                                          {-w + leg, -0.59 * sp},
                                                          {-w + leg, 0}});
    layer.path(down, bounds(down));
  } else {
    const sheet::Path up =
        stroked(Part::articulation, {{-0.42 * sp, -1.0 * sp}, {0, -0.07 * sp}, {0.42 * sp, -1.0 * sp}}, 0.14 * sp);
    layer.path(up, bounds(up));
  }
  return layer;
}

}  // namespace fretsheaf::layout
