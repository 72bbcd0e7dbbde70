#include "exchange/take_direction.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string_view>
#include <utility>

#include "exchange/loudness.h"
#include "exchange/xml_text.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

constexpr std::array<std::string_view, 9> dynamic_signs = {"ppp", "pp", "p", "mp", "mf", "f", "ff", "fff", "sfz"};

constexpr std::array<std::string_view, 8> ways = {
    "fine", "To Coda", "D.C.", "D.S.", "D.C. al Fine", "D.C. al Coda", "D.S. al Fine", "D.S. al Coda",
};

// "D. S. al coda" is "D.S. al Coda": the letters decide.
std::string letters_of(std::string_view text) {
  std::string letters;
  for (const char c : text) {
    if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
      letters += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
  }
  return letters;
}

std::string way_of(std::string_view words) {
  for (const std::string_view way : ways) {
    if (letters_of(way) == letters_of(words)) return std::string(way);
  }
  if (letters_of(words) == "dacapo") return "D.C.";
  if (letters_of(words) == "dalsegno") return "D.S.";
  return {};
}

// What a sound does to the way, where no words say it.
std::string way_of(const Xml& sound) {
  if (sound.attribute("dalsegno") != nullptr) return "D.S.";
  if (sound.attribute("dacapo") != nullptr) return "D.C.";
  if (sound.attribute("tocoda") != nullptr) return "To Coda";
  if (sound.attribute("fine") != nullptr) return "fine";
  return {};
}

std::optional<Rational> note_value(std::string type, bool dotted) {
  if (type == "16th") type = "sixteenth";
  return theory::parse_beat_unit((dotted ? "dotted " : "") + type);
}

}  // namespace

void DirectionTaker::add(Mark::Kind kind, Rational at, std::string text, const Xml& element, std::string number) {
  // Each may need a row of its own, and a strip has room for these beside strings, verses and the rest.
  constexpr std::size_t most = 18;
  if (measure_.marks.size() == most) return losses_.left_out(&element, index_, "a nineteenth sign");
  measure_.marks.push_back({kind, at, std::move(text), std::move(number), &element});
}

void DirectionTaker::direction(const Xml& element, Rational at) {
  const Xml* sound_element = element.child("sound");
  road_ = false;
  for (const Xml* t : element.all("direction-type")) {
    for (const Xml& e : t->children) type(e, at, sound_element);
  }
  if (sound_element != nullptr) sound(*sound_element, at, true);
}

void DirectionTaker::type(const Xml& element, Rational at, const Xml* sound) {
  const std::string_view name = element.name;
  if (name == "words") return words(element, at, sound);
  if (name == "rehearsal") return add(Mark::Kind::rehearsal, at, text_of(element), element);
  if (name == "dynamics") return dynamics(element, at);
  if (name == "wedge") return wedge(element, at);
  if (name == "metronome") return metronome(element);
  if (name == "segno" || name == "coda") {
    road_ = true;
    return add(Mark::Kind::road, at, std::string(name), element);
  }
  if (name == "dashes" || name == "bracket") {
    const std::string type = attribute(element, "type");
    if (type == "continue") return;
    return add(type == "start" ? Mark::Kind::line_start : Mark::Kind::line_stop, at, {}, element,
               std::string(name) + attribute(element, "number"));
  }
  losses_.left_out(&element, index_, "`" + std::string(name) + "`");
}

void DirectionTaker::words(const Xml& element, Rational at, const Xml* sound) {
  const std::string text = text_of(element);
  if (text.empty()) return;
  // A feel's word says what its sound says.
  if (sound != nullptr && has(*sound, "swing")) return;
  if (const std::string way = way_of(text); !way.empty()) {
    road_ = true;
    return add(Mark::Kind::road, at, way, element);
  }
  add(Mark::Kind::words, at, text, element);
}

