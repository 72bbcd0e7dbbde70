#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include "layout/music_notes_room.h"

namespace fretsheaf::layout {

using lesson::Approach;
using sheet::Part;
using sheet::Point;

namespace {

// In staff spaces, chosen by eye.
constexpr double off_head = 0.85;  // a slur's ends, from the head's middle
constexpr double off_tip = 0.35;   // and from a stem's tip
constexpr double inset = 0.12;
constexpr double slur_rise = 0.8;
constexpr double step_out = 0.3;  // how it moves away from what is in its way
constexpr int near_steps = 5;     // before it tries the other side
constexpr int most_steps = 30;
constexpr double slide_gap = 0.28;
constexpr double slide_line = 0.16;
constexpr double level_slide = 0.3;  // half the height of a slide between two notes of one line
constexpr double short_slide = 1.8;
constexpr double least_slide = 0.7;
constexpr double from_line_before = 2.6;

bool is_slide(const Joint& joint) {
  return joint.approach == Approach::slide_up || joint.approach == Approach::slide_down;
}

// One end of a joint: the symbol in this line; none where it is in another.
struct End {
  const Stop* stop = nullptr;
  std::size_t index = 0;
  const score::Event* event = nullptr;
  const StaffChord* chord = nullptr;
  const StaffHead* head = nullptr;
};

class Joiner {
 public:
  Joiner(const Context& context, const LinePlan& line, const NoteStems& stems, NotesRoom& room)
      : context_(context), line_(line), stems_(stems), room_(room), sp_(context.space) {}

  void slide(const Joint& joint) {
    if (!is_slide(joint)) return;
    const End from = find(joint.from_bar, joint.from_event, joint.string);
    const End to = find(joint.bar, joint.event, joint.string);
    if (from.stop != nullptr || to.stop != nullptr) slide(joint, from, to);
  }

  void slur(const Joint& joint) {
    const End from = find(joint.from_bar, joint.from_event, joint.string);
    const End to = find(joint.bar, joint.event, joint.string);
    if (from.stop == nullptr && to.stop == nullptr) return;
    // The slur of two chords stands for all their strings.
    const std::array<int, 4> ends{joint.from_bar, joint.from_event, joint.bar, joint.event};
    if (ends != latest_slur_) slur(from, to);
    latest_slur_ = ends;
  }

 private:
  End find(int bar, int event, int string) const {
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      if (!line_.is_event(i)) continue;
      const Stop& stop = line_.stops[i];
      if (stop.column->bar != bar || stop.column->event != event) continue;
      End end{&stop, i, &context_.event(bar, event), &context_.chord(bar, event), nullptr};
      const auto own = [&](const StaffHead& head) { return head.note->place.string == string; };
      const auto head = std::find_if(end.chord->heads.begin(), end.chord->heads.end(), own);
      return head == end.chord->heads.end() ? End{} : (end.head = &*head, end);
    }
    return {};
  }

  // Away from the stems; above where they differ (Gould, Behind Bars, 2011, p. 111, from memory). −1 is up.
  static int side(const End& from, const End& to) {
    const bool up = (from.chord == nullptr || from.chord->up) && (to.chord == nullptr || to.chord->up);
    return up ? 1 : -1;
  }

  // Over the outermost head, or over the stem where it points there.
  Point slur_end(const End& end, int side, int toward) const {
    const std::optional<NoteStem>& stem = stems_.of[end.index];
    if (stem && stem->up == (side < 0)) return {stem->x + toward * inset * sp_, stem->tip + side * off_tip * sp_};
    const int step = side < 0 ? end.chord->highest() : end.chord->lowest();
    return {end.stop->centre + toward * inset * sp_, step_y(context_, step) + side * off_head * sp_};
  }

  void slur(const End& from, const End& to) {
    const int side = Joiner::side(from, to);
    for (const auto& [to_side, first, last] : {std::array{side, 0, near_steps}, std::array{-side, 0, near_steps},
                                               std::array{side, near_steps, most_steps}}) {
      for (int step = first; step < last; ++step) {
        const std::optional<sheet::Path> path = slur_on(to_side, step * step_out * sp_, from, to);
        if (!path) return;
        if (room_.free(*path)) return room_.add(*path);
      }
    }
  }

  // Moved away from the heads by `out`: its middle first, its ends after that.
  std::optional<sheet::Path> slur_on(int side, double out, const End& from, const End& to) const {
    Point left = from.stop ? slur_end(from, side, 1) : Point{};
    const Point right_end = to.stop ? slur_end(to, side, -1) : Point{line_end(line_) - 0.5 * sp_, left.y};
    if (!from.stop) left = {std::max(line_.prefix, right_end.x - from_line_before * sp_), right_end.y};
    Point right = right_end;
    if (right.x - left.x < 0.3 * sp_) return {};
    const double rise = std::min(slur_rise * sp_, 0.3 * (right.x - left.x)) + out / 2;
    left.y += side * out / 2;
    right.y += side * out / 2;
    return crescent(Part::slur, left, right, -side * rise, 0.19 * sp_, 0.08 * sp_);
  }

