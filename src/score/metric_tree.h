#pragma once

#include <span>
#include <vector>

#include "theory/meter.h"
#include "theory/rational.h"

namespace fretsheaf::score {

using theory::Rational;

// A bar as a tree of spans that notation keeps visible: bar, half bar, beats, halves of beats … (common practice). A
// bar of four beats is two halves of two; of six, two of three; of nine, three of three; written groups stand between
// bar and beat. A beat divides in two, a dotted one in three.
struct MetricSpan {
  Rational begin;
  Rational length;
  bool within_beat = false;       // a beat or a part of one
  std::vector<MetricSpan> parts;  // written out down to the beat; what a beat divides into is worked out

  Rational end() const { return begin + length; }
  bool holds(Rational from, Rational to) const { return begin <= from && to <= end(); }
};

MetricSpan metric_tree(const theory::Meter& meter);

// The next level down, without a gap. A span of one 2^-k-th divides in two, any other in its counts: three for a dotted
// value, five … Points into the span or into `storage`.
std::span<const MetricSpan> parts_of(const MetricSpan& span, std::vector<MetricSpan>& storage);

// The beats in order.
std::vector<MetricSpan> beats_of(const MetricSpan& bar);

}  // namespace fretsheaf::score
