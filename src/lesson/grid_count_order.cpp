#include "lesson/grid_count_order.h"

#include <utility>

#include "lesson/grid_phrases.h"
#include "theory/meter.h"

namespace fretsheaf::lesson {

using source::Code;

void CountOrder::check(Count& count) {
  if (!latest_) return;
  const Count& last = bar_.counts[*latest_];
  if (std::pair(last.figure, last.fraction) < std::pair(count.figure, count.fraction)) return;
  if (!confused_ && (blame_joined(count) || blame_latest(count))) return;
  // A figure that no meter has will be reported as such, and says nothing of those after it.
  if (last.figure > theory::most_counts && count.figure <= theory::most_counts) return;
  count.bad = true;
  if (std::exchange(confused_, true)) return;
  input_.diagnostics.error(Code::count_order, count.range, tick(count.text) + " does not come after " + tick(last.text),
                           "counts rise inside a bar; a bar line begins the next");
}

// The figure that the latest count without a slip is or divides; nullptr where it was reported.
Count* CountOrder::latest_figure() {
  const int figure = bar_.counts[*latest_].figure;
  for (std::size_t i = *latest_ + 1; i > 0 && bar_.counts[i - 1].figure == figure; --i) {
    Count& count = bar_.counts[i - 1];
    if (count.fraction == Rational(0)) return count.bad ? nullptr : &count;
  }
  return nullptr;
}

// What divides a figure goes with it.
void CountOrder::blame(Count* figure, std::string message, std::string help) {
  for (Count* one = figure; one != bar_.counts.data() + bar_.counts.size(); ++one) one->bad = true;
  bar_.damaged = true;
  input_.diagnostics.error(Code::count_order, figure->range, std::move(message), std::move(help));
}

// "12 3": two counts with no space between them.
bool CountOrder::blame_joined(const Count& count) {
  Count* const joined = latest_figure();
  if (joined == nullptr || count.figure != joined->figure % 10 + 1) return false;
  const std::string parted = parted_figures(joined->figure);
  if (parted.empty()) return false;
  confused_ = true;
  blame(joined, tick(joined->text) + " is no count before " + tick(count.text), "figures stand apart: " + tick(parted));
  return true;
}

// A figure that all counts around it would rise without is the odd one: a fret, most likely.
bool CountOrder::blame_latest(const Count& count) {
  Count* const odd = latest_figure();
  if (odd == nullptr || count.fraction != Rational(0) || odd->figure <= count.figure) return false;
  const Count* const before = odd == bar_.counts.data() ? nullptr : odd - 1;
  if (before == nullptr ? count.figure != 2 : before->bad || before->figure >= count.figure) return false;
  blame(odd,
        tick(odd->text) + " is no count between " + (before == nullptr ? "the bar line" : tick(before->text)) +
            " and " + tick(count.text),
        before == nullptr ? "the first count of a bar is 1; a fret stands in a string row"
                          : "counts rise inside a bar; a fret stands in a string row");
  return true;
}

std::string parted_figures(int number) {
  const std::string figures = std::to_string(number);
  if (figures.size() < 2) return {};
  std::string parted;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    if (i > 0 && figures[i] != figures[i - 1] + 1) return {};
    if (i > 0) parted += ' ';
    parted += figures[i];
  }
  return parted;
}

}  // namespace fretsheaf::lesson
