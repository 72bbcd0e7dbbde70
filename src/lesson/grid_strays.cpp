#include "lesson/grid_strays.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

#include "lesson/grid_phrases.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

std::size_t notes_placed(const BarDraft& bar) {
  std::size_t placed = 0;
  for (const Count& count : bar.counts) placed += count.notes.size();
  return placed;
}

// By how many columns the counts stand too far to the right (to the left where it is negative), where moving them puts
// every stray token under a count and most tokens are astray.
std::optional<int> counts_off_by(const BarDraft& bar) {
  if (bar.strays.size() < 2 || bar.strays.size() <= notes_placed(bar)) return std::nullopt;
  for (const int off : std::array{1, -1, 2, -2}) {
    const bool fits = std::all_of(bar.strays.begin(), bar.strays.end(),
                                  [&](const Stray& stray) { return count_at(bar, stray.column + off).has_value(); });
    if (fits) return off;
  }
  return std::nullopt;
}

void report_counts_off(const GridInput& input, const Cell& counts, const BarDraft& bar, int off) {
  const GridRow& row = *counts.row;
  const int begin = bar.counts.front().begin;
  const int end = bar.counts.back().end;
  const std::string columns = number_phrase(static_cast<std::size_t>(std::abs(off)), "column");
  input.diagnostics.error(Code::count_row_off, row.range(begin, end),
                          "these counts stand " + columns + " too far to the " + (off > 0 ? "right" : "left"),
                          "move them " + columns + " to the " + (off > 0 ? "left" : "right") + ": then " +
                              listed({tick(bar.strays.front().text), tick(bar.strays.back().text)}) +
                              " stand under one, too");
}

void report_stray(const GridInput& input, const BarDraft& bar, const Stray& stray, bool others_under_it) {
  std::string message = tick(stray.text) + " stands under no count, " + neighbours(bar, stray.column);
  if (others_under_it) message += ", and so does what stands under it";
  input.diagnostics.error(Code::token_under_none, stray.range, std::move(message), stray.help);
}

}  // namespace

void report_strays(const GridInput& input, const Cell& counts, const BarDraft& bar) {
  // Where a count could not be read, or a bar line is out of line, these tokens may well have stood under one.
  if (bar.strays.empty() || bar.unsure) return;
  if (const auto off = counts_off_by(bar)) return report_counts_off(input, counts, bar, *off);
  std::vector<Stray> strays = bar.strays;
  std::stable_sort(strays.begin(), strays.end(), [](const Stray& a, const Stray& b) { return a.column < b.column; });
  // What stands astray in one column misses one count: one slip.
  for (auto first = strays.begin(); first != strays.end();) {
    const auto last =
        std::find_if(first, strays.end(), [&](const Stray& stray) { return stray.column != first->column; });
    report_stray(input, bar, *first, last - first > 1);
    first = last;
  }
}

}  // namespace fretsheaf::lesson
