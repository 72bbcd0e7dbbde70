#include <algorithm>
#include <cmath>

#include "layout/music_groups.h"
#include "layout/music_notes.h"

namespace fretsheaf::layout {

using sheet::Part;
namespace p = proportion;

namespace {

// In staff spaces: a stem of an octave and a beam that rises by the interval, up to a limit, are common
// practice; their numbers and the partial beam's are the house's measures; where stems leave heads and how flags keep
// off them is chosen by eye.
constexpr double head_half = 0.594;
constexpr double head_to_stem = 0.16;    // where a stem leaves a head, from its middle
constexpr double cross_to_stem = 0.45;   // and a dead note's cross
constexpr double stem_length = 3.5;      // from the middle of the head nearest to the tip
constexpr double beamed_eighths = 3.25;  // the least under one beam
constexpr double beamed_sixteenths = 3.5;
constexpr double downward_flag_height = 2.55;
constexpr double flag_to_head = 0.65;  // from a flag's end to the head's middle
constexpr double flag_to_ghost = 1.0;  // and to one in parentheses
constexpr double partial = 1.15;
constexpr int beam_slices = 6;
constexpr double most_rise = 1.0;  // of a beam over its group
constexpr double rise_of_interval = 0.25;
constexpr double least_rise = 0.1;
constexpr double most_slope = 0.2;  // of its length
constexpr double grid = 0.25;       // beams stand on, hang from or straddle lines: steps of their height

// A beamed symbol in its place.
struct Beamed {
  std::size_t stop = 0;
  const score::Event* event = nullptr;
  const StaffChord* chord = nullptr;
  double x = 0;  // of the stem
};

// How far flags reach from the stem's tip.
double flag_height(const Context& context, bool up, int flags) {
  if (!up) return downward_flag_height + p::beam_step * (flags - 1);
  const Words flag = upward_flag(context, flags);
  return (flag.ink.bottom - flag.ink.top) / context.space;
}

double length_under(int beams) {
  if (beams <= 1) return beamed_eighths;
  return beamed_sixteenths + p::beam_step * (beams - 2);
}

// The beams over one group, in spaces from the first stem on: the outer edge of the outermost is where stems end.
class Group {
 public:
  Group(const Context& context, const std::vector<Beamed>& notes)
      : notes_(notes), sp_(context.space), up_(notes.front().chord->up), away_(up_ ? -1 : 1) {
    for (const Beamed& note : notes) most_ = std::max(most_, note.event->value.beams());
    rise_ = notes.size() > 1 ? rise() : 0;
    base_ = base();
  }

  // The stems' end at x, in points.
  double tip(double x) const { return (base_ + rise_ * along(x)) * sp_; }
  int most() const { return most_; }

  void draw(Layer& layer, double from, double to, int level) const {
    const double half_stem = p::stem * sp_ / 2;
    const double left = from - half_stem;
    const double right = to + half_stem;
    const double inward = -away_ * sp_;
    const auto edge = [&](double x, double depth) { return sheet::Point{x, tip(x) + inward * depth}; };
    const double outer = (level - 1) * p::beam_step;
    const double inner = outer + p::beam;
    const auto slice = [&](double a, double b) {
      return bounds(polygon(Part::beam, {edge(a, outer), edge(b, outer), edge(b, inner), edge(a, inner)}));
    };
    // Its ink in slices: a long slanted beam does not fill its box.
    const double step = (right - left) / beam_slices;
    layer.path(polygon(Part::beam, {edge(left, outer), edge(right, outer), edge(right, inner), edge(left, inner)}),
               slice(left, left + step));
    for (int i = 1; i < beam_slices; ++i) layer.reserve(slice(left + i * step, left + (i + 1) * step));
  }

 private:
  double width() const { return notes_.back().x - notes_.front().x; }
  double along(double x) const { return width() > 0 ? (x - notes_.front().x) / width() : 0; }
  // The middle of the head nearest to the beam.
  double head(const Beamed& note) const { return (4 - note.chord->near_tip()) / 2.0; }

  // How much lower the beam ends than it begins. Flat over repeated notes, and where an inner note comes nearer to the
  // beam than both outer ones (common practice).
  double rise() const {
    const double first = head(notes_.front());
    const double last = head(notes_.back());
    if (first == last) return 0;
    for (std::size_t i = 1; i + 1 < notes_.size(); ++i) {
      const double inner = head(notes_[i]);
      const bool nearer = up_ ? inner <= std::min(first, last) : inner >= std::max(first, last);
      if (nearer) return 0;
    }
    const double interval = std::abs(last - first);
    double rise = std::min({most_rise, rise_of_interval * interval + least_rise, most_slope * width() / sp_});
    rise = std::floor(rise / grid + 1e-9) * grid;
    return last > first ? rise : -rise;
  }

  // The farthest end in that no stem is too short: and those of ledger-line notes reach the middle line.
  double base() const {
    double base = 0;
    bool any = false;
    for (const Beamed& note : notes_) {
      const double length = std::max(length_under(most_), std::abs(2 - head(note)) * (outside(note) ? 1 : 0));
      const double tip = head(note) + away_ * length - rise_ * along(note.x);
      base = any ? (up_ ? std::min(base, tip) : std::max(base, tip)) : tip;
      any = true;
    }
    return snapped(base);
  }
  // On the stem's far side of the middle line.
  bool outside(const Beamed& note) const { return up_ ? head(note) > 2 : head(note) < 2; }

