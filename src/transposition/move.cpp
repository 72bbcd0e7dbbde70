#include "transposition/move.h"

#include <algorithm>
#include <utility>

#include "lesson/hidden.h"
#include "lesson/vary.h"
#include "theory/arithmetic.h"
#include "transposition/fingers.h"
#include "transposition/intervals.h"
#include "transposition/names.h"
#include "transposition/pictures.h"
#include "transposition/placing.h"
#include "transposition/trial.h"
#include "transposition/unreachable.h"

namespace fretsheaf::transposition {

namespace {

fretboard::Neck neck_there(const lesson::Lesson& lesson, const Destination& to) {
  fretboard::Neck neck = lesson.neck;
  if (to.instrument != nullptr) {
    neck = {to.instrument->tuning, to.instrument->frets, 0, to.instrument->short_fifth_string};
  }
  // A capo alone comes after the notes have found their places, which must leave it room.
  if (to.capo && to.key) neck.capo = *to.capo;
  if (to.capo && !to.key && to.instrument != nullptr) neck.frets -= *to.capo;
  return neck;
}

// "in E dorian", "in E dorian on the ukulele", "on the ukulele": for messages.
std::string where(const lesson::Lesson& lesson, const Destination& to) {
  const bool other_key = to.key && !(*to.key == lesson.key);
  std::string words = other_key || to.instrument == nullptr ? "in " + to.key.value_or(lesson.key).to_string() : "";
  if (to.instrument != nullptr) {
    words += std::string(words.empty() ? "" : " ") + "on the " + std::string(to.instrument->name);
  }
  return words;
}

// Moves the examples that have notes of their own.
class Mover {
 public:
  Mover(const lesson::Lesson& lesson, const Destination& to, source::Diagnostics& diagnostics)
      : lesson_(lesson),
        to_(to),
        diagnostics_(diagnostics),
        neck_(neck_there(lesson, to)),
        scale_length_((to.instrument != nullptr ? to.instrument : lesson.instrument)->scale_length),
        keys_(moved_keys(lesson, to.key.value_or(lesson.key))) {
    const int tonics = to.key ? to.key->tonic.pitch_class() - lesson.key.tonic.pitch_class() : 0;
    intervals_ = intervals_to(theory::floor_mod(tonics, 12));
  }

  std::optional<Moved> run() {
    if (!choose()) return std::nullopt;
    Moved moved{lesson_, std::vector<ExampleReport>(lesson_.examples.size())};
    move_names(moved.lesson, keys_);
    moved.lesson.neck = neck_;
    if (to_.instrument != nullptr) moved.lesson.instrument = to_.instrument;
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
      if (chosen_[i]) put(*chosen_[i], i, moved);
    }
    for (std::size_t i = 0; i < chosen_.size(); ++i) finish(i, moved);
    return moved;
  }

 private:
  // Whether the example has places of its own to be found.
  static bool is_placed(const lesson::Example& example) { return example.music.has_strings && !example.vary; }

  // The interval, and with it the places, of every example.
  bool choose() {
    for (const int semitones : intervals_) {
      if (all_at(semitones)) return true;
    }
    bool all = true;
    for (std::size_t i = 0; i < lesson_.examples.size(); ++i) {
      if (!is_placed(lesson_.examples[i]) || nearest_of_its_own(i)) continue;
      report(i);
      all = false;
    }
    return all;
  }

  bool all_at(int semitones) {
    chosen_.assign(lesson_.examples.size(), std::nullopt);
    for (std::size_t i = 0; i < lesson_.examples.size(); ++i) {
      if (!is_placed(lesson_.examples[i])) continue;
      chosen_[i] = attempt(i, semitones);
      if (!chosen_[i]->places) return false;
    }
    interval_ = semitones;
    return true;
  }

  bool nearest_of_its_own(std::size_t i) {
    interval_ = intervals_.front();
    for (const int semitones : intervals_) {
      chosen_[i] = attempt(i, semitones);
      if (chosen_[i]->places) return true;
    }
    return false;
  }

