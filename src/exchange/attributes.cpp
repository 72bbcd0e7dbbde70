#include "exchange/attributes.h"

#include "exchange/harmony.h"

namespace fretsheaf::exchange {

namespace {

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
    case StaffKind::silent:  // no staff's own kind
      break;
  }
}

void write_staff_details(Element attributes, const Part& part, StaffKind kind, int number) {
  Element details = attributes.add("staff-details").set("number", std::to_string(number));
  if (kind != StaffKind::tab) {
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
  const std::vector<StaffKind> staves = staves_of(part.score);
  const int count = static_cast<int>(staves.size());
  if (count > 1) attributes.add("staves", count);
  for (int staff = 1; staff <= count; ++staff) write_clef(attributes, part, staves[staff - 1], staff);
  for (int staff = 1; staff <= count; ++staff) write_staff_details(attributes, part, staves[staff - 1], staff);
  if (!part.score.sounds_octave_lower) return;
  for (int staff = 1; staff <= count; ++staff) {
    if (staves[staff - 1] != StaffKind::notes) continue;
    Element transpose = attributes.add("transpose").set("number", std::to_string(staff));
    transpose.add("chromatic", 0);
    transpose.add("octave-change", -1);
  }
}

void write_slashes(Element attributes, bool start) {
  Element slash = attributes.add("measure-style").set("number", "1").add("slash");
  slash.set("type", start ? "start" : "stop").set("use-stems", "yes");
}

void write_bar_repeat(Element attributes, bool start) {
  attributes.add("measure-style").add("measure-repeat", start ? "1" : "").set("type", start ? "start" : "stop");
}

}  // namespace

void write_attributes(Element measure, const Part& part, int bar, Running& running) {
  const score::Bar& own = part.example.bars[bar];
  const bool slashes = part.staves[0] == StaffKind::strums;
  const bool divisions = running.divisions != part.divisions;
  const bool key = !running.key || !(*running.key == part.example.key);
  const bool meter = !running.meter || !(*running.meter == own.meter);
  const bool other_slashes = running.slashes != slashes;
  const bool repeat = part.bar_repeats[static_cast<std::size_t>(bar)];
  const bool other_repeat = running.bar_repeat != repeat;
  if (!divisions && !key && !meter && running.staves && !other_slashes && !other_repeat) return;
  Element attributes = measure.add("attributes");
  if (divisions) attributes.add("divisions", part.divisions);
  if (key) write_key(attributes, part.example.key);
  if (meter) write_time(attributes, own.meter);
  if (!running.staves) write_staves(attributes, part);
  if (other_slashes) write_slashes(attributes, slashes);
  if (other_repeat) write_bar_repeat(attributes, repeat);
  running = {running.first_example, part.divisions, running.feel, part.example.key, own.meter, true, slashes, repeat};
}

}  // namespace fretsheaf::exchange
