#pragma once

#include <string>

#include "layout/type.h"
#include "score/score.h"

namespace fretsheaf::layout {

// A note value as a sign beside words: the baseline of the words at y = 0, its left edge at x = 0.
Words note_sign(const score::NoteValue& value, Type& type);

// "♩ = 92": one tempo, a ladder's first and last ("60–108"), or a pair ("80 / 100").
Words tempo_sign(const score::TempoMark& tempo, Type& type);

// The same in characters of Unicode, whose names readers know: "\u2669 = 92", "\u2669. = 60\u2013108".
std::string spelled_tempo(const score::TempoMark& tempo);

// How uneven notes are played: two beamed notes of `value` equal a bracketed triplet of its double and itself.
Words swing_sign(const score::NoteValue& value, Type& type);

}  // namespace fretsheaf::layout
