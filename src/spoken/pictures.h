#pragma once

#include <string>

#include "spoken/phrases.h"

namespace fretsheaf::spoken {

// A part of the neck: its frets, then string by string from the bottom line up the places that are marked.
std::string neck_said(const score::NeckPicture& neck, const Phrases& phrases);

// How a hand holds a chord: every string from the bottom line up, open, not played, or its fret and finger.
std::string box_said(const score::ChordBox& box, const Phrases& phrases);

// A form bar by bar; bars in a row that are the same are told at once.
std::string form_said(const score::Example& example, const Phrases& phrases);

}  // namespace fretsheaf::spoken
