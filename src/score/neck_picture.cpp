#include "score/neck_picture.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "score/printed.h"
#include "theory/chord.h"
#include "words/words.h"

namespace fretsheaf::score {
namespace {

using Labels = lesson::NeckPicture::Labels;
using Of = lesson::NeckPicture::Of;

constexpr int from_the_nut = 3;  // where the lowest place lies no higher, the picture begins at the nut
constexpr int least_frets = 5;
constexpr int frets_to_write_on = 12;

// What is known of a place: its exact name, and the finger that is written for it.
struct Known {
  theory::NoteName name;
  std::string finger;
};

using PlaceKey = std::pair<int, int>;  // string, fret
using KnownPlaces = std::map<PlaceKey, Known>;
using Frets = std::pair<int, int>;

// The places that an example uses; a dead note has none.
class UsedPlaces {
 public:
  UsedPlaces(const lesson::Example& example, const SpelledNotes& notes, bool hidden) {
    if (hidden) return;
    for (const lesson::Bar& bar : example.music.bars) {
      for (const lesson::Event& event : bar.events) {
        for (const lesson::Note& note : event.notes) add(note, notes);
      }
    }
  }

  const KnownPlaces& places() const { return places_; }

 private:
  void add(const lesson::Note& note, const SpelledNotes& notes) {
    if (note.dead) return;
    for (const lesson::GraceNote& grace : note.graces) {
      places_.try_emplace({grace.place.string, grace.place.fret}, Known{notes.of(grace).name, {}});
    }
    Known& known =
        places_.try_emplace({note.place.string, note.place.fret}, Known{notes.exact(note), {}}).first->second;
    if (known.finger.empty() && note.finger) known.finger = note.finger->value;
  }

  KnownPlaces places_;
};

// Every place of these tones within the frets.
KnownPlaces places_of(const std::vector<theory::NoteName>& tones, const fretboard::Neck& neck, Frets frets) {
  KnownPlaces places;
  for (int string = 1; string <= neck.strings(); ++string) {
    for (int fret = frets.first; fret <= frets.second; ++fret) {
      const fretboard::Place place{string, fret};
      if (!neck.has(place)) continue;
      for (const theory::NoteName tone : tones) {
        if (tone.pitch_class() == neck.midi(place) % 12) places.try_emplace({string, fret}, Known{tone, {}});
      }
    }
  }
  return places;
}

// The frets that are shown where the lesson does not say: those used, from the nut where that is near, and some more
// where they are few.
Frets fitting(const KnownPlaces& used, int last_fret) {
  Frets frets{0, 0};
  bool any = false;
  bool open = used.empty();
  for (const auto& [place, known] : used) {
    open = open || place.second == 0;
    if (place.second == 0) continue;
    frets.first = any ? std::min(frets.first, place.second) : place.second;
    frets.second = std::max(frets.second, place.second);
    any = true;
  }
  if (open || frets.first <= from_the_nut) frets.first = 0;
  frets.second = std::max(frets.second, std::max(frets.first, 1) + least_frets - 1);
  if (frets.second <= last_fret) return frets;
  frets.second = last_fret;
  if (frets.first > 0) frets.first = std::min(frets.first, std::max(1, last_fret - least_frets + 1));
  return frets;
}

// One finger a fret from the lowest stopped place on.
class HandPosition {
 public:
  explicit HandPosition(const KnownPlaces& places) {
    for (const auto& [place, known] : places) {
      if (place.second > 0) lowest_ = lowest_ == 0 ? place.second : std::min(lowest_, place.second);
    }
  }

  std::string finger(int fret) const {
    constexpr int fingers = 4;
    const int at = fret - lowest_;
    if (fret == 0 || at > fingers) return {};
    return std::to_string(std::min(at + 1, fingers));
  }

 private:
  int lowest_ = 0;
};

class PictureMaker {
 public:
  PictureMaker(const lesson::Lesson& lesson, const lesson::Example& example, const SpelledNotes& notes,
               const Naming& naming, const lesson::Hidden& left_out)
      : lesson_(lesson),
        example_(example),
        asked_(*example.neck),
        used_(example, notes, left_out.frets),
        naming_(naming),
        hidden_(left_out.frets),
        unlabelled_(left_out.labels && asked_.of == Of::notes) {
    if (asked_.of == Of::chord && asked_.chord) chord_ = theory::resolve(asked_.chord->value, example.key);
  }

  NeckPicture make() const {
    NeckPicture picture;
    picture.title = title();
    std::tie(picture.first, picture.last) = frets();
    const KnownPlaces places = shown({picture.first, picture.last});
    const HandPosition hand(places);
    const bool written = asked_.of == Of::notes &&
                         std::ranges::any_of(places, [](const auto& one) { return !one.second.finger.empty(); });
    for (const auto& [place, known] : places) {
      if (unlabelled_) {
        picture.marks.push_back({{place.first, place.second}, {}, false});
        continue;
      }
      std::string label;
      if (asked_.labels == Labels::fingers) label = written ? known.finger : hand.finger(place.second);
      if (asked_.labels == Labels::degrees) label = with_accidentals(degree(known.name).to_string());
      if (asked_.labels == Labels::notes) label = printed(theory::practical(known.name), naming_);
      picture.marks.push_back(
          {{place.first, place.second}, std::move(label), degree(known.name) == theory::Degree{1, 0}});
    }
    if (lesson_.instrument != nullptr) picture.inlays = fretboard::inlays(lesson_.instrument->name, lesson_.neck);
    return picture;
  }

 private:
  std::string title() const {
    if (asked_.of == Of::notes) return std::string(words::word(naming_.language, words::Word::neck_of_notes));
    const std::string what = chord_ ? printed(*chord_, naming_) : printed(example_.key, naming_);
    return words::fill(naming_.language, words::Word::neck_of, {{"what", what}});
  }

  Frets frets() const {
    if (asked_.frets) return *asked_.frets;
    const int last = lesson_.neck.last_fret();
    return hidden_ ? Frets{0, std::min(frets_to_write_on, last)} : fitting(used_.places(), last);
  }

  theory::Degree degree(theory::NoteName name) const {
    return chord_ ? theory::degree_in_chord(*chord_, name) : theory::degree_of(example_.key, name);
  }

  KnownPlaces shown(Frets frets) const {
    if (asked_.of != Of::notes) {
      const auto scale = example_.key.scale();
      return places_of(chord_ ? theory::chord_tones(*chord_) : std::vector(scale.begin(), scale.end()), lesson_.neck,
                       frets);
    }
    KnownPlaces places = used_.places();
    std::erase_if(places,
                  [&](const auto& one) { return one.first.second < frets.first || one.first.second > frets.second; });
    return places;
  }

  const lesson::Lesson& lesson_;
  const lesson::Example& example_;
  const lesson::NeckPicture& asked_;
  UsedPlaces used_;
  const Naming& naming_;
  bool hidden_;      // where the notes are
  bool unlabelled_;  // the notes' places
  std::optional<theory::Chord> chord_;
};

}  // namespace

NeckPicture neck_picture(const lesson::Lesson& lesson, const lesson::Example& example, const SpelledNotes& notes,
                         const Naming& naming, const lesson::Hidden& left_out) {
  return PictureMaker(lesson, example, notes, naming, left_out).make();
}

}  // namespace fretsheaf::score
