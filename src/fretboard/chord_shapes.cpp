#include "fretboard/chord_shapes.h"

#include <algorithm>
#include <array>
#include <limits>
#include <tuple>

#include "fretboard/chord_tones.h"
#include "fretboard/reach.h"

namespace fretsheaf::fretboard {

namespace {

// What makes a shape worse: small whole numbers, set so that the shapes that every player learns first come first.
constexpr int wrong_bass = 1000;  // the root or the named bass is not lowest, though it could be
constexpr int muted_inside = 60;  // a string between sounding ones is hard to keep silent
constexpr int muted_top = 8;
constexpr int muted_bottom = 5;
constexpr int barre_pressure = 4;
constexpr int per_fret_up = 2;       // of the lowest finger, from the second fret on
constexpr int open_beside_high = 4;  // per fret past the third, beside open strings
constexpr int skipped_fret = 4;      // between one finger and the next
constexpr int twisted = 10;          // of three fingers or more two at the first one's fret, an open string between
constexpr int under_barre = 1;       // a note that is stopped on a lower line than the barre begins
constexpr std::array<int, 5> by_fingers = {0, 2, 5, 8, 12};

class ShapeSearch {
 public:
  ShapeSearch(const theory::Chord& chord, const Neck& neck, double scale_length)
      : tones_(chord), neck_(neck), scale_length_(scale_length), frets_(neck.tuning.size()) {
    for (std::size_t index = 0; index < frets_.size(); ++index) notes_.push_back(notes_on(string_at(index)));
    for (int string = 2; string <= neck.strings(); ++string) {
      if (neck.midi({string, 0}) > neck.midi({string - 1, 0})) rising_ = false;
    }
  }

  std::vector<ChordShape> run(std::size_t most) {
    best_.assign(std::max<std::size_t>(1, most), std::numeric_limits<int>::max());
    for (first_ = 1; first_ <= std::max(1, neck_.last_fret()); ++first_) {
      // From the octave on, shapes come again.
      if (first_ > 12 && !found_.empty()) break;
      last_ = first_;
      while (last_ < neck_.last_fret() && position(last_ + 1) - position(first_) <= most_reach) ++last_;
      choose(0, 0, 0);
    }
    std::ranges::sort(found_, [](const Found& a, const Found& b) {
      return std::tie(a.cost, a.shape.frets) < std::tie(b.cost, b.shape.frets);
    });
    std::vector<ChordShape> shapes;
    for (const Found& found : found_) {
      if (shapes.size() == most) break;
      if (shapes.empty() || shapes.back() != found.shape) shapes.push_back(found.shape);
    }
    return shapes;
  }

 private:
  struct Found {
    int cost = 0;
    ChordShape shape;
  };

  struct Note {
    int fret = 0;
    int midi = 0;
  };

  double position(int fret) const { return fret_position(neck_, scale_length_, fret); }

  int string_at(std::size_t index) const { return neck_.strings() - static_cast<int>(index); }

  bool is_tone(Place place) const { return neck_.has(place) && tones_.has(neck_.midi(place)); }

  // The tones of the chord on a string, from the open one up.
  std::vector<Note> notes_on(int string) const {
    std::vector<Note> notes;
    const int last = neck_.is_short(string) ? 0 : neck_.last_fret();
    for (int fret = 0; fret <= last; ++fret) {
      if (is_tone({string, fret})) notes.push_back({fret, neck_.midi({string, fret})});
    }
    return notes;
  }

  // Muted, open, or a fret from the first finger's on. `silent` strings have been muted since the last that sounds, and
  // `inside` between those that do: what costs more than the worst shape that is wanted is not followed up.
  void choose(std::size_t index, int silent, int inside) {
    if (muted_inside * inside > best_.back()) return;
    if (index == frets_.size()) {
      finish();
      return;
    }
    frets_[index] = std::nullopt;
    choose(index + 1, pitches_.empty() ? 0 : silent + 1, inside);
    for (const Note& note : notes_[index]) {
      if (note.fret != 0 && (note.fret < first_ || note.fret > last_)) continue;
      frets_[index] = note.fret;
      pitches_.push_back(note.midi);
      choose(index + 1, 0, inside + silent);
      pitches_.pop_back();
    }
  }

  // A shape is found from its lowest stopped fret; one of open strings alone from the first. What the hand has to do
  // only adds to the cost.
  void finish() {
    const int lowest = lowest_fret();
    if (lowest != first_ && !(lowest == 0 && first_ == 1)) return;
    const std::optional<int> missing = tones_.missing_cost(pitches_);
    if (!missing) return;
    const int sounding = *missing + bass_cost(pitches_) + muting_cost();
    if (sounding > best_.back()) return;
    std::optional<ChordShape> shape = fingered_shape(frets_, neck_, scale_length_);
    if (!shape) return;
    const int cost = sounding + hand_cost(*shape);
    if (cost > best_.back()) return;
    best_.back() = cost;
    std::ranges::sort(best_);
    found_.push_back({cost, std::move(*shape)});
  }

