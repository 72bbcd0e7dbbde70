#include "layout/music_notes_room.h"

#include <algorithm>
#include <utility>

#include "layout/music_draw.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;

constexpr double keep_off = 0.06;     // spaces; chosen by eye
constexpr double dots_beside = 0.55;  // of a repeat, from its stroke

bool touch(const sheet::Box& a, const sheet::Box& b, double gap) {
  return a.left < b.right + gap && b.left < a.right + gap && a.top < b.bottom + gap && b.top < a.bottom + gap;
}

// The dots of the line's repeats.
std::vector<sheet::Box> repeat_dots(const Context& context, const LinePlan& line) {
  std::vector<sheet::Box> boxes;
  const double sp = context.space;
  const double r = p::dot_radius * sp;
  const auto dots = [&](double x) {
    for (const double y : {1.5 * sp, 2.5 * sp}) boxes.push_back({x - r, y - r, x + r, y + r});
  };
  if (line.opens_repeat) dots(line.prefix + bar_line_width(context, lesson::BarSign::repeat_begin) + dots_beside * sp);
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::bar_line) continue;
    const bool both = stop.sign == lesson::BarSign::repeat_both;
    if (both || stop.sign == lesson::BarSign::repeat_begin) dots(stop.x + dots_beside * sp);
    if (both || stop.sign == lesson::BarSign::repeat_end) {
      dots(stop.x - bar_line_width(context, stop.sign) - dots_beside * sp);
    }
  }
  return boxes;
}

}  // namespace

NotesRoom::NotesRoom(const Context& context, const LinePlan& line, const NoteStems& stems, const Layer& more)
    : gap_(keep_off * context.space), obstacles_(repeat_dots(context, line)) {
  const double sp = context.space;
  const auto take = [&](const Layer& layer, double dx) {
    for (const sheet::Box& ink : layer.ink()) obstacles_.push_back(moved(ink, dx, 0));
  };
  obstacles_.push_back({0, -2 * sp, notes_prefix(context), 7 * sp});
  for (const PlacedMeter& meter : meters_in(context, line)) {
    take(time_signature(context, *meter.meter, meter.left, staff_height / 2 * sp), 0);
  }
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    const Stop& stop = line.stops[i];
    if (stop.kind != StopKind::column) continue;
    take(stop.column->row(Row::notes), stop.centre);
    if (stems.of[i]) take(beamed_stem(context, stop, *stems.of[i]), 0);
  }
  take(stems.beams, 0);
  take(more, 0);
}

bool NotesRoom::free(const sheet::Path& path) const {
  Layer layer;
  layer.thin(path);
  return std::none_of(layer.ink().begin(), layer.ink().end(), [&](const sheet::Box& piece) {
    return std::any_of(obstacles_.begin(), obstacles_.end(),
                       [&](const sheet::Box& other) { return touch(piece, other, gap_); });
  });
}

void NotesRoom::add(sheet::Path path) {
  Layer one;
  one.thin(std::move(path));
  obstacles_.insert(obstacles_.end(), one.ink().begin(), one.ink().end());
  layer_.add(std::move(one));
}

std::vector<NotesRoom::Stretch> NotesRoom::free_parts(Stretch whole, double top, double bottom) const {
  std::vector<sheet::Box> inside;
  for (const sheet::Box& other : obstacles_) {
    if (touch({whole.left, top, whole.right, bottom}, other, gap_)) inside.push_back(other);
  }
  std::sort(inside.begin(), inside.end(), [](const auto& a, const auto& b) { return a.left < b.left; });
  std::vector<Stretch> parts;
  double left = whole.left;
  for (const sheet::Box& other : inside) {
    const double right = std::min(other.left - 2 * gap_, whole.right);
    if (right > left) parts.push_back({left, right});
    left = std::max(left, other.right + 2 * gap_);
  }
  if (whole.right > left) parts.push_back({left, whole.right});
  return parts;
}

NotesRoom::Stretch NotesRoom::free_part(Stretch whole, double top, double bottom) const {
  Stretch best{whole.left, whole.left};
  for (const Stretch& part : free_parts(whole, top, bottom)) {
    if (part.width() > best.width()) best = part;
  }
  return best;
}

NotesRoom::Stretch NotesRoom::free_end(Stretch whole, double top, double bottom) const {
  const std::vector<Stretch> parts = free_parts(whole, top, bottom);
  return parts.empty() ? Stretch{whole.right, whole.right} : parts.back();
}

}  // namespace fretsheaf::layout
