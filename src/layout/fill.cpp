#include "layout/fill.h"

#include <algorithm>
#include <limits>

namespace fretsheaf::layout {
namespace {

// What hurts, in the same unit as Block::part_penalty.
constexpr double page_cost = 1000;        // a further page
constexpr double parted_cost = 1e6;       // blocks that belong together
constexpr double overfull_cost = 1e9;     // ink beyond the page
constexpr double shrink_cost = 25;        // all gaps at their least
constexpr double stretch_cost = 15;       // all gaps at their most
constexpr double blank_cost = 500;        // a page left blank beyond what gaps can fill, times the square of that share
constexpr double bare_title_cost = 1500;  // the same of a title without music, which looks like a page left unfinished
constexpr double scant_cost = 150;        // a last page with next to nothing on it; less, the nearer it is to
constexpr double scant_share = 0.33;      // so much of a page
constexpr double alone_cost = 300;        // a page of one line of music, with others on the pages around it
constexpr double rounding = 1e-6;

struct Extent {
  double natural = 0;
  double least = 0;
  double most = 0;

  void add(double length) {
    natural += length;
    least += length;
    most += length;
  }
};

// The gap before `block` under `above`, wide enough that no ink meets.
Extent gap_between(const Block& above, const Block& block) {
  const double apart = above.descent + block.ascent + block.clearance;
  return {std::max(block.gap, apart), std::max(block.gap_least, apart), std::max(block.gap_most, apart)};
}

double start_of(const Block& block, bool first_page, const PageRoom& room) {
  if (first_page) return room.first_top + std::max(0.0, block.ascent);
  // Where the ink begins below the origin it is the ink that stands under the running head as far as others' origins
  // do.
  return std::max(room.later_origin + std::min(0.0, block.ascent), room.later_top + block.ascent);
}

bool in_one_group(const Block& above, const Block& block) {
  return !above.nests.empty() && !block.nests.empty() && above.nests.front().id == block.nests.front().id;
}

// How gaps are set on a page: -1 all at their least, 0 natural, 1 all at their most. A page that no gaps can fill stays
// the nearer to natural, the more of it is blank: it would gain nothing by being drawn apart.
double setting_of(const Extent& extent, double available) {
  const double slack = available - extent.natural;
  if (slack < 0) {
    const double give = extent.natural - extent.least;
    return give > 0 ? std::max(-1.0, slack / give) : 0;
  }
  const double grow = extent.most - extent.natural;
  if (slack <= 0) return 0;
  return grow > 0 ? std::min(slack / grow, grow / slack) : 0;
}

// The blocks that come before the first example.
std::size_t head_of(const Blocks& blocks) {
  const auto first = std::ranges::find_if(blocks, [](const Block& block) { return block.bookmark.has_value(); });
  return first == blocks.end() ? 0 : static_cast<std::size_t>(first - blocks.begin());
}

double page_badness(const Extent& extent, double available, bool last, bool bare_title) {
  const double setting = setting_of(extent, available);
  if (setting < 0) return shrink_cost * setting * setting;
  if (last) {
    const double lacking = std::max(0.0, 1 - extent.natural / (scant_share * available));
    return scant_cost * lacking * lacking;
  }
  const double blank = (available - extent.most) / available;
  return blank > 0 ? stretch_cost + (bare_title ? bare_title_cost : blank_cost) * blank * blank
                   : stretch_cost * setting * setting;
}

class Filler {
 public:
  Filler(const Blocks& blocks, const PageRoom& room)
      : blocks_(blocks),
        room_(room),
        head_(head_of(blocks)),
        best_(blocks.size() + 1, std::numeric_limits<double>::infinity()),
        from_(blocks.size() + 1, 0) {}

  std::vector<PagePlan> fill();

 private:
  void pages_from(std::size_t begin);
  // Of the page that begins with block `begin`, after those that are best before it.
  double bottom_of(std::size_t begin) const {
    if (begin == 0) return room_.first_bottom;
    return from_[begin] == 0 ? room_.second_bottom.value_or(room_.bottom) : room_.bottom;
  }
  PagePlan plan(std::size_t begin, std::size_t end) const;
  // A single block with what goes before and after it in its group on other pages.
  bool alone(std::size_t begin, std::size_t end) const {
    return end == begin + 1 && begin > 0 && end < blocks_.size() && in_one_group(blocks_[begin - 1], blocks_[begin]) &&
           in_one_group(blocks_[begin], blocks_[end]);
  }

  const Blocks& blocks_;
  const PageRoom& room_;
  const std::size_t head_;
  std::vector<double> best_;
  std::vector<std::size_t> from_;
};

// Tries every page that begins with block `begin`.
void Filler::pages_from(std::size_t begin) {
  Extent extent;
  const double start = start_of(blocks_[begin], begin == 0, room_);
  for (std::size_t end = begin + 1; end <= blocks_.size(); ++end) {
    const Block& block = blocks_[end - 1];
    if (end > begin + 1) {
      const Extent gap = gap_between(blocks_[end - 2], block);
      extent.natural += gap.natural;
      extent.least += gap.least;
      extent.most += gap.most;
    }
    extent.add(block.height);
    const double available = bottom_of(begin) - start - block.descent;
    const double over = extent.least - available;
    if (over > rounding && end > begin + 1) {
      // A block that hangs less far down may yet fit, but none once the page is far over.
      if (over > block.height + 100) break;
      continue;
    }
    const bool last = end == blocks_.size();
    double cost = best_[begin] + page_cost + page_badness(extent, available, last, begin == 0 && end <= head_);
    if (over > rounding) cost += overfull_cost;
    if (!last) cost += block.keep_with_next ? parted_cost : block.part_penalty;
    if (alone(begin, end)) cost += alone_cost;
    if (cost < best_[end]) {
      best_[end] = cost;
      from_[end] = begin;
    }
  }
}

PagePlan Filler::plan(std::size_t begin, std::size_t end) const {
  PagePlan plan;
  double y = start_of(blocks_[begin], begin == 0, room_);
  Extent extent;
  for (std::size_t i = begin; i < end; ++i) {
    if (i > begin) {
      const Extent gap = gap_between(blocks_[i - 1], blocks_[i]);
      extent.natural += gap.natural;
      extent.least += gap.least;
      extent.most += gap.most;
    }
    extent.add(blocks_[i].height);
  }
  double setting = setting_of(extent, bottom_of(begin) - y - blocks_[end - 1].descent);
  if (end == blocks_.size()) setting = std::min(setting, 0.0);
  for (std::size_t i = begin; i < end; ++i) {
    if (i > begin) {
      const Extent gap = gap_between(blocks_[i - 1], blocks_[i]);
      y += gap.natural + (setting < 0 ? setting * (gap.natural - gap.least) : setting * (gap.most - gap.natural));
    }
    plan.push_back({i, y});
    y += blocks_[i].height;
  }
  return plan;
}

std::vector<PagePlan> Filler::fill() {
  best_[0] = 0;
  for (std::size_t begin = 0; begin < blocks_.size(); ++begin) pages_from(begin);
  std::vector<std::size_t> ends;
  for (std::size_t end = blocks_.size(); end > 0; end = from_[end]) ends.push_back(end);
  std::reverse(ends.begin(), ends.end());
  std::vector<PagePlan> pages;
  std::size_t begin = 0;
  for (const std::size_t end : ends) {
    pages.push_back(plan(begin, end));
    begin = end;
  }
  return pages;
}

}  // namespace

std::vector<PagePlan> fill_pages(const Blocks& blocks, const PageRoom& room) {
  return Filler(blocks, room).fill();
}

}  // namespace fretsheaf::layout
