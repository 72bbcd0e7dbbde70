#include "transposition/trial.h"

#include <algorithm>
#include <utility>

#include "transposition/strings.h"

namespace fretsheaf::transposition {

namespace {

std::optional<LyingNote> broken_at(const lesson::Music& music, const Places& places) {
  lesson::Music there = music;
  place(there, places);
  return broken_joint(there);
}

class Attempt {
 public:
  Attempt(const lesson::Example& example, int semitones, const TrialNecks& necks) : example_(example), necks_(necks) {
    trial_.semitones = semitones;
  }

  Trial run() {
    const lesson::Music& music = example_.music;
    if (trial_.semitones == 0 && necks_.stays) {
      trial_.places = places_of(music);
      return std::move(trial_);
    }
    const StringsThere strings = strings_there(necks_.from, necks_.to);
    trial_.line = playing_line(example_, {necks_.from, strings, trial_.semitones});
    search();
    if (trial_.broken) trial_.places = along_strings();
    return std::move(trial_);
  }

 private:
  // A slide from nowhere may have come to a string that has sounded, where it would start from that note: then its note
  // is kept off that string, until none is left.
  void search() {
    constexpr int most_tries = 32;
    PlayingLine line = trial_.line;
    for (int tried = 0; tried < most_tries; ++tried) {
      const bool first = tried == 0;
      const fretboard::Fingering found = fretboard::find_fingering(line.line, necks_.to, necks_.scale_length);
      if (first) trial_.unplayable = found.unplayable;
      if (!found.unplayable.empty()) return;
      Places places = places_found(example_.music, line, found);
      const std::optional<LyingNote> broken = broken_at(example_.music, places);
      if (!broken) {
        trial_.broken.reset();
        trial_.places = std::move(places);
        return;
      }
      if (first) trial_.broken = broken->event;
      if (!keep_off(line, places, *broken)) return;
    }
  }

  // Whether there was such a note that could be kept off its string.
  bool keep_off(PlayingLine& line, const Places& places, const LyingNote& broken) const {
    EventIndex index = broken.event;
    while (example_.music.bars[index.bar].same_as_previous) --index.bar;
    const auto event = std::find_if(line.events.begin(), line.events.end(), [&](const EventIndex& other) {
      return other.bar == index.bar && other.event == index.event;
    });
    if (event == line.events.end()) return false;
    const auto& lying = places[index.bar][index.event];
    const auto note = std::find_if(lying.begin(), lying.end(),
                                   [&](const auto& placed) { return placed.place.string == broken.string; });
    if (note == lying.end()) return false;
    auto& wanted = line.line.events[static_cast<std::size_t>(event - line.events.begin())]
                       .notes[static_cast<std::size_t>(note - lying.begin())];
    if (std::count(wanted.not_on.begin(), wanted.not_on.end(), broken.string) > 0) return false;
    wanted.not_on.push_back(broken.string);
    return true;
  }

  // Where joints cannot be kept otherwise: all of the hand's work as it is, farther up or down.
  std::optional<Places> along_strings() const {
    if (!necks_.stays) return std::nullopt;
    auto places = places_along_strings(example_.music, necks_.to, trial_.semitones);
    if (places && broken_at(example_.music, *places)) return std::nullopt;
    return places;
  }

  const lesson::Example& example_;
  const TrialNecks& necks_;
  Trial trial_;
};

}  // namespace

Trial attempt(const lesson::Example& example, int semitones, const TrialNecks& necks) {
  return Attempt(example, semitones, necks).run();
}

}  // namespace fretsheaf::transposition
