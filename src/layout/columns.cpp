#include "layout/columns.h"

#include <algorithm>
#include <utility>

#include "layout/assembly.h"

namespace fretsheaf::layout {
namespace {

constexpr double tallest_column = 300;  // beyond it, a page break inside is better than two columns
constexpr double between_penalty = 50;  // a page break between the blocks of one example
constexpr double least_evenness = 0.3;  // the shorter column's share of the taller one's height

// The bottom of a column set at its natural gaps, from its first origin to the last line.
double height_of(const Blocks& blocks) {
  double y = 0;
  for (std::size_t i = 0; i < blocks.size(); ++i) y += (i > 0 ? blocks[i].gap : 0) + blocks[i].height;
  return y;
}

bool go_together(const Short& left, const Short& right) {
  if (!left.narrow || !right.narrow) return false;
  const double a = height_of(*left.narrow);
  const double b = height_of(*right.narrow);
  return std::max(a, b) <= tallest_column && std::min(a, b) >= least_evenness * std::max(a, b);
}

// Places a column and returns its bottom ink.
double place_column(Blocks blocks, double x, Assembly& assembly) {
  double y = 0;
  double bottom = 0;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    if (i > 0) y += blocks[i].gap;
    const double height = blocks[i].height;
    bottom = y + height + blocks[i].descent;
    assembly.place(std::move(blocks[i]), x, y);
    y += height;
  }
  return bottom;
}

Block side_by_side(Blocks left, Blocks right, double width, const templates::Measures& measures) {
  Block block;
  block.gap = left.front().gap;
  block.gap_least = left.front().gap_least;
  block.gap_most = left.front().gap_most;
  block.clearance = left.front().clearance;
  block.ascent = std::max(left.front().ascent, right.front().ascent);
  block.height = std::max(height_of(left), height_of(right));
  Assembly assembly;
  const double a = place_column(std::move(left), 0, assembly);
  const double b = place_column(std::move(right), column_width(width, measures) + measures.column_gutter, assembly);
  block.descent = std::max(0.0, std::max(a, b) - block.height);
  block.items = assembly.take();
  return block;
}

}  // namespace

double column_width(double width, const templates::Measures& measures) {
  return (width - measures.column_gutter) / 2;
}

std::size_t even_columns(std::size_t count, std::size_t fit) {
  const std::size_t rows = (count + fit - 1) / fit;
  return rows == 0 ? 1 : (count + rows - 1) / rows;
}

Blocks stack_shorts(std::vector<Short> shorts, double width, const templates::Measures& measures) {
  Blocks blocks;
  for (std::size_t i = 0; i < shorts.size(); ++i) {
    if (!blocks.empty()) blocks.back().part_penalty = between_penalty;
    if (i + 1 < shorts.size() && go_together(shorts[i], shorts[i + 1])) {
      blocks.push_back(side_by_side(std::move(*shorts[i].narrow), std::move(*shorts[i + 1].narrow), width, measures));
      ++i;
      continue;
    }
    for (Block& block : shorts[i].wide) blocks.push_back(std::move(block));
  }
  return blocks;
}

}  // namespace fretsheaf::layout