  void report(std::size_t i) {
    const lesson::Example& example = lesson_.examples[i];
    const Trial nearest = attempt(i, intervals_.front());
    const theory::Key& key = keys_.examples[i];
    if (!nearest.unplayable.empty()) {
      report_missed({example, nearest.line, nearest.unplayable.front(), neck_, key, wish()}, diagnostics_);
    } else {
      report_broken(example, *nearest.broken, wish(), diagnostics_);
    }
  }

  Wish wish() const {
    const bool instrument_alone = to_.instrument != nullptr && to_.key.value_or(lesson_.key) == lesson_.key;
    return {where(lesson_, to_), instrument_alone ? "name another key with it" : "leave this key out"};
  }

  Trial attempt(std::size_t i, int semitones) const {
    const bool stays = to_.instrument == nullptr && neck_.capo == lesson_.neck.capo;
    return transposition::attempt(lesson_.examples[i], semitones, {lesson_.neck, neck_, scale_length_, stays});
  }

  // How far up its own string a pitch lies there, frets being counted from the capo.
  int frets_up(int semitones) const { return semitones - (neck_.capo - lesson_.neck.capo); }

  void put(const Trial& trial, std::size_t i, Moved& moved) {
    lesson::Music& music = moved.lesson.examples[i].music;
    ExampleReport& report = moved.examples[i];
    if (to_.instrument == nullptr) report.moved = moved_notes(music, trial);
    const DroppedFingers dropped = drop_fingers(music, *trial.places);
    report.bars_without_fingers = dropped.bars;
    if (!dropped.bars.empty()) warn_of_fingers(dropped);
    place(music, *trial.places);
  }

  std::vector<MovedNote> moved_notes(const lesson::Music& music, const Trial& trial) const {
    std::vector<MovedNote> notes;
    for (std::size_t b = 0; b < music.bars.size(); ++b) {
      const lesson::Bar& bar = music.bars[b];
      if (bar.same_as_previous) continue;
      for (std::size_t e = 0; e < bar.events.size(); ++e) {
        for (std::size_t n = 0; n < bar.events[e].notes.size(); ++n) {
          const lesson::Note& note = bar.events[e].notes[n];
          if (note.held || note.dead) continue;
          const fretboard::Place plain{note.place.string, note.place.fret + frets_up(trial.semitones)};
          const fretboard::Place& there = (*trial.places)[b][e][n].place;
          if (!(there == plain)) notes.push_back({bar.number, bar.events[e].at, note.place, there});
        }
      }
    }
    return notes;
  }

  void warn_of_fingers(const DroppedFingers& dropped) {
    std::string bars;
    for (std::size_t i = 0; i < dropped.bars.size(); ++i) {
      const bool last = i + 1 == dropped.bars.size();
      bars += (i == 0 ? "" : last ? " and " : ", ") + std::to_string(dropped.bars[i]);
    }
    diagnostics_.warning(source::Code::fingers_dropped, dropped.first,
                         where(lesson_, to_) + " the written fingers of " +
                             (dropped.bars.size() == 1 ? "bar " : "bars ") + bars +
                             " do not fit the new places, and are left out");
  }

  // What follows the notes.
  void finish(std::size_t i, Moved& moved) {
    lesson::Example& example = moved.lesson.examples[i];
    const auto source = example.vary ? static_cast<std::size_t>(example.vary->value - 1) : i;
    if (example.vary && !example.blank_bars) lesson::put_notes(moved.lesson.examples[source].music, example.music);
    const int semitones = chosen_[source] ? chosen_[source]->semitones : interval_;
    moved.examples[i].semitones = semitones;
    moved.examples[i].boxes_afresh =
        move_pictures(example, {lesson_.examples[i].music, neck_, frets_up(semitones),
                                lesson::hidden_in(lesson_, lesson_.examples[i]).frets, to_.instrument == nullptr});
  }

