#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "theory/pitch.h"

namespace fretsheaf::fretboard {

// Where a finger goes. Strings count from 1, the tab's top line (as MusicXML counts); frets from the capo, 0 is open.
struct Place {
  int string = 1;
  int fret = 0;

  bool operator==(const Place&) const = default;
};

// A neck as a lesson sets it up: its tuning, how many frets, where the capo is. All arithmetic of places is here.
struct Neck {
  std::vector<theory::Pitch> tuning;  // sounding, open strings without capo, the tab's bottom line first
  int frets = 24;                     // of the bare neck
  int capo = 0;
  bool short_fifth_string = false;  // the tab's bottom line begins at the neck's fifth fret; its frets are the neck's

  int strings() const { return static_cast<int>(tuning.size()); }
  // REQUIRES: 1 <= string <= strings().
  const theory::Pitch& open_pitch(int string) const { return tuning[tuning.size() - static_cast<std::size_t>(string)]; }
  bool is_short(int string) const { return short_fifth_string && string == strings(); }
  // The fret of the other strings where this one's open sound begins: 0, but 5 on a short string.
  int nut(int string) const { return is_short(string) ? 5 : 0; }
  // How far up the neck a place is, in frets: its own, but 5 for an open short string.
  int level(Place place) const { return place.fret > 0 ? place.fret : nut(place.string); }

  // The MIDI number that sounds: tuning + capo + fret. A banjo's short string has its nut where the others have their
  // fifth fret: tuning + capo + fret − 5 when fretted, and open (fret 0, though it begins at 5) tuning + capo, as
  // players retune it by the capo's frets.
  int midi(Place place) const;
  // The highest fret number that the lesson may write (counted from the capo).
  int last_fret() const { return frets - capo; }
  // Whether that fret exists on that string (a short string has open, then 6 and up).
  bool has(Place place) const;
  // The harmonic's sounding pitch for a node at that fret: the 2nd partial at 12, the 3rd at 7 and 19, the 4th at 5 and
  // 24, the 5th at 4, 9, 16 and 28, the 6th at 3 and 31 (common practice), in the equal-tempered semitone nearest to
  // it; nullopt where no natural harmonic lies there. Nodes are counted from the capo, on a short string from its nut.
  // A node may lie past the last fret, so has() is not asked.
  std::optional<int> harmonic_midi(Place place) const;
  // What a note there sounds: a harmonic its partial, or where none lies what its string stopped there does.
  int sounding_midi(Place place, bool harmonic) const;
};

// The label that lesson files give each string, the top line first: the open string's letter (with # or b); where two
// share a letter the higher sounding one is lower case; where three share it, the number of the line.
// Of two that sound the same the upper line counts as the higher.
std::vector<std::string> string_labels(const Neck& neck);

// The string that a row's label means, nullopt where it means none or could mean two: its number, its label as above,
// or, where one string alone has the letter, that letter in either case ("g" for "G", "eb" for "Eb"). A letter that
// three strings share means none of them.
std::optional<int> string_of_label(const Neck& neck, std::string_view label);

}  // namespace fretsheaf::fretboard
