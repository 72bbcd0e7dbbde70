#include <algorithm>
#include <string>

#include "lesson/grid_draft.h"
#include "lesson/grid_phrases.h"

namespace fretsheaf::lesson {

void lose_word(GridDraft& draft, BarDraft& bar, RowKind kind) {
  if (kind == RowKind::road) draft.lost_road = true;
  if (kind == RowKind::ending) draft.lost_ending = true;
  if (kind == RowKind::meter) bar.lost_meter = true;
}

std::optional<int> count_at(const BarDraft& bar, int column) {
  const auto after = std::partition_point(bar.counts.begin(), bar.counts.end(),
                                          [&](const Count& count) { return count.end <= column; });
  if (after == bar.counts.end() || after->begin > column) return std::nullopt;
  return static_cast<int>(after - bar.counts.begin());
}

std::string neighbours(const BarDraft& bar, int column) {
  const auto after = std::partition_point(bar.counts.begin(), bar.counts.end(),
                                          [&](const Count& count) { return count.end <= column; });
  const std::string bar_line = "the bar line";
  const std::string left = after == bar.counts.begin() ? bar_line : tick((after - 1)->text);
  const std::string right = after == bar.counts.end() ? bar_line : tick(after->text);
  return "between " + left + " and " + right;
}

std::optional<int> place_word(BarDraft& bar, const Cell& cell, int begin, int end) {
  if (bar.percent) return CountRef::bar_start;
  if (const auto count = count_at(bar, begin)) {
    if (bar.counts[static_cast<std::size_t>(*count)].bad) return std::nullopt;
    return count;
  }
  if (bar.counts.empty()) return std::nullopt;
  const GridRow& row = *cell.row;
  const bool words = row.kind == RowKind::text || row.kind == RowKind::section || row.kind == RowKind::road;
  bar.strays.push_back({begin, row.range(begin, end), row.text(begin, end),
                        words ? "its first character decides: move it, or quote words that belong together"
                              : "its first character decides: move it under one of them, or write its count"});
  return std::nullopt;
}

}  // namespace fretsheaf::lesson