  double right_of(const End& end) const {
    const std::optional<Reach>& ink = end.stop->column->reach(Row::notes);
    return end.stop->centre + (ink ? ink->right : 0) + slide_gap * sp_;
  }
  double left_of(const End& end) const {
    const std::optional<Reach>& ink = end.stop->column->reach(Row::notes);
    return end.stop->centre - (ink ? ink->left : 0) - slide_gap * sp_;
  }

  // Whether other symbols stand between the two.
  bool apart(const End& from, const End& to) const {
    for (std::size_t i = from.index + 1; i < to.index; ++i) {
      if (line_.is_event(i)) return true;
    }
    return false;
  }

  // A straight line from head to head; where that has no room, a short one to the second.
  void slide(const Joint& joint, const End& from, const End& to) {
    if (from.stop && to.stop && !apart(from, to)) {
      const double left = right_of(from);
      const double right = left_of(to);
      if (std::abs(from.head->step - to.head->step) >= 2 && right - left > least_slide * sp_) {
        // Cut from the line between the heads' middles.
        const Point begin{from.stop->centre, step_y(context_, from.head->step)};
        const Point end{to.stop->centre, step_y(context_, to.head->step)};
        const auto at = [&](double x) {
          return Point{x, begin.y + (end.y - begin.y) * (x - begin.x) / (end.x - begin.x)};
        };
        const sheet::Path path = stroked(Part::slide, {at(left), at(right)}, slide_line * sp_);
        if (room_.free(path)) return room_.add(path);
      }
    }
    level(joint, from, to);
  }

  // Up or down about the height of the head that it belongs to.
  void level(const Joint& joint, const End& from, const End& to) {
    const bool adjacent = from.stop && to.stop && !apart(from, to);
    const double right = to.stop ? left_of(to) : line_end(line_) - 0.4 * sp_;
    double left = adjacent || !to.stop ? right_of(from) : right - short_slide * sp_;
    if (!from.stop) left = std::max(left, line_.prefix);
    const double y = step_y(context_, (to.stop ? to : from).head->step);
    const double reach = (level_slide + slide_line / 2) * sp_;
    const NotesRoom::Stretch x = room_.free_end({left, right}, y - reach, y + reach);
    if (x.width() < least_slide * sp_) return;
    const double rise = (joint.approach == Approach::slide_up ? -1 : 1) * level_slide * sp_;
    room_.add(stroked(Part::slide, {{x.left, y - rise}, {x.right, y + rise}}, slide_line * sp_));
  }

  const Context& context_;
  const LinePlan& line_;
  const NoteStems& stems_;
  NotesRoom& room_;
  double sp_;
  std::array<int, 4> latest_slur_{-1, -1, -1, -1};
};

}  // namespace

namespace {

// Hammer-ons and pull-offs that go on from one to the next are under one slur (common practice): from the first note to
// the last.
std::vector<Joint> slurs_of(const Context& context, int first, int last) {
  std::vector<Joint> slurs;
  const auto take = [&](const Joint& joint) {
    if (is_slide(joint)) return;
    const auto goes_on = [&](const Joint& slur) {
      return slur.string == joint.string && slur.bar == joint.from_bar && slur.event == joint.from_event;
    };
    const auto before = std::find_if(slurs.begin(), slurs.end(), goes_on);
    if (before != slurs.end()) {
      before->bar = joint.bar;
      before->event = joint.event;
    } else {
      slurs.push_back(joint);
    }
  };
  for (const Joint& joint : context.joints_into(first, last)) take(joint);
  for (const Joint& joint : context.joints_out_of(first, last)) {
    if (joint.bar > last) take(joint);
  }
  return slurs;
}

}  // namespace

void add_notes_joints(const Context& context, const LinePlan& line, const NoteStems& stems, NotesRoom& room) {
  Joiner joiner(context, line, stems, room);
  const int first = line.stops.front().bar;
  const int last = line.stops.back().bar;
  // Slides have one place only; slurs find theirs around them.
  for (const Joint& joint : context.joints_into(first, last)) joiner.slide(joint);
  for (const Joint& joint : context.joints_out_of(first, last)) {
    if (joint.bar > last) joiner.slide(joint);
  }
  for (const Joint& joint : slurs_of(context, first, last)) joiner.slur(joint);
}

}  // namespace fretsheaf::layout
