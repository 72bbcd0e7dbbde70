#pragma once

#include <optional>
#include <vector>

#include "fretboard/neck.h"
#include "theory/chord.h"

// Shapes for chord boxes. Frets stand bottom line first, as shapes are written ("x32010"), counted from the capo.
namespace fretsheaf::fretboard {

using ShapeFrets = std::vector<std::optional<int>>;  // one a string; nullopt is muted, 0 open

// The first finger lies across all strings from that one up to the top line.
struct Barre {
  int fret = 0;
  int bottom_string = 0;

  bool operator==(const Barre&) const = default;
};

struct ChordShape {
  ShapeFrets frets;
  std::vector<int> fingers;  // one a string, 1 to 4; 0 where none stops it
  std::optional<Barre> barre;

  bool operator==(const ChordShape&) const = default;
};

// The fingers for given frets: one a note, in the order of frets, then of strings from the bottom line; a barre where
// the lowest fret stops two strings or more and no string from there to the top line sounds open (common practice), if
// all others are stopped too or four fingers would not do otherwise. nullopt where four do not suffice, or the frets
// lie further apart than a hand's most reach. Scale length in mm. REQUIRES: as many frets as strings.
std::optional<ChordShape> fingered_shape(const ShapeFrets& frets, const Neck& neck, double scale_length);

// Shapes that hold the chord, the best first, at most so many; empty where no hand holds it. All its tones are there;
// where they are more than the strings, or only a worse shape has them, the fifth goes first (if it is the plain one of
// four tones or more), then of an eleventh or thirteenth chord the ninth, then of a thirteenth the eleventh. The root
// (or the named bass) sounds lowest wherever a shape of this neck allows that; where strings do not rise from the
// bottom line to the top (a re-entrant ukulele, a banjo with its short string) no tone counts as the bass and any may
// be lowest. A banjo's short string is open, where that is a tone of the chord, or muted.
std::vector<ChordShape> chord_shapes(const theory::Chord& chord, const Neck& neck, double scale_length,
                                     std::size_t most = 1);

// The same shape so many frets up the neck (down where negative); at the nut its lowest strings may come to be open.
// nullopt where the neck has no such frets, or the shape has open strings, which stay: it moves by 0 alone.
std::optional<ShapeFrets> moved_shape(const ShapeFrets& frets, int by, const Neck& neck);

}  // namespace fretsheaf::fretboard
