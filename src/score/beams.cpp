#include "score/beams.h"

#include <algorithm>
#include <vector>

#include "score/values.h"

namespace fretsheaf::score {
namespace {

const Rational quarter(1, 4);
const Rational eighth(1, 8);

struct Window {
  Rational begin;
  Rational end;
};

using Windows = std::vector<Window>;

bool starts_within(const Event& event, const Window& window) {
  return window.begin <= event.at && event.at < window.end;
}

template <typename Test>
bool all_within(const Bar& bar, const Window& window, Test test) {
  return std::all_of(bar.events.begin(), bar.events.end(),
                     [&](const Event& event) { return !starts_within(event, window) || test(event); });
}

bool plain_eighth_or_longer(const Event& event) {
  return !event.tuplet && (event.value.log2 < 3 || event.value == NoteValue{3, 0});
}

bool plain_eighth(const Event& event) {
  return !event.tuplet && !event.rest && event.value == NoteValue{3, 0};
}

// Whether the eighths of so many quarters go together.
bool joins(const Bar& bar, const Window& window) {
  const Rational length = window.end - window.begin;
  if (length == quarter * Rational(2)) return all_within(bar, window, plain_eighth_or_longer);
  return length == quarter * Rational(3) && all_within(bar, window, plain_eighth);
}

bool of_quarters(const MetricSpan& span) {
  return std::all_of(span.parts.begin(), span.parts.end(),
                     [](const MetricSpan& part) { return part.within_beat && part.length == quarter; });
}

void add_beat(const Bar& bar, const MetricSpan& beat, Windows& windows) {
  const Window whole{beat.begin, beat.end()};
  const bool longer = beat.length.numerator() == 1 && beat.length > quarter;
  if (!longer || joins(bar, whole)) {
    windows.push_back(whole);
    return;
  }
  std::vector<MetricSpan> storage;
  for (const MetricSpan& half : parts_of(beat, storage)) add_beat(bar, half, windows);
}

void add_windows(const Bar& bar, const MetricSpan& span, bool one_group, Windows& windows) {
  const Window whole{span.begin, span.end()};
  if (span.within_beat) {
    add_beat(bar, span, windows);
  } else if (one_group && of_quarters(span) && joins(bar, whole)) {
    windows.push_back(whole);
  } else {
    for (const MetricSpan& part : span.parts) add_windows(bar, part, true, windows);
  }
}

bool can_beam(const Event& event) {
  return !event.rest && event.value.beams() > 0;
}

// How many beams go from a symbol to the next one of its group.
int beams_between(const Event& left, const Event& right, Rational window_begin) {
  const int both = std::min(left.value.beams(), right.value.beams());
  const bool at_eighth = ((right.at - window_begin) / eighth).denominator() == 1;
  return !left.tuplet && both >= 3 && at_eighth ? 1 : both;
}

bool one_group(const Event& left, const Event& right, const Window& window) {
  if (!can_beam(left) || !can_beam(right) || left.tuplet != right.tuplet) return false;
  return left.tuplet || (starts_within(left, window) && starts_within(right, window));
}

// Whether a symbol does not begin a value twice its own: then its partial beams belong to what is before it.
bool ends_a_pair(const Bar& bar, const Event& event, Rational window_begin) {
  Rational from = event.at - window_begin;
  if (event.tuplet) {
    const Tuplet& tuplet = bar.tuplets[static_cast<std::size_t>(*event.tuplet)];
    from = (event.at - bar.events[static_cast<std::size_t>(tuplet.first)].at) * Rational(tuplet.actual, tuplet.normal);
  }
  const Rational pair(1, std::int64_t{1} << (event.value.log2 - 1));
  return (from / pair).denominator() != 1;
}

void drop_brackets(Bar& bar) {
  for (Tuplet& tuplet : bar.tuplets) {
    if (tuplet.first == tuplet.last) continue;
    tuplet.bracket = false;
    for (int i = tuplet.first; i < tuplet.last; ++i) {
      if (bar.events[static_cast<std::size_t>(i)].beams_right == 0) tuplet.bracket = true;
    }
  }
}

}  // namespace

void beam(const MetricSpan& tree, Bar& bar) {
  Windows windows;
  add_windows(bar, tree, bar.meter.groups.size() == 1, windows);
  std::size_t window = 0;
  for (std::size_t i = 0; i + 1 < bar.events.size(); ++i) {
    Event& left = bar.events[i];
    Event& right = bar.events[i + 1];
    while (window + 1 < windows.size() && windows[window].end <= left.at) ++window;
    if (!one_group(left, right, windows[window])) continue;
    left.beams_right = right.beams_left = beams_between(left, right, windows[window].begin);
    right.partial_left = ends_a_pair(bar, right, windows[window].begin);
  }
  // The last of a group has no other neighbour.
  for (Event& event : bar.events) {
    if (event.beams_left > 0 && event.beams_right == 0) event.partial_left = true;
  }
  drop_brackets(bar);
}

}  // namespace fretsheaf::score
