#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "layout/type.h"
#include "sheet/sheet.h"

// Placed ink: the pieces of a line of music before they are stacked. Coordinates are the layer's own until it is moved.
namespace fretsheaf::layout {

sheet::Box moved(sheet::Box box, double dx, double dy);
sheet::Box joined(sheet::Box a, sheet::Box b);

// A part of a line of music with the boxes of its ink, so that layers can be stacked without touching.
class Layer {
 public:
  // Words with their origin at (x, y); centred: with the middle of their ink at x.
  void words(const Words& words, double x, double y);
  void centred(const Words& words, double x, double y);
  void rule(sheet::Part part, sheet::Point from, sheet::Point to, double width, double dash = 0, double gap = 0);
  void path(sheet::Path path, sheet::Box ink);
  // Its ink in short pieces along the curve, so that what it goes around is not under it.
  void thin(sheet::Path path);
  // Drawn before all else, and no ink: other things lie on it.
  void behind(sheet::Path path) { items_.insert(items_.begin(), std::move(path)); }
  // Keeps a place free as if it held ink.
  void reserve(sheet::Box box) { ink_.push_back(box); }
  void add(Layer other, double dx = 0, double dy = 0);

  bool empty() const { return items_.empty(); }
  const std::vector<sheet::Item>& items() const { return items_; }
  const std::vector<sheet::Box>& ink() const { return ink_; }
  void move(double dx, double dy);
  // Puts all items into one group that stands for an event.
  void wrap(sheet::EventInfo event);
  std::vector<sheet::Item> take() { return std::move(items_); }

 private:
  std::vector<sheet::Item> items_;
  std::vector<sheet::Box> ink_;
};

// The box around all of a layer's ink; nullopt where it has none.
std::optional<sheet::Box> extent(const Layer& layer);

// A ground for what is to be seen at a glance: 87 % white, which a photocopier keeps (the house's measure).
inline constexpr sheet::Color ground{0xDE, 0xDE, 0xDE};

// Outlines as the music needs them. All are filled black unless they are stroked, or another colour is said.
sheet::Path polygon(sheet::Part part, const std::vector<sheet::Point>& corners);
void add_polygon(sheet::Path& path, const std::vector<sheet::Point>& corners);
sheet::Path filled(sheet::Part part, const sheet::Box& box, sheet::Color color);
// The outline of a box, its line's middle on the box's edge.
sheet::Path framed(sheet::Part part, const sheet::Box& box, double line);
// An upright x whose arms end `half` from its centre: the head and the digit of a dead note.
sheet::Path cross(sheet::Part part, sheet::Point centre, double half, double width);
void add_disc(sheet::Path& path, sheet::Point centre, double radius);
sheet::Path disc(sheet::Part part, sheet::Point centre, double radius);
sheet::Path stroked(sheet::Part part, const std::vector<sheet::Point>& points, double width);

// A crescent from `from` to `to` whose middle lies `rise` above (negative: below) the straight line between them,
// `middle` thick there and `ends` at its tips: a tie or slur.
sheet::Path crescent(sheet::Part part, sheet::Point from, sheet::Point to, double rise, double middle, double ends);
// A parenthesis that opens to the right (`side` −1) or left (+1): its tips at (x, y ± half_height), bulging `bulge`.
sheet::Path parenthesis(sheet::Part part, sheet::Point tips_centre, int side, double half_height, double bulge,
                        double middle);

// The box of a path's ink (curves by points on them).
sheet::Box bounds(const sheet::Path& path);

}  // namespace fretsheaf::layout
