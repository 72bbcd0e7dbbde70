#include "exchange/measure.h"

#include <algorithm>

#include "exchange/directions.h"
#include "exchange/harmony.h"
#include "exchange/note.h"

namespace fretsheaf::exchange {

namespace {

using lesson::BarSign;

void write_time(Element attributes, const theory::Meter& meter) {
  std::string beats;
  for (const int group : meter.groups) beats += (beats.empty() ? "" : "+") + std::to_string(group);
  Element time = attributes.add("time");
  time.add("beats", beats);
  time.add("beat-type", meter.lower);
}

void write_clef(Element attributes, const Part& part, StaffKind kind, int number) {
  Element clef = attributes.add("clef").set("number", std::to_string(number));
  switch (kind) {
    case StaffKind::tab:
      clef.add("sign", "TAB");
      clef.add("line", 5);
      break;
    case StaffKind::strums:
      clef.add("sign", "percussion");
      break;
    case StaffKind::notes:
      clef.add("sign", part.score.clef == fretboard::Clef::bass ? "F" : "G");
      clef.add("line", part.score.clef == fretboard::Clef::bass ? 4 : 2);
      break;
  }
}

void write_staff_details(Element attributes, const Part& part, StaffKind kind, int number) {
  Element details = attributes.add("staff-details").set("number", std::to_string(number));
  if (kind == StaffKind::strums) {
    details.add("staff-lines", 1);
    return;
  }
  if (kind == StaffKind::notes) {
    details.add("staff-lines", 5);
    return;
  }
  const fretboard::Neck& neck = part.score.neck;
  details.add("staff-lines", neck.strings());
  for (int line = 1; line <= neck.strings(); ++line) {
    const theory::Pitch& open = neck.tuning[static_cast<std::size_t>(line - 1)];
    Element tuning = details.add("staff-tuning").set("line", std::to_string(line));
    tuning.add("tuning-step", step_name(open.name.letter));
    if (open.name.alteration != 0) tuning.add("tuning-alter", open.name.alteration);
    tuning.add("tuning-octave", open.octave);
  }
  if (neck.capo > 0) details.add("capo", neck.capo);
}

void write_key(Element attributes, const theory::Key& key) {
  Element element = attributes.add("key");
  element.add("fifths", key.signature());
  element.add("mode", std::string(theory::mode_name(key.mode)));
}

void write_staves(Element attributes, const Part& part) {
  const int count = static_cast<int>(part.staves.size());
  for (int staff = 1; staff <= count; ++staff) write_clef(attributes, part, part.staves[staff - 1], staff);
  for (int staff = 1; staff <= count; ++staff) write_staff_details(attributes, part, part.staves[staff - 1], staff);
  if (!part.score.sounds_octave_lower) return;
  for (int staff = 1; staff <= count; ++staff) {
    if (part.staves[staff - 1] != StaffKind::notes) continue;
    Element transpose = attributes.add("transpose").set("number", std::to_string(staff));
    transpose.add("chromatic", 0);
    transpose.add("octave-change", -1);
  }
}

void write_attributes(Element measure, const Part& part, int bar, Running& running) {
  const score::Bar& own = part.example.bars[bar];
  const bool divisions = running.divisions != part.divisions;
  const bool key = !running.key || !(*running.key == part.example.key);
  const bool meter = !running.meter || !(*running.meter == own.meter);
  const bool staves = running.staves != part.staves;
  if (!divisions && !key && !meter && !staves) return;
  Element attributes = measure.add("attributes");
  if (divisions) attributes.add("divisions", part.divisions);
  if (key) write_key(attributes, part.example.key);
  if (meter) write_time(attributes, own.meter);
  if (staves) {
    if (part.staves.size() > 1 || running.staves.size() > 1) {
      attributes.add("staves", static_cast<long long>(part.staves.size()));
    }
    write_staves(attributes, part);
  }
  running.divisions = part.divisions;
  running.key = part.example.key;
  running.meter = own.meter;
  running.staves = part.staves;
}

// "1. 2." as MusicXML counts endings: "1, 2".
std::string ending_number(const std::string& label) {
  std::string numbers;
  std::string digits;
  for (const char c : label + " ") {
    if (c >= '0' && c <= '9') {
      digits += c;
    } else if (!digits.empty()) {
      numbers += (numbers.empty() ? "" : ", ") + digits;
      digits.clear();
    }
  }
  return numbers.empty() ? "1" : numbers;
}

void write_ending(Element barline, const lesson::Ending& ending, const char* type) {
  barline.add("ending", type[2] == 'a' ? ending.label : "")
      .set("number", ending_number(ending.label))
      .set("type", type);
}

const lesson::Ending* ending_at(const Part& part, int bar, bool begins) {
  for (const lesson::Ending& ending : part.example.endings) {
    if ((begins ? ending.first_bar : ending.last_bar) == bar) return &ending;
  }
  return nullptr;
}

void write_left_barline(Element measure, const Part& part, int bar) {
  const BarSign sign = bar == 0 ? part.example.left : part.example.bars[bar - 1].right;
  const bool written = sign == BarSign::repeat_begin || sign == BarSign::repeat_both;
  const bool repeat = written || part.targets[bar];
  const lesson::Ending* ending = ending_at(part, bar, true);
  if (!repeat && ending == nullptr) return;
  Element barline = measure.add("barline").set("location", "left");
  if (repeat) barline.add("bar-style", "heavy-light");
  if (ending != nullptr) write_ending(barline, *ending, "start");
  if (repeat) barline.add("repeat").set("direction", "forward");
}

void write_right_barline(Element measure, const Part& part, int bar) {
  const score::Bar& own = part.example.bars[bar];
  const bool repeat = own.right == BarSign::repeat_end || own.right == BarSign::repeat_both;
  const lesson::Ending* ending = ending_at(part, bar, false);
  const char* style = repeat                          ? "light-heavy"
                      : own.right == BarSign::final   ? "light-heavy"
                      : own.right == BarSign::doubled ? "light-light"
                                                      : nullptr;
  if (style == nullptr && ending == nullptr) return;
  Element barline = measure.add("barline").set("location", "right");
  if (style != nullptr) barline.add("bar-style", style);
  if (ending != nullptr) write_ending(barline, *ending, repeat ? "stop" : "discontinue");
  if (!repeat) return;
  Element element = barline.add("repeat").set("direction", "backward");
  if (own.plays > 0) element.set("times", std::to_string(own.plays));
}

void write_chords_at(Element measure, const Part& part, int bar, int event) {
  const score::Bar& own = part.example.bars[bar];
  const score::Event& here = own.events[event];
  for (const score::ChordMark& chord : own.chords) {
    if (here.at <= chord.at && chord.at < here.at + here.length) {
      write_harmony(measure, chord, part.ticks(chord.at - here.at));
    }
  }
}

void write_staff(Element measure, const Part& part, int bar, int staff) {
  const int events = static_cast<int>(part.example.bars[bar].events.size());
  for (int event = 0; event < events; ++event) {
    if (staff == 1) {
      write_chords_at(measure, part, bar, event);
      write_directions_at(measure, part, bar, event);
    }
    write_event(measure, part, bar, event, staff);
    if (staff == 1) write_directions_after(measure, part, bar, event);
  }
}

}  // namespace

void write_measure(Element part_element, const Part& part, int bar, Running& running) {
  const score::Bar& own = part.example.bars[bar];
  Element measure = part_element.add("measure").set("number", std::to_string(own.number));
  const bool completes_another = bar > 0 && own.begin != theory::Rational(0);
  if (own.number == 0 || completes_another) measure.set("implicit", "yes");
  if (bar == 0 && !running.first_example) measure.add("print").set("new-system", "yes");
  write_attributes(measure, part, bar, running);
  write_left_barline(measure, part, bar);
  if (bar == 0) {
    write_opening(measure, part, part.example.feel != running.feel);
    running.feel = part.example.feel;
  }
  for (int staff = 1; staff <= static_cast<int>(part.staves.size()); ++staff) {
    if (staff > 1) measure.add("backup").add("duration", part.ticks(own.end - own.begin));
    write_staff(measure, part, bar, staff);
  }
  write_right_barline(measure, part, bar);
}

}  // namespace fretsheaf::exchange
