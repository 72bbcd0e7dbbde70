#include "fretboard/fingering_oracle.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>

#include "fretboard/fingering_weights.h"

namespace fretsheaf::fretboard {

namespace {

constexpr const FingeringWeights& w = fingering_weights;
constexpr std::int64_t forbidden = std::numeric_limits<std::int64_t>::max() / 4;

using Notes = std::vector<PlacedNote>;

// One way to play one event.
struct Option {
  Notes notes;
  int hand = 1;
};

class Oracle {
 public:
  Oracle(const Line& line, const Played& on) : line_(line), neck_(on.neck), scale_(on.scale_length) {
    for (std::size_t i = 0; i < line.events.size(); ++i) {
      if (!line.events[i].notes.empty()) sounding_.push_back(i);
    }
  }

  // Where fret n lies, to the micrometre.
  int um(int fret) const {
    return static_cast<int>(std::lround(1000 * scale_ * (1 - std::pow(2, -(neck_.capo + fret) / 12.0))));
  }

  const std::vector<std::size_t>& sounding() const { return sounding_; }

  std::int64_t event_cost(std::size_t event, const Option& option) const {
    const std::vector<NoteToPlace>& wanted = line_.events[event].notes;
    const Notes& notes = option.notes;
    std::vector<int> stopped;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (notes[i].place.string == notes[j].place.string) return forbidden;
      }
      if (!sounds_right(wanted[i], notes[i]) || !graces_right(wanted[i], notes[i])) return forbidden;
      const std::vector<int> frets = frets_in_hand(wanted[i], notes[i]);
      stopped.insert(stopped.end(), frets.begin(), frets.end());
    }
    std::int64_t cost = 0;
    if (!stopped.empty()) {
      const int low = *std::min_element(stopped.begin(), stopped.end());
      const int high = *std::max_element(stopped.begin(), stopped.end());
      if (option.hand > low || um(high) - um(option.hand) > reach(event, notes)) return forbidden;
      cost += w.stretch * std::max(0, (um(high) - um(option.hand) - 100000) / 1000);
      cost += w.beyond_four_frets * std::max(0, high - option.hand - 3);
    }
    const std::size_t none = notes.size();
    std::size_t last = none;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (wanted[i].joint == Joint::held) continue;
      cost += own_cost(wanted[i], notes[i].place);
      if (last != none) cost += distance_cost(wanted[last], notes[last].place, wanted[i], notes[i].place);
      last = i;
    }
    Notes original;
    std::vector<NoteToPlace> known;
    for (const NoteToPlace& note : wanted) {
      if (!note.original) continue;
      known.push_back(note);
      original.push_back({*note.original, {}});
    }
    const int allowed = std::max(4, fingers(known, original));
    return cost + w.finger_too_many * std::max(0, fingers(wanted, notes) - allowed);
  }

  // Between neighbours in time, rests left out.
  std::int64_t pair_cost(std::size_t one, const Option& a, std::size_t other, const Option& b) const {
    const std::vector<NoteToPlace>& before = line_.events[one].notes;
    const std::vector<NoteToPlace>& after = line_.events[other].notes;
    const std::size_t from = anchor(before);
    const std::size_t to = anchor(after);
    std::int64_t cost = distance_cost(before[from], a.notes[from].place, after[to], b.notes[to].place);
    const int a_string = a.notes[from].place.string;
    const int b_string = b.notes[to].place.string;
    const int thumb = neck_.short_fifth_string ? neck_.strings() : 0;
    if (a_string != thumb && b_string != thumb) cost += w.string_change * std::abs(a_string - b_string);
    return cost + travel_cost(one, a, other, b);
  }

  // Joints and dead notes, which look at more than neighbours.
  bool joined_right(const std::vector<Option>& options) const {
    for (std::size_t at = 0; at < sounding_.size(); ++at) {
      const std::vector<NoteToPlace>& wanted = line_.events[sounding_[at]].notes;
      for (std::size_t i = 0; i < wanted.size(); ++i) {
        if (!joined_right(options, at, wanted[i], options[at].notes[i])) return false;
      }
      if (!dead_right(options, at)) return false;
    }
    return true;
  }

 private:
  static bool ligature(Joint joint) { return joint == Joint::hammer_on || joint == Joint::pull_off; }
  static bool slide(Joint joint) { return joint == Joint::slide_up || joint == Joint::slide_down; }
  static bool open(const std::optional<Place>& place) { return place && place->fret == 0; }

  bool sounds_right(const NoteToPlace& wanted, const PlacedNote& note) const {
    if (wanted.sound == Sound::dead) return true;
    if (std::count(wanted.not_on.begin(), wanted.not_on.end(), note.place.string) > 0) return false;
    if (wanted.stopped && note.place.fret == 0 && !open(wanted.original)) return false;
    if (wanted.sound == Sound::harmonic) return neck_.harmonic_midi(note.place) == wanted.midi;
    return neck_.midi(note.place) == wanted.midi;
  }

  static bool leads(Joint joint, Place from, Place to, bool open_allowed) {
    if (joint == Joint::none) return true;
    if (joint == Joint::held) return from == to;
    const bool up = joint == Joint::hammer_on || joint == Joint::slide_up;
    if (from.string != to.string || (up ? to.fret <= from.fret : to.fret >= from.fret)) return false;
    return !slide(joint) || open_allowed || (from.fret != 0 && to.fret != 0);
  }

  bool graces_right(const NoteToPlace& wanted, const PlacedNote& note) const {
    for (std::size_t i = 0; i < wanted.graces.size(); ++i) {
      if (note.graces[i].string != note.place.string || neck_.midi(note.graces[i]) != wanted.graces[i].midi)
        return false;
      const bool last = i + 1 == wanted.graces.size();
      const Joint joint = last ? wanted.joint : wanted.graces[i + 1].joint;
      const Place next = last ? note.place : note.graces[i + 1];
      const bool was_open =
          open(wanted.graces[i].original) || open(last ? wanted.original : wanted.graces[i + 1].original);
      if (!leads(joint, note.graces[i], next, was_open)) return false;
    }
    return true;
  }

  // The stopped frets of a note and of the grace notes that no slide parts from it.
  static std::vector<int> frets_in_hand(const NoteToPlace& wanted, const PlacedNote& note) {
    std::vector<int> frets;
    if (wanted.sound == Sound::dead) return frets;
    if (note.place.fret > 0) frets.push_back(note.place.fret);
    Joint joint = wanted.joint;
    for (int i = static_cast<int>(note.graces.size()) - 1; i >= 0 && !slide(joint); --i) {
      const auto index = static_cast<std::size_t>(i);
      if (note.graces[index].fret > 0) frets.push_back(note.graces[index].fret);
      joint = wanted.graces[index].joint;
    }
    return frets;
  }

  int reach(std::size_t event, const Notes& notes) const {
    const std::vector<NoteToPlace>& wanted = line_.events[event].notes;
    bool same_shape = true;
    std::optional<std::pair<int, int>> moved;
    std::vector<int> was;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (wanted[i].sound == Sound::dead) continue;
      if (!wanted[i].original) return 130000;
      const Place old = *wanted[i].original;
      const std::pair<int, int> here{notes[i].place.string - old.string, level(notes[i].place) - level(old)};
      if (moved && *moved != here) same_shape = false;
      moved = here;
      if (old.fret > 0) was.push_back(old.fret);
    }
    if (!same_shape) return 130000;
    int span = 0;
    if (!was.empty())
      span = um(*std::max_element(was.begin(), was.end())) - um(*std::min_element(was.begin(), was.end()));
    return std::max(130000, span) / 10 * 11;
  }

  std::int64_t own_cost(const NoteToPlace& wanted, Place place) const {
    std::int64_t cost = 0;
    const int old_fret = wanted.original ? wanted.original->fret : 0;
    if (wanted.original && wanted.original->string != place.string) cost += w.other_string;
    if (wanted.sound == Sound::dead) return cost;
    if (wanted.sound == Sound::harmonic) cost += w.faint_harmonic * (wanted.midi - neck_.midi({place.string, 0}) - 12);
    if (wanted.original && (old_fret == 0) != (place.fret == 0)) cost += w.other_openness;
    const int old = wanted.original ? level(*wanted.original) : level({place.string, 0});
    return cost + w.height * std::max(0, level(place) - old);
  }

  // An open short string lies at the fifth fret of the others.
  int level(Place place) const {
    return place.fret == 0 && neck_.short_fifth_string && place.string == neck_.strings() ? 5 : place.fret;
  }

  std::int64_t distance_cost(const NoteToPlace& a, Place a_place, const NoteToPlace& b, Place b_place) const {
    if (!a.original || !b.original) return 0;
    const bool strings = b_place.string - a_place.string == b.original->string - a.original->string;
    const bool frets = level(b_place) - level(a_place) == level(*b.original) - level(*a.original);
    const bool dead = a.sound == Sound::dead || b.sound == Sound::dead;
    return strings && (dead || frets) ? 0 : w.other_distance;
  }

  // Tries every way to lay barres over neighbours of one fret: the fewest fingers.
  static int fingers(const std::vector<NoteToPlace>& wanted, const Notes& notes) {
    std::map<int, std::vector<int>> strings_of_fret;
    std::map<int, int> fret_of_string;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (wanted[i].sound == Sound::dead) continue;
      fret_of_string[notes[i].place.string] = notes[i].place.fret;
      if (notes[i].place.fret > 0) strings_of_fret[notes[i].place.fret].push_back(notes[i].place.string);
    }
    int fingers = 0;
    for (auto& [fret, strings] : strings_of_fret) {
      std::sort(strings.begin(), strings.end());
      ++fingers;
      for (std::size_t i = 1; i < strings.size(); ++i) {
        bool barred = true;
        for (int between = strings[i - 1] + 1; between < strings[i]; ++between) {
          if (fret_of_string.count(between) == 1 && fret_of_string[between] < fret) barred = false;
        }
        if (!barred) ++fingers;
      }
    }
    return fingers;
  }

  static std::size_t anchor(const std::vector<NoteToPlace>& notes) {
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (notes[i].joint != Joint::held && notes[i].sound != Sound::dead) return i;
    }
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (notes[i].joint != Joint::held) return i;
    }
    return 0;
  }

  std::int64_t travel_cost(std::size_t one, const Option& a, std::size_t other, const Option& b) const {
    const int last = std::max(1, neck_.last_fret());
    const int target = std::clamp(b.hand - slid(one, a, other, b), 1, last);
    if (a.hand == target) return 0;
    bool stopped = false;
    for (std::size_t i = 0; i < a.notes.size(); ++i) {
      stopped = stopped || !frets_in_hand(line_.events[one].notes[i], a.notes[i]).empty();
    }
    theory::Rational time = line_.events[one].length;
    if (stopped) time = time * theory::Rational(1, 4);
    for (std::size_t rest = one + 1; rest < other; ++rest) time += line_.events[rest].length;
    // In seconds: a quarter is 60 / tempo of them.
    time = time * 4 * 60 / line_.quarters_per_minute;
    int times = 1;
    while (times < 16 && time * times < 1) ++times;
    const int mm = std::abs((um(a.hand) + 500) / 1000 - (um(target) + 500) / 1000);
    return std::int64_t{w.travel} * times * (w.aim_millimetres + mm);
  }

  // How far the first note that slides takes the hand along.
  int slid(std::size_t one, const Option& a, std::size_t other, const Option& b) const {
    for (std::size_t i = 0; i < b.notes.size(); ++i) {
      const NoteToPlace& wanted = line_.events[other].notes[i];
      std::vector<std::pair<Joint, int>> frets;
      for (std::size_t g = 0; g < wanted.graces.size(); ++g) {
        frets.emplace_back(wanted.graces[g].joint, b.notes[i].graces[g].fret);
      }
      frets.emplace_back(wanted.joint, b.notes[i].place.fret);
      int sum = 0;
      for (std::size_t f = 1; f < frets.size(); ++f) {
        if (slide(frets[f].first)) sum += frets[f].second - frets[f - 1].second;
      }
      if (wanted.from && slide(frets[0].first)) {
        // The source lies in the event before, or its place has not changed since; dead notes lie at fret 0.
        const int string = b.notes[i].place.string;
        int before = -1;
        if (static_cast<std::size_t>(wanted.from->event) == one) {
          before = a.notes[static_cast<std::size_t>(wanted.from->note)].place.fret;
        } else {
          before = fret_on(string, line_.events[static_cast<std::size_t>(wanted.from->event)]
                                       .notes[static_cast<std::size_t>(wanted.from->note)]);
        }
        sum += frets[0].second - before;
      }
      if (sum != 0) return sum;
    }
    return 0;
  }

  int fret_on(int string, const NoteToPlace& note) const {
    if (note.sound == Sound::dead) return 0;
    for (int fret = 0; fret <= neck_.last_fret(); ++fret) {
      if (neck_.has({string, fret}) && neck_.midi({string, fret}) == note.midi) return fret;
    }
    return 0;
  }

  bool joined_right(const std::vector<Option>& options, std::size_t at, const NoteToPlace& wanted,
                    const PlacedNote& note) const {
    const Joint joint = wanted.graces.empty() ? wanted.joint : wanted.graces.front().joint;
    if (!wanted.from || joint == Joint::none) return true;
    const std::size_t source_event = static_cast<std::size_t>(wanted.from->event);
    const std::size_t source =
        static_cast<std::size_t>(std::find(sounding_.begin(), sounding_.end(), source_event) - sounding_.begin());
    const auto index = static_cast<std::size_t>(wanted.from->note);
    const Place from = options[source].notes[index].place;
    const NoteToPlace& from_wanted = line_.events[source_event].notes[index];
    const Place to = note.graces.empty() ? note.place : note.graces.front();
    const bool dead = wanted.sound == Sound::dead || from_wanted.sound == Sound::dead;
    const std::optional<Place> old = wanted.graces.empty() ? wanted.original : wanted.graces.front().original;
    if (dead && joint != Joint::held) {
      if (from.string != to.string) return false;
    } else if (!leads(joint, from, to, open(from_wanted.original) || open(old))) {
      return false;
    } else if (ligature(joint) && from.fret > 0 && to.fret > 0) {
      // One hand, as in a chord.
      int most = 130000;
      if (old && from_wanted.original) {
        const int low = std::min(old->fret, from_wanted.original->fret);
        const int high = std::max(old->fret, from_wanted.original->fret);
        most = std::max(most, low == 0 ? 0 : um(high) - um(low)) / 10 * 11;
      }
      if (std::abs(um(from.fret) - um(to.fret)) > most) return false;
    }
    for (std::size_t between = source + 1; between < at; ++between) {
      for (std::size_t i = 0; i < options[between].notes.size(); ++i) {
        if (options[between].notes[i].place.string == to.string) return false;
      }
    }
    return true;
  }

  static bool all_dead(const std::vector<NoteToPlace>& notes) {
    return std::all_of(notes.begin(), notes.end(), [](const NoteToPlace& n) { return n.sound == Sound::dead; });
  }

  // The note of an event whose original string is nearest; the first where strings are not known.
  static std::size_t nearest(const NoteToPlace& dead, const std::vector<NoteToPlace>& notes, bool pitched) {
    std::size_t best = notes.size();
    int least = 0;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (pitched && notes[i].sound == Sound::dead) continue;
      const bool known = dead.original && notes[i].original;
      const int distance = known ? std::abs(dead.original->string - notes[i].original->string) : 99;
      if (best == notes.size() || distance < least) {
        best = i;
        least = distance;
      }
    }
    return best;
  }

  static int beside(const NoteToPlace& dead, const NoteToPlace& neighbour, Place place) {
    if (!dead.original) return place.string;
    return dead.original->string + (neighbour.original ? place.string - neighbour.original->string : 0);
  }

  // The strings of notes that sounded before and are joined to later ones.
  std::vector<int> kept_free(const std::vector<Option>& options, std::size_t at) const {
    std::vector<int> strings;
    for (std::size_t later = at + 1; later < sounding_.size(); ++later) {
      for (const NoteToPlace& note : line_.events[sounding_[later]].notes) {
        const Joint joint = note.graces.empty() ? note.joint : note.graces.front().joint;
        if (!note.from || joint == Joint::none) continue;
        const auto event = static_cast<std::size_t>(note.from->event);
        if (event >= sounding_[at]) continue;
        const auto source = std::find(sounding_.begin(), sounding_.end(), event) - sounding_.begin();
        const Option& option = options[static_cast<std::size_t>(source)];
        strings.push_back(option.notes[static_cast<std::size_t>(note.from->note)].place.string);
      }
    }
    return strings;
  }

  // One dead note at a time: on the nearest free string to where its neighbour leads it, of two the lower line. The
  // neighbour is in its event, else in the one before, or, where nothing pitched came before, the one after.
  bool dead_right(const std::vector<Option>& options, std::size_t at) const {
    const std::vector<NoteToPlace>& wanted = line_.events[sounding_[at]].notes;
    std::vector<int> used = kept_free(options, at);
    const auto dead = std::find_if(wanted.begin(), wanted.end(), [](auto& n) { return n.sound == Sound::dead; });
    if (dead == wanted.end()) return true;
    const auto mine = static_cast<std::size_t>(dead - wanted.begin());
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      if (i != mine) used.push_back(options[at].notes[i].place.string);
    }
    const int aim =
        std::clamp(aim_of(options, at, *dead), all_dead(wanted) ? 1 : -99, all_dead(wanted) ? neck_.strings() : 99);
    int best = 0;
    for (int string = 1; string <= neck_.strings(); ++string) {
      if (std::find(used.begin(), used.end(), string) != used.end()) continue;
      if (best == 0 || std::abs(string - aim) <= std::abs(best - aim)) best = string;
    }
    return options[at].notes[mine].place.string == best;
  }

  int aim_of(const std::vector<Option>& options, std::size_t at, const NoteToPlace& dead) const {
    const auto pitched = [&](std::size_t event) { return !all_dead(line_.events[event].notes); };
    const auto here = sounding_.begin() + static_cast<std::ptrdiff_t>(at);
    std::size_t other = at;
    if (!pitched(*here)) {
      const bool before = std::any_of(sounding_.begin(), here, pitched);
      if (!before && std::none_of(here, sounding_.end(), pitched)) {
        return dead.original ? dead.original->string : neck_.strings();
      }
      other = before ? at - 1 : at + 1;
    }
    const std::vector<NoteToPlace>& notes = line_.events[sounding_[other]].notes;
    const std::size_t neighbour = nearest(dead, notes, other == at);
    return beside(dead, notes[neighbour], options[other].notes[neighbour].place);
  }

  const Line& line_;
  const Neck& neck_;
  double scale_;
  std::vector<std::size_t> sounding_;
};

