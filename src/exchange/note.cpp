#include "exchange/note.h"

#include <array>

#include "exchange/harmony.h"
#include "exchange/notations.h"

namespace fretsheaf::exchange {

const char* type_name(int log2) {
  constexpr std::array names = {"whole", "half",  "quarter", "eighth", "16th",  "32nd",
                                "64th",  "128th", "256th",   "512th",  "1024th"};
  return names[static_cast<std::size_t>(log2 < 0 ? 0 : log2 > 10 ? 10 : log2)];
}

namespace {

// What the pitched staff writes for a sounding pitch.
theory::Pitch written(const Part& part, StaffKind staff, theory::Pitch sounding) {
  if (staff == StaffKind::notes && part.score.sounds_octave_lower) ++sounding.octave;
  return sounding;
}

void write_pitch(Element note, const theory::Pitch& pitch) {
  Element element = note.add("pitch");
  element.add("step", step_name(pitch.name.letter));
  if (pitch.name.alteration != 0) element.add("alter", pitch.name.alteration);
  element.add("octave", pitch.octave);
}

// Only the notes staff has them.
void write_accidental(Element note, const Part& part, const Tone& tone, StaffKind kind, const theory::Pitch& sounding,
                      std::optional<score::Accidental> accidental) {
  constexpr std::array names = {"flat-flat", "flat", "natural", "sharp", "double-sharp"};
  if (part.bare_accidentals.contains(tone)) accidental = score::Accidental{sounding.name.alteration, false};
  if (kind != StaffKind::notes || !accidental) return;
  Element element = note.add("accidental", names.at(std::size_t{2} + static_cast<std::size_t>(accidental->alteration)));
  if (accidental->cautionary) element.set("cautionary", "yes");
}

void write_type(Element note, const score::Event& event) {
  note.add("type", type_name(event.value.log2));
  for (int dot = 0; dot < event.value.dots; ++dot) note.add("dot");
}

void write_time_modification(Element note, const score::Bar& bar, const score::Event& event) {
  if (!event.tuplet) return;
  const score::Tuplet& tuplet = bar.tuplets[*event.tuplet];
  Element modification = note.add("time-modification");
  modification.add("actual-notes", tuplet.actual);
  modification.add("normal-notes", tuplet.normal);
  modification.add("normal-type", type_name(tuplet.unit.log2));
  for (int dot = 0; dot < tuplet.unit.dots; ++dot) modification.add("normal-dot");
}

void write_beams(Element note, const score::Event& event) {
  if (!event.beamed()) return;
  for (int level = 1; level <= event.value.beams() && level <= 8; ++level) {
    const bool left = event.beams_left >= level;
    const bool right = event.beams_right >= level;
    const char* value = left && right        ? "continue"
                        : left               ? "end"
                        : right              ? "begin"
                        : event.partial_left ? "backward hook"
                                             : "forward hook";
    note.add("beam", value).set("number", std::to_string(level));
  }
}

void write_head(Element note, score::HeadKind head) {
  if (head == score::HeadKind::dead) note.add("notehead", "x");
  if (head == score::HeadKind::harmonic) note.add("notehead", "diamond").set("filled", "no");
  if (head == score::HeadKind::ghost) note.add("notehead", "normal").set("parentheses", "yes");
}

void write_grace(Element measure, const Part& part, const Tone& tone, StaffKind kind, int staff, bool chord) {
  const score::Note& main = part.example.bars[tone.bar].events[tone.event].notes[tone.note];
  const score::GraceNote& grace = main.graces[tone.grace];
  Element note = measure.add("note");
  note.add("grace").set("slash", "yes");
  if (chord) note.add("chord");
  write_pitch(note, written(part, kind, grace.sounding));
  note.add("voice", staff);
  note.add("type", "eighth");
  write_accidental(note, part, tone, kind, grace.sounding, grace.accidental);
  note.add("staff", staff);
  write_grace_notations(note, part, tone, kind);
}

void write_pitched(Element measure, const Part& part, const Tone& tone, StaffKind kind, int staff, bool chord) {
  const score::Bar& bar = part.example.bars[tone.bar];
  const score::Event& event = bar.events[tone.event];
  const score::Note& own = event.notes[tone.note];
  Element note = measure.add("note");
  if (chord) note.add("chord");
  write_pitch(note, written(part, kind, own.sounding));
  note.add("duration", part.ticks(event.length));
  if (own.tie_from) note.add("tie").set("type", "stop");
  if (own.tie_to) note.add("tie").set("type", "start");
  note.add("voice", staff);
  write_type(note, event);
  // A harmonic's accidental belongs to where the string is touched; its pitch here is what sounds.
  if (own.head != score::HeadKind::harmonic) write_accidental(note, part, tone, kind, own.sounding, own.accidental);
  write_time_modification(note, bar, event);
  // A tab's digits have no stems where a staff above has the rhythm.
  if (kind == StaffKind::tab) note.add("stem", "none");
  write_head(note, own.head);
  note.add("staff", staff);
  if (!chord && kind != StaffKind::tab) write_beams(note, event);
  write_notations(note, part, tone, kind, !chord);
  if (!chord && staff == 1) write_lyrics(note, part, tone);
  if (part.cover.palm_mute.contains({tone.bar, tone.event})) note.add("play").add("mute", "palm");
}

void write_rest(Element measure, const Part& part, const Tone& tone, StaffKind kind, int staff) {
  const score::Bar& bar = part.example.bars[tone.bar];
  const score::Event& event = bar.events[tone.event];
  Element note = measure.add("note");
  Element rest = note.add("rest");
  if (event.whole_bar_rest) rest.set("measure", "yes");
  note.add("duration", part.ticks(event.length));
  note.add("voice", staff);
  if (!event.whole_bar_rest) {
    write_type(note, event);
    write_time_modification(note, bar, event);
  }
  note.add("staff", staff);
  write_rest_notations(note, part, tone, kind);
  if (staff == 1) write_lyrics(note, part, tone);
}

// On the middle line of its clef; a percussion clef's is the treble clef's (MusicXML 4.0, display-step).
void write_strum(Element measure, const Part& part, const Tone& tone, int staff) {
  const score::Bar& bar = part.example.bars[tone.bar];
  const score::Event& event = bar.events[tone.event];
  Element note = measure.add("note");
  Element place = note.add("unpitched");
  const bool bass = part.score.clef == fretboard::Clef::bass && part.staves.size() > 1;
  place.add("display-step", bass ? "D" : "B");
  place.add("display-octave", bass ? 3 : 4);
  note.add("duration", part.ticks(event.length));
  if (event.tie_from) note.add("tie").set("type", "stop");
  if (event.tie_to) note.add("tie").set("type", "start");
  note.add("voice", staff);
  write_type(note, event);
  write_time_modification(note, bar, event);
  note.add("stem", event.beat_slash ? "none" : "up");
  const bool muted = event.slash == score::HeadKind::dead;
  Element head = note.add("notehead", muted ? "x" : "slash");
  if (event.slash == score::HeadKind::ghost) head.set("parentheses", "yes");
  note.add("staff", staff);
  write_beams(note, event);
  write_strum_notations(note, part, tone);
  if (staff == 1) write_lyrics(note, part, tone);
  if (part.cover.palm_mute.contains({tone.bar, tone.event})) note.add("play").add("mute", "palm");
}

// A tab has no slashes.
void write_no_slash(Element measure, const Part& part, const Tone& tone, int staff) {
  const score::Bar& bar = part.example.bars[tone.bar];
  const score::Event& event = bar.events[tone.event];
  Element note = measure.add("note").set("print-object", "no");
  note.add("rest");
  note.add("duration", part.ticks(event.length));
  note.add("voice", staff);
  write_type(note, event);
  note.add("staff", staff);
}

}  // namespace

void write_silence(Element measure, const Part& part, int bar, int staff) {
  Element note = measure.add("note").set("print-object", "no");
  note.add("rest").set("measure", "yes");
  const score::Bar& own = part.example.bars[bar];
  note.add("duration", part.ticks(own.end - own.begin));
  note.add("voice", staff);
  note.add("staff", staff);
}

void write_event(Element measure, const Part& part, int bar, int event, int staff) {
  const StaffKind kind = part.staves[static_cast<std::size_t>(staff - 1)];
  const score::Event& own = part.example.bars[bar].events[event];
  const Tone tone{bar, event, 0, -1};
  if (own.rest) return write_rest(measure, part, tone, kind, staff);
  if (own.beat_slash && kind == StaffKind::tab) return write_no_slash(measure, part, tone, staff);
  if (own.notes.empty()) return write_strum(measure, part, tone, staff);

  // Grace notes come first, string by string; the notes from the lowest string up.
  for (int note = static_cast<int>(own.notes.size()) - 1; note >= 0; --note) {
    for (int grace = 0; grace < static_cast<int>(own.notes[note].graces.size()); ++grace) {
      write_grace(measure, part, {bar, event, note, grace}, kind, staff, false);
    }
  }
  bool chord = false;
  for (int note = static_cast<int>(own.notes.size()) - 1; note >= 0; --note) {
    write_pitched(measure, part, {bar, event, note, -1}, kind, staff, chord);
    chord = true;
  }
}

}  // namespace fretsheaf::exchange
