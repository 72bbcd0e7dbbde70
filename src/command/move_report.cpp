#include "command/move_report.h"

#include <cstdlib>
#include <nlohmann/json.hpp>

#include "fretboard/neck.h"

namespace fretsheaf::command {

namespace {

using nlohmann::ordered_json;

std::string semitones_text(int semitones) {
  if (semitones == 0) return "stays where it is";
  const int count = std::abs(semitones);
  return std::string(semitones > 0 ? "up " : "down ") + std::to_string(count) +
         (count == 1 ? " semitone" : " semitones");
}

std::string place_text(const std::vector<std::string>& strings, fretboard::Place place) {
  return strings[static_cast<std::size_t>(place.string) - 1] + " " + std::to_string(place.fret);
}

ordered_json place(fretboard::Place place) {
  return {{"string", place.string}, {"fret", place.fret}};
}

}  // namespace

std::string move_report(const sheaf::Transposed& result) {
  const std::vector<std::string> strings = fretboard::string_labels(result.moved->lesson.neck);
  std::string text = "from " + result.from.to_string() + " to " + result.moved->lesson.key.to_string() + "\n";
  for (std::size_t i = 0; i < result.moved->examples.size(); ++i) {
    const transposition::ExampleReport& example = result.moved->examples[i];
    text += "example " + std::to_string(i + 1) + ": " + semitones_text(example.semitones);
    int bar = -1;
    for (const transposition::MovedNote& note : example.moved) {
      text += note.bar == bar ? ", " : "\n  bar " + std::to_string(note.bar) + ": ";
      text += place_text(strings, note.from) + " to " + place_text(strings, note.to);
      bar = note.bar;
    }
    text += "\n";
    for (const theory::Chord& chord : example.boxes_afresh) {
      text += "  " + theory::to_string(chord) + ": the shape cannot move, one is worked out afresh\n";
    }
  }
  return text;
}

std::string move_document(const sheaf::Transposed& result) {
  ordered_json examples = ordered_json::array();
  for (std::size_t i = 0; i < result.moved->examples.size(); ++i) {
    const transposition::ExampleReport& example = result.moved->examples[i];
    ordered_json moved = ordered_json::array();
    for (const transposition::MovedNote& note : example.moved) {
      moved.push_back(
          {{"bar", note.bar}, {"at", note.at.to_string()}, {"from", place(note.from)}, {"to", place(note.to)}});
    }
    ordered_json afresh = ordered_json::array();
    for (const theory::Chord& chord : example.boxes_afresh) afresh.push_back(theory::to_string(chord));
    examples.push_back({{"example", i + 1},
                        {"semitones", example.semitones},
                        {"moved", std::move(moved)},
                        {"without_fingers", example.bars_without_fingers},
                        {"shapes_afresh", std::move(afresh)}});
  }
  const ordered_json document = {{"version", 1},
                                 {"from", result.from.to_string()},
                                 {"to", result.moved->lesson.key.to_string()},
                                 {"examples", std::move(examples)}};
  return document.dump(2) + "\n";
}

}  // namespace fretsheaf::command
