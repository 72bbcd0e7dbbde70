#include "fretboard/fingering_steps.h"

#include <algorithm>
#include <cstdlib>

#include "fretboard/places.h"

namespace fretsheaf::fretboard {

namespace {

using theory::Rational;

bool is_open(const std::optional<Place>& place) {
  return place && place->fret == 0;
}

// The note's grace notes and the note itself, in order, each with how it is reached.
struct Link {
  Joint joint;
  int fret;
  bool was_open;
};

// On that string; empty where one is not there, or cannot be joined.
std::vector<Link> links_at(const NoteToPlace& note, Place place, const Neck& neck) {
  std::vector<Link> links;
  for (const GraceToPlace& grace : note.graces) {
    const std::optional<int> fret = fret_of(neck, place.string, grace.midi);
    if (!fret) return {};
    links.push_back({grace.joint, *fret, is_open(grace.original)});
  }
  links.push_back({note.joint, place.fret, is_open(note.original)});
  for (std::size_t index = 1; index < links.size(); ++index) {
    const Link& before = links[index - 1];
    const Link& link = links[index];
    const Place from{place.string, before.fret};
    if (!joins(link.joint, from, {place.string, link.fret}, before.was_open || link.was_open)) return {};
  }
  return links;
}

// REQUIRES: links is not empty.
Spot spot_of(Place place, const std::vector<Link>& links) {
  Spot spot;
  spot.place = place;
  spot.first_fret = links.front().fret;
  bool same_hand = true;
  for (std::size_t index = links.size(); index-- > 0;) {
    const Link& link = links[index];
    if (same_hand && link.fret > 0) {
      spot.low = spot.low == 0 ? link.fret : std::min(spot.low, link.fret);
      spot.high = std::max(spot.high, link.fret);
    }
    if (index == 0 || !is_slide(link.joint)) continue;
    same_hand = false;
    spot.slide += link.fret - links[index - 1].fret;
  }
  return spot;
}

std::vector<Spot> spots_anywhere(const NoteToPlace& note, const Neck& neck) {
  std::vector<Spot> spots;
  if (note.sound == Sound::dead) {
    if (note.fixed) return {{{note.fixed->string, 0}}};
    for (int string = neck.strings(); string >= 1; --string) spots.push_back({{string, 0}});
    return spots;
  }
  const auto add = [&](Place place) {
    if (note.stopped && place.fret == 0 && !is_open(note.original)) return;
    const std::vector<Link> links = links_at(note, place, neck);
    if (!links.empty()) spots.push_back(spot_of(place, links));
  };
  if (note.fixed) {
    add(*note.fixed);
  } else if (note.sound == Sound::harmonic) {
    for (const Place place : harmonic_places_of(neck, note.midi)) add(place);
  } else {
    for (int string = neck.strings(); string >= 1; --string) {
      if (const std::optional<int> fret = fret_of(neck, string, note.midi)) add({string, *fret});
    }
  }
  std::sort(spots.begin(), spots.end(), [](const Spot& a, const Spot& b) {
    return a.place.fret != b.place.fret ? a.place.fret < b.place.fret : a.place.string > b.place.string;
  });
  return spots;
}

std::vector<Spot> spots_of(const NoteToPlace& note, const Neck& neck) {
  std::vector<Spot> spots = spots_anywhere(note, neck);
  std::erase_if(spots, [&](const Spot& spot) {
    return std::find(note.not_on.begin(), note.not_on.end(), spot.place.string) != note.not_on.end();
  });
  return spots;
}

int urgency(Rational whole_notes, Rational quarters_per_minute) {
  // ceil(1 / seconds), a whole note being 240 / quarters_per_minute seconds
  const std::int64_t times = -(-(quarters_per_minute / (whole_notes * 240))).floor();
  return static_cast<int>(std::clamp<std::int64_t>(times, 1, 16));
}

class StepMaker {
 public:
  StepMaker(const Line& line, const Board& board) : line_(line), board_(board) {}

  std::vector<Step> run() {
    add_events();
    for (std::size_t index = 0; index < steps_.size(); ++index) {
      // By position: carrying adds slots to earlier steps only.
      for (std::size_t slot = 0; slot < steps_[index].slots.size(); ++slot) join(index, slot);
    }
    for (Step& step : steps_) step.anchor = anchor_of(step);
    find_neighbours();
    return std::move(steps_);
  }

 private:
  void add_events() {
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
  }

  Step step(const EventToPlace& event, int index, Rational rest) {
    Step step;
    step.event = index;
    // Most events are as long as the one before.
    if (steps_.empty() || event.length != length_ || rest != rest_) {
      length_ = event.length;
      rest_ = rest;
      urgency_stopped_ = urgency(event.length * Rational(1, 4) + rest, line_.quarters_per_minute);
      urgency_free_ = urgency(event.length + rest, line_.quarters_per_minute);
    }
    step.urgency_stopped = urgency_stopped_;
    step.urgency_free = urgency_free_;
    step.slots.resize(event.notes.size());
    for (std::size_t note = 0; note < event.notes.size(); ++note) {
      Slot& slot = step.slots[note];
      slot.note = &event.notes[note];
      slot.index = {index, static_cast<int>(note)};
      slot.spots = spots_of(*slot.note, board_.neck);
    }
    return step;
  }

