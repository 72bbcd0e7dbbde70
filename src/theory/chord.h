#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "theory/degree.h"
#include "theory/key.h"
#include "theory/pitch.h"

namespace fretsheaf::theory {

// The kinds of the lesson format, in its order.
enum class ChordKind {
  major,
  minor,
  power,
  sixth,
  minor_sixth,
  six_nine,
  dominant,
  major_seventh,
  minor_seventh,
  minor_major_seventh,
  diminished,
  diminished_seventh,
  half_diminished,
  augmented,
  augmented_seventh,
  suspended_second,
  suspended_fourth,
  dominant_suspended,
  added_ninth,
  minor_added_ninth,
  ninth,
  major_ninth,
  minor_ninth,
  eleventh,
  minor_eleventh,
  thirteenth,
  major_thirteenth,
  minor_thirteenth
};

// A chord with a root: what "Am7", "Bb/D" or "G7b9" say.
struct Chord {
  NoteName root;
  ChordKind kind = ChordKind::major;
  std::vector<Degree> alterations;  // 9, 11 and 13 keep those numbers here: {9, -1} is b9; as written
  std::optional<NoteName> bass;

  bool operator==(const Chord&) const = default;
};

// A Roman numeral, still without a key. `relative_to` is what follows a slash: the ii of "V7/ii".
// The case gives the triad where the kind leaves it open: "i7" is a minor seventh, "imaj7" a minor with a major one,
// "ii7b5" half-diminished. A kind that says its own third is taken at its word after capitals ("IIm7", "VII°") and may
// say the case's again ("iim7"); after small letters one with a major third ("v+", "ii6/9") contradicts and is refused.
struct RomanNumeral {
  Degree degree;                    // number 1 to 7, alteration as written
  bool accidental_written = false;  // without one it stands on the key's own scale
  bool lower_case = false;
  ChordKind kind = ChordKind::major;  // the kind with the case's triad taken in: "i7" is minor_seventh
  std::vector<Degree> alterations;
  std::optional<Degree> relative_to;
  bool relative_accidental_written = false;
  bool relative_lower_case = false;

  bool operator==(const RomanNumeral&) const = default;
};

struct NoChord {
  bool operator==(const NoChord&) const = default;
};

// What a chord row may hold.
using ChordToken = std::variant<Chord, RomanNumeral, NoChord>;

// The whole text, else nullopt. "N.C." is NoChord. Letters A to G are a symbol; i, v, I, V … a numeral. The kind is the
// longest that fits: "Cb5" is the power chord on Cb. Alterations stand after a seventh or more, none of them twice.
std::optional<ChordToken> parse_chord(std::string_view text);
// What may follow a root, alterations apart ("m7b5" and "ø"), for suggestions.
std::vector<std::string> chord_kind_suffixes();

// The chord that a numeral means in a key ("bVII" in A minor is G; "V7/ii" in C is A7). Without an accidental it stands
// on the key's own scale, but a diminished chord (°, °7, ø) on vii in a minor key stands on the raised seventh; with
// one it is counted in the major scale on the tonic. After a slash the same is done in the key which that numeral
// names, major or minor by its case. A root past a double accidental is the practical one.
Chord resolve(const RomanNumeral& numeral, const Key& key);
// The same of whatever a chord row holds: a chord is itself; nullopt of N.C.
std::optional<Chord> resolve(const ChordToken& token, const Key& key);

// The tones from the root up, as degrees of the chord: the kind's own ("m7" is 1 b3 5 b7), an altered one in place of
// the kind's of that number; 9, 11 and 13 keep their numbers.
std::vector<Degree> chord_degrees(const Chord& chord);
// Their names, exactly spelled: Cdim7 is C Eb Gb Bbb, and Cbdim7 has a Bbbb (see practical()).
std::vector<NoteName> chord_tones(const Chord& chord);

// Root and bass moved along the line of fifths (see shifted of a name), each to its practical() name. Numerals and N.C.
// stay: they follow their key.
Chord shifted(Chord chord, int fifths);
ChordToken shifted(const ChordToken& token, int fifths);

// The note's degree counted from the chord's root, 1 to 7, spelled as the note is.
Degree degree_in_chord(const Chord& chord, NoteName note);

// As a lesson file writes it: "Am7b5", "Bb/D".
std::string to_string(const Chord& chord);
std::string to_string(const RomanNumeral& numeral);
std::string to_string(const ChordToken& token);

// The symbol in parts, for setting in type: the root's letter and accidental, the part on the line ("m", "dim"), the
// raised part ("7", "maj7", "b9 …") and the bass.
struct ChordSymbolParts {
  NoteName root;
  std::string on_line;
  std::string raised;  // flats and sharps as 'b' and '#'
  std::optional<NoteName> bass;
};
ChordSymbolParts symbol_parts(const Chord& chord);

}  // namespace fretsheaf::theory
