#include "exchange/measure.h"

#include "exchange/barlines.h"
#include "exchange/directions.h"
#include "exchange/harmony.h"
#include "exchange/note.h"

namespace fretsheaf::exchange {

namespace {

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
  if (part.staves[static_cast<std::size_t>(staff - 1)] == StaffKind::silent) {
    return write_silence(measure, part, bar, staff);
  }
  const int events = static_cast<int>(part.example.bars[bar].events.size());
  for (int event = 0; event < events; ++event) {
    if (staff == 1) {
      write_chords_at(measure, part, bar, event);
      write_directions_at(measure, part, bar, event);
    }
    write_event(measure, part, bar, event, staff);
    if (staff == 1) write_directions_after(measure, part, bar, event);
  }
  if (staff == 1) write_directions_at_end(measure, part, bar);
}

}  // namespace

void write_measure(Element part_element, const Part& part, int bar, Running& running) {
  const score::Bar& own = part.example.bars[bar];
  Element measure = part_element.add("measure").set("number", std::to_string(own.number));
  const bool completes_another = bar > 0 && own.begin != theory::Rational(0);
  if (own.number == 0 || completes_another) measure.set("implicit", "yes");
  if (bar == 0 && !running.first_example) measure.add("print").set("new-system", "yes");
  write_left_barline(measure, part, bar);
  write_attributes(measure, part, bar, running);
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
