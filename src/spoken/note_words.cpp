#include "spoken/note_words.h"

namespace fretsheaf::spoken {
namespace {

using lesson::Approach;

Sentence approach_pattern(Approach approach, bool from_nowhere) {
  switch (approach) {
    case Approach::hammer_on:
      return Sentence::hammer_on;
    case Approach::pull_off:
      return Sentence::pull_off;
    case Approach::slide_up:
      return from_nowhere ? Sentence::slide_from_below : Sentence::slide_up;
    case Approach::slide_down:
    case Approach::none:
      break;
  }
  return from_nowhere ? Sentence::slide_from_above : Sentence::slide_down;
}

std::string amount(Rational tones, const Phrases& phrases) {
  if (tones == Rational(1, 4)) return std::string(phrases[Sentence::quarter_tone]);
  if (tones == Rational(1, 2)) return std::string(phrases[Sentence::half_tone]);
  if (tones == Rational(3, 2)) return std::string(phrases[Sentence::tone_and_half]);
  if (tones.denominator() == 1) return phrases.counted(Sentence::tones_one, static_cast<int>(tones.numerator()));
  return phrases(Sentence::tones_part, {{"part", tones.to_string()}});
}

void say_graces(const score::Note& note, Sentences& sentences, const Phrases& phrases) {
  for (const score::GraceNote& grace : note.graces) {
    if (grace.approach == Approach::none) {
      sentences.fret(Sentence::grace, grace.place.fret, {});
    } else {
      sentences.fret(Sentence::grace_how, grace.place.fret, phrases[approach_pattern(grace.approach, false)]);
    }
  }
}

void say_place(const score::Note& note, Sentences& sentences, const Phrases& phrases) {
  if (note.head == score::HeadKind::dead) return sentences.item(phrases[Sentence::dead]);
  sentences.fret(note.place.fret);
  if (note.head == score::HeadKind::ghost) sentences.item(phrases[Sentence::ghost]);
  if (note.head == score::HeadKind::harmonic) sentences.item(phrases[Sentence::harmonic]);
}

void say_techniques(const score::Note& note, Sentences& sentences, const Phrases& phrases) {
  if (note.approach != Approach::none) {
    sentences.item(phrases[approach_pattern(note.approach, note.approach_from_nowhere)]);
  }
  if (note.bend) {
    const Sentence pattern = note.bend->release ? Sentence::bend_release : Sentence::bend;
    sentences.item(phrases(pattern, {{"amount", amount(note.bend->tones, phrases)}}));
  }
  using lesson::SlideOff;
  if (note.slide_off == SlideOff::up) sentences.item(phrases[Sentence::slide_off_up]);
  if (note.slide_off == SlideOff::down) sentences.item(phrases[Sentence::slide_off_down]);
  if (note.vibrato) sentences.item(phrases[Sentence::vibrato]);
  if (note.accent) sentences.item(phrases[Sentence::accent]);
  if (note.staccato) sentences.item(phrases[Sentence::staccato]);
  if (note.tenuto) sentences.item(phrases[Sentence::tenuto]);
}

}  // namespace

void Sentences::begin(std::string_view words) {
  if (!body_.text.empty()) body_.text += '\n';
  const std::size_t begin = body_.text.size();
  body_.text += words;
  words::raise(body_.text, begin);
  fresh_ = apart_ = false;
}

void Sentences::item(std::string_view words) {
  if (words.empty()) return;
  if (apart_) next(Sentence::semicolon);
  if (!fresh_) body_.text += ", ";
  fresh_ = false;
  body_.text += words;
}

void Sentences::fret(int fret) {
  const std::string& name = phrases_.fret(fret);
  item(name);
  body_.frets.push_back({body_.text.size() - name.size(), name.size(), fret});
}

void Sentences::fret(Sentence pattern, int fret, std::string_view how) {
  const std::string& name = phrases_.fret(fret);
  const std::string words = phrases_(pattern, {{"fret", name}, {"how", how}});
  item(words);
  const std::size_t hole = phrases_[pattern].find("{fret}");  // no other hole stands before it
  body_.frets.push_back({body_.text.size() - words.size() + hole, name.size(), fret});
}

void Sentences::next(Sentence separator) {
  body_.text += phrases_[separator];
  fresh_ = true;
  apart_ = false;
}

std::string_view hand_said(std::string_view letter, const Phrases& phrases) {
  if (letter == "p") return phrases[Sentence::hand_thumb];
  if (letter == "i") return phrases[Sentence::hand_index];
  if (letter == "m") return phrases[Sentence::hand_middle];
  if (letter == "a") return phrases[Sentence::hand_ring];
  if (letter == "T") return phrases[Sentence::hand_slap];
  if (letter == "P") return phrases[Sentence::hand_pop];
  return letter;
}

void say_note(const score::Note& note, bool fingers, Sentences& sentences, const Phrases& phrases) {
  sentences.item(phrases.string(note.place.string));
  say_graces(note, sentences, phrases);
  say_place(note, sentences, phrases);
  say_techniques(note, sentences, phrases);
  // A finger 0 is an open string, which is told.
  if (fingers && note.finger == "T") {
    sentences.item(phrases[Sentence::finger_thumb]);
  } else if (fingers && !note.finger.empty() && note.finger != "0") {
    sentences.item(phrases(Sentence::finger, {{"n", note.finger}}));
  }
  sentences.item(hand_said(note.hand, phrases));
}

}  // namespace fretsheaf::spoken
