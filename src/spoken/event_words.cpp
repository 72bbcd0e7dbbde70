#include "spoken/event_words.h"

namespace fretsheaf::spoken {
namespace {

Sentence stroke(lesson::Stroke stroke) {
  return stroke == lesson::Stroke::down ? Sentence::stroke_down : Sentence::stroke_up;
}

// Which degree comes first is what the lesson asked for first.
void say_degrees(const score::Event& event, const score::Example& example, Sentences& sentences,
                 const Phrases& phrases) {
  const bool both = example.degree_kinds.size() > 1;
  const auto say = [&](const std::string& label, std::size_t kind) {
    if (label.empty()) return;
    Sentence pattern = Sentence::degree;
    if (both) {
      const bool of_chord = example.degree_kinds[kind] == lesson::Label::chord_degrees;
      pattern = of_chord ? Sentence::degree_in_chord : Sentence::degree_in_key;
    }
    sentences.item(phrases(pattern, {{"n", phrases.degree(label)}}));
  };
  say(event.degree, 0);
  say(event.second_degree, 1);
}

}  // namespace

std::string_view strum_said(lesson::Strum strum, const Phrases& phrases) {
  switch (strum) {
    case lesson::Strum::plain:
      break;
    case lesson::Strum::muted:
      return phrases[Sentence::strum_muted];
    case lesson::Strum::accented:
      return phrases[Sentence::strum_accented];
    case lesson::Strum::ghost:
      return phrases[Sentence::strum_ghost];
  }
  return phrases[Sentence::strum];
}

void say_touch(const score::Event& event, Sentences& sentences, const Phrases& phrases) {
  if (!event.touch) return;
  if (event.slash == score::HeadKind::dead) sentences.item(phrases[Sentence::dead]);
  if (event.slash == score::HeadKind::ghost) sentences.item(phrases[Sentence::ghost]);
  if (event.touch->accent) sentences.item(phrases[Sentence::accent]);
  if (event.touch->staccato) sentences.item(phrases[Sentence::staccato]);
  if (event.touch->tenuto) sentences.item(phrases[Sentence::tenuto]);
  sentences.item(hand_said(event.touch->hand, phrases));
}

void say_labels(const Onset& onset, const score::Example& example, Sentences& sentences, const Phrases& phrases) {
  const score::Event& event = *onset.event;
  if (event.stroke) sentences.item(phrases[stroke(*event.stroke)]);
  if (onset.fermata) sentences.item(phrases[Sentence::fermata]);
  say_degrees(event, example, sentences, phrases);
  if (!event.note_name.empty()) {
    sentences.item(phrases(Sentence::note, {{"name", phrases.plain(event.note_name)}}));
  }
}

}  // namespace fretsheaf::spoken
