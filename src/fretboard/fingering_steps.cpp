#include "fretboard/fingering_steps.h"

#include <algorithm>

#include "fretboard/places.h"

namespace fretsheaf::fretboard {

namespace {

using theory::Rational;

bool is_open(const std::optional<Place>& place) {
  return place && place->fret == 0;
}

// A joint that one hand position makes: both fingers are on the neck.
bool within_hand(Joint joint) {
  return joint != Joint::slide_up && joint != Joint::slide_down;
}

// The frets of the note's grace notes on that string; nullopt where one is not there, or cannot be joined.
std::optional<std::vector<Place>> grace_places(const NoteToPlace& note, Place place, const Neck& neck) {
  std::vector<Place> places;
  std::optional<Place> original_before;
  for (const GraceToPlace& grace : note.graces) {
    const std::optional<int> fret = fret_of(neck, place.string, grace.midi);
    if (!fret) return std::nullopt;
    const Place here{place.string, *fret};
    const bool was_open = is_open(original_before) || is_open(grace.original);
    if (!places.empty() && !joins(grace.joint, places.back(), here, was_open)) return std::nullopt;
    places.push_back(here);
    original_before = grace.original;
  }
  const bool was_open = is_open(original_before) || is_open(note.original);
  if (!places.empty() && !joins(note.joint, places.back(), place, was_open)) return std::nullopt;
  return places;
}

Candidate candidate_at(const NoteToPlace& note, Place place, const std::vector<Place>& graces) {
  Candidate candidate{place, place.fret, place.fret};
  Joint joint = note.joint;
  for (std::size_t index = graces.size(); index-- > 0 && within_hand(joint);) {
    const int fret = graces[index].fret;
    if (fret > 0) {
      candidate.low = candidate.low == 0 ? fret : std::min(candidate.low, fret);
      candidate.high = std::max(candidate.high, fret);
    }
    joint = note.graces[index].joint;
  }
  return candidate;
}

std::vector<Candidate> candidates_of(const NoteToPlace& note, const Neck& neck) {
  std::vector<Candidate> candidates;
  if (note.sound == Sound::dead) {
    for (int string = neck.strings(); string >= 1; --string) candidates.push_back({{string, 0}});
    return candidates;
  }
  const bool harmonic = note.sound == Sound::harmonic;
  for (const Place place : harmonic ? harmonic_places_of(neck, note.midi) : places_of(neck, note.midi)) {
    if (note.stopped && place.fret == 0 && !is_open(note.original)) continue;
    const auto graces = grace_places(note, place, neck);
    if (graces) candidates.push_back(candidate_at(note, place, *graces));
  }
  std::sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
    return a.place.fret != b.place.fret ? a.place.fret < b.place.fret : a.place.string > b.place.string;
  });
  return candidates;
}

// The joint at the beginning of a note with its grace notes.
Joint first_joint(const NoteToPlace& note) {
  return note.graces.empty() ? note.joint : note.graces.front().joint;
}

int urgency(Rational whole_notes, Rational quarters_per_minute) {
  // ceil(1 / seconds), a whole note being 240 / quarters_per_minute seconds
  const std::int64_t times = -(-(quarters_per_minute / (whole_notes * 240))).floor();
  return static_cast<int>(std::clamp<std::int64_t>(times, 1, 16));
}

class StepMaker {
 public:
  StepMaker(const Line& line, const Neck& neck) : line_(line), neck_(neck) {}

  std::vector<Step> run() {
    add_events();
    for (std::size_t index = 0; index < steps_.size(); ++index) {
      // By position: carrying adds slots to earlier steps only.
      for (std::size_t slot = 0; slot < steps_[index].slots.size(); ++slot) join(static_cast<int>(index), slot);
    }
    for (Step& step : steps_) step.anchor = anchor_of(step);
    for (std::size_t index = 0; index < steps_.size(); ++index) find_neighbours(index);
    return std::move(steps_);
  }

 private:
  void add_events() {
    step_of_.assign(line_.events.size(), -1);
    Rational rest;
    for (std::size_t index = line_.events.size(); index-- > 0;) {
      const EventToPlace& event = line_.events[index];
      if (event.notes.empty()) {
        rest += event.length;
        continue;
      }
      steps_.push_back(step(event, static_cast<int>(index), rest));
      rest = 0;
    }
    std::reverse(steps_.begin(), steps_.end());
    for (std::size_t index = 0; index < steps_.size(); ++index) {
      step_of_[static_cast<std::size_t>(steps_[index].event)] = static_cast<int>(index);
    }
  }

