#pragma once

#include <vector>

#include "score/metric_tree.h"
#include "score/score.h"

namespace fretsheaf::score {

enum class Sound { note, rest };

// The written values, in order, of what lasts from one place of a bar to another, without tuplets: as few as keep the
// bar's spans visible (common practice). A note may hide a span's middle only
//  - from its start, dotted (a dotted quarter on beat 1), inside a beat also to its end (sixteenth, dotted eighth),
//  - by simple syncopation, half of it around the middle (eighth, quarter, eighth in a half bar),
//  - in a span of three as two of the parts, or one and a half, or one around a joint.
// A rest is always a whole span, but for the first two counts of a dotted beat. Empty where no value is short enough.
std::vector<NoteValue> split(const MetricSpan& bar, Rational from, Rational to, Sound sound);

}  // namespace fretsheaf::score