  void join(std::size_t step, std::size_t slot_index) {
    Slot& slot = steps_[step].slots[slot_index];
    const NoteToPlace& note = *slot.note;
    const bool has_graces = !note.graces.empty();
    const Joint joint = has_graces ? note.graces.front().joint : note.joint;
    if (slot.carried || joint == Joint::none || !note.from) return;
    slot.joint = joint;
    slot.from = carried_to(step - 1, *note.from);
    const NoteToPlace& source = *steps_[step - 1].slots[static_cast<std::size_t>(slot.from)].note;
    const std::optional<Place>& original = has_graces ? note.graces.front().original : note.original;
    slot.open_slide = is_open(source.original) || is_open(original);
    slot.string_alone = joint != Joint::held && (slot.dead() || source.sound == Sound::dead);
    slot.ligature_reach =
        source.original && original ? kept_reach(span_of(*source.original, *original)) : most_micrometres;
  }

  // Between two places of the original, whose neck may have had more frets.
  int span_of(Place one, Place other) const {
    const int low = std::min({one.fret, other.fret, board_.last_hand()});
    const int high = std::min(std::max(one.fret, other.fret), board_.last_hand());
    return low == 0 ? 0 : board_.span(low, high);
  }

  // The slot of the step where that note is, or goes along.
  int carried_to(std::size_t step, NoteIndex source) {
    std::vector<Slot>& slots = steps_[step].slots;
    const auto found = std::ranges::find(slots, source, &Slot::index);
    if (found != slots.end()) return static_cast<int>(found - slots.begin());
    Slot slot;
    slot.carried = true;
    slot.index = source;
    slot.from = carried_to(step - 1, source);
    slot.joint = Joint::held;
    const Slot& before = steps_[step - 1].slots[static_cast<std::size_t>(slot.from)];
    slot.note = before.note;
    for (const Spot& spot : before.spots) slot.spots.push_back({spot.place, spot.place.fret, 0, 0, 0});
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

  void find_neighbours() {
    const auto pitched = std::ranges::find_if_not(steps_, all_dead);
    for (auto step = steps_.begin(); step != steps_.end(); ++step) {
      const bool alone = all_dead(*step);
      const Neighbour neighbour = !alone                    ? Neighbour::same_step
                                  : pitched == steps_.end() ? Neighbour::none
                                  : pitched < step          ? Neighbour::step_before
                                                            : Neighbour::step_after;
      for (std::size_t index = 0; index < step->slots.size(); ++index) {
        Slot& slot = step->slots[index];
        if (!slot.dead() || slot.carried) continue;
        if (alone && step->dead_alone < 0) step->dead_alone = static_cast<int>(index);
        slot.neighbour = neighbour;
        if (neighbour == Neighbour::same_step) slot.neighbour_slot = nearest(slot, *step, true);
        if (neighbour == Neighbour::step_before) slot.neighbour_slot = nearest(slot, *std::prev(step), false);
        if (neighbour == Neighbour::step_after) slot.neighbour_slot = nearest(slot, *std::next(step), false);
      }
    }
  }

  // The slot whose original string was nearest; where a string is not known, the first.
  static int nearest(const Slot& slot, const Step& step, bool pitched_only) {
    constexpr int unknown = 1000;
    int best = -1;
    int best_distance = 0;
    for (std::size_t index = 0; index < step.slots.size(); ++index) {
      const Slot& other = step.slots[index];
      if (other.carried || (pitched_only && other.dead())) continue;
      const bool known = slot.note->original && other.note->original;
      const int distance = known ? std::abs(slot.note->original->string - other.note->original->string) : unknown;
      if (best < 0 || distance < best_distance) {
        best = static_cast<int>(index);
        best_distance = distance;
      }
    }
    return best;
  }

  const Line& line_;
  const Board& board_;
  std::vector<Step> steps_;
  Rational length_;
  Rational rest_;
  int urgency_stopped_ = 1;
  int urgency_free_ = 1;
};

}  // namespace

bool is_slide(Joint joint) {
  return joint == Joint::slide_up || joint == Joint::slide_down;
}

bool is_ligature(Joint joint) {
  return joint == Joint::hammer_on || joint == Joint::pull_off;
}

bool joins(Joint joint, Place from, Place to, bool open_slide) {
  if (joint == Joint::none) return true;
  if (joint == Joint::held) return from == to;
  if (from.string != to.string) return false;
  const bool up = joint == Joint::hammer_on || joint == Joint::slide_up;
  if (up ? to.fret <= from.fret : to.fret >= from.fret) return false;
  return !is_slide(joint) || open_slide || (from.fret > 0 && to.fret > 0);
}

std::vector<Step> make_steps(const Line& line, const Board& board) {
  return StepMaker(line, board).run();
}

}  // namespace fretsheaf::fretboard
