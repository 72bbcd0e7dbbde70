#include "exchange/directions.h"

#include <array>
#include <cstdint>
#include <string_view>

#include "exchange/loudness.h"
#include "exchange/note.h"
#include "exchange/repeated_loudness.h"
#include "words/words.h"

namespace fretsheaf::exchange {

namespace {

// A <direction> of the first staff while it is written: its type, then its offset, staff and sound, in that order.
class Direction {
 public:
  Direction(Element measure, const char* placement)
      : element_(measure.add("direction").set("placement", placement)), type_(element_.add("direction-type")) {}

  Element& type() { return type_; }
  // `ticks` after (or before) the current place. Its sound goes with it unless it is to happen at the current place.
  Direction& offset(std::int64_t ticks, bool sound = true) {
    if (ticks == 0) return *this;
    Element offset = element_.add("offset", ticks);
    if (sound) offset.set("sound", "yes");
    return *this;
  }
  Direction& staff() {
    element_.add("staff", 1);
    return *this;
  }
  Element sound() { return element_.add("sound"); }

 private:
  Element element_;
  Element type_;
};

void write_tempo(Element measure, const score::TempoMark& tempo) {
  Direction direction(measure, "above");
  Element metronome = direction.type().add("metronome");
  metronome.add("beat-unit", type_name(tempo.beat.log2));
  for (int dot = 0; dot < tempo.beat.dots; ++dot) metronome.add("beat-unit-dot");
  metronome.add("per-minute", tempo.last);
  direction.staff().sound().set("tempo", decimal_text(theory::quarters_per_minute(tempo.last, tempo.beat_length)));
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
  const theory::Feel feel = part.example.feel;
  Direction direction(measure, "above");
  direction.type().add("words", std::string(words::word(part.score.language, feel_word(feel))));
  Element swing = direction.staff().sound().add("swing");
  if (feel == theory::Feel::straight) {
    swing.add("straight");
    return;
  }
  swing.add("first", part.score.swing_ratio.numerator());
  swing.add("second", part.score.swing_ratio.denominator());
  swing.add("swing-type", feel == theory::Feel::swing_16 ? "16th" : "eighth");
  if (feel == theory::Feel::shuffle) swing.add("swing-style", "shuffle");
}

bool is_wedge(const lesson::Span& span) {
  return span.kind == lesson::SpanKind::crescendo || span.kind == lesson::SpanKind::diminuendo;
}

// How a span begins and ends on paper: a hairpin, or words and a broken line.
void write_span(Element measure, const lesson::Span& span, bool stop, std::int64_t ticks) {
  if (is_wedge(span)) {
    Direction direction(measure, "below");
    const char* type = stop ? "stop" : span.kind == lesson::SpanKind::crescendo ? "crescendo" : "diminuendo";
    direction.type().add("wedge").set("type", type);
    direction.offset(ticks).staff();
    return;
  }
  // Marks of a tremolo stand on the stems.
  if (span.kind == lesson::SpanKind::tremolo) return;
  const bool mute = span.kind == lesson::SpanKind::palm_mute;
  if (!stop) {
    Direction words(measure, "below");
    words.type().add("words", mute ? "P.M." : "let ring");
    words.offset(ticks).staff();
  }
  Direction dashes(measure, "below");
  dashes.type().add("dashes").set("type", stop ? "stop" : "start").set("number", mute ? "1" : "2");
  dashes.offset(ticks).staff();
}

void write_words(Element measure, const std::string& text, const char* placement, std::int64_t ticks) {
  Direction direction(measure, placement);
  direction.type().add("words", text);
  direction.offset(ticks).staff();
}

// Whether a road sign is a place to go to, which is met where it stands. All others act when their bar has been played,
// but a fine when its note has.
bool is_goal(const std::string& text) {
  return text == "segno" || text == "coda";
}

// Road signs with what they do when the music is played (MusicXML 4.0, sound). A jump happens at the current place, and
// is drawn `ticks` away from it.
void write_road(Element measure, const std::string& text, std::int64_t ticks) {
  Direction direction(measure, "above");
  if (is_goal(text)) {
    direction.type().add(text.c_str());
  } else {
    direction.type().add("words", text);
  }
  direction.offset(ticks, is_goal(text)).staff();
  Element sound = direction.sound();
  if (is_goal(text)) sound.set(text.c_str(), text);
  if (text == "fine") sound.set("fine", "yes");
  if (text == "To Coda") sound.set("tocoda", "coda");
  if (text.starts_with("D.S.")) sound.set("dalsegno", "segno");
  if (text.starts_with("D.C.")) sound.set("dacapo", "yes");
}

void write_dynamic(Element measure, const std::string& text, std::int64_t ticks) {
  Direction direction(measure, "below");
  direction.type().add("dynamics").add(text.c_str());
  direction.offset(ticks).staff();
  if (const auto level = loudness(text)) direction.sound().set("dynamics", decimal_text(*level));
}

}  // namespace

void write_opening(Element measure, const Part& part, bool new_feel) {
  const std::string name = score::plain(part.example.title);
  const std::string number = words::fill_number(part.score.language, words::Word::example, part.example.number);
  if (!name.empty() || part.score.examples.size() > 1) {
    write_words(measure, name.empty() ? number : number + ": " + name, "above", 0);
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
    Direction direction(measure, "above");
    direction.type().add("rehearsal", word.text);
    direction.offset(part.ticks(word.at - from)).staff();
  }
  for (const lesson::Word& word : own.roads) {
    if (here(word.at) && is_goal(word.text)) write_road(measure, word.text, part.ticks(word.at - from));
  }
  for (const lesson::Word& word : own.texts) {
    if (here(word.at)) write_words(measure, word.text, "below", part.ticks(word.at - from));
  }
  write_repeated_loudness(measure, part, bar, event);
  for (const lesson::Dynamic& dynamic : part.example.dynamics) {
    if (dynamic.moment.bar != bar || !here(dynamic.moment.at)) continue;
    write_dynamic(measure, dynamic.text, part.ticks(dynamic.moment.at - from));
  }
  for (const lesson::Span& span : part.example.spans) {
    if (span.first.bar == bar && here(span.first.at)) {
      write_span(measure, span, false, part.ticks(span.first.at - from));
    }
  }
}

void write_directions_after(Element measure, const Part& part, int bar, int event) {
  const score::Bar& own = part.example.bars[bar];
  const theory::Rational from = own.events[event].at;
  const theory::Rational to = from + own.events[event].length;
  for (const lesson::Span& span : part.example.spans) {
    if (span.last.bar == bar && from <= span.last.at && span.last.at < to) write_span(measure, span, true, 0);
  }
  for (const lesson::Word& word : own.roads) {
    if (word.text == "fine" && from <= word.at && word.at < to) {
      write_road(measure, word.text, part.ticks(word.at - to));
    }
  }
}

void write_directions_at_end(Element measure, const Part& part, int bar) {
  const score::Bar& own = part.example.bars[bar];
  if (own.plays > 0) write_words(measure, std::to_string(own.plays) + "x", "above", 0);
  for (const lesson::Word& word : own.roads) {
    if (!is_goal(word.text) && word.text != "fine") write_road(measure, word.text, part.ticks(word.at - own.end));
  }
}

}  // namespace fretsheaf::exchange
