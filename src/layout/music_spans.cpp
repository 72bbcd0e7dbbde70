#include <algorithm>

#include "layout/music_draw.h"
#include "layout/music_signs.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

// In tab gaps: the house's measures.
constexpr double word_begin = 0.45;  // left of its note's centre
constexpr double word_gap = 0.375;
constexpr double dash_above = 0.3;
constexpr double dash_width = 0.075;
constexpr double dash = 0.375;
constexpr double dash_gap = 0.3;
constexpr double hook = 0.5;
constexpr double before_bar_line = 0.4;

bool before(const lesson::Moment& a, int bar, theory::Rational at) {
  return a.bar != bar ? a.bar < bar : a.at < at;
}

const Stop* stop_at(const LinePlan& line, const lesson::Moment& moment) {
  for (const Stop& stop : line.stops) {
    if (stands_at(stop, moment)) return &stop;
  }
  return nullptr;
}

// The stop at a span's end. A bar that repeats the one before has no column but its sign's: what reaches the last of
// its counts ends at its bar line.
const Stop* end_at(const LinePlan& line, const lesson::Moment& moment) {
  if (const Stop* stop = stop_at(line, moment)) return stop;
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::bar_line && stop.bar == moment.bar) return &stop;
  }
  return nullptr;
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
  return SpanPart{stop_at(line, span.first), end_at(line, span.last), first};
}

bool is_dashed(const lesson::Span& span) {
  return span.kind == lesson::SpanKind::palm_mute || span.kind == lesson::SpanKind::let_ring;
}

Words span_word(const Context& context, const lesson::Span& span, bool again) {
  const auto word = span.kind == lesson::SpanKind::palm_mute ? words::Word::palm_mute : words::Word::let_ring;
  std::string text(words::word(context.score.language, word));
  if (again) text = "(" + text + ")";
  return context.type.set(templates::Role::technique, text, sheet::Part::technique);
}

double span_word_reach(const Context& context, const lesson::Span& span, bool again) {
  return span_word(context, span, again).ink.right - word_begin * context.tab;
}

namespace {

double dashes_end(const Context& context, const LinePlan& line, const Stop* end) {
  const double apart = before_bar_line * context.tab;
  if (end == nullptr) return line.width - apart;
  if (end->kind == StopKind::bar_line) return end->x - bar_line_width(context, end->sign) - apart;
  return end->centre + word_begin * context.tab;
}

Layer dashed_span(const Context& context, const LinePlan& line, const lesson::Span& span, const SpanPart& part) {
  Layer layer;
  const double tab = context.tab;
  const Words set = span_word(context, span, part.begin == nullptr);
  double x = (part.begin ? part.begin : part.first)->centre - word_begin * tab;
  x = std::min(x, line.width - set.ink.right);
  layer.words(set, x, 0);
  x += set.ink.right + word_gap * tab;
  const double end = dashes_end(context, line, part.end);
  const double y = -dash_above * tab;
  if (end - x < dash * tab) return layer;
  layer.rule(sheet::Part::technique, {x, y}, {end, y}, dash_width * tab, dash * tab, dash_gap * tab);
  if (part.end != nullptr) {
    layer.rule(sheet::Part::technique, {end, y - dash_width * tab / 2}, {end, y + hook * tab}, dash_width * tab);
  }
  return layer;
}

}  // namespace

std::vector<Layer> dashed_spans(const Context& context, const LinePlan& line) {
  std::vector<Layer> layers;
  for (const lesson::Span& span : context.example.spans) {
    if (!is_dashed(span)) continue;
    if (const std::optional<SpanPart> part = part_of_span(line, span)) {
      layers.push_back(dashed_span(context, line, span, *part));
    }
  }
  return layers;
}

}  // namespace fretsheaf::layout
