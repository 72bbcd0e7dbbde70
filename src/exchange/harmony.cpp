#include "exchange/harmony.h"

#include <algorithm>

namespace fretsheaf::exchange {

using theory::ChordKind;

const char* kind_value(ChordKind kind) {
  switch (kind) {
    case ChordKind::major:
      return "major";
    case ChordKind::minor:
      return "minor";
    case ChordKind::power:
      return "power";
    case ChordKind::sixth:
      return "major-sixth";
    case ChordKind::minor_sixth:
      return "minor-sixth";
    case ChordKind::six_nine:
      return "major-sixth";  // and a ninth added as a degree
    case ChordKind::dominant:
      return "dominant";
    case ChordKind::major_seventh:
      return "major-seventh";
    case ChordKind::minor_seventh:
      return "minor-seventh";
    case ChordKind::minor_major_seventh:
      return "major-minor";
    case ChordKind::diminished:
      return "diminished";
    case ChordKind::diminished_seventh:
      return "diminished-seventh";
    case ChordKind::half_diminished:
      return "half-diminished";
    case ChordKind::augmented:
      return "augmented";
    case ChordKind::augmented_seventh:
      return "augmented-seventh";
    case ChordKind::suspended_second:
      return "suspended-second";
    case ChordKind::suspended_fourth:
      return "suspended-fourth";
    case ChordKind::dominant_suspended:
      return "suspended-fourth";  // and a minor seventh added
    case ChordKind::added_ninth:
      return "major";
    case ChordKind::minor_added_ninth:
      return "minor";
    case ChordKind::ninth:
      return "dominant-ninth";
    case ChordKind::major_ninth:
      return "major-ninth";
    case ChordKind::minor_ninth:
      return "minor-ninth";
    case ChordKind::eleventh:
      return "dominant-11th";
    case ChordKind::minor_eleventh:
      return "minor-11th";
    case ChordKind::thirteenth:
      return "dominant-13th";
    case ChordKind::major_thirteenth:
      return "major-13th";
    case ChordKind::minor_thirteenth:
      return "minor-13th";
  }
  return "none";
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

// A degree's alteration counts from the dominant chord's own tone in an added one, from the chord's in an altered one
// (MusicXML 4.0, degree-alter): an added seventh is minor already.
void write_degree(Element harmony, const theory::Degree& degree, const char* type) {
  Element element = harmony.add("degree");
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
    write_step(harmony.add("root"), "root-step", "root-alter", {});
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
