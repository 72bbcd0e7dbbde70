#include "exchange/take_harmony.h"

#include <algorithm>
#include <string_view>

#include "exchange/harmony.h"
#include "exchange/xml_text.h"
#include "theory/chord_kinds.h"

namespace fretsheaf::exchange {

using theory::Chord;
using theory::ChordKind;
using theory::Degree;

namespace {

std::optional<theory::NoteName> name_of(const Xml& parent, const char* step, const char* alter) {
  const std::string letter = text_of(parent, step);
  if (letter.size() != 1) return std::nullopt;
  auto name = theory::parse_note_name(letter);
  if (!name || !has(parent, alter)) return name;
  const auto by = decimal(text_of(parent, alter));
  if (!by || by->denominator() != 1 || by->numerator() < -2 || by->numerator() > 2) return std::nullopt;
  name->alteration = static_cast<int>(by->numerator());
  return name;
}

// A degree that is put to a kind makes another kind where the format has one.
std::optional<ChordKind> with_added(ChordKind kind, Degree degree) {
  const bool ninth = degree == Degree{9, 0};
  const bool second = degree == Degree{2, 0};
  if (kind == ChordKind::sixth && ninth) return ChordKind::six_nine;
  if (kind == ChordKind::major && (ninth || second)) return ChordKind::added_ninth;
  if (kind == ChordKind::minor && (ninth || second)) return ChordKind::minor_added_ninth;
  if (kind == ChordKind::suspended_fourth && degree == Degree{7, -1}) return ChordKind::dominant_suspended;
  return std::nullopt;
}

// Puts one <degree> to the chord.
bool put(const Xml& element, Chord& chord) {
  const auto number = whole(text_of(element, "degree-value"));
  const auto alter = decimal(has(element, "degree-alter") ? text_of(element, "degree-alter") : "0");
  if (!number || !alter || alter->denominator() != 1 || *number < 1 || *number > 13) return false;
  const std::string type = text_of(element, "degree-type");
  auto by = static_cast<int>(alter->numerator());
  if (by < -2 || by > 2 || type == "subtract") return false;
  // Counted from the dominant's own seventh.
  if (type == "add" && *number == 7) --by;
  const Degree degree{*number, by};
  if (type == "add") {
    if (const auto other = with_added(chord.kind, degree)) {
      chord.kind = *other;
      return true;
    }
  }
  chord.alterations.push_back(degree);
  return true;
}

std::optional<ChordKind> kind_of(std::string_view value) {
  for (const theory::ChordKindEntry& entry : theory::chord_kinds()) {
    if (kind_value(entry.kind) == value) return entry.kind;
  }
  return std::nullopt;
}

std::optional<Chord> by_kind(const Xml& harmony, const Chord& root) {
  Chord chord = root;
  const auto kind = kind_of(text_of(harmony, "kind"));
  if (!kind) return std::nullopt;
  chord.kind = *kind;
  for (const Xml* e : harmony.all("degree")) {
    if (!put(*e, chord)) return std::nullopt;
  }
  // The format must be able to write it.
  const auto read = theory::parse_chord(theory::to_string(chord));
  if (!read || !std::holds_alternative<Chord>(*read) || !(std::get<Chord>(*read) == chord)) return std::nullopt;
  return chord;
}

// Whether the kind's text holds all: no degree is printed beside it.
bool text_is_whole(const Xml& harmony) {
  for (const Xml* e : harmony.all("degree")) {
    if (attribute(*e, "print-object") != "no") return false;
  }
  return true;
}

// What is printed of the kind, where the format reads it and it says the kind's value.
std::optional<Chord> by_text(const Xml& harmony, const Chord& root) {
  const Xml* kind = harmony.child("kind");
  const std::string text = kind == nullptr ? std::string() : attribute(*kind, "text");
  const auto read = theory::parse_chord(root.root.to_string() + text);
  if (kind == nullptr || kind->attribute("text") == nullptr || !text_is_whole(harmony) || !read ||
      !std::holds_alternative<Chord>(*read)) {
    return std::nullopt;
  }
  Chord chord = std::get<Chord>(*read);
  const std::string value = text_of(*kind);
  if (value != "other" && value != kind_value(chord.kind)) return std::nullopt;
  chord.bass = root.bass;
  return chord;
}

}  // namespace

std::optional<theory::ChordToken> chord_of(const Xml& harmony, theory::Interval transposed) {
  if (text_of(harmony, "kind") == "none") return theory::NoChord{};
  const Xml* root = harmony.child("root");
  if (root == nullptr) return std::nullopt;
  Chord chord;
  const auto name = name_of(*root, "root-step", "root-alter");
  if (!name) return std::nullopt;
  chord.root = *name;
  if (const Xml* bass = harmony.child("bass")) {
    chord.bass = name_of(*bass, "bass-step", "bass-alter");
    if (!chord.bass) return std::nullopt;
  }
  auto found = by_text(harmony, chord);
  if (!found) found = by_kind(harmony, chord);
  if (!found) return std::nullopt;
  found->root = theory::practical(theory::transposed(found->root, transposed));
  if (found->bass) found->bass = theory::practical(theory::transposed(*found->bass, transposed));
  return *found;
}

}  // namespace fretsheaf::exchange
