#include "exchange/take_attributes.h"

#include <string_view>

#include "exchange/xml_text.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

int number_of(const Xml& element, int otherwise) {
  return whole(attribute(element, "number")).value_or(otherwise);
}

std::optional<theory::Mode> mode_of(const std::string& name) {
  if (name == "aeolian") return theory::Mode::minor;
  if (name == "ionian") return theory::Mode::major;
  return theory::parse_mode(name);
}

}  // namespace

void AttributesTaker::read(const Xml& attributes, Rational at, int index) {
  for (const Xml& e : attributes.children) {
    const std::string_view name = e.name;
    if (name == "divisions") read_divisions(e, index);
    if (name == "key") read_key(e, at, index);
    if (name == "time") read_time(e, at, index);
    if (name == "clef") read_clef(e);
    if (name == "staff-details") read_staff_details(e, index);
    if (name == "transpose") read_transpose(e);
    if (name == "measure-style") read_measure_style(e, index);
  }
}

void AttributesTaker::read_divisions(const Xml& element, int index) {
  constexpr int most = 1000000;
  const auto divisions = whole(text_of(element));
  if (divisions && *divisions >= 1 && *divisions <= most) {
    divisions_ = *divisions;
    return;
  }
  losses_.error(Code::adopt_time, &element, index, "there are no " + text_of(element).substr(0, 20) + " divisions",
                "a quarter note has 1 to 1000000 of them");
}

void AttributesTaker::read_key(const Xml& element, Rational at, int index) {
  constexpr int most = 7;
  const auto fifths = whole(text_of(element, "fifths"));
  if (!fifths || *fifths < -most || *fifths > most) {
    return losses_.lose(Code::adopt_left_out, &element, index, "a key that is no scale's signature is left out",
                        "keys have up to seven sharps or flats");
  }
  const std::string written = text_of(element, "mode");
  auto mode = mode_of(written);
  if (!mode) {
    mode = theory::Mode::major;
    losses_.lose(Code::adopt_assumed, &element, index, "the key does not say its mode, and is taken as major",
                 "write another mode into the lesson where it is one");
  }
  theory::Key key{{}, *mode};
  for (int steps = -12; steps <= 12; ++steps) {
    key.tonic = theory::note_name_from_fifths(steps);
    if (key.signature() == *fifths) break;
  }
  key.tonic = theory::transposed(key.tonic, transposed(1));
  if (key.signature() < -most || key.signature() > most) key = theory::enharmonic_key(key);
  TakenMeasure& measure = part_.measures.back();
  if (at != Rational(0)) {
    return losses_.left_out(&element, index, "a key that changes inside a measure");
  }
  measure.key = key;
}

void AttributesTaker::read_time(const Xml& element, Rational at, int index) {
  const std::string beats = text_of(element, "beats");
  const std::string type = text_of(element, "beat-type");
  const bool several = element.all("beats").size() > 1;
  const auto meter = several ? std::nullopt : theory::parse_meter(beats + "/" + type);
  if (!meter || at != Rational(0)) {
    const std::string what = has(element, "senza-misura") ? "music without a meter"
                             : several                    ? "a meter of two meters"
                             : meter                      ? "a meter that changes inside a measure"
                                                          : "the meter " + (beats + "/" + type).substr(0, 30);
    return losses_.error(Code::adopt_meter, &element, index, what + " cannot be kept",
                         "a lesson's meters have 1 to 64 counts over 1, 2, 4 … 64, and change at bar lines");
  }
  meter_ = meter;
  part_.measures.back().meter = meter;
}

void AttributesTaker::read_clef(const Xml& element) {
  StaffFacts& staff = part_.staves[number_of(element, 1)];
  const std::string sign = text_of(element, "sign");
  // A staff that has been a tab stays one: some programs change its clef for a look.
  staff.tab = staff.tab || sign == "TAB";
  staff.percussion = sign == "percussion";
  if (staff.clef.empty()) staff.clef = sign;
}

void AttributesTaker::read_staff_details(const Xml& element, int index) {
  StaffFacts& staff = part_.staves[number_of(element, 1)];
  if (const auto lines = whole(text_of(element, "staff-lines"))) staff.lines = *lines;
  if (const auto capo = whole(text_of(element, "capo"))) staff.capo = *capo;
  for (const Xml* e : element.all("staff-tuning")) {
    const auto line = whole(attribute(*e, "line"));
    const auto alter = whole(has(*e, "tuning-alter") ? text_of(*e, "tuning-alter") : "0");
    const auto pitch = theory::parse_pitch(text_of(*e, "tuning-step") + text_of(*e, "tuning-octave"));
    if (!line || !alter || !pitch || *alter < -2 || *alter > 2) {
      losses_.error(Code::adopt_neck, e, index, "a string's tuning is not sound", "export the score anew");
      continue;
    }
    theory::Pitch open = *pitch;
    open.name.alteration = *alter;
    staff.tuning[*line] = open;
  }
}

void AttributesTaker::read_transpose(const Xml& element) {
  const int chromatic = whole(text_of(element, "chromatic")).value_or(0);
  const int octaves = whole(text_of(element, "octave-change")).value_or(0);
  constexpr int most = 60;
  if (chromatic < -most || chromatic > most || octaves < -4 || octaves > 4) return;
  // Where no steps are said, the nearest name.
  constexpr int steps_of[] = {0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6};
  const int up = (chromatic % 12 + 12) % 12;
  const int steps = whole(text_of(element, "diatonic")).value_or(steps_of[up] + (chromatic - up) / 12 * 7);
  transpositions_[number_of(element, 0)] = {steps + 7 * octaves, chromatic + 12 * octaves};
  if (chromatic == 0 && octaves < 0) part_.octave_lower = true;
}

theory::Interval AttributesTaker::transposed(int staff) const {
  const auto own = transpositions_.find(staff);
  if (own != transpositions_.end()) return own->second;
  const auto all = transpositions_.find(0);
  return all == transpositions_.end() ? theory::Interval{} : all->second;
}

void AttributesTaker::read_measure_style(const Xml& element, int index) {
  if (const Xml* repeat = element.child("measure-repeat")) {
    repeat_ = attribute(*repeat, "type") == "start" ? whole(text_of(*repeat)).value_or(1) : 0;
  } else if (const Xml* slash = element.child("slash")) {
    slashes_ = attribute(*slash, "type") == "start";
  } else if (has(element, "multiple-rest")) {
    return;
  } else if (!element.children.empty()) {
    losses_.left_out(&element, index, "`" + element.children.front().name + "`");
  }
}

}  // namespace fretsheaf::exchange
