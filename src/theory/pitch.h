#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace fretsheaf::theory {

enum class Letter { C, D, E, F, G, A, B };

// A note's name without its octave: a letter and an alteration in semitones (-2 double flat … 2 double sharp).
struct NoteName {
  Letter letter = Letter::C;
  int alteration = 0;

  // Semitones above C, 0 to 11.
  int pitch_class() const;
  // Steps on the line of fifths from C: F -1, C 0, G 1 … (C# 7, Cb -7).
  int fifths() const;
  // "C", "Bb", "F#", "Bbb", "F##": as lesson files write it.
  std::string to_string() const;

  auto operator<=>(const NoteName&) const = default;
};

NoteName note_name_from_fifths(int fifths);
// "Bb", "f#", "C##": the whole text, else nullopt. Up to two accidentals.
std::optional<NoteName> parse_note_name(std::string_view text);

// The name itself up to a double accidental; past that, where music has no sign, the same sound with fewer: Bbbb is Ab.
NoteName practical(NoteName name);

// A note's name and its octave in scientific pitch notation (middle C is C4; Cb4 is a semitone under it).
struct Pitch {
  NoteName name;
  int octave = 4;

  // Middle C is 60.
  int midi() const;
  // Staff steps from C0: one a letter; C4 is 28. What a place on a staff is counted in.
  int diatonic() const { return octave * 7 + static_cast<int>(name.letter); }
  std::string to_string() const;  // "Bb3"

  bool operator==(const Pitch&) const = default;
};

// "E1", "Bb3". The whole text, octaves 0 to 9, else nullopt.
std::optional<Pitch> parse_pitch(std::string_view text);

// The pitch with that name nearest in octave so that midi() == midi. REQUIRES: name.pitch_class() == midi mod 12.
Pitch pitch_of(NoteName name, int midi);

// Equal temperament on A4 = 440 Hz.
double frequency(int midi);

}  // namespace fretsheaf::theory
