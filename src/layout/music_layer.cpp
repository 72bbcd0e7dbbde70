#include "layout/music_layer.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fretsheaf::layout {

using sheet::Box;
using sheet::Part;
using sheet::Path;
using sheet::Point;
using sheet::Segment;

namespace {

Point on_curve(Point from, const Segment& s, double t) {
  const double u = 1 - t;
  return {u * u * u * from.x + 3 * u * u * t * s.control1.x + 3 * u * t * t * s.control2.x + t * t * t * s.end.x,
          u * u * u * from.y + 3 * u * u * t * s.control1.y + 3 * u * t * t * s.control2.y + t * t * t * s.end.y};
}

}  // namespace

Box moved(Box box, double dx, double dy) {
  return {box.left + dx, box.top + dy, box.right + dx, box.bottom + dy};
}

Box joined(Box a, Box b) {
  return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right), std::max(a.bottom, b.bottom)};
}

void Layer::words(const Words& words, double x, double y) {
  for (sheet::Item item : words.items) {
    sheet::translate(item, x, y);
    items_.push_back(std::move(item));
  }
  if (!words.items.empty()) ink_.push_back(moved(words.ink, x, y));
}

void Layer::centred(const Words& words, double x, double y) {
  this->words(words, x - (words.ink.left + words.ink.right) / 2, y);
}

void Layer::rule(Part part, Point from, Point to, double width, double dash, double gap) {
  items_.emplace_back(sheet::Rule{part, from, to, width, {}, dash, gap});
  const double half = width / 2;
  const bool upright = from.x == to.x;
  const bool level = from.y == to.y;
  const double across = level ? 0 : half;
  const double along = upright ? 0 : half;
  ink_.push_back({std::min(from.x, to.x) - across, std::min(from.y, to.y) - along, std::max(from.x, to.x) + across,
                  std::max(from.y, to.y) + along});
}

void Layer::path(Path path, Box ink) {
  items_.emplace_back(std::move(path));
  ink_.push_back(ink);
}

void Layer::thin(Path path) {
  const double half = path.stroke ? path.stroke_width / 2 : 0;
  Point last;
  const auto to = [&](Point point) {
    ink_.push_back({std::min(last.x, point.x) - half, std::min(last.y, point.y) - half,
                    std::max(last.x, point.x) + half, std::max(last.y, point.y) + half});
    last = point;
  };
  for (const Segment& s : path.segments) {
    if (s.kind == Segment::Kind::move) last = s.end;
    const Point from = last;
    constexpr int pieces = 12;
    const bool slanted = from.x != s.end.x && from.y != s.end.y;
    if (s.kind == Segment::Kind::line && !slanted) to(s.end);
    for (int i = 1; i <= pieces && s.kind != Segment::Kind::move; ++i) {
      const double t = static_cast<double>(i) / pieces;
      if (s.kind == Segment::Kind::curve) to(on_curve(from, s, t));
      if (s.kind == Segment::Kind::line && slanted) {
        to({from.x + t * (s.end.x - from.x), from.y + t * (s.end.y - from.y)});
      }
    }
  }
  items_.emplace_back(std::move(path));
}

void Layer::add(Layer other, double dx, double dy) {
  if (dx != 0 || dy != 0) other.move(dx, dy);
  for (sheet::Item& item : other.items_) items_.push_back(std::move(item));
  ink_.insert(ink_.end(), other.ink_.begin(), other.ink_.end());
}

void Layer::move(double dx, double dy) {
  sheet::translate(items_, dx, dy);
  for (Box& box : ink_) box = moved(box, dx, dy);
}

void Layer::wrap(sheet::EventInfo event) {
  sheet::Group group;
  group.event = std::move(event);
  group.items = std::move(items_);
  items_.clear();
  items_.emplace_back(std::move(group));
}

std::optional<Box> extent(const Layer& layer) {
  if (layer.ink().empty()) return std::nullopt;
  Box box = layer.ink().front();
  for (const Box& ink : layer.ink()) box = joined(box, ink);
  return box;
}

void add_polygon(Path& path, const std::vector<Point>& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    path.segments.push_back({i == 0 ? Segment::Kind::move : Segment::Kind::line, corners[i], {}, {}});
  }
  path.segments.push_back({Segment::Kind::close, {}, {}, {}});
}

Path polygon(Part part, const std::vector<Point>& corners) {
  Path path;
  path.part = part;
  path.fill = sheet::Color{};
  add_polygon(path, corners);
  return path;
}

namespace {

std::vector<Point> corners_of(const Box& box) {
  return {{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}};
}

}  // namespace

Path filled(Part part, const Box& box, sheet::Color color) {
  Path path = polygon(part, corners_of(box));
  path.fill = color;
  return path;
}

