#include "exchange/adopt_repeats.h"

#include <algorithm>
#include <utility>

#include "lesson/held.h"
#include "lesson/same_music.h"

namespace fretsheaf::exchange {

using lesson::EventKind;
using source::Code;

namespace {

// What `%` makes of the bar before: the same tokens, what was held into that bar now held from its end.
std::vector<lesson::Event> repeated(const lesson::Music& music, std::size_t bar) {
  std::vector<lesson::Event> events = music.bars[bar - 1].events;
  const lesson::Event& end = events.back();
  lesson::Event& first = events.front();
  if (!first.written_out) {
    first.kind = end.kind == EventKind::rest ? EventKind::rest : EventKind::held;
    first.strum = end.strum;
    std::vector<lesson::Note> notes;
    for (const lesson::Note& note : end.notes) notes.push_back(lesson::going_on(note));
    first.notes = std::move(notes);
  }
  return events;
}

bool same(const lesson::Event& a, const lesson::Event& b) {
  const auto stroke = [](const lesson::Event& e) { return e.stroke ? static_cast<int>(e.stroke->value) : -1; };
  return a.kind == b.kind && a.at == b.at && a.length == b.length && a.strum == b.strum && a.fermata == b.fermata &&
         stroke(a) == stroke(b) &&
         std::equal(a.notes.begin(), a.notes.end(), b.notes.begin(), b.notes.end(), lesson::same_note);
}

void lose_repeat(const AdoptContext& context, const TakenMeasure& measure, int index) {
  context.losses.lose(Code::adopt_left_out, measure.element, index,
                      "a bar-repeat sign over no notes is left out, and its bar is silent",
                      "a lesson's `%` repeats one bar of the same length: write the notes out");
}

}  // namespace

void find_repeats(const AdoptContext& context, const Section& section, lesson::Music& music) {
  for (std::size_t i = 1; i < music.bars.size(); ++i) {
    lesson::Bar& bar = music.bars[i];
    const TakenMeasure& own = context.part.measures[static_cast<std::size_t>(section.first) + i];
    const lesson::Bar& before = music.bars[i - 1];
    const bool silent = bar.events.size() == 1 && bar.events[0].kind == EventKind::rest;
    const bool full = bar.begin == Rational(0) && bar.end == bar.meter.bar();
    const bool alike = before.end - before.begin == bar.meter.bar() && before.begin == Rational(0);
    if (own.repeats_before != 1 || !full || !alike) {
      if (own.repeats_before > 0 && silent) lose_repeat(context, own, section.first + static_cast<int>(i));
      continue;
    }
    const std::vector<lesson::Event> events = repeated(music, i);
    const bool said = std::equal(events.begin(), events.end(), bar.events.begin(), bar.events.end(),
                                 [](const auto& a, const auto& b) { return same(a, b); });
    if (!said && !silent) continue;
    bar.same_as_previous = true;
    bar.events = events;
    for (lesson::Event& event : bar.events) event.written_out = event.written_out && said;
  }
}

void unfold_repeats(lesson::Music& music) {
  for (std::size_t i = 0; i < music.bars.size(); ++i) {
    lesson::Bar& bar = music.bars[i];
    if (!bar.same_as_previous) continue;
    const auto inside = [&](const auto& words) {
      return std::any_of(words.begin(), words.end(), [&](const auto& word) { return word.at != bar.begin; });
    };
    const int own = static_cast<int>(i);
    const bool spans = std::any_of(music.spans.begin(), music.spans.end(), [&](const lesson::Span& span) {
      return span.first.bar == own || span.last.bar == own;
    });
    const bool dynamics = std::any_of(music.dynamics.begin(), music.dynamics.end(), [&](const auto& dynamic) {
      return dynamic.moment.bar == own && dynamic.moment.at != bar.begin;
    });
    if (spans || dynamics || inside(bar.chords) || inside(bar.texts) || inside(bar.lyrics) || inside(bar.sections) ||
        inside(bar.roads)) {
      bar.same_as_previous = false;
    }
  }
}

}  // namespace fretsheaf::exchange
