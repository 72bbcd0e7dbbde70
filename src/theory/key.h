#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "theory/degree.h"
#include "theory/pitch.h"

namespace fretsheaf::theory {

enum class Mode { major, minor, dorian, phrygian, lydian, mixolydian, locrian };

std::string_view mode_name(Mode mode);  // "dorian"
std::vector<std::string_view> mode_names();
// The name in any case ("Dorian" too), else nullopt.
std::optional<Mode> parse_mode(std::string_view text);

struct Key {
  NoteName tonic;
  Mode mode = Mode::major;

  // Sharps (positive) or flats (negative) of the mode's own signature: D dorian 0, A mixolydian 2. Beyond ±7 no
  // signature exists; the reader refuses such keys.
  int signature() const;
  // The seven notes from the tonic up.
  std::array<NoteName, 7> scale() const;
  // The note's alteration in this signature, for a letter: F in G major is 1.
  int alteration_of(Letter letter) const;
  std::string to_string() const;  // "F# dorian"
  std::string slug() const;       // "f-sharp-dorian", as output files are named

  bool operator==(const Key&) const = default;
};

// "D dorian", "Bb major"; the mode may be left out where `default_mode` is given. nullopt where it is no key; a key of
// more than seven signs is parsed (the caller refuses it).
std::optional<Key> parse_key(std::string_view text, std::optional<Mode> default_mode = {});

// The same sound with the fewest signs ("A# major" → "Bb major"); of two with six signs the one with flats.
Key enharmonic_key(const Key& key);

// Degrees are counted in the major scale on the tonic: the third of a minor key is b3. A name that would need more than
// a double accidental is the practical one (bb7 of Cb major is Ab).
NoteName degree_name(const Key& key, Degree degree);
Degree degree_of(const Key& key, NoteName note);

}  // namespace fretsheaf::theory
