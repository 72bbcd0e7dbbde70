#pragma once

#include <optional>

namespace fretsheaf::typeface {

// The exact box of an outline made of lines and cubic curves: a curve counts as far as it goes, not as far as its
// control points lie.
class Bounds {
 public:
  struct Box {
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;
  };

  void move_to(double x, double y);
  void line_to(double x, double y);
  void curve_to(double x1, double y1, double x2, double y2, double x, double y);

  // nullopt where nothing was drawn; a move alone draws nothing.
  const std::optional<Box>& box() const { return box_; }

 private:
  void add(double x, double y);

  std::optional<Box> box_;
  double x_ = 0;
  double y_ = 0;
};

}  // namespace fretsheaf::typeface
