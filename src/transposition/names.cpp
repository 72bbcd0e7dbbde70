#include "transposition/names.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "lesson/placeholder.h"
#include "theory/chord.h"
#include "theory/interval.h"
#include "theory/keys.h"

namespace fretsheaf::transposition {

namespace {

void move_text(lesson::Prose& text, int fifths) {
  if (text.range.file == 0) text.value = shifted_text(text.value, fifths);
}

void move_text(std::optional<lesson::Prose>& text, int fifths) {
  if (text) move_text(*text, fifths);
}

void move_note(lesson::Note& note, int fifths) {
  if (note.spell) note.spell->value = theory::practical(theory::shifted(note.spell->value, fifths));
}

void move_bar(lesson::Bar& bar, int fifths) {
  for (lesson::ChordMark& mark : bar.chords) mark.chord = theory::shifted(mark.chord, fifths);
  for (lesson::Word& word : bar.texts) word.text = shifted_text(word.text, fifths);
  for (lesson::Event& event : bar.events) {
    for (lesson::Note& note : event.notes) move_note(note, fifths);
  }
}

void move_form(lesson::Form& form, int fifths) {
  form.bars.value = shifted_form(form.bars.value, fifths);
  for (lesson::FormBar& bar : form.chart) {
    for (theory::ChordToken& chord : bar.chords) chord = theory::shifted(chord, fifths);
  }
}

void move_example(lesson::Example& example, const theory::Key& key) {
  const int fifths = fifths_between(example.key, key);
  example.key = key;
  move_text(example.title, fifths);
  move_text(example.intro, fifths);
  for (lesson::Prose& note : example.practice) move_text(note, fifths);
  for (lesson::Bar& bar : example.music.bars) move_bar(bar, fifths);
  if (example.form) move_form(*example.form, fifths);
  if (example.neck && example.neck->chord) {
    example.neck->chord->value = theory::shifted(example.neck->chord->value, fifths);
  }
  for (lesson::Shape& shape : example.shapes) shape.chord = theory::shifted(shape.chord, fifths);
}

// The symbol of a "{{chord Am7}}": [begin, end).
std::pair<std::size_t, std::size_t> symbol_in(std::string_view braces) {
  constexpr std::string_view word = "chord";
  const std::size_t begin = braces.find_first_not_of(" \t", braces.find(word) + word.size());
  const std::size_t last = braces.find_last_not_of(" \t", braces.size() - 3);
  return {begin, last + 1};
}

}  // namespace

MovedKeys moved_keys(const lesson::Lesson& lesson, const theory::Key& key) {
  MovedKeys keys{key, {}};
  const int fifths = fifths_between(lesson.key, key);
  for (const lesson::Example& example : lesson.examples) {
    const theory::Key moved{theory::shifted(example.key.tonic, fifths), example.key.mode};
    keys.examples.push_back(theory::has_signature(moved) ? moved : theory::enharmonic_key(moved));
  }
  return keys;
}

int fifths_between(const theory::Key& from, const theory::Key& to) {
  return to.tonic.fifths() - from.tonic.fifths();
}

void move_names(lesson::Lesson& lesson, const MovedKeys& keys) {
  const int fifths = fifths_between(lesson.key, keys.lesson);
  lesson.key = keys.lesson;
  move_text(lesson.title, fifths);
  move_text(lesson.subtitle, fifths);
  move_text(lesson.intro, fifths);
  for (lesson::Prose& note : lesson.practice) move_text(note, fifths);
  for (std::size_t i = 0; i < lesson.examples.size(); ++i) move_example(lesson.examples[i], keys.examples[i]);
}

std::string shifted_chord(std::string_view text, int fifths) {
  const auto token = theory::parse_chord(text);
  const auto* chord = token ? std::get_if<theory::Chord>(&*token) : nullptr;
  if (chord == nullptr || fifths == 0) return std::string(text);
  const theory::Chord moved = theory::shifted(*chord, fifths);
  const std::size_t root = chord->root.to_string().size();
  const std::size_t bass = chord->bass ? chord->bass->to_string().size() : 0;
  std::string written = moved.root.to_string() + std::string(text.substr(root, text.size() - root - bass));
  if (moved.bass) written += moved.bass->to_string();
  // How the kind is written stays, wherever that still says the same.
  if (theory::parse_chord(written) == std::optional<theory::ChordToken>(moved)) return written;
  return theory::to_string(moved);
}

std::string shifted_form(std::string_view bars, int fifths) {
  constexpr std::string_view between = " \t\r\n|:,";
  std::string out;
  while (!bars.empty()) {
    const std::size_t begin = std::min(bars.find_first_not_of(between), bars.size());
    out += bars.substr(0, begin);
    bars.remove_prefix(begin);
    const std::size_t end = std::min(bars.find_first_of(between), bars.size());
    out += shifted_chord(bars.substr(0, end), fifths);
    bars.remove_prefix(end);
  }
  return out;
}

std::string shifted_text(std::string_view text, int fifths) {
  if (fifths == 0 || text.find("{{") == std::string_view::npos) return std::string(text);
  std::string out;
  for (const lesson::TextPart& part : lesson::parse_placeholders(text)) {
    const std::string_view written = text.substr(part.begin, part.end - part.begin);
    const auto* placeholder = std::get_if<lesson::Placeholder>(&part.value);
    if (placeholder == nullptr || !std::holds_alternative<lesson::ChordPlaceholder>(*placeholder)) {
      out += written;
      continue;
    }
    const auto [begin, end] = symbol_in(written);
    out += written.substr(0, begin);
    out += shifted_chord(written.substr(begin, end - begin), fifths);
    out += written.substr(end);
  }
  return out;
}

}  // namespace fretsheaf::transposition
