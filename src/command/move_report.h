#pragma once

#include <string>

#include "sheaf/workshop.h"

namespace fretsheaf::command {

// What a move did to each example, and which notes it did not simply shift, each from place to place. REQUIRES: it
// moved.
std::string move_report(const sheaf::Transposed& result);

// The same as a JSON document:
//   {"version": 1, "from": "D dorian", "to": "E dorian", "examples": [{"example": 1, "semitones": 2,
//    "moved": [{"bar": 1, "at": "1/4", "from": {"string": 2, "fret": 5}, "to": {"string": 1, "fret": 2}}],
//    "without_fingers": [3]}]}
// `at` is counted from the full bar's start, in whole notes; strings from 1, the tab's top line; `without_fingers` are
// bars whose written fingers did not fit any more.
std::string move_document(const sheaf::Transposed& result);

}  // namespace fretsheaf::command