// Every place on the neck, with every place of the grace notes on its string.
std::vector<PlacedNote> all_ways(const NoteToPlace& wanted, const Neck& neck) {
  std::vector<PlacedNote> ways;
  for (int string = 1; string <= neck.strings(); ++string) {
    std::vector<Place> graces;
    for (const GraceToPlace& grace : wanted.graces) {
      for (int fret = 0; fret <= neck.last_fret(); ++fret) {
        if (neck.has({string, fret}) && neck.midi({string, fret}) == grace.midi) graces.push_back({string, fret});
      }
    }
    if (graces.size() != wanted.graces.size()) continue;
    for (int fret = 0; fret <= neck.last_fret(); ++fret) {
      const Place place{string, fret};
      if (!neck.has(place) || (wanted.sound == Sound::dead && fret > 0)) continue;
      const bool pitched = wanted.sound == Sound::pitched;
      if (pitched && neck.midi(place) != wanted.midi) continue;
      if (wanted.sound == Sound::harmonic && neck.harmonic_midi(place) != wanted.midi) continue;
      ways.push_back({place, graces});
    }
  }
  return ways;
}

void add_options(const Line& line, std::size_t event, const Oracle& oracle, const Neck& neck, Notes& so_far,
                 std::vector<std::pair<Option, std::int64_t>>& options) {
  const std::vector<NoteToPlace>& wanted = line.events[event].notes;
  if (so_far.size() == wanted.size()) {
    for (int hand = 1; hand <= std::max(1, neck.last_fret()); ++hand) {
      Option option{so_far, hand};
      const std::int64_t cost = oracle.event_cost(event, option);
      if (cost < forbidden) options.emplace_back(std::move(option), cost);
    }
    return;
  }
  for (const PlacedNote& way : all_ways(wanted[so_far.size()], neck)) {
    so_far.push_back(way);
    add_options(line, event, oracle, neck, so_far, options);
    so_far.pop_back();
  }
}

