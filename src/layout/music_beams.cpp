#include <algorithm>
#include <vector>

#include "layout/music_draw.h"
#include "layout/music_groups.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;
namespace p = proportion;

namespace {

// An event with a stem, as beams see it.
struct Stemmed {
  const score::Event* event;
  double x;  // of the stem's centre line
};

// Beams over stems whose tips lie level; `away` is −1 where the stems point up, +1 where they point down.
class Beams {
 public:
  Beams(const Context& context, double tip, int away) : sp_(context.space), tip_(tip), away_(away) {}

  void group(const std::vector<Stemmed>& notes) {
    int most = 0;
    for (const Stemmed& note : notes) most = std::max(most, note.event->value.beams());
    for (int level = 1; level <= most; ++level) draw_level(notes, level);
  }
  Layer take() { return std::move(layer_); }

 private:
  void draw_level(const std::vector<Stemmed>& notes, int level) {
    const auto joined = [&](const Stemmed& first, const Stemmed& last) { draw(first.x, last.x, level); };
    const auto partial = [&](const Stemmed& note, bool leftward) {
      const double length = 1.15 * sp_;
      draw(note.x - (leftward ? length : 0), note.x + (leftward ? 0 : length), level);
    };
    each_beam(notes, level, joined, partial);
  }

  void draw(double from, double to, int level) {
    const double half_stem = p::stem * sp_ / 2;
    const double edge = tip_ - away_ * (level - 1) * p::beam_step * sp_;
    const double middle = edge - away_ * p::beam / 2 * sp_;
    layer_.rule(Part::beam, {from - half_stem, middle}, {to + half_stem, middle}, p::beam * sp_);
  }

  double sp_;
  double tip_;
  int away_;
  Layer layer_;
};

// Goes through the beamed groups of a line. `stem` gives an event's stem offset from its column.
template <typename Offset>
void each_group(const LinePlan& line, Beams& beams, Offset offset) {
  std::vector<Stemmed> group;
  const auto flush = [&] {
    if (!group.empty()) beams.group(group);
    group.clear();
  };
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    if (!line.is_event(i)) continue;
    const Stop& stop = line.stops[i];
    const score::Event& event = offset.event(stop);
    if (event.beams_left == 0) flush();
    if (!event.beamed()) continue;
    group.push_back({&event, stop.centre + offset.at(event)});
    if (event.beams_right == 0) flush();
  }
  flush();
}

struct SlashStems {
  const Context& context;
  const score::Event& event(const Stop& stop) const { return context.event(stop.column->bar, stop.column->event); }
  double at(const score::Event& event) const { return event.rest ? 0 : stem_x(context, event); }
};

struct TabStems {
  const Context& context;
  const score::Event& event(const Stop& stop) const { return context.event(stop.column->bar, stop.column->event); }
  double at(const score::Event&) const { return 0; }
};

}  // namespace

Layer slash_beams(const Context& context, const LinePlan& line) {
  score::Event plain;
  plain.beams_right = 1;  // any beamed note: their stems end at one height
  Beams beams(context, stem_tip(context, plain), -1);
  each_group(line, beams, SlashStems{context});
  return beams.take();
}

Layer tab_beams(const Context& context, const LinePlan& line) {
  Beams beams(context, tab_stem_tip(context), 1);
  each_group(line, beams, TabStems{context});
  return beams.take();
}

}  // namespace fretsheaf::layout
