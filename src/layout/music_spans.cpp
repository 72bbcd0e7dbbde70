#include <algorithm>

#include "layout/music_draw.h"
#include "layout/music_signs.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

// In tab gaps (engraving.md, "Techniques": points there, at a gap of 8).
constexpr double word_gap = 0.375;
constexpr double dash_above = 0.3;
constexpr double dash_width = 0.075;
constexpr double dash = 0.375;
constexpr double dash_gap = 0.3;
constexpr double hook = 0.5;

bool before(const lesson::Moment& a, int bar, theory::Rational at) {
  return a.bar != bar ? a.bar < bar : a.at < at;
}

const Stop* stop_at(const LinePlan& line, const lesson::Moment& moment) {
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::column && stop.column->bar == moment.bar && stop.column->at == moment.at) return &stop;
  }
  return nullptr;
}

bool in_span(const lesson::Span& span, int bar, theory::Rational at) {
  const bool begun = span.first.bar != bar ? span.first.bar < bar : span.first.at <= at;
  const bool over = before(span.last, bar, at);
  return begun && !over;
}

}  // namespace

std::optional<SpanPart> part_of_span(const LinePlan& line, const lesson::Span& span) {
  const Stop* first = nullptr;
  const Stop* last = nullptr;
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::column) continue;
    if (first == nullptr) first = &stop;
    last = &stop;
  }
  if (first == nullptr) return {};
  const bool ended = before(span.last, first->column->bar, first->column->at);
  const bool begun =
      span.first.bar != last->column->bar ? span.first.bar < last->column->bar : span.first.at <= last->column->at;
  if (ended || !begun) return {};
  return SpanPart{stop_at(line, span.first), stop_at(line, span.last), first};
}

Layer dashed_spans(const Context& context, const LinePlan& line, lesson::SpanKind kind) {
  Layer layer;
  const double tab = context.tab;
  const auto word = kind == lesson::SpanKind::palm_mute ? words::Word::palm_mute : words::Word::let_ring;
  for (const lesson::Span& span : context.example.spans) {
    if (span.kind != kind) continue;
    const std::optional<SpanPart> part = part_of_span(line, span);
    if (!part) continue;
    double x = (part->begin ? part->begin : part->first)->centre - 0.45 * tab;
    if (part->begin) {
      const Words text = context.type.set(
          templates::Role::technique, std::string(words::word(context.score.language, word)), sheet::Part::technique);
      x = std::min(x, line.width - text.ink.right);
      layer.words(text, x, 0);
      x += text.ink.right + word_gap * tab;
    }
    const double end = part->end ? part->end->centre + 0.45 * tab : line.width - 0.4 * tab;
    const double y = -dash_above * tab;
    if (end - x < dash * tab) continue;
    layer.rule(sheet::Part::technique, {x, y}, {end, y}, dash_width * tab, dash * tab, dash_gap * tab);
    if (part->end)
      layer.rule(sheet::Part::technique, {end, y - dash_width * tab / 2}, {end, y + hook * tab}, dash_width * tab);
  }
  return layer;
}

Layer tremolo_strokes(const Context& context, const LinePlan& line) {
  Layer layer;
  const double sp = context.space;
  const bool tab = context.staves.tab_rhythm();
  for (const lesson::Span& span : context.example.spans) {
    if (span.kind != lesson::SpanKind::tremolo || !part_of_span(line, span)) continue;
    for (std::size_t i = 0; i < line.stops.size(); ++i) {
      if (!line.is_event(i)) continue;
      const Stop& stop = line.stops[i];
      const score::Event& event = context.event(stop.column->bar, stop.column->event);
      if (event.rest || !in_span(span, stop.column->bar, stop.column->at)) continue;
      double x = stop.centre;
      double y = tab ? tab_stem_foot(context) + 0.85 * sp : -1.9 * sp;
      if (!tab) x += has_stem(event) ? stem_x(context, event) : 0;
      if (!tab && !has_stem(event)) y = -2.4 * sp;
      for (const double step : {-0.5, 0.0, 0.5}) {
        const double at = y + step * sp;
        const sheet::Path stroke = polygon(sheet::Part::articulation, {{x - 0.55 * sp, at + 0.28 * sp},
                                                                       {x + 0.55 * sp, at + 0.02 * sp},
                                                                       {x + 0.55 * sp, at - 0.23 * sp},
                                                                       {x - 0.55 * sp, at + 0.03 * sp}});
        layer.path(stroke, bounds(stroke));
      }
    }
  }
  return layer;
}

}  // namespace fretsheaf::layout
