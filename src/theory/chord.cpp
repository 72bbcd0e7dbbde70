#include "theory/chord.h"

#include <algorithm>

#include "theory/chord_kinds.h"
#include "theory/interval.h"

namespace fretsheaf::theory {

namespace {

std::string alteration_text(const std::vector<Degree>& alterations) {
  std::string text;
  for (const Degree& degree : alterations) text += degree.to_string();
  return text;
}

// The alterations of one number take the place of the kind's own tone of that number: b9 and #9 both stand in for 9.
bool replaced(const Degree& tone, const Chord& chord) {
  return std::ranges::any_of(chord.alterations, [&](const Degree& altered) { return altered.number == tone.number; });
}

}  // namespace

std::vector<Degree> chord_degrees(const Chord& chord) {
  std::vector<Degree> degrees;
  for (const Degree& tone : tones_of(entry_of(chord.kind))) {
    if (!replaced(tone, chord)) degrees.push_back(tone);
  }
  degrees.insert(degrees.end(), chord.alterations.begin(), chord.alterations.end());
  std::ranges::stable_sort(degrees, [](const Degree& a, const Degree& b) {
    return a.number != b.number ? a.number < b.number : a.alteration < b.alteration;
  });
  return degrees;
}

std::vector<NoteName> chord_tones(const Chord& chord) {
  std::vector<NoteName> names;
  for (const Degree& degree : chord_degrees(chord)) {
    names.push_back(note_name_from_fifths(chord.root.fifths() + fifths_of(degree)));
  }
  return names;
}

Chord shifted(Chord chord, int fifths) {
  chord.root = practical(shifted(chord.root, fifths));
  if (chord.bass) chord.bass = practical(shifted(*chord.bass, fifths));
  return chord;
}

ChordToken shifted(const ChordToken& token, int fifths) {
  if (const auto* chord = std::get_if<Chord>(&token)) return shifted(*chord, fifths);
  return token;
}

Degree degree_in_chord(const Chord& chord, NoteName note) {
  return degree_above(chord.root, note);
}

std::vector<std::string> chord_kind_suffixes() {
  std::vector<std::string> suffixes;
  for (const ChordKindEntry& entry : chord_kinds()) {
    suffixes.emplace_back(entry.suffix);
    if (!entry.other_suffix.empty()) suffixes.emplace_back(entry.other_suffix);
  }
  return suffixes;
}

std::string to_string(const Chord& chord) {
  std::string text = chord.root.to_string();
  text += entry_of(chord.kind).suffix;
  text += alteration_text(chord.alterations);
  if (chord.bass) text += "/" + chord.bass->to_string();
  return text;
}

ChordSymbolParts symbol_parts(const Chord& chord) {
  const ChordKindEntry& entry = entry_of(chord.kind);
  return {chord.root, std::string(entry.on_line), std::string(entry.raised) + alteration_text(chord.alterations),
          chord.bass};
}

}  // namespace fretsheaf::theory
