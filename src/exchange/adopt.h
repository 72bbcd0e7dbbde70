#pragma once

#include <optional>
#include <string>

#include "source/diagnostic.h"
#include "source/text.h"

namespace fretsheaf::exchange {

// What is chosen for a score that is taken in; empty is by what the score says.
struct AdoptWish {
  std::string part;        // by its name, or its number from 1
  std::string instrument;  // one of fretboard::instruments()
  std::string title;       // where the score has none
};

struct Adopted {
  source::Files files;  // the document as it was read
  source::Diagnostics diagnostics;
  std::optional<std::string> lesson;  // a lesson file's text; only where there are no errors
};

// Makes a lesson of one part of a MusicXML score, plain or compressed. Strings and frets that the score has are kept,
// those that it lacks found by the fingering search. Whatever a lesson cannot keep is a warning that names its
// measures; more than one line of music, percussion, and meters and tuplets beyond the lesson format are errors. What
// is written is read again before it is given, so that a lesson given is one without errors. `name` is how diagnostics
// call the file. Any bytes are answered within about a second and 200 MB.
Adopted adopt(const std::string& name, std::string bytes, const AdoptWish& wish);

}  // namespace fretsheaf::exchange