void DirectionTaker::dynamics(const Xml& dynamics, Rational at) {
  for (const Xml& e : dynamics.children) {
    const std::string sign = e.name == "other-dynamics" ? text_of(e) : e.name;
    if (std::find(dynamic_signs.begin(), dynamic_signs.end(), sign) != dynamic_signs.end()) {
      add(Mark::Kind::dynamic, at, sign, e);
    } else {
      losses_.left_out(&e, index_, "the dynamic `" + sign + "`");
    }
  }
}

void DirectionTaker::wedge(const Xml& element, Rational at) {
  const std::string type = attribute(element, "type");
  if (type == "continue") return;
  const Mark::Kind kind = type == "crescendo"    ? Mark::Kind::crescendo
                          : type == "diminuendo" ? Mark::Kind::diminuendo
                                                 : Mark::Kind::wedge_stop;
  add(kind, at, {}, element, attribute(element, "number"));
}

void DirectionTaker::metronome(const Xml& element) {
  const std::size_t dots = element.all("beat-unit-dot").size();
  const auto beat = note_value(text_of(element, "beat-unit"), dots == 1);
  const auto number = decimal(text_of(element, "per-minute"));
  if (!beat || dots > 1 || !number) return losses_.left_out(&element, index_, "a metronome mark without one number");
  const auto rounded = static_cast<int>((*number + Rational(1, 2)).floor());
  if (number->denominator() != 1) {
    losses_.lose(Code::adopt_changed, &element, index_, "the tempo is rounded to " + std::to_string(rounded),
                 "a lesson counts whole beats a minute");
  }
  theory::Tempo tempo;
  tempo.from = tempo.to = rounded;
  tempo.beat = beat;
  set_tempo(element, tempo);
}

void DirectionTaker::set_tempo(const Xml& element, theory::Tempo tempo) {
  constexpr int slowest = 20;
  constexpr int fastest = 400;
  if (tempo.to < slowest || tempo.to > fastest) {
    return losses_.lose(Code::adopt_left_out, &element, index_,
                        "a tempo of " + std::to_string(tempo.to) + " is left out", "tempos lie between 20 and 400");
  }
  // The first is the measure's; a sound beside a metronome mark says the same.
  if (!measure_.tempo) measure_.tempo = tempo;
}

void DirectionTaker::sound(const Xml& element, Rational at, bool printed) {
  if (const Xml* own = element.child("swing")) swing(*own);
  if (const auto number = decimal(attribute(element, "tempo")); number && !measure_.tempo && *number > Rational(0)) {
    theory::Tempo tempo;
    tempo.from = tempo.to = static_cast<int>((*number + Rational(1, 2)).floor());
    tempo.beat = Rational(1, 4);
    set_tempo(element, tempo);
  }
  if (const std::string way = way_of(element); !way.empty() && !road_) add(Mark::Kind::road, at, way, element);
  const auto level = decimal(attribute(element, "dynamics"));
  if (!printed && level) add(Mark::Kind::loudness, at, dynamic_of(*level), element);
}

void DirectionTaker::swing(const Xml& element) {
  if (has(element, "straight")) {
    measure_.feel = theory::Feel::straight;
    return;
  }
  const auto first = whole(text_of(element, "first"));
  const auto second = whole(text_of(element, "second"));
  constexpr int most = 12;
  if (!first || !second || *second < 1 || *first <= *second || *first > most) {
    return losses_.left_out(&element, index_, "a swing whose first part is not the longer one");
  }
  const Rational ratio(*first, *second);
  if (part_.swing_ratio && *part_.swing_ratio != ratio) {
    losses_.lose(Code::adopt_changed, &element, index_, "the swing's ratio is taken as before",
                 "a lesson has one 'swing-ratio'");
  }
  if (!part_.swing_ratio) part_.swing_ratio = ratio;
  const bool sixteenths = text_of(element, "swing-type") == "16th";
  const bool shuffle = letters_of(text_of(element, "swing-style")) == "shuffle";
  measure_.feel = sixteenths ? theory::Feel::swing_16 : shuffle ? theory::Feel::shuffle : theory::Feel::swing;
}

}  // namespace fretsheaf::exchange
