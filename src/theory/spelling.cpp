#include "theory/spelling.h"

#include <cstdlib>
#include <vector>

#include "theory/arithmetic.h"

namespace fretsheaf::theory {

namespace {

int pitch_class(int midi) {
  return floor_mod(midi, 12);
}

std::optional<NoteName> chord_name(int midi, const std::optional<Chord>& chord) {
  if (!chord) return std::nullopt;
  std::vector<NoteName> names = chord_tones(*chord);
  if (chord->bass) names.push_back(*chord->bass);
  for (const NoteName& name : names) {
    if (name.pitch_class() == pitch_class(midi)) return name;
  }
  return std::nullopt;
}

std::optional<NoteName> scale_name(int midi, const Key& key) {
  for (const NoteName& name : key.scale()) {
    if (name.pitch_class() == pitch_class(midi)) return name;
  }
  return std::nullopt;
}

// The name that chord or key gives, where one does.
std::optional<NoteName> settled_name(int midi, const SpellingContext& context) {
  if (std::optional<NoteName> name = chord_name(midi, context.chord)) return name;
  return scale_name(midi, context.key);
}

// A chromatic note's two names, each counted in the major scale on the tonic.
struct Choice {
  NoteName raised;
  NoteName lowered;
};

// The note as a degree of the major scale on the tonic, or between two of them.
std::variant<NoteName, Choice> chromatic_names(int midi, const Key& key) {
  const int above_tonic = floor_mod(midi - key.tonic.pitch_class(), 12);
  for (int number = 1; number <= 7; ++number) {
    const NoteName natural = note_name_from_fifths(key.tonic.fifths() + fifths_of({number, 0}));
    const int semitones = floor_mod(natural.pitch_class() - key.tonic.pitch_class(), 12);
    if (semitones == above_tonic) return natural;
    if (semitones == above_tonic - 1) {
      const Degree next{number + 1, 0};
      const NoteName above = note_name_from_fifths(key.tonic.fifths() + fifths_of(next));
      if (floor_mod(above.pitch_class() - key.tonic.pitch_class(), 12) == above_tonic) return above;
      return Choice{note_name_from_fifths(natural.fifths() + 7), note_name_from_fifths(above.fifths() - 7)};
    }
  }
  return key.tonic;  // every semitone is one of those
}

NoteName nearer(const Choice& choice, int fifths, NoteName where_even) {
  const int raised = std::abs(choice.raised.fifths() - fifths);
  const int lowered = std::abs(choice.lowered.fifths() - fifths);
  if (raised == lowered) return where_even;
  return raised < lowered ? choice.raised : choice.lowered;
}

bool has_minor_third(const Key& key) {
  return key.scale()[2].fifths() < key.tonic.fifths();
}

// The middle of the major scale on the line of fifths lies two right of its tonic: #1 b3 #4 b7 are the nearer names,
// and of #5 and b6 the flat one. That of a minor scale with its raised sixth and seventh, b6 to 7, lies between the
// tonic and one right of it: there #1, whose sharp leads nowhere, gives way to the Phrygian b2, and #4 is the nearer.
NoteName nearer_to_key(const Choice& choice, const Key& key) {
  return nearer(choice, key.tonic.fifths() + (has_minor_third(key) ? 1 : 2), choice.lowered);
}

bool is_semitone(std::optional<int> from, int to) {
  return from && std::abs(*from - to) == 1;
}

// By the note before, where what follows says nothing: a semitone's direction, else the smaller interval. A semitone up
// from a minor key's tonic is its flat second until it rises on.
NoteName from_before(const Choice& choice, int midi, const SpellingContext& context) {
  const NoteName in_key = nearer_to_key(choice, context.key);
  if (!context.previous_midi) return in_key;
  if (is_semitone(context.previous_midi, midi)) {
    if (*context.previous_midi > midi) return choice.lowered;
    return has_minor_third(context.key) ? in_key : choice.raised;
  }
  const auto before = settled_name(*context.previous_midi, context);
  return before ? nearer(choice, before->fifths(), in_key) : in_key;
}

NoteName chosen(const Choice& choice, int midi, const SpellingContext& context) {
  if (context.next_midi && *context.next_midi != midi) {
    // Both names are as near only where a tritone follows, of which the direction says nothing: the note before does.
    if (const auto next = settled_name(*context.next_midi, context)) {
      return nearer(choice, next->fifths(), from_before(choice, midi, context));
    }
    // Nor does it of a leap from one chromatic note to another.
    if (!is_semitone(context.next_midi, midi)) return nearer_to_key(choice, context.key);
    return *context.next_midi > midi ? choice.raised : choice.lowered;
  }
  return from_before(choice, midi, context);
}

}  // namespace

NoteName spell(int midi, const SpellingContext& context) {
  if (const std::optional<NoteName> name = settled_name(midi, context)) return *name;
  const std::variant<NoteName, Choice> names = chromatic_names(midi, context.key);
  if (const auto* natural = std::get_if<NoteName>(&names)) return *natural;
  return chosen(std::get<Choice>(names), midi, context);
}

}  // namespace fretsheaf::theory