  const lesson::Lesson& lesson_;
  const Destination& to_;
  source::Diagnostics& diagnostics_;
  fretboard::Neck neck_;
  double scale_length_;
  MovedKeys keys_;
  std::vector<int> intervals_;
  int interval_ = 0;  // of what has no notes
  std::vector<std::optional<Trial>> chosen_;
};

// How far a capo moves what sounds, where no key says it.
int raised_by_capo(const lesson::Lesson& lesson, const Destination& to) {
  if (!to.capo || to.key) return 0;
  return *to.capo - (to.instrument != nullptr ? 0 : lesson.neck.capo);
}

// The shapes stay, what sounds goes up (or down, to a lower capo).
void set_capo(Moved& moved, const lesson::Lesson& before, const Destination& to) {
  lesson::Lesson& lesson = moved.lesson;
  const int semitones = raised_by_capo(before, to);
  if (to.instrument != nullptr) lesson.neck.frets += *to.capo;
  lesson.neck.capo = *to.capo;
  move_names(lesson, moved_keys(lesson, key_there(before, to)));
  for (ExampleReport& example : moved.examples) example.semitones += semitones;
}

// The first place of the music that a neck does not have.
std::optional<std::string> first_past(const lesson::Music& music, const fretboard::Neck& neck) {
  for (const lesson::Bar& bar : music.bars) {
    for (const lesson::Event& event : bar.events) {
      for (const lesson::Note& note : event.notes) {
        bool past = !note.dead && !neck.has(note.place);
        for (const lesson::GraceNote& grace : note.graces) past = past || !neck.has(grace.place);
        if (past) return "bar " + std::to_string(bar.number);
      }
    }
  }
  return std::nullopt;
}

bool shapes_past(const lesson::Example& example, const fretboard::Neck& neck) {
  return std::any_of(example.shapes.begin(), example.shapes.end(), [&](const lesson::Shape& shape) {
    return shape.frets && std::any_of(shape.frets->begin(), shape.frets->end(),
                                      [&](const auto& fret) { return fret.value_or(0) > neck.last_fret(); });
  });
}

}  // namespace

std::optional<std::string> refuse_capo(const lesson::Lesson& lesson, const Destination& to) {
  if (!to.capo) return std::nullopt;
  fretboard::Neck neck = lesson.neck;
  if (to.instrument != nullptr) neck.frets = to.instrument->frets;
  neck.capo = *to.capo;
  const std::string at = "a capo at fret " + std::to_string(neck.capo);
  if (neck.capo < 0 || neck.capo >= neck.frets) {
    return at + " leaves nothing of a neck with " + std::to_string(neck.frets) + " frets";
  }
  if (to.key || to.instrument != nullptr) return std::nullopt;
  for (std::size_t i = 0; i < lesson.examples.size(); ++i) {
    const lesson::Example& example = lesson.examples[i];
    const bool picture = example.neck && example.neck->frets && example.neck->frets->second > neck.last_fret();
    std::string what = first_past(example.music, neck).value_or("");
    if (what.empty() && shapes_past(example, neck)) what = "a chord shape";
    if (what.empty() && picture) what = "the picture of the neck";
    if (what.empty()) continue;
    std::string message = at + " leaves " + std::to_string(neck.last_fret()) + " frets, and ";
    message += what;
    message += " of example " + std::to_string(i + 1) + " goes higher";
    return message;
  }
  return std::nullopt;
}

theory::Key key_there(const lesson::Lesson& lesson, const Destination& to) {
  if (to.key) return *to.key;
  const int semitones = raised_by_capo(lesson, to);
  if (semitones == 0) return lesson.key;
  // Seven fifths make a semitone.
  const theory::NoteName tonic = theory::note_name_from_fifths(lesson.key.tonic.fifths() + 7 * semitones);
  return theory::enharmonic_key({tonic, lesson.key.mode});
}

std::optional<Moved> move(const lesson::Lesson& lesson, const Destination& to, source::Diagnostics& diagnostics) {
  std::optional<Moved> moved = Mover(lesson, to, diagnostics).run();
  if (moved && to.capo && !to.key) set_capo(*moved, lesson, to);
  return moved;
}

}  // namespace fretsheaf::transposition
