#include "lesson/grid_stretch.h"

#include <algorithm>
#include <optional>

namespace fretsheaf::lesson {
namespace {

bool is_free(char32_t character) {
  return is_blank(character) || character == U'|';
}

// What can be put in between two characters of a row; nullopt inside a word.
std::optional<char32_t> filler_between(char32_t left, char32_t right, bool anywhere) {
  const bool dashes = anywhere ? left == U'-' || right == U'-' : left == U'-' && right == U'-';
  if (dashes) return U'-';
  if (anywhere || is_free(left) || is_free(right)) return U' ';
  if (left == U'-' || right == U'-') return U'-';
  return std::nullopt;
}

}  // namespace

void Widening::insert(int before, int columns) {
  if (columns <= 0) return;
  const int total = (insertions_.empty() ? 0 : insertions_.back().total) + columns;
  if (!insertions_.empty() && insertions_.back().before == before) {
    insertions_.back().columns += columns;
    insertions_.back().total = total;
  } else {
    insertions_.push_back({before, columns, total});
  }
}

int Widening::moved(int column) const {
  const auto after = std::upper_bound(insertions_.begin(), insertions_.end(), column,
                                      [](int c, const Insertion& insertion) { return c < insertion.before; });
  return column + (after == insertions_.begin() ? 0 : (after - 1)->total);
}

int Widening::at(int column) const {
  const auto found = std::lower_bound(insertions_.begin(), insertions_.end(), column,
                                      [](const Insertion& insertion, int c) { return insertion.before < c; });
  return found == insertions_.end() || found->before != column ? 0 : found->columns;
}

std::u32string stretched(const std::u32string& row, bool anywhere, const Widening& widening) {
  std::u32string out;
  int pending = 0;
  bool quoted = false;
  for (std::size_t column = 0; column < row.size(); ++column) {
    pending += widening.at(static_cast<int>(column));
    if (pending > 0 && column > 0 && !quoted) {
      if (const auto filler = filler_between(row[column - 1], row[column], anywhere)) {
        out.append(static_cast<std::size_t>(pending), *filler);
        pending = 0;
      }
    }
    if (row[column] == U'"') quoted = !quoted;
    out += row[column];
  }
  return out;
}

}  // namespace fretsheaf::lesson
