#include "score/labels.h"

#include <algorithm>

#include "score/printed.h"

namespace fretsheaf::score {
namespace {

std::vector<const Note*> named_notes(std::span<const Note> notes) {
  std::vector<const Note*> named;
  for (const Note& note : notes) {
    if (!note.tie_from && note.head != HeadKind::dead) named.push_back(&note);
  }
  std::stable_sort(named.begin(), named.end(),
                   [](const Note* a, const Note* b) { return a->sounding.midi() < b->sounding.midi(); });
  return named;
}

template <typename Name>
std::string joined(std::span<const Note> notes, Name name) {
  std::string text;
  for (const Note* note : named_notes(notes)) {
    if (!text.empty()) text += ' ';
    text += name(*note);
  }
  return text;
}

}  // namespace

bool asks_for(const lesson::Example& example, lesson::Label label) {
  return std::find(example.labels.begin(), example.labels.end(), label) != example.labels.end();
}

std::string degrees(std::span<const Note> notes, const std::optional<theory::Chord>& chord, const theory::Key& key) {
  return joined(notes, [&](const Note& note) {
    return (chord ? theory::degree_in_chord(*chord, note.exact) : theory::degree_of(key, note.exact)).to_string();
  });
}

std::string note_names(std::span<const Note> notes, const Naming& naming) {
  return joined(notes, [&](const Note& note) { return printed(note.sounding.name, naming); });
}

std::vector<lesson::Label> degree_kinds(const lesson::Example& example) {
  std::vector<lesson::Label> kinds;
  for (const lesson::Label label : example.labels) {
    const bool degree = label == lesson::Label::chord_degrees || label == lesson::Label::key_degrees;
    if (degree && std::find(kinds.begin(), kinds.end(), label) == kinds.end()) kinds.push_back(label);
  }
  return kinds;
}

void label(Event& event, const lesson::Example& example, const theory::Meter& meter,
           const std::optional<theory::Chord>& chord, const Naming& naming) {
  const std::string count = theory::count_name(event.at, meter.count());
  event.count = CountLabel{event.rest ? "(" + count + ")" : count, event.rest};
  if (asks_for(example, lesson::Label::notes)) event.note_name = note_names(event.notes, naming);
  const std::vector<lesson::Label> kinds = degree_kinds(example);
  const auto of_kind = [&](lesson::Label kind) {
    return degrees(event.notes, kind == lesson::Label::chord_degrees ? chord : std::nullopt, example.key);
  };
  if (!kinds.empty()) event.degree = of_kind(kinds[0]);
  if (kinds.size() > 1) event.second_degree = of_kind(kinds[1]);
}

}  // namespace fretsheaf::score