  // A beam that floats between two lines of the staff leaves slivers of white: it is moved outward to one of them.
  double snapped(double base) const {
    double at = away_ * std::ceil(away_ * base / grid - 1e-9) * grid;
    for (int i = 0; i < 3; ++i, at += away_ * grid) {
      const double middle = at - away_ * p::beam / 2;
      const double in_space = middle - std::floor(middle);
      const bool inside = middle > 0 && middle < 4;
      if (!inside || std::abs(in_space - 0.5) > 0.1) break;
    }
    return at;
  }

  const std::vector<Beamed>& notes_;
  double sp_;
  bool up_;
  int away_;  // -1 where stems point up
  int most_ = 0;
  double rise_ = 0;
  double base_ = 0;
};

void draw_level(Layer& layer, const Context& context, const Group& group, const std::vector<Beamed>& notes, int level) {
  const auto joined = [&](const Beamed& first, const Beamed& last) { group.draw(layer, first.x, last.x, level); };
  const auto alone = [&](const Beamed& note, bool leftward) {
    const double length = partial * context.space;
    group.draw(layer, note.x - (leftward ? length : 0), note.x + (leftward ? 0 : length), level);
  };
  each_beam(notes, level, joined, alone);
}

void draw_group(NoteStems& stems, const Context& context, const std::vector<Beamed>& notes) {
  if (notes.empty()) return;
  const Group group(context, notes);
  for (const Beamed& note : notes) {
    stems.of[note.stop] = {note.x, note_stem_foot(context, *note.chord), group.tip(note.x), note.chord->up};
  }
  for (int level = 1; level <= group.most(); ++level) draw_level(stems.beams, context, group, notes, level);
}

}  // namespace

double note_stem_x(const Context& context, const StaffChord& chord) {
  const double x = (head_half - p::stem / 2) * context.space;
  return chord.up ? x : -x;
}

double note_stem_foot(const Context& context, const StaffChord& chord) {
  const StaffHead& head = chord.up ? chord.heads.front() : chord.heads.back();
  const double in = head.note->head == score::HeadKind::dead ? cross_to_stem : head_to_stem;
  return step_y(context, head.step) + (chord.up ? -in : in) * context.space;
}

Words upward_flag(const Context& context, int flags) {
  // U+1D16E to U+1D172 are the flags of an eighth to a hundred-twenty-eighth.
  const char32_t code_point = U'\U0001D16E' + static_cast<char32_t>(std::min(flags, 5) - 1);
  return context.type.sign(code_point, context.space, Part::flag);
}

std::optional<NoteStem> single_stem(const Context& context, const score::Event& event, const StaffChord& chord) {
  if (event.rest || context.stemless || chord.heads.empty() || event.value.log2 < 1) return {};
  const double sp = context.space;
  const int away = chord.up ? -1 : 1;
  double length = stem_length + p::beam_step * std::max(0, event.value.beams() - 2);
  // A flag would cut the parenthesis of a ghost note, or a note's dot.
  const auto ghost = [](const StaffHead& head) { return head.note->head == score::HeadKind::ghost; };
  const int flags = event.value.beams();
  if (flags > 0) {
    const bool bracketed = std::any_of(chord.heads.begin(), chord.heads.end(), ghost);
    const double flag = flag_height(context, chord.up, flags);
    length = std::max(length, flag + (bracketed ? flag_to_ghost : flag_to_head));
    length = std::max(length, flag + tremolo_room(context, event, chord));
  } else {
    length = std::max(length, tremolo_room(context, event, chord));
  }
  double tip = step_y(context, chord.near_tip()) + away * length * sp;
  // A flag keeps off the ledger lines between the head and the staff.
  if (flags > 0 && away * chord.near_tip() > 6) {
    const double ledger = step_y(context, -away * -6) + away * 0.3 * sp;
    tip = away < 0 ? std::min(tip, ledger - flag_height(context, true, flags) * sp)
                   : std::max(tip, ledger + flag_height(context, false, flags) * sp);
  }
  // Stems of notes on ledger lines reach the middle line.
  tip = chord.up ? std::min(tip, step_y(context, 0)) : std::max(tip, step_y(context, 0));
  return NoteStem{note_stem_x(context, chord), note_stem_foot(context, chord), tip, chord.up};
}

Layer beamed_stem(const Context& context, const Stop& stop, const NoteStem& stem) {
  Layer layer;
  const score::Event& event = context.event(stop.column->bar, stop.column->event);
  if (!event.beamed()) return layer;
  layer.rule(Part::stem, {stem.x, stem.foot}, {stem.x, stem.tip}, p::stem * context.space);
  add_note_tremolo(layer, context, event, context.chord(stop.column->bar, stop.column->event), stem);
  return layer;
}

NoteStems note_stems(const Context& context, const LinePlan& line) {
  NoteStems stems;
  stems.of.resize(line.stops.size());
  std::vector<Beamed> group;
  const auto flush = [&] {
    draw_group(stems, context, group);
    group.clear();
  };
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    if (!line.is_event(i)) continue;
    const Stop& stop = line.stops[i];
    const score::Event& event = context.event(stop.column->bar, stop.column->event);
    const StaffChord& chord = context.chord(stop.column->bar, stop.column->event);
    if (event.beams_left == 0) flush();
    if (event.beamed() && !chord.heads.empty()) {
      group.push_back({i, &event, &chord, stop.centre + note_stem_x(context, chord)});
    } else if (std::optional<NoteStem> stem = single_stem(context, event, chord)) {
      stem->x += stop.centre;
      stems.of[i] = stem;
    }
    if (event.beams_right == 0) flush();
  }
  flush();
  return stems;
}

}  // namespace fretsheaf::layout
