#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fretboard/chord_shapes.h"
#include "fretboard/inlays.h"
#include "fretboard/neck.h"
#include "theory/chord.h"

// What is to be drawn beside the music, in no medium.
namespace fretsheaf::score {

// A place marked on a picture of the neck.
struct NeckMark {
  fretboard::Place place;
  std::string label;  // as printed: "♭3", "B♭", "2"; "" for none
  bool root = false;  // of the key, or of the chord that is shown
};

// A part of the neck with places marked.
struct NeckPicture {
  std::string title;  // "D Dorian on the neck"
  // Frets, both inclusive: from 0 with the nut and the open strings, else from the space before `first`.
  int first = 0;
  int last = 0;
  std::vector<NeckMark> marks;  // by string, the top line first, then upward; all within the part
  std::vector<fretboard::Inlay> inlays;
  bool answers = false;  // in an answer key: the student's copy lacks the marks, or their labels
};

// How a hand holds a chord.
struct ChordBox {
  theory::Chord chord;
  std::optional<theory::Chord> fingered;  // with a capo: as the hand shapes it
  fretboard::ChordShape shape;            // frets from the capo, bottom line first; fingers 0 where none is known
  std::vector<bool> roots;                // one a string: whether the chord's root sounds there
};

// A bar of a form.
struct FormCell {
  std::vector<std::optional<theory::Chord>> chords;  // at equal distances; nullopt is N.C.
  bool here = false;                                 // the example stands here
  bool begins_line = false;
  bool repeat_begin = false;
  bool repeat_end = false;
  bool same_as_previous = false;  // drawn as a bar-repeat sign
};

struct FormChart {
  std::vector<FormCell> bars;
};

}  // namespace fretsheaf::score
