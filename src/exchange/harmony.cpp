#include "exchange/harmony.h"

#include <algorithm>

namespace fretsheaf::exchange {

using theory::ChordKind;

namespace {

struct KindValue {
  ChordKind kind;
  const char* value;
};

// Where the standard has no value of its own, the nearest, to which degrees are added: see added_degree.
constexpr KindValue kind_values[] = {
    {ChordKind::major, "major"},
    {ChordKind::minor, "minor"},
    {ChordKind::power, "power"},
    {ChordKind::sixth, "major-sixth"},
    {ChordKind::minor_sixth, "minor-sixth"},
    {ChordKind::six_nine, "major-sixth"},
    {ChordKind::dominant, "dominant"},
    {ChordKind::major_seventh, "major-seventh"},
    {ChordKind::minor_seventh, "minor-seventh"},
    {ChordKind::minor_major_seventh, "major-minor"},
    {ChordKind::diminished, "diminished"},
    {ChordKind::diminished_seventh, "diminished-seventh"},
    {ChordKind::half_diminished, "half-diminished"},
    {ChordKind::augmented, "augmented"},
    {ChordKind::augmented_seventh, "augmented-seventh"},
    {ChordKind::suspended_second, "suspended-second"},
    {ChordKind::suspended_fourth, "suspended-fourth"},
    {ChordKind::dominant_suspended, "suspended-fourth"},
    {ChordKind::added_ninth, "major"},
    {ChordKind::minor_added_ninth, "minor"},
    {ChordKind::ninth, "dominant-ninth"},
    {ChordKind::major_ninth, "major-ninth"},
    {ChordKind::minor_ninth, "minor-ninth"},
    {ChordKind::eleventh, "dominant-11th"},
    {ChordKind::minor_eleventh, "minor-11th"},
    {ChordKind::thirteenth, "dominant-13th"},
    {ChordKind::major_thirteenth, "major-13th"},
    {ChordKind::minor_thirteenth, "minor-13th"},
};

}  // namespace

const char* kind_value(ChordKind kind) {
  for (const KindValue& row : kind_values) {
    if (row.kind == kind) return row.value;
  }
  return "other";
}

std::string step_name(theory::Letter letter) {
  return std::string(1, "CDEFGAB"[static_cast<int>(letter)]);
}

namespace {

// A tone that the kind's value does not hold yet.
std::optional<theory::Degree> added_degree(ChordKind kind) {
  switch (kind) {
    case ChordKind::six_nine:
    case ChordKind::added_ninth:
    case ChordKind::minor_added_ninth:
      return theory::Degree{9, 0};
    case ChordKind::dominant_suspended:
      return theory::Degree{7, -1};
    default:
      return std::nullopt;
  }
}

// Whether the kind's own chord has that number, so that an alteration changes it rather than adding one.
bool holds(const theory::Chord& chord, int number) {
  theory::Chord plain = chord;
  plain.alterations.clear();
  const std::vector<theory::Degree> degrees = theory::chord_degrees(plain);
  return std::any_of(degrees.begin(), degrees.end(), [&](const theory::Degree& own) { return own.number == number; });
}

// The kind's text has it already. A degree's alteration counts from the dominant chord's own tone in an added one, from
// the chord's in an altered one (MusicXML 4.0, degree-alter): an added seventh is minor already.
void write_degree(Element harmony, const theory::Degree& degree, const char* type) {
  Element element = harmony.add("degree").set("print-object", "no");
  element.add("degree-value", degree.number);
  element.add("degree-alter", degree.number == 7 ? degree.alteration + 1 : degree.alteration);
  element.add("degree-type", type);
}

void write_step(Element parent, const char* step, const char* alter, const theory::NoteName& name) {
  parent.add(step, step_name(name.letter));
  if (name.alteration != 0) parent.add(alter, name.alteration);
}

}  // namespace

void write_harmony(Element measure, const score::ChordMark& mark, long long offset) {
  Element harmony = measure.add("harmony");
  if (!mark.chord) {
    // The schema wants a root; with the kind "none" it is not shown.
    harmony.add("root").add("root-step", "C").set("text", "");
    harmony.add("kind", "none").set("text", "N.C.");
  } else {
    const theory::Chord& chord = *mark.chord;
    write_step(harmony.add("root"), "root-step", "root-alter", chord.root);
    const theory::ChordSymbolParts parts = theory::symbol_parts(chord);
    harmony.add("kind", kind_value(chord.kind)).set("text", parts.on_line + parts.raised);
    if (chord.bass) write_step(harmony.add("bass"), "bass-step", "bass-alter", *chord.bass);
    if (const auto added = added_degree(chord.kind)) write_degree(harmony, *added, "add");
    for (const theory::Degree& degree : chord.alterations) {
      write_degree(harmony, degree, holds(chord, degree.number) ? "alter" : "add");
    }
  }
  if (offset != 0) harmony.add("offset", offset);
  harmony.add("staff", 1);
}

}  // namespace fretsheaf::exchange
