#include "spoken/opening.h"

#include "score/printed.h"
#include "spoken/places.h"

namespace fretsheaf::spoken {
namespace {

using words::Word;

Word feel_word(const score::Example& example) {
  switch (example.feel) {
    case theory::Feel::swing:
      return Word::swing;
    case theory::Feel::shuffle:
      return Word::shuffle;
    case theory::Feel::swing_16:
      return Word::swing_sixteenths;
    case theory::Feel::straight:
      break;
  }
  bool sixteenths = false;
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) sixteenths = sixteenths || event.value.log2 >= 4;
  }
  return sixteenths ? Word::straight_sixteenths : Word::straight_eighths;
}

std::string tempo_said(const score::TempoMark& mark, const Phrases& phrases) {
  const std::string values = phrases.values(mark.beat);
  const std::string first = std::to_string(mark.tempo);
  const std::string last = std::to_string(mark.last);
  const Sentence pattern = mark.tempo == mark.last ? Sentence::tempo
                           : mark.pair             ? Sentence::tempo_pair
                                                   : Sentence::tempo_from;
  return phrases(pattern, {{"n", first}, {"last", last}, {"values", values}});
}

// The key of the lesson is told at its head.
bool is_lessons_key(const std::string& key, const score::Heading& heading) {
  for (const score::Fact& fact : heading.facts) {
    if (fact.kind == score::Fact::Kind::key) return score::plain(fact.value) == key;
  }
  return false;
}

// What is for the student to find, told in the answer key too: there the page sets it apart.
std::string left_out(const lesson::Hidden& hidden, const Phrases& phrases) {
  std::string what;
  if (hidden.frets) add_item(what, phrases[Sentence::left_out_frets]);
  if (hidden.rhythm) add_item(what, phrases[Sentence::left_out_rhythm]);
  if (hidden.labels) add_item(what, phrases[Sentence::left_out_labels]);
  if (hidden.chords) add_item(what, phrases[Sentence::left_out_chords]);
  return what.empty() ? what : phrases(Sentence::left_out, {{"what", what}});
}

}  // namespace

std::string opening_of(const score::Example& example, const Phrases& phrases, const score::Example* before) {
  const score::Score& score = phrases.score();
  std::string text;
  const std::string key = score::printed(example.key, score.naming);
  if (!is_lessons_key(key, score.heading)) {
    add_sentence(text, phrases(Sentence::key, {{"key", phrases.plain(key)}}));
  }
  const bool told = before != nullptr && !before->bars.empty() && !example.bars.empty() &&
                    before->bars.front().meter == example.bars.front().meter &&
                    before->bars.back().meter == before->bars.front().meter;
  if (!example.bars.empty() && !told) add_sentence(text, phrases.meter(example.bars.front().meter));
  if (example.show_feel) add_sentence(text, words::word(phrases.language(), feel_word(example)));
  if (example.tempo) add_sentence(text, tempo_said(*example.tempo, phrases));
  const bool capo_told = before != nullptr && before->has_strings;
  if (score.neck.capo > 0 && example.has_strings && !capo_told) add_sentence(text, phrases[Sentence::from_capo]);
  add_sentence(text, left_out(example.hidden, phrases));
  if (hides_rhythm(score, example)) add_sentence(text, phrases[Sentence::rhythm_to_find]);
  return text;
}

}  // namespace fretsheaf::spoken
