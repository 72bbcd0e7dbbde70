#include "exchange/repeated_loudness.h"

#include <algorithm>
#include <optional>

#include "exchange/loudness.h"

namespace fretsheaf::exchange {

namespace {

using theory::Rational;

bool not_after(const lesson::Moment& a, const lesson::Moment& b) {
  return a.bar != b.bar ? a.bar < b.bar : a.at <= b.at;
}

// Calls `each` with the moment and level of every dynamic that has one, those of repeated bars too.
template <typename Each>
void for_levels(const score::Example& example, Each each) {
  for (const auto* dynamics : {&example.dynamics, &example.repeated_dynamics}) {
    for (const lesson::Dynamic& dynamic : *dynamics) {
      if (const auto level = loudness(dynamic.text)) each(dynamic.moment, *level);
    }
  }
}

struct Level {
  lesson::Moment moment;
  Rational loudness;
};

// The latest up to there; mf where none is written.
Rational level_at(const score::Example& example, const lesson::Moment& at) {
  std::optional<Level> latest;
  for_levels(example, [&](const lesson::Moment& moment, Rational level) {
    if (not_after(moment, at) && (!latest || not_after(latest->moment, moment))) latest = Level{moment, level};
  });
  return latest ? latest->loudness : *loudness("mf");
}

// Where a hairpin of a `%` bar leads to: the next dynamic up to the next bar's start, else the next louder or softer
// one at its last count.
Level goal_of(const score::Example& example, const lesson::Span& span, Rational from) {
  const score::Bar& bar = example.bars[static_cast<std::size_t>(span.first.bar)];
  std::optional<Level> next;
  for_levels(example, [&](const lesson::Moment& moment, Rational level) {
    lesson::Moment own = moment;
    if (own.bar == span.first.bar + 1 && own.at == Rational(0)) own = {span.first.bar, bar.end};
    if (own.bar != span.first.bar || own.at <= span.first.at) return;
    if (!next || own.at < next->moment.at) next = Level{own, level};
  });
  if (next) return *next;
  return {span.last, next_level(from, span.kind == lesson::SpanKind::crescendo)};
}

void write_hairpin(Element measure, const Part& part, const lesson::Span& span, Rational at) {
  const Rational from = level_at(part.example, span.first);
  const Level goal = goal_of(part.example, span, from);
  if (goal.moment.at <= span.first.at) return;
  const Rational way = std::min(Rational(1), (at - span.first.at) / (goal.moment.at - span.first.at));
  measure.add("sound").set("dynamics", decimal_text(from + (goal.loudness - from) * way));
}

}  // namespace

void write_repeated_loudness(Element measure, const Part& part, int bar, int event) {
  const score::Event& own = part.example.bars[static_cast<std::size_t>(bar)].events[static_cast<std::size_t>(event)];
  for (const lesson::Dynamic& dynamic : part.example.repeated_dynamics) {
    const Rational at = dynamic.moment.at;
    const auto level = loudness(dynamic.text);
    if (dynamic.moment.bar != bar || at < own.at || at >= own.at + own.length || !level) continue;
    Element sound = measure.add("sound").set("dynamics", decimal_text(*level));
    if (at != own.at) sound.add("offset", part.ticks(at - own.at));
  }
  for (const lesson::Span& span : part.example.repeated_spans) {
    const bool wedge = span.kind == lesson::SpanKind::crescendo || span.kind == lesson::SpanKind::diminuendo;
    const bool inside = span.first.bar == bar && span.first.at < own.at && own.at <= span.last.at;
    if (wedge && inside) write_hairpin(measure, part, span, own.at);
  }
}

}  // namespace fretsheaf::exchange