class Search {
 public:
  Search(const Line& line, const Played& on) : line_(line), oracle_(line, on), chosen_(oracle_.sounding().size()) {
    for (const std::size_t event : oracle_.sounding()) {
      Notes none;
      add_options(line, event, oracle_, on.neck, none, options_.emplace_back());
    }
    // What each pair of neighbours costs, so that trying them all is looking up.
    for (std::size_t at = 0; at + 1 < options_.size(); ++at) {
      auto& table = pairs_.emplace_back();
      for (const auto& [a, own] : options_[at]) {
        auto& row = table.emplace_back();
        for (const auto& [b, other] : options_[at + 1]) {
          row.push_back(oracle_.pair_cost(oracle_.sounding()[at], a, oracle_.sounding()[at + 1], b));
        }
      }
    }
    joined_ = std::any_of(line.events.begin(), line.events.end(), [](const EventToPlace& event) {
      return std::any_of(event.notes.begin(), event.notes.end(),
                         [](const NoteToPlace& note) { return note.from || note.sound == Sound::dead; });
    });
  }

  std::optional<std::int64_t> run() {
    try_all(0, 0);
    if (best_ >= forbidden) return std::nullopt;
    return best_;
  }

 private:
  void try_all(std::size_t at, std::int64_t cost) {
    if (at == options_.size()) {
      if (cost < best_ && (!joined_ || allowed())) best_ = cost;
      return;
    }
    for (std::size_t i = 0; i < options_[at].size(); ++i) {
      const std::int64_t pair = at == 0 ? 0 : pairs_[at - 1][chosen_[at - 1]][i];
      chosen_[at] = i;
      try_all(at + 1, cost + pair + options_[at][i].second);
    }
  }

