#pragma once

#include <span>
#include <vector>

// The horizontal spacing of a line of music: springs between neighbouring columns, and rods that hold columns apart.
namespace fretsheaf::layout {

// The space from one column to the next: `fixed`, then as much as the duration asks for at a stretch of k points
// (k · stretch) but never less than `least`.
struct Spring {
  double stretch = 0;
  double least = 0;
  double fixed = 0;

  double length(double k) const { return fixed + (k * stretch > least ? k * stretch : least); }
};

// Columns `from` and `to` (from < to) stay at least `length` apart.
struct Rod {
  int from = 0;
  int to = 0;
  double length = 0;
};

// The spring for a note of `quarters` quarter notes: ratio^log2(quarters / 0.25); 1 for a sixteenth.
double stretch_of(double quarters, double ratio);

// Takes the rods into the springs' least lengths: what a rod lacks is given to the springs under it as if they alone
// were stretched, so that a wide chord symbol opens all of its bar and not one gap of it.
void take_in(std::span<Spring> springs, std::span<const Rod> rods);

double width_at(std::span<const Spring> springs, double k);

// The k at which the springs fill `width` exactly: the width is monotone and piecewise linear in k, and is solved by
// its corners. 0 where they are as long or longer at their least.
double stretch_to_fill(std::span<const Spring> springs, double width);

}  // namespace fretsheaf::layout