  int lowest_fret() const {
    int lowest = 0;
    for (const std::optional<int>& fret : frets_) {
      if (fret && *fret > 0) lowest = lowest == 0 ? *fret : std::min(lowest, *fret);
    }
    return lowest;
  }

  int bass_cost(const std::vector<int>& pitches) const {
    return rising_ && !tones_.is_bass(*std::ranges::min_element(pitches)) ? wrong_bass : 0;
  }

  int muting_cost() const {
    const auto sounds = [](const std::optional<int>& fret) { return fret.has_value(); };
    const auto bottom = std::ranges::find_if(frets_, sounds);
    const auto top = std::find_if(frets_.rbegin(), frets_.rend(), sounds).base();
    // A short string that the chord does not have is not played at all.
    const bool silent = neck_.short_fifth_string && bottom != frets_.begin() && !is_tone({neck_.strings(), 0});
    const auto below = static_cast<int>(bottom - frets_.begin()) - (silent ? 1 : 0);
    const auto above = static_cast<int>(frets_.end() - top);
    const auto inside = static_cast<int>(std::count(bottom, top, std::nullopt));
    return muted_bottom * below + (tones_.is_power() ? muted_bottom / 2 : muted_top) * above + muted_inside * inside;
  }

  int hand_cost(const ChordShape& shape) const {
    std::vector<Place> stopped;  // one a finger, in their order
    for (int finger = 1; finger <= 4; ++finger) {
      for (std::size_t index = 0; index < frets_.size(); ++index) {
        if (shape.fingers[index] != finger) continue;
        stopped.push_back({string_at(index), *frets_[index]});
        break;
      }
    }
    if (stopped.empty()) return 0;
    int cost = by_fingers[stopped.size()] + (shape.barre ? barre_pressure : 0);
    const bool open = std::ranges::find(frets_, std::optional<int>(0)) != frets_.end();
    const int lowest = stopped.front().fret;
    const int highest = stopped.back().fret;
    if (open) cost += open_beside_high * std::max(0, highest - 3);
    if (!open || lowest > 3) cost += per_fret_up * (lowest - 1);
    for (const Place place : stopped) {
      if (shape.barre && place.string > shape.barre->bottom_string) cost += under_barre;
    }
    for (std::size_t i = 1; i < stopped.size() && !shape.barre; ++i) {
      cost += skipped_fret * std::max(0, stopped[i].fret - stopped[i - 1].fret - 1);
    }
    const bool two = stopped.size() > 2 && stopped[1].fret == lowest && !shape.barre;
    if (two && open_between(stopped[0].string, stopped[1].string)) cost += twisted;
    return cost + static_cast<int>(std::max(0.0, position(highest) - position(lowest) - easy_reach) / 4);
  }

  bool open_between(int bottom, int top) const {
    for (int string = top + 1; string < bottom; ++string) {
      if (frets_[static_cast<std::size_t>(neck_.strings() - string)] == 0) return true;
    }
    return false;
  }

  ChordTones tones_;
  const Neck& neck_;
  double scale_length_;
  bool rising_ = true;  // from the bottom line to the top
  int first_ = 1;       // the frets that a hand there has
  int last_ = 1;
  std::vector<std::vector<Note>> notes_;  // by string, from the bottom line
  ShapeFrets frets_;                      // as chosen so far, with the pitches
  std::vector<int> pitches_;
  std::vector<Found> found_;
  std::vector<int> best_;  // the costs of the best so far, as many as are wanted
};

}  // namespace

std::vector<ChordShape> chord_shapes(const theory::Chord& chord, const Neck& neck, double scale_length,
                                     std::size_t most) {
  return ShapeSearch(chord, neck, scale_length).run(most);
}

std::optional<ShapeFrets> moved_shape(const ShapeFrets& frets, int by, const Neck& neck) {
  if (by == 0) return frets;
  ShapeFrets moved = frets;
  for (std::size_t index = 0; index < moved.size(); ++index) {
    std::optional<int>& fret = moved[index];
    if (!fret) continue;
    const bool open = *fret == 0;
    *fret += by;
    if (open || !neck.has({neck.strings() - static_cast<int>(index), *fret})) return std::nullopt;
  }
  return moved;
}

}  // namespace fretsheaf::fretboard
