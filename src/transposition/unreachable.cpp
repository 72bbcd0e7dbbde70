#include "transposition/unreachable.h"

#include <cmath>

#include "fretboard/places.h"
#include "fretboard/reach.h"
#include "theory/spelling.h"

namespace fretsheaf::transposition {

namespace {

using fretboard::Unplayable;

std::string name_of(int midi, const theory::Key& key) {
  return theory::pitch_of(theory::practical(theory::spell(midi, {key, {}, {}, {}})), midi).to_string();
}

// A limit of the neck is called as in C major, where no key has its say.
std::string limit(int midi) {
  return name_of(midi, {{theory::Letter::C, 0}, theory::Mode::major});
}

std::string millimetres(double length) {
  return std::to_string(std::lround(length)) + " mm";
}

const char* joint_name(const fretboard::NoteToPlace& note) {
  const auto joint =
      note.graces.empty() || note.joint != fretboard::Joint::none ? note.joint : note.graces.front().joint;
  switch (joint) {
    case fretboard::Joint::hammer_on:
      return "hammer-on";
    case fretboard::Joint::pull_off:
      return "pull-off";
    case fretboard::Joint::slide_up:
    case fretboard::Joint::slide_down:
      return "slide";
    case fretboard::Joint::held:
    case fretboard::Joint::none:
      break;
  }
  return "held note";
}

// How far apart it would lie from what sounds with it, or from its own grace notes.
std::string distance(const MissedNote& missed, const fretboard::EventToPlace& event,
                     const fretboard::NoteToPlace& note) {
  const double span = missed.missed.least_span;
  // Where it is not the distance, other notes that are held leave no hand for it.
  if (span <= fretboard::most_reach) return "and no hand has it with what sounds at its count";
  const bool alone = event.notes.size() == 1 && !note.graces.empty();
  return "and lie " + millimetres(span) + (alone ? " from its grace note" : " from the other notes at its count") +
         ", where a hand reaches " + millimetres(fretboard::most_reach);
}

// What is in the way; the sentence goes on from "in E dorian this note of bar 3 would be C1, ".
std::string obstacle(const MissedNote& missed, const fretboard::EventToPlace& event,
                     const fretboard::NoteToPlace& note) {
  switch (missed.missed.why) {
    case Unplayable::too_low:
      return "and the neck's lowest note is " + limit(fretboard::lowest_midi(missed.neck));
    case Unplayable::too_high:
      return "and the neck's highest note is " + limit(fretboard::highest_midi(missed.neck));
    case Unplayable::nowhere:
      return note.stopped ? "and no string has it where a finger can press it" : "and no string has it";
    case Unplayable::no_harmonic:
      return "and no string has a natural harmonic that sounds so";
    case Unplayable::no_free_string:
      return "and the strings that have it are taken by the other notes at its count";
    case Unplayable::out_of_reach:
      return distance(missed, event, note);
    case Unplayable::joint_too_wide:
      return std::string("and its ") + joint_name(note) + " would span " + millimetres(missed.missed.least_span) +
             ", where a hand reaches " + millimetres(fretboard::most_reach);
    case Unplayable::not_on_one_string:
      return std::string("and no string has both ends of its ") + joint_name(note);
  }
  return {};
}

std::string help(const Wish& wish) {
  return wish.help + ", or write the example where it has more room to move";
}

}  // namespace

void report_missed(const MissedNote& missed, source::Diagnostics& diagnostics) {
  const EventIndex index = missed.line.events[static_cast<std::size_t>(missed.missed.note.event)];
  const auto n = static_cast<std::size_t>(missed.missed.note.note);
  const lesson::Bar& bar = missed.example.music.bars[index.bar];
  const lesson::Note& note = bar.events[index.event].notes[n];
  const auto& event = missed.line.line.events[static_cast<std::size_t>(missed.missed.note.event)];
  const auto& sought = event.notes[n];
  const std::string what = note.harmonic ? "harmonic" : note.dead ? "dead note" : "note";
  std::string message = missed.wish.where + " this " + what + " of bar " + std::to_string(bar.number) + " would ";
  message += note.dead ? "find no string that the notes around it leave free"
                       : "be " + name_of(sought.midi, missed.key) + ", " + obstacle(missed, event, sought);
  diagnostics.error(source::Code::out_of_reach, note.range, message, help(missed.wish));
}

void report_broken(const lesson::Example& example, EventIndex index, const Wish& wish,
                   source::Diagnostics& diagnostics) {
  const lesson::Bar& bar = example.music.bars[index.bar];
  diagnostics.error(source::Code::out_of_reach, bar.events[index.event].range,
                    wish.where + " a hammer-on, pull-off or slide of bar " + std::to_string(bar.number) +
                        " would not start where it does now",
                    help(wish));
}

}  // namespace fretsheaf::transposition