  Step step(const EventToPlace& event, int index, Rational rest) const {
    Step step;
    step.event = index;
    step.urgency_stopped = urgency(event.length * Rational(1, 4) + rest, line_.quarters_per_minute);
    step.urgency_free = urgency(event.length + rest, line_.quarters_per_minute);
    for (std::size_t note = 0; note < event.notes.size(); ++note) {
      Slot slot;
      slot.note = &event.notes[note];
      slot.index = {index, static_cast<int>(note)};
      slot.candidates = candidates_of(*slot.note, neck_);
      step.slots.push_back(std::move(slot));
    }
    return step;
  }

  void join(int step, std::size_t slot_index) {
    Slot& slot = steps_[static_cast<std::size_t>(step)].slots[slot_index];
    const Joint joint = first_joint(*slot.note);
    if (slot.carried || joint == Joint::none || !slot.note->from) return;
    slot.joint = joint;
    slot.from = carried_to(step - 1, *slot.note->from);
  }

  // The slot of the step where that note is, or goes along.
  int carried_to(int step, NoteIndex source) {
    std::vector<Slot>& slots = steps_[static_cast<std::size_t>(step)].slots;
    const auto found = std::ranges::find(slots, source, &Slot::index);
    if (found != slots.end()) return static_cast<int>(found - slots.begin());
    Slot slot;
    slot.carried = true;
    slot.index = source;
    slot.from = carried_to(step - 1, source);
    slot.joint = Joint::held;
    const Slot& before = steps_[static_cast<std::size_t>(step - 1)].slots[static_cast<std::size_t>(slot.from)];
    slot.note = before.note;
    slot.candidates = before.candidates;
    for (Candidate& candidate : slot.candidates) candidate.low = candidate.high = 0;
    slots.push_back(std::move(slot));
    return static_cast<int>(slots.size()) - 1;
  }

  // The first that is struck and has a pitch, else the first that is struck, else the first.
  static int anchor_of(const Step& step) {
    const auto first = [&](auto&& is) {
      return static_cast<int>(std::ranges::find_if(step.slots, is) - step.slots.begin());
    };
    const int size = static_cast<int>(step.slots.size());
    const int pitched = first([](const Slot& slot) { return slot.struck() && !slot.dead(); });
    if (pitched < size) return pitched;
    const int struck = first([](const Slot& slot) { return slot.struck(); });
    return struck < size ? struck : 0;
  }

  static bool all_dead(const Step& step) {
    return std::ranges::all_of(step.slots, [](const Slot& slot) { return slot.carried || slot.dead(); });
  }

  void find_neighbours(std::size_t index) {
    Step& step = steps_[index];
    const auto pitched = [](const Step& other) { return !all_dead(other); };
    const bool alone = all_dead(step);
    const bool before = std::any_of(steps_.begin(), steps_.begin() + static_cast<std::ptrdiff_t>(index), pitched);
    const bool after = std::any_of(steps_.begin() + static_cast<std::ptrdiff_t>(index), steps_.end(), pitched);
    for (Slot& slot : step.slots) {
      if (!slot.dead() || slot.carried) continue;
      if (alone && step.dead_alone < 0) step.dead_alone = static_cast<int>(&slot - step.slots.data());
      slot.neighbour = !alone   ? Neighbour::same_step
                       : before ? Neighbour::step_before
                       : after  ? Neighbour::step_after
                                : Neighbour::none;
      if (slot.neighbour == Neighbour::none) continue;
      const Step& other = before && alone ? steps_[index - 1] : alone ? steps_[index + 1] : step;
      slot.neighbour_slot = nearest(slot, other, !alone);
    }
  }

  // The slot whose original string was nearest; where a string is not known, the first.
  static int nearest(const Slot& slot, const Step& step, bool pitched_only) {
    int best = -1;
    int best_distance = 0;
    for (std::size_t index = 0; index < step.slots.size(); ++index) {
      const Slot& other = step.slots[index];
      if (other.carried || (pitched_only && other.dead())) continue;
      const bool known = slot.note->original && other.note->original;
      const int distance = known ? std::abs(slot.note->original->string - other.note->original->string) : 1000;
      if (best < 0 || distance < best_distance) {
        best = static_cast<int>(index);
        best_distance = distance;
      }
    }
    return best;
  }

  const Line& line_;
  const Neck& neck_;
  std::vector<Step> steps_;
  std::vector<int> step_of_;
};

}  // namespace

bool joins(Joint joint, Place from, Place to, bool was_open) {
  if (joint == Joint::none) return true;
  if (joint == Joint::held) return from == to;
  if (from.string != to.string) return false;
  const bool up = joint == Joint::hammer_on || joint == Joint::slide_up;
  if (up ? to.fret <= from.fret : to.fret >= from.fret) return false;
  return within_hand(joint) || was_open || (from.fret > 0 && to.fret > 0);
}

std::vector<Step> make_steps(const Line& line, const Neck& neck) {
  return StepMaker(line, neck).run();
}

}  // namespace fretsheaf::fretboard
