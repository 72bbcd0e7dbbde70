#include "exchange/directions.h"

#include <array>
#include <string_view>

#include "exchange/note.h"
#include "words/words.h"

namespace fretsheaf::exchange {

namespace {

Element direction_type(Element measure, Element& direction, const char* placement) {
  direction = measure.add("direction").set("placement", placement);
  return direction.add("direction-type");
}

std::string decimal(theory::Rational value) {
  std::string text = std::to_string(value.to_double());
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

// MIDI velocities that the trade plays dynamics at, as a percentage of 90 (MusicXML 4.0, sound/dynamics). The
// velocities are common practice.
std::optional<std::string> loudness(std::string_view dynamic) {
  struct Level {
    std::string_view name;
    int velocity;
  };
  constexpr std::array<Level, 8> levels = {
      {{"ppp", 16}, {"pp", 33}, {"p", 49}, {"mp", 64}, {"mf", 80}, {"f", 96}, {"ff", 112}, {"fff", 126}}};
  for (const Level& level : levels) {
    if (level.name == dynamic) return decimal(theory::Rational(level.velocity) * theory::Rational(100, 90));
  }
  return std::nullopt;
}

void write_tempo(Element measure, const score::TempoMark& tempo) {
  Element direction(nullptr);
  Element metronome = direction_type(measure, direction, "above").add("metronome");
  metronome.add("beat-unit", type_name(tempo.beat.log2));
  for (int dot = 0; dot < tempo.beat.dots; ++dot) metronome.add("beat-unit-dot");
  metronome.add("per-minute", tempo.last);
  direction.add("staff", 1);
  direction.add("sound").set("tempo", decimal(theory::quarters_per_minute(tempo.last, tempo.beat_length)));
}

words::Word feel_word(theory::Feel feel) {
  switch (feel) {
    case theory::Feel::straight:
      return words::Word::straight_eighths;
    case theory::Feel::swing:
      return words::Word::swing;
    case theory::Feel::shuffle:
      return words::Word::shuffle;
    case theory::Feel::swing_16:
      return words::Word::swing_sixteenths;
  }
  return words::Word::straight_eighths;
}

void write_feel(Element measure, const Part& part) {
  Element direction(nullptr);
  direction_type(measure, direction, "above")
      .add("words", std::string(words::word(part.score.language, feel_word(part.example.feel))));
  direction.add("staff", 1);
  Element swing = direction.add("sound").add("swing");
  if (part.example.feel == theory::Feel::straight) {
    swing.add("straight");
    return;
  }
  swing.add("first", part.score.swing_ratio.numerator());
  swing.add("second", part.score.swing_ratio.denominator());
  swing.add("swing-type", part.example.feel == theory::Feel::swing_16 ? "16th" : "eighth");
}

void write_wedge(Element measure, const lesson::Span& span, bool stop) {
  Element direction(nullptr);
  const char* type = stop ? "stop" : span.kind == lesson::SpanKind::crescendo ? "crescendo" : "diminuendo";
  direction_type(measure, direction, "below").add("wedge").set("type", type);
  direction.add("staff", 1);
}

bool is_wedge(const lesson::Span& span) {
  return span.kind == lesson::SpanKind::crescendo || span.kind == lesson::SpanKind::diminuendo;
}

void write_words(Element measure, const std::string& text, const char* placement) {
  Element direction(nullptr);
  direction_type(measure, direction, placement).add("words", text);
  direction.add("staff", 1);
}

// Road signs with what they do when the music is played (MusicXML 4.0, sound).
void write_road(Element measure, const std::string& text) {
  Element direction(nullptr);
  Element type = direction_type(measure, direction, "above");
  if (text == "segno" || text == "coda") {
    type.add(text.c_str());
  } else {
    type.add("words", text);
  }
  direction.add("staff", 1);
  Element sound = direction.add("sound");
  if (text == "segno") sound.set("segno", "segno");
  if (text == "coda") sound.set("coda", "coda");
  if (text == "fine") sound.set("fine", "yes");
  if (text == "To Coda") sound.set("tocoda", "coda");
  if (text.starts_with("D.S.")) sound.set("dalsegno", "segno");
  if (text.starts_with("D.C.")) sound.set("dacapo", "yes");
}

}  // namespace

void write_opening(Element measure, const Part& part, bool new_feel) {
  const std::string name = score::plain(part.example.title);
  if (!name.empty()) {
    write_words(measure,
                words::fill_number(part.score.language, words::Word::example, part.example.number) + ": " + name,
                "above");
  }
  if (part.example.tempo) write_tempo(measure, *part.example.tempo);
  if (new_feel) write_feel(measure, part);
}

void write_directions_at(Element measure, const Part& part, int bar, int event) {
  const score::Bar& own = part.example.bars[bar];
  const theory::Rational from = own.events[event].at;
  const theory::Rational to = from + own.events[event].length;
  const auto here = [&](theory::Rational at) { return from <= at && at < to; };
  for (const lesson::Word& word : own.sections) {
    if (!here(word.at)) continue;
    Element direction(nullptr);
    direction_type(measure, direction, "above").add("rehearsal", word.text);
    direction.add("staff", 1);
  }
  for (const lesson::Word& word : own.roads) {
    if (here(word.at)) write_road(measure, word.text);
  }
  for (const lesson::Word& word : own.texts) {
    if (here(word.at)) write_words(measure, word.text, "below");
  }
  for (const lesson::Dynamic& dynamic : part.example.dynamics) {
    if (dynamic.moment.bar != bar || !here(dynamic.moment.at)) continue;
    Element direction(nullptr);
    direction_type(measure, direction, "below").add("dynamics").add(dynamic.text.c_str());
    direction.add("staff", 1);
    if (const auto level = loudness(dynamic.text)) direction.add("sound").set("dynamics", *level);
  }
  for (const lesson::Span& span : part.example.spans) {
    if (is_wedge(span) && span.first.bar == bar && here(span.first.at)) write_wedge(measure, span, false);
  }
}

void write_directions_after(Element measure, const Part& part, int bar, int event) {
  const score::Event& own = part.example.bars[bar].events[event];
  for (const lesson::Span& span : part.example.spans) {
    if (!is_wedge(span) || span.last.bar != bar) continue;
    if (own.at <= span.last.at && span.last.at < own.at + own.length) write_wedge(measure, span, true);
  }
}

}  // namespace fretsheaf::exchange
