#include "preview/places.h"

#include <algorithm>

#include "score/printed.h"

namespace fretsheaf::preview {
namespace {

std::string manner_of(score::HeadKind head) {
  switch (head) {
    case score::HeadKind::normal:
      return "";
    case score::HeadKind::dead:
      return "dead";
    case score::HeadKind::ghost:
      return "ghost";
    case score::HeadKind::harmonic:
      return "harmonic";
  }
  return "";
}

// The beat, and where in it: "2", "2 &".
std::string whole_count(theory::Rational at, theory::Rational count) {
  const std::string part = theory::count_name(at, count);
  const std::string beat = std::to_string((at / count).floor() + 1);
  return part == beat ? beat : beat + " " + part;
}

std::string kind_of(const score::Event& event) {
  if (event.rest) return "rest";
  if (!event.notes.empty()) return "notes";
  return event.touch || event.blank ? "hidden" : "strum";
}

class Reader {
 public:
  Reader(const score::Score& score, const source::Text& file) : score_(score), file_(file) {}

  std::vector<MusicPlace> read() {
    for (const score::Example& example : score_.examples) {
      if (example.blank) continue;
      chord_.reset();
      for (const score::Bar& bar : example.bars) read(example, bar);
    }
    return std::move(places_);
  }

 private:
  void read(const score::Example& example, const score::Bar& bar) {
    auto next_chord = bar.chords.begin();
    for (const score::Event& event : bar.events) {
      for (; next_chord != bar.chords.end() && next_chord->at <= event.at; ++next_chord) chord_ = next_chord->chord;
      MusicPlace place;
      place.example = example.number;
      place.bar = bar.number;
      place.at = event.at.to_string();
      place.kind = kind_of(event);
      place.count = whole_count(event.at, bar.meter.count());
      place.key = score::printed(example.key, score_.naming);
      if (chord_) place.chord = score::printed(*chord_, score_.naming);
      set_written(event.range, place.line, place.column);
      for (const score::Note& note : event.notes) place.notes.push_back(read(example, note));
      std::reverse(place.notes.begin(), place.notes.end());  // they stand by string, the highest first
      places_.push_back(std::move(place));
    }
    for (; next_chord != bar.chords.end(); ++next_chord) chord_ = next_chord->chord;
  }

  NotePlace read(const score::Example& example, const score::Note& note) const {
    NotePlace place;
    const auto string = static_cast<std::size_t>(note.place.string) - 1;
    if (string < score_.string_letters.size()) place.string = score_.string_letters[string];
    place.fret = note.place.fret;
    place.manner = manner_of(note.head);
    place.held = note.tie_from;
    set_written(note.range, place.line, place.column);
    if (note.head == score::HeadKind::dead) return place;
    place.name = score::printed(note.sounding.name, score_.naming);
    place.degree = theory::degree_of(example.key, note.exact).to_string();
    if (chord_) place.chord_degree = theory::degree_in_chord(*chord_, note.exact).to_string();
    return place;
  }

  void set_written(const source::Range& range, int& line, int& column) const {
    const source::Position position = file_.position(range.begin);
    line = position.line;
    column = position.column;
  }

  const score::Score& score_;
  const source::Text& file_;
  std::optional<theory::Chord> chord_;  // in force
  std::vector<MusicPlace> places_;
};

}  // namespace

std::vector<MusicPlace> music_places(const score::Score& score, const source::Text& file) {
  return Reader(score, file).read();
}

}  // namespace fretsheaf::preview
