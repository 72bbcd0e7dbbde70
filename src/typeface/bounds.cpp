#include "typeface/bounds.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fretsheaf::typeface {
namespace {

double cubic(double p0, double p1, double p2, double p3, double t) {
  const double u = 1 - t;
  return u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
}

// Calls `visit` with each t inside (0, 1) at which the curve turns back in this coordinate.
template <typename Visit>
void turning_points(double p0, double p1, double p2, double p3, Visit visit) {
  const double a = -p0 + 3 * p1 - 3 * p2 + p3;
  const double b = 2 * (p0 - 2 * p1 + p2);
  const double c = p1 - p0;
  std::array<double, 2> roots = {-1, -1};
  // The derivative over 3 is a t² + b t + c.
  if (std::abs(a) < 1e-12) {
    if (std::abs(b) > 1e-12) roots[0] = -c / b;
  } else if (const double d = b * b - 4 * a * c; d >= 0) {
    roots = {(-b + std::sqrt(d)) / (2 * a), (-b - std::sqrt(d)) / (2 * a)};
  }
  for (const double t : roots) {
    if (t > 0 && t < 1) visit(t);
  }
}

}  // namespace

void Bounds::add(double x, double y) {
  if (!box_) box_ = Box{x, y, x, y};
  box_->left = std::min(box_->left, x);
  box_->right = std::max(box_->right, x);
  box_->top = std::min(box_->top, y);
  box_->bottom = std::max(box_->bottom, y);
}

void Bounds::move_to(double x, double y) {
  x_ = x;
  y_ = y;
}

void Bounds::line_to(double x, double y) {
  add(x_, y_);
  add(x, y);
  move_to(x, y);
}

void Bounds::curve_to(double x1, double y1, double x2, double y2, double x, double y) {
  add(x_, y_);
  add(x, y);
  const auto visit = [&](double t) { add(cubic(x_, x1, x2, x, t), cubic(y_, y1, y2, y, t)); };
  turning_points(x_, x1, x2, x, visit);
  turning_points(y_, y1, y2, y, visit);
  move_to(x, y);
}

}  // namespace fretsheaf::typeface
