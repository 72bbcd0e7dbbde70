#include "theory/chord_kinds.h"

#include <algorithm>
#include <array>

namespace fretsheaf::theory {

namespace {

// In the order of ChordKind. Tones: the documentation of kind-value in the W3C's MusicXML 4.0 schema; the kinds that it
// lacks (sixth with ninth, added ninth, suspended seventh): common practice.
constexpr std::array<ChordKindEntry, 28> kinds = {{
    {ChordKind::major, "", "", "1 3 5", "", ""},
    {ChordKind::minor, "m", "", "1 b3 5", "m", ""},
    {ChordKind::power, "5", "", "1 5", "", "5"},
    {ChordKind::sixth, "6", "", "1 3 5 6", "", "6"},
    {ChordKind::minor_sixth, "m6", "", "1 b3 5 6", "m", "6"},
    {ChordKind::six_nine, "6/9", "", "1 3 5 6 9", "", "6/9"},
    {ChordKind::dominant, "7", "", "1 3 5 b7", "", "7"},
    {ChordKind::major_seventh, "maj7", "", "1 3 5 7", "maj", "7"},
    {ChordKind::minor_seventh, "m7", "", "1 b3 5 b7", "m", "7"},
    {ChordKind::minor_major_seventh, "mMaj7", "", "1 b3 5 7", "mMaj", "7"},
    {ChordKind::diminished, "dim", "°", "1 b3 b5", "dim", ""},
    {ChordKind::diminished_seventh, "dim7", "°7", "1 b3 b5 bb7", "dim", "7"},
    {ChordKind::half_diminished, "m7b5", "ø", "1 b3 b5 b7", "m", "7b5"},
    {ChordKind::augmented, "aug", "+", "1 3 #5", "aug", ""},
    {ChordKind::augmented_seventh, "aug7", "+7", "1 3 #5 b7", "aug", "7"},
    {ChordKind::suspended_second, "sus2", "", "1 2 5", "", "sus2"},
    {ChordKind::suspended_fourth, "sus4", "", "1 4 5", "", "sus4"},
    {ChordKind::dominant_suspended, "7sus4", "", "1 4 5 b7", "", "7sus4"},
    {ChordKind::added_ninth, "add9", "", "1 3 5 9", "add", "9"},
    {ChordKind::minor_added_ninth, "madd9", "", "1 b3 5 9", "madd", "9"},
    {ChordKind::ninth, "9", "", "1 3 5 b7 9", "", "9"},
    {ChordKind::major_ninth, "maj9", "", "1 3 5 7 9", "maj", "9"},
    {ChordKind::minor_ninth, "m9", "", "1 b3 5 b7 9", "m", "9"},
    {ChordKind::eleventh, "11", "", "1 3 5 b7 9 11", "", "11"},
    {ChordKind::minor_eleventh, "m11", "", "1 b3 5 b7 9 11", "m", "11"},
    {ChordKind::thirteenth, "13", "", "1 3 5 b7 9 11 13", "", "13"},
    {ChordKind::major_thirteenth, "maj13", "", "1 3 5 7 9 11 13", "maj", "13"},
    {ChordKind::minor_thirteenth, "m13", "", "1 b3 5 b7 9 11 13", "m", "13"},
}};

}  // namespace

std::span<const ChordKindEntry> chord_kinds() {
  return kinds;
}

const ChordKindEntry& entry_of(ChordKind kind) {
  return kinds[static_cast<std::size_t>(kind)];
}

std::vector<Degree> tones_of(const ChordKindEntry& entry) {
  std::vector<Degree> tones;
  std::string_view rest = entry.tones;
  while (!rest.empty()) {
    const std::size_t length = std::min(rest.find(' '), rest.size());
    tones.push_back(chord_degree(rest.substr(0, length)));
    rest.remove_prefix(std::min(length + 1, rest.size()));
  }
  return tones;
}

Degree chord_degree(std::string_view text) {
  Degree degree = parse_degree(text).value_or(Degree{});
  for (const std::string_view extension : {"9", "11", "13"}) {
    if (text.ends_with(extension)) degree.number += 7;
  }
  return degree;
}

}  // namespace fretsheaf::theory
