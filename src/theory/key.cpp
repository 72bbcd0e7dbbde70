#include "theory/key.h"

#include <algorithm>
#include <cstdlib>

#include "theory/arithmetic.h"

namespace fretsheaf::theory {

namespace {

struct ModeEntry {
  Mode mode;
  std::string_view name;
  int fifths;  // its signature against that of the major key on the same tonic
};

constexpr std::array<ModeEntry, 7> modes = {{{Mode::major, "major", 0},
                                             {Mode::minor, "minor", -3},
                                             {Mode::dorian, "dorian", -2},
                                             {Mode::phrygian, "phrygian", -4},
                                             {Mode::lydian, "lydian", 1},
                                             {Mode::mixolydian, "mixolydian", -1},
                                             {Mode::locrian, "locrian", -5}}};

const ModeEntry& entry_of(Mode mode) {
  return modes[static_cast<std::size_t>(mode)];
}

// Modes are written with a capital too ("D Dorian").
std::string lower(std::string_view text) {
  std::string result(text);
  for (char& sign : result) {
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
  }
  return result;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

std::string slug_of(NoteName name) {
  std::string text = lower(NoteName{name.letter, 0}.to_string());
  if (std::abs(name.alteration) == 2) text += "-double";
  if (name.alteration > 0) text += "-sharp";
  if (name.alteration < 0) text += "-flat";
  return text;
}

}  // namespace

std::string_view mode_name(Mode mode) {
  return entry_of(mode).name;
}

std::vector<std::string_view> mode_names() {
  std::vector<std::string_view> names;
  names.reserve(modes.size());
  for (const ModeEntry& entry : modes) names.push_back(entry.name);
  return names;
}

std::optional<Mode> parse_mode(std::string_view text) {
  const std::string name = lower(text);
  const auto* const found = std::ranges::find(modes, name, &ModeEntry::name);
  if (found == modes.end()) return std::nullopt;
  return found->mode;
}

int Key::signature() const {
  return tonic.fifths() + entry_of(mode).fifths;
}

std::array<NoteName, 7> Key::scale() const {
  std::array<NoteName, 7> notes{};
  for (int step = 0; step < 7; ++step) {
    const auto letter = static_cast<Letter>((static_cast<int>(tonic.letter) + step) % 7);
    notes[static_cast<std::size_t>(step)] = {letter, alteration_of(letter)};
  }
  return notes;
}

int Key::alteration_of(Letter letter) const {
  // A key's seven notes lie side by side on the line of fifths, from one left of its major tonic to five right of it.
  return floor_div(signature() + 5 - NoteName{letter, 0}.fifths(), 7);
}

std::string Key::to_string() const {
  return tonic.to_string() + " " + std::string(mode_name(mode));
}

std::string Key::slug() const {
  return slug_of(tonic) + "-" + std::string(mode_name(mode));
}

std::optional<Key> parse_key(std::string_view text, std::optional<Mode> default_mode) {
  text = trimmed(text);
  const std::size_t space = text.find(' ');
  const std::optional<NoteName> tonic = parse_note_name(text.substr(0, space));
  const std::optional<Mode> mode =
      space == std::string_view::npos ? default_mode : parse_mode(trimmed(text.substr(space)));
  if (!tonic || !mode) return std::nullopt;
  return Key{*tonic, *mode};
}

Key enharmonic_key(const Key& key) {
  // Twelve fifths lead back to the same sound. At six signs the flats are taken, as the lesson format says.
  const int fewest = floor_mod(key.signature() + 6, 12) - 6;
  return {note_name_from_fifths(key.tonic.fifths() + fewest - key.signature()), key.mode};
}

NoteName degree_name(const Key& key, Degree degree) {
  return practical(note_name_from_fifths(key.tonic.fifths() + fifths_of(degree)));
}

Degree degree_of(const Key& key, NoteName note) {
  return degree_above(key.tonic, note);
}

}  // namespace fretsheaf::theory
