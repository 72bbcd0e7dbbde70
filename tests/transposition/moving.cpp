#include "moving.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "theory/key.h"
#include "transposition/playing_line.h"

namespace fretsheaf::transposition::test {

namespace {

lesson::ReadLesson read_file(const std::string& text) {
  const platform::MemorySystem system;
  return lesson::read_lesson("slipway.lesson.toml", text, system);
}

std::string place_text(const lesson::Lesson& lesson, fretboard::Place place) {
  return fretboard::string_labels(lesson.neck)[static_cast<std::size_t>(place.string) - 1] + std::to_string(place.fret);
}

std::string note_text(const lesson::Lesson& lesson, const lesson::Note& note) {
  std::string text;
  for (const lesson::GraceNote& grace : note.graces) text += place_text(lesson, grace.place) + "^";
  text += place_text(lesson, note.place);
  if (note.dead) text.back() = 'x';
  if (note.harmonic) text = "<" + text + ">";
  return note.held ? "[" + text + "]" : text;
}

}  // namespace

lesson::Lesson read(const std::string& text) {
  lesson::ReadLesson result = read_file(text);
  for (const source::Diagnostic& one : result.diagnostics.list()) UNSCOPED_INFO(render(one, result.files));
  REQUIRE(result.lesson);
  return std::move(*result.lesson);
}

std::string lesson_text(const std::string& key, const std::string& instrument, const std::string& rows,
                        const std::string& lesson_keys, const std::string& example_keys) {
  return "title = \"Slipway\"\nkey = \"" + key + "\"\ninstrument = \"" + instrument + "\"\n" + lesson_keys +
         "[[example]]\n" + example_keys + "tab = '''\n" + rows + "'''\n";
}

Moved moved(const lesson::Lesson& lesson, const Destination& to) {
  source::Diagnostics diagnostics;
  std::optional<Moved> result = move(lesson, to, diagnostics);
  for (const source::Diagnostic& one : diagnostics.list()) UNSCOPED_INFO(one.message);
  REQUIRE(result);
  return std::move(*result);
}

Destination to_key(const std::string& key) {
  Destination to;
  to.key = theory::parse_key(key);
  REQUIRE(to.key);
  return to;
}

Moved moved(const lesson::Lesson& lesson, const std::string& key) {
  return moved(lesson, to_key(key));
}

std::string said(const std::string& text, const Destination& to) {
  const lesson::ReadLesson file = read_file(text);
  REQUIRE(file.lesson);
  source::Diagnostics diagnostics;
  const bool done = move(*file.lesson, to, diagnostics).has_value();
  CHECK(done == !diagnostics.has_errors());
  std::string all;
  for (const source::Diagnostic& one : diagnostics.sorted()) {
    const source::Position at = file.files[one.range.file].position(one.range.begin);
    all += std::to_string(at.line) + ":" + std::to_string(at.column) +
           (one.severity == source::Severity::error ? ": error: " : ": warning: ") + one.message + "\n";
  }
  return all;
}

std::string places(const lesson::Lesson& lesson, std::size_t example) {
  std::string text;
  for (const lesson::Bar& bar : lesson.examples[example].music.bars) {
    if (!text.empty()) text += " |";
    for (const lesson::Event& event : bar.events) {
      std::string notes;
      for (const lesson::Note& note : event.notes) notes += (notes.empty() ? "" : "+") + note_text(lesson, note);
      if (!notes.empty()) text += (text.empty() ? "" : " ") + notes;
    }
  }
  return text;
}

std::vector<int> pitches(const lesson::Lesson& lesson, std::size_t example) {
  std::vector<int> all;
  for (const lesson::Bar& bar : lesson.examples[example].music.bars) {
    for (const lesson::Event& event : bar.events) {
      std::vector<std::vector<int>> notes;
      for (const lesson::Note& note : event.notes) {
        if (note.held || note.dead) continue;
        auto& one = notes.emplace_back(1, lesson.neck.sounding_midi(note.place, note.harmonic));
        for (const lesson::GraceNote& grace : note.graces) one.push_back(lesson.neck.midi(grace.place));
      }
      std::sort(notes.begin(), notes.end());
      for (const auto& one : notes) all.insert(all.end(), one.begin(), one.end());
    }
  }
  return all;
}

}  // namespace fretsheaf::transposition::test