  bool allowed() const {
    std::vector<Option> options;
    for (std::size_t at = 0; at < chosen_.size(); ++at) options.push_back(options_[at][chosen_[at]].first);
    return oracle_.joined_right(options);
  }

  const Line& line_;
  Oracle oracle_;
  std::vector<std::vector<std::pair<Option, std::int64_t>>> options_;
  std::vector<std::vector<std::vector<std::int64_t>>> pairs_;
  std::vector<std::size_t> chosen_;
  bool joined_ = false;
  std::int64_t best_ = forbidden;
};

}  // namespace

std::optional<std::int64_t> cheapest_of_all(const Line& line, const Played& on) {
  return Search(line, on).run();
}

std::optional<std::int64_t> cost_of(const Line& line, const Fingering& fingering, const Played& on) {
  const Oracle oracle(line, on);
  std::vector<Option> options;
  std::int64_t cost = 0;
  for (const std::size_t event : oracle.sounding()) {
    options.push_back({fingering.events[event], fingering.hands[event]});
    const std::int64_t own = oracle.event_cost(event, options.back());
    if (own >= forbidden) return std::nullopt;
    cost += own;
    if (options.size() == 1) continue;
    const std::size_t before = oracle.sounding()[options.size() - 2];
    cost += oracle.pair_cost(before, options[options.size() - 2], event, options.back());
  }
  if (!oracle.joined_right(options)) return std::nullopt;
  return cost;
}

}  // namespace fretsheaf::fretboard
