#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Holds the counts of a bar to their order, one after another as they are read: they rise. Where they do not, it
// reports the one that is most probably wrong and marks it bad.
class CountOrder {
 public:
  CountOrder(const GridInput& input, BarDraft& bar) : input_(input), bar_(bar) {}

  // A count that is to be added after those of the bar.
  void check(Count& count);
  // The count that is, or will be, at this index of the bar is the latest without a slip.
  void follow(std::size_t index) { latest_ = index; }

  // After a slip that was reported, the rest of the bar may only seem to be out of order: nothing more is said.
  void confuse() { confused_ = true; }
  bool confused() const { return confused_; }

 private:
  Count* latest_figure();
  void blame(Count* figure, std::string message, std::string help);
  bool blame_joined(const Count& count);
  bool blame_latest(const Count& count);

  const GridInput& input_;
  BarDraft& bar_;
  std::optional<std::size_t> latest_;
  bool confused_ = false;
};

// `1 2` of 12, where a number's figures count on and may have run together; empty where they do not.
std::string parted_figures(int number);

}  // namespace fretsheaf::lesson
