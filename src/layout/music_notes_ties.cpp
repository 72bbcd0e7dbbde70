#include <algorithm>

#include "layout/music_draw.h"
#include "layout/music_notes_room.h"

namespace fretsheaf::layout {

using sheet::Part;
namespace p = proportion;

namespace {

// In staff spaces, chosen by eye (a tie's drop and thickness are the house's measures).
constexpr double off_head = 0.75;       // an outer tie's ends, from the head's middle
constexpr double inset = 0.3;           // and from its centre
constexpr double inner_off_head = 0.3;  // one between the heads of a chord
constexpr double inner_drop = 0.4;
constexpr double beside_head = 0.2;  // that begins at the head's edge, as one beside a stem does
constexpr double low_drop = 0.35;    // of one that finds its place between the heads
constexpr double least_tie = 0.6;
constexpr double line_gap = 0.6;        // before the line's end
constexpr double from_line_before = 3;  // how far it reaches back at a line's start

const StaffHead* head_on(const StaffChord& chord, const fretboard::Place& place) {
  const auto own = [&](const StaffHead& head) { return head.note->place == place; };
  const auto found = std::find_if(chord.heads.begin(), chord.heads.end(), own);
  return found == chord.heads.end() ? nullptr : &*found;
}

// What a tie joins: a symbol with the head, or the line's edge.
struct End {
  const Stop* stop = nullptr;
  const score::Event* event = nullptr;
  const StaffChord* chord = nullptr;
};

End end_at(const Context& context, const Stop* stop) {
  if (stop == nullptr) return {};
  return {stop, &context.event(stop->column->bar, stop->column->event),
          &context.chord(stop->column->bar, stop->column->event)};
}

// Which way a head's tie curves: away from the stem, above where the two stems differ; in a chord the upper heads'
// upward and the lower ones' downward (Gould, Behind Bars, 2011, pp. 62-65, from memory). −1 is up.
int side_of(const StaffHead& head, const StaffChord& chord, bool both_up) {
  const auto index = &head - chord.heads.data();
  const auto last = static_cast<std::ptrdiff_t>(chord.heads.size()) - 1;
  if (2 * index < last) return 1;
  if (2 * index > last) return -1;
  return both_up ? 1 : -1;
}

bool both_up(const End& from, const End& to) {
  return (from.chord == nullptr || from.chord->up) && (to.chord == nullptr || to.chord->up);
}

// An outer tie's ends stand over (under) the heads, or beside the stem where it is on the stem's side.
double end_x(const Context& context, const End& end, const StaffHead& head, int side, bool outer, int toward) {
  const double sp = context.space;
  const double centre = end.stop->x + head_x(context, *end.event, *end.chord, head);
  const double edge = note_head_half(context, *end.event, head.note->head) + beside_head * sp;
  const bool stem_there = end.chord->up == (side < 0) && end.event->value.log2 >= 1;
  const bool stem_in_way = stem_there && end.chord->up == (toward > 0);
  return centre + toward * (outer && !stem_in_way ? inset * sp : edge);
}

class Ties {
 public:
  Ties(const Context& context, const LinePlan& line, NotesRoom& room)
      : context_(context), line_(line), room_(room), sp_(context.space) {}

  // `note` is the tied one's, or where the tie leaves the line the one that it begins at.
  void tie(const End& from, const End& to, const score::Note& note) {
    const StaffHead* left = from.chord ? head_on(*from.chord, note.place) : nullptr;
    const StaffHead* right = to.chord ? head_on(*to.chord, note.place) : nullptr;
    const StaffHead* head = right ? right : left;
    if (head == nullptr || (from.stop && !left)) return;
    const StaffChord& chord = right ? *to.chord : *from.chord;
    const int side = side_of(*head, chord, both_up(from, to));
    const bool outer = (side < 0 ? chord.heads.back() : chord.heads.front()).note == head->note;
    NotesRoom::Stretch x;
    x.right = right ? end_x(context_, to, *right, side, outer, -1) : line_end(line_) - line_gap * sp_;
    x.left = left ? end_x(context_, from, *left, side, outer, 1)
                  : std::max(to.stop->x - from_line_before * sp_, line_.prefix);
    const double y = step_y(context_, head->step);
    if (x.width() > 0) {
      const double rise = std::min((outer ? p::tie_drop : inner_drop) * sp_, 0.3 * x.width());
      const sheet::Path path = arc(x, y + side * (outer ? off_head : inner_off_head) * sp_, -side * rise);
      if (room_.free(path)) return room_.add(path);
    }
    for (const int other : {side, -side}) {
      if (between_heads(from, to, y, other)) return;
    }
  }

 private:
  sheet::Path arc(NotesRoom::Stretch x, double y, double rise) const {
    return crescent(Part::tie, {x.left, y}, {x.right, y}, rise, 0.22 * sp_, 0.09 * sp_);
  }

  // Where something is in its way, a tie lies lower between the two, in what is free there.
  bool between_heads(const End& from, const End& to, double y, int side) {
    for (const double off : {inner_off_head, 0.0, off_head}) {
      const double foot = y + side * off * sp_;
      const double far = foot + side * (low_drop + 0.11) * sp_;
      NotesRoom::Stretch x;
      x.right = to.stop ? to.stop->x : line_end(line_) - line_gap * sp_;
      x.left = from.stop ? from.stop->x : std::max(x.right - from_line_before * sp_, line_.prefix);
      x = room_.free_part(x, std::min(foot, far) - 0.05 * sp_, std::max(foot, far) + 0.05 * sp_);
      if (x.width() < least_tie * sp_) continue;
      room_.add(arc(x, foot, -side * std::min(low_drop * sp_, 0.25 * x.width())));
      return true;
    }
    return false;
  }

  const Context& context_;
  const LinePlan& line_;
  NotesRoom& room_;
  double sp_;
};

}  // namespace

bool notes_tie_above(const Context& context, const Stop* from, const Stop* to) {
  const End left = end_at(context, from);
  const End right = end_at(context, to);
  const StaffChord& chord = to ? *right.chord : *left.chord;
  return std::any_of(chord.heads.begin(), chord.heads.end(), [&](const StaffHead& head) {
    const bool tied = to ? head.note->tie_from : head.note->tie_to;
    return tied && side_of(head, chord, both_up(left, right)) < 0;
  });
}

double line_end(const LinePlan& line) {
  for (std::size_t i = line.stops.size(); i-- > 0;) {
    if (line.stops[i].kind == StopKind::bar_line) return line.stops[i].x;
  }
  return line.width;
}

void add_notes_ties(const Context& context, const LinePlan& line, NotesRoom& room) {
  Ties ties(context, line, room);
  const Stop* before = nullptr;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    if (!line.is_event(i)) continue;
    const Stop& stop = line.stops[i];
    const End from = end_at(context, before);
    const End to = end_at(context, &stop);
    for (const score::Note& note : to.event->notes) {
      if (note.tie_from) ties.tie(from, to, note);
    }
    before = &stop;
  }
  if (before == nullptr || line.last_line) return;
  const End last = end_at(context, before);
  for (const score::Note& note : last.event->notes) {
    if (note.tie_to) ties.tie(last, {}, note);
  }
}

}  // namespace fretsheaf::layout
