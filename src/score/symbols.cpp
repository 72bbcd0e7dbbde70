#include "score/symbols.h"

#include <algorithm>

#include "score/labels.h"

namespace fretsheaf::score {
namespace {

HeadKind head_of(const lesson::Note& note) {
  if (note.dead) return HeadKind::dead;
  if (note.harmonic) return HeadKind::harmonic;
  return note.ghost ? HeadKind::ghost : HeadKind::normal;
}

HeadKind head_of(lesson::Strum strum) {
  if (strum == lesson::Strum::muted) return HeadKind::dead;
  return strum == lesson::Strum::ghost ? HeadKind::ghost : HeadKind::normal;
}

// One head for all: that of the notes that start, where they agree; else a plain one.
HeadKind slash_of(const std::vector<Note>& notes) {
  const bool any_start = std::any_of(notes.begin(), notes.end(), [](const Note& note) { return !note.tie_from; });
  std::optional<HeadKind> head;
  for (const Note& note : notes) {
    if (any_start && note.tie_from) continue;
    if (head && *head != note.head) return HeadKind::normal;
    head = note.head;
  }
  return head.value_or(HeadKind::normal);
}

Note* same_place(std::vector<Note>& notes, const fretboard::Place& place) {
  const auto found = std::find_if(notes.begin(), notes.end(), [&](const Note& note) { return note.place == place; });
  return found != notes.end() ? &*found : nullptr;
}

// Ties a symbol to the one before: the notes that go on, and the slash where all of them do. `goes_on` is for symbols
// without notes.
void tie(Event& before, Event& event, bool goes_on) {
  bool all = goes_on || !event.notes.empty();
  for (Note& note : event.notes) {
    if (!note.tie_from) {
      all = false;
      continue;
    }
    Note* origin = same_place(before.notes, note.place);
    note.tie_from = origin != nullptr;
    all = all && origin != nullptr;
    if (origin != nullptr) origin->tie_to = true;
  }
  if (before.rest || event.rest) all = false;
  before.tie_to = event.tie_from = all;
  if (event.notes.empty() && all) event.slash = before.slash;
}

Event* last_event(std::vector<Bar>& bars) {
  for (std::size_t i = bars.size(); i-- > 0;) {
    if (!bars[i].events.empty()) return &bars[i].events.back();
  }
  return nullptr;
}

}  // namespace

Note SymbolWriter::note_of(const lesson::Note& note, const lesson::Event& source, bool first) const {
  Note out;
  out.place = note.place;
  out.sounding = notes_.of(note);
  out.exact = notes_.exact(note);
  out.head = head_of(note);
  out.tie_from = !first || note.held || source.kind == lesson::EventKind::held;
  out.range = note.range;
  if (!first) return out;
  out.accent = note.accent;
  out.staccato = note.staccato;
  out.tenuto = note.tenuto;
  out.vibrato = note.vibrato;
  out.bend = note.bend;
  out.approach = note.approach;
  out.approach_from_nowhere = note.approach_from_nowhere;
  out.slide_off = note.slide_off;
  for (const lesson::GraceNote& grace : note.graces)
    out.graces.push_back({grace.place, notes_.of(grace), grace.approach});
  if (note.finger) out.finger = note.finger->value;
  if (note.hand) out.hand = note.hand->value;
  return out;
}

Event SymbolWriter::symbol_of(const Symbol& symbol, const lesson::Event& source, const lesson::Bar& bar,
                              const std::optional<theory::Chord>& chord) const {
  Event event;
  event.at = symbol.at;
  event.length = symbol.length;
  event.value = symbol.value;
  event.tuplet = symbol.tuplet;
  event.rest = source.kind == lesson::EventKind::rest;
  event.whole_bar_rest = symbol.whole_bar_rest;
  event.struck = symbol.first && source.kind == lesson::EventKind::struck;
  event.range = source.range;
  event.fermata = symbol.last && source.fermata;
  for (const lesson::Note& note : source.notes) event.notes.push_back(note_of(note, source, symbol.first));
  event.slash = source.strum ? head_of(*source.strum) : slash_of(event.notes);
  if (!symbol.first) return event;
  if (event.struck) event.strum = source.strum;
  if (source.stroke) event.stroke = source.stroke->value;
  const bool rest_starts = event.rest && source.written_out;
  if (event.struck || rest_starts) label(event, example_, bar.meter, chord, naming_);
  return event;
}

void SymbolWriter::write(std::size_t bar_index, const WrittenBar& written, std::vector<Bar>& bars) {
  const lesson::Bar& bar = example_.music.bars[bar_index];
  std::vector<Event>& events = bars.back().events;
  events.reserve(written.symbols.size());
  for (const Symbol& symbol : written.symbols) {
    const lesson::Event& source = bar.events[symbol.source];
    Event event = symbol_of(symbol, source, bar, harmony_.in_force(bar_index, source.at));
    Event* before = last_event(bars);
    const bool goes_on = event.notes.empty() && !event.rest && !(symbol.first && event.struck);
    if (before != nullptr) {
      tie(*before, event, goes_on);
    } else {
      for (Note& note : event.notes) note.tie_from = false;
    }
    events.push_back(std::move(event));
  }
}

}  // namespace fretsheaf::score
