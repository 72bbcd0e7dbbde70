#pragma once

#include <optional>
#include <span>
#include <vector>

#include "score/metric_tree.h"
#include "score/score.h"

namespace fretsheaf::score {

// A stretch of a bar that is written as one tuplet: `actual` units in the time of `normal`.
struct TupletSpan {
  Rational begin;
  Rational length;
  int actual = 3;
  int normal = 2;
  std::optional<NoteValue> unit;  // nullopt where no written value is short enough

  Rational end() const { return begin + length; }
};

// Where a bar needs tuplets, in order. `joints` are the places where something begins or ends there, the bar's own
// begin and end included, in rising order.
//  - Equal parts that fill one beat, two beats or four are one tuplet; of two beats the parts may be divided further
//    and the outer ones held in or out.
//  - Within a beat the tuplet is as small as holds it whole: a triplet of sixteenths may fill half a beat, or one count
//    of a dotted beat. Two or four parts of a dotted beat are a duplet or quadruplet (common practice).
//  - What is not regular is a tuplet over the beat, in units that every joint is one of, or a half or quarter of one.
//  - `normal` is the power of two next below `actual`; over dotted beats three times one (five in the time of three,
//    seven of six), and 3 for a duplet.
std::vector<TupletSpan> tuplet_spans(const MetricSpan& bar, std::span<const Rational> joints);

// The written values of what lasts from `from` to `to` inside a tuplet, as few as can be. Rests stand on multiples of
// their own value and have no dots. Empty where no value is short enough.
std::vector<NoteValue> split_in_tuplet(const TupletSpan& tuplet, Rational from, Rational to, bool rest);

}  // namespace fretsheaf::score
