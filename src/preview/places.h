#pragma once

#include <string>
#include <vector>

#include "score/score.h"
#include "source/text.h"

namespace fretsheaf::preview {

// One note of a place in the music, as the page tells of it.
struct NotePlace {
  std::string name;    // "B♭", as the handout names notes; "" of a dead note
  std::string string;  // the string's letter
  int fret = 0;
  std::string degree;        // in the key
  std::string chord_degree;  // in the chord, "" where none is in force
  std::string manner;        // "dead", "ghost", "harmonic", else ""
  bool held = false;         // tied from before, not struck again
  int line = 1;              // where it is written
  int column = 1;
};

// What stands at one place of the music. The example, bar and `at` are those of the picture's events.
struct MusicPlace {
  int example = 1;
  int bar = 1;
  std::string at;                // from the bar's start, in whole notes, a fraction in lowest terms
  std::string kind;              // "notes", "rest", "strum", "hidden" (in a student's copy)
  std::string count;             // "2 &"
  std::string key;               // "D Dorian"
  std::string chord;             // in force, "" for none
  std::vector<NotePlace> notes;  // from the lowest up
  int line = 1;                  // where it is written in the lesson's file
  int column = 1;
};

// Every place of a score, in order. `file` is the lesson's.
std::vector<MusicPlace> music_places(const score::Score& score, const source::Text& file);

}  // namespace fretsheaf::preview