Path framed(Part part, const Box& box, double line) {
  Path path = stroked(part, {}, line);
  add_polygon(path, corners_of(box));
  return path;
}

Path cross(Part part, Point centre, double half, double width) {
  Path path = polygon(part, {});
  path.segments.clear();
  const double w = width / std::sqrt(2.0) / 2;
  for (const double side : {1.0, -1.0}) {
    add_polygon(path, {{centre.x - half - w, centre.y - side * (half - w)},
                       {centre.x - half + w, centre.y - side * (half + w)},
                       {centre.x + half + w, centre.y + side * (half - w)},
                       {centre.x + half - w, centre.y + side * (half + w)}});
  }
  return path;
}

void add_disc(Path& path, Point c, double r) {
  const double k = r * 0.5522847498;  // a quarter circle as a cubic
  path.segments.push_back({Segment::Kind::move, {c.x + r, c.y}, {}, {}});
  path.segments.push_back({Segment::Kind::curve, {c.x, c.y + r}, {c.x + r, c.y + k}, {c.x + k, c.y + r}});
  path.segments.push_back({Segment::Kind::curve, {c.x - r, c.y}, {c.x - k, c.y + r}, {c.x - r, c.y + k}});
  path.segments.push_back({Segment::Kind::curve, {c.x, c.y - r}, {c.x - r, c.y - k}, {c.x - k, c.y - r}});
  path.segments.push_back({Segment::Kind::curve, {c.x + r, c.y}, {c.x + k, c.y - r}, {c.x + r, c.y - k}});
  path.segments.push_back({Segment::Kind::close, {}, {}, {}});
}

Path disc(Part part, Point centre, double radius) {
  Path path;
  path.part = part;
  path.fill = sheet::Color{};
  add_disc(path, centre, radius);
  return path;
}

Path stroked(Part part, const std::vector<Point>& points, double width) {
  Path path;
  path.part = part;
  path.stroke = sheet::Color{};
  path.stroke_width = width;
  for (std::size_t i = 0; i < points.size(); ++i) {
    path.segments.push_back({i == 0 ? Segment::Kind::move : Segment::Kind::line, points[i], {}, {}});
  }
  return path;
}

Path crescent(Part part, Point from, Point to, double rise, double middle, double ends) {
  Path path;
  path.part = part;
  path.fill = sheet::Color{};
  const double along = (to.x - from.x) * 0.28;
  const double slope = (to.y - from.y) * 0.28;
  const double side = rise > 0 ? 1 : -1;
  // A cubic whose controls lie h off its chord reaches 3/4 h.
  const double outer = -(rise + side * (middle - ends) / 2) * 4 / 3;
  const double inner = -(rise - side * (middle - ends) / 2) * 4 / 3;
  const double tip = side * ends;
  path.segments = {
      {Segment::Kind::move, from, {}, {}},
      {Segment::Kind::curve, to, {from.x + along, from.y + slope + outer}, {to.x - along, to.y - slope + outer}},
      {Segment::Kind::line, {to.x, to.y + tip}, {}, {}},
      {Segment::Kind::curve,
       {from.x, from.y + tip},
       {to.x - along, to.y - slope + inner + tip},
       {from.x + along, from.y + slope + inner + tip}},
      {Segment::Kind::close, {}, {}, {}},
  };
  return path;
}

Path parenthesis(Part part, Point c, int side, double half_height, double bulge, double middle) {
  Path path;
  path.part = part;
  path.fill = sheet::Color{};
  const double outer = side * bulge * 4 / 3;
  const double inner = side * (bulge - middle) * 4 / 3;
  const double third = half_height * 0.45;
  path.segments = {
      {Segment::Kind::move, {c.x, c.y - half_height}, {}, {}},
      {Segment::Kind::curve, {c.x, c.y + half_height}, {c.x + outer, c.y - third}, {c.x + outer, c.y + third}},
      {Segment::Kind::curve, {c.x, c.y - half_height}, {c.x + inner, c.y + third}, {c.x + inner, c.y - third}},
      {Segment::Kind::close, {}, {}, {}},
  };
  return path;
}

Box bounds(const Path& path) {
  Box box;
  bool any = false;
  const auto take = [&](Point p) {
    const Box at{p.x, p.y, p.x, p.y};
    box = any ? joined(box, at) : at;
    any = true;
  };
  Point last;
  for (const Segment& s : path.segments) {
    if (s.kind == Segment::Kind::close) continue;
    if (s.kind == Segment::Kind::curve) {
      // Eight points on it are near enough for a box.
      for (int i = 1; i < 8; ++i) take(on_curve(last, s, i / 8.0));
    }
    take(s.end);
    last = s.end;
  }
  const double half = path.stroke ? path.stroke_width / 2 : 0;
  return {box.left - half, box.top - half, box.right + half, box.bottom + half};
}

}  // namespace fretsheaf::layout
