#include "score/heading.h"

#include "score/commonmark.h"
#include "score/harmony.h"
#include "score/printed.h"
#include "score/values.h"
#include "words/words.h"

namespace fretsheaf::score {
namespace {

Fact fact(words::Language language, words::Word label, std::string value) {
  return {std::string(words::word(language, label)), {Run{std::move(value), false, false, false, {}}}};
}

// The open strings' letters, the tab's bottom line first.
std::string tuning_text(const fretboard::Neck& neck) {
  std::string text;
  for (const theory::Pitch& open : neck.tuning) {
    if (!text.empty()) text += ' ';
    text += printed(open.name);
  }
  return text;
}

}  // namespace

Heading heading_of(const lesson::Lesson& lesson, words::Language language, const Filler& filler) {
  const auto title = [&](const lesson::Prose& prose) {
    return read_title(prose.value, [&](std::string_view text) { return filler.fill(text, std::nullopt); });
  };
  Heading heading;
  heading.series = lesson.series;
  if (lesson.number) heading.number = words::fill_number(language, words::Word::number, *lesson.number);
  heading.level = lesson.level;
  heading.title = title(lesson.title);
  if (lesson.subtitle) heading.subtitle = title(*lesson.subtitle);
  heading.facts.push_back(fact(language, words::Word::key, printed(lesson.key, language)));
  heading.facts.push_back(fact(language, words::Word::meter, lesson.meter.to_string()));
  heading.facts.push_back(fact(language, words::Word::tuning, tuning_text(lesson.neck)));
  if (lesson.neck.capo > 0) {
    const std::string place = words::fill_number(language, words::Word::capo_at, lesson.neck.capo);
    heading.facts.push_back(fact(language, words::Word::capo, place));
    const theory::Key shapes = fingered_key(lesson.key, lesson.neck.capo);
    heading.facts.push_back(fact(language, words::Word::fingered_in, printed(shapes, language)));
  }
  heading.name_line = lesson.name_line;
  if (lesson.link) heading.link = lesson.link->value;
  return heading;
}

std::optional<TempoMark> tempo_mark(const lesson::Example& example) {
  if (!example.tempo) return std::nullopt;
  const theory::Tempo& tempo = *example.tempo;
  TempoMark mark{tempo.from, tempo.to, tempo.pair, {}, tempo.beat.value_or(theory::beat_unit(example.meter))};
  mark.beat = value_of(mark.beat_length).value_or(NoteValue{});
  return mark;
}

std::optional<Ladder> ladder_of(const lesson::Example& example) {
  if (!example.tempo || !example.tempo->ladder()) return std::nullopt;
  return Ladder{theory::ladder_rungs(*example.tempo), example.tempo->passes};
}

}  // namespace fretsheaf::score
