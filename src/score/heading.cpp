#include "score/heading.h"

#include "score/commonmark.h"
#include "score/harmony.h"
#include "score/printed.h"
#include "score/values.h"
#include "words/words.h"

namespace fretsheaf::score {
namespace {

Fact fact(words::Language language, words::Word label, std::string value, Fact::Kind kind) {
  return {std::string(words::word(language, label)), {Run{std::move(value), false, false, false, {}}}, kind};
}

// The open strings' letters, the tab's bottom line first.
std::string tuning_text(const fretboard::Neck& neck, const Naming& naming) {
  std::string text;
  for (const theory::Pitch& open : neck.tuning) {
    if (!text.empty()) text += ' ';
    text += printed(open.name, naming);
  }
  return text;
}

}  // namespace

Heading heading_of(const lesson::Lesson& lesson, const Naming& naming, const Filler& filler) {
  const words::Language language = naming.language;
  const auto title = [&](const lesson::Prose& prose) {
    return read_title(prose.value, [&](std::string_view text) { return filler.fill(text, std::nullopt); });
  };
  Heading heading;
  heading.series = lesson.series;
  if (lesson.number) heading.number = words::fill_number(language, words::Word::number, *lesson.number);
  heading.level = lesson.level;
  heading.title = title(lesson.title);
  if (lesson.subtitle) heading.subtitle = title(*lesson.subtitle);
  heading.facts.push_back(fact(language, words::Word::key, printed(lesson.key, naming), Fact::Kind::key));
  heading.facts.push_back(fact(language, words::Word::meter, lesson.meter.to_string(), Fact::Kind::meter));
  heading.facts.push_back(fact(language, words::Word::tuning, tuning_text(lesson.neck, naming), Fact::Kind::tuning));
  if (lesson.neck.capo > 0) {
    const std::string place = words::fill_number(language, words::Word::capo_at, lesson.neck.capo);
    heading.facts.push_back(fact(language, words::Word::capo, place, Fact::Kind::capo));
    const theory::Key shapes = fingered_key(lesson.key, lesson.neck.capo);
    heading.facts.push_back(fact(language, words::Word::fingered_in, printed(shapes, naming), Fact::Kind::capo));
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
