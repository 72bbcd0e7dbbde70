#include "layout/layout.h"

#include <algorithm>
#include <utility>

#include "layout/assembly.h"
#include "layout/build_up.h"
#include "layout/chord_boxes.h"
#include "layout/columns.h"
#include "layout/example_blocks.h"
#include "layout/fill.h"
#include "layout/form_chart.h"
#include "layout/frame.h"
#include "layout/furniture.h"
#include "layout/ladder.h"
#include "layout/missing.h"
#include "layout/neck.h"
#include "layout/practice_log.h"
#include "layout/title_block.h"
#include "lesson/limits.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

// Footers are arranged for numbers of two figures.
constexpr int most_pages_foreseen = 88;

// Of the gap under the head's rule, where a page is tight (chosen by eye).
constexpr double head_gap_share = 0.8;

void append(Blocks& to, Blocks from) {
  for (Block& block : from) to.push_back(std::move(block));
}

// The blocks of a whole score, in reading order.
class Flow {
 public:
  // `room` is the height that all pages have that a handout may have.
  Flow(const score::Score& score, const score::Alternatives& alternatives, double width, double room, Setter& setter,
       source::Diagnostics& diagnostics)
      : score_(score),
        alternatives_(alternatives),
        width_(width),
        room_(room),
        setter_(setter),
        diagnostics_(diagnostics) {}

  // None where they need more than all the room.
  Blocks blocks();

 private:
  void head(Blocks& blocks);
  void example(const score::Example& example, Blocks& blocks);
  Short ladder(const score::Ladder& ladder);
  Short neck(const score::NeckPicture& picture, const std::string& words);
  Short boxes(const std::vector<score::ChordBox>& boxes, const std::vector<std::string>& words);
  Short form(const score::Example& example, const std::string& words);
  Short build_up(const std::vector<score::Step>& steps);
  Short practice_log();
  Short practice(const std::vector<score::Blocks>& notes, const std::string& hint);
  const score::ExampleAlternatives& words_of(const score::Example& example) const;
  std::vector<Short> shorts_after(const score::Example& example);

  const score::Score& score_;
  const score::Alternatives& alternatives_;
  double width_;
  double room_;
  Setter& setter_;
  source::Diagnostics& diagnostics_;
};

double height_of(const Blocks& blocks, std::size_t begin) {
  double height = 0;
  for (std::size_t i = begin; i < blocks.size(); ++i) height += blocks[i].height;
  return height;
}

void Flow::head(Blocks& blocks) {
  const templates::Measures& m = setter_.measures();
  blocks.push_back(title_block(score_.heading, width_, setter_));
  Blocks intro = set_prose(score_.intro, std::min(width_, m.prose_measure), setter_);
  if (!intro.empty()) {
    intro.front().gap = intro.front().gap_most = m.rule_to_text;
    intro.front().gap_least = head_gap_share * m.rule_to_text;
  }
  append(blocks, std::move(intro));
}

Short Flow::ladder(const score::Ladder& ladder) {
  const templates::Measures& m = setter_.measures();
  Short made{ladder_blocks(ladder, width_, setter_), std::nullopt};
  const double column = column_width(width_, m);
  if (ladder_fits(ladder, column, m)) made.narrow = ladder_blocks(ladder, column, setter_);
  return made;
}

Short Flow::neck(const score::NeckPicture& picture, const std::string& words) {
  Short made{neck_blocks(picture, score_, width_, setter_, words), std::nullopt};
  const double column = column_width(width_, setter_.measures());
  if (neck_fits(picture, column, setter_)) made.narrow = neck_blocks(picture, score_, column, setter_, words);
  return made;
}

Short Flow::boxes(const std::vector<score::ChordBox>& boxes, const std::vector<std::string>& words) {
  Short made{box_blocks(boxes, score_, width_, setter_, words), std::nullopt};
  const double column = column_width(width_, setter_.measures());
  if (boxes_fit(boxes, score_, column, setter_)) made.narrow = box_blocks(boxes, score_, column, setter_, words);
  return made;
}

Short Flow::form(const score::Example& example, const std::string& words) {
  Short made{form_blocks(example, score_.naming, width_, setter_, words), std::nullopt};
  const double column = column_width(width_, setter_.measures());
  if (form_fits(example, score_.naming, column, setter_)) {
    made.narrow = form_blocks(example, score_.naming, column, setter_, words);
  }
  return made;
}

Short Flow::practice(const std::vector<score::Blocks>& notes, const std::string& hint) {
  Short made{practice_blocks(notes, hint, width_, setter_), std::nullopt};
  const double column = column_width(width_, setter_.measures());
  if (practice_fits(notes, column, setter_)) made.narrow = practice_blocks(notes, hint, column, setter_);
  return made;
}

Short Flow::build_up(const std::vector<score::Step>& steps) {
  return {build_up_blocks(steps, width_, setter_),
          build_up_blocks(steps, column_width(width_, setter_.measures()), setter_)};
}

Short Flow::practice_log() {
  return {practice_log_blocks(score_.practice_log, width_, setter_),
          practice_log_blocks(score_.practice_log, column_width(width_, setter_.measures()), setter_)};
}

const score::ExampleAlternatives& Flow::words_of(const score::Example& example) const {
  static const score::ExampleAlternatives none;
  const auto index = static_cast<std::size_t>(&example - score_.examples.data());
  return index < alternatives_.examples.size() ? alternatives_.examples[index] : none;
}

// The lesson's own notes follow the last example's.
std::vector<Short> Flow::shorts_after(const score::Example& example) {
  const bool last = &example == &score_.examples.back();
  std::vector<Short> shorts;
  if (example.ladder) shorts.push_back(ladder(*example.ladder));
  if (!example.build_up.empty()) shorts.push_back(build_up(example.build_up));
  if (!example.practice.empty()) {
    const bool plain = score_.examples.size() == 1 && score_.practice.empty();
    shorts.push_back(
        practice(example.practice,
                 plain ? std::string() : words::fill_number(setter_.words, words::Word::example, example.number)));
  }
  if (example.neck) shorts.push_back(neck(*example.neck, words_of(example).neck));
  if (!example.boxes.empty()) shorts.push_back(boxes(example.boxes, words_of(example).boxes));
  if (example.form) shorts.push_back(form(example, words_of(example).form));
  if (last && !score_.practice.empty()) shorts.push_back(practice(score_.practice, {}));
  if (last && score_.practice_log > 0) shorts.push_back(practice_log());
  if (setter_.type.look().one_thing_a_line) {
    for (Short& one : shorts) one.narrow.reset();
  }
  return shorts;
}

void Flow::example(const score::Example& example, Blocks& blocks) {
  append(blocks, example_blocks(example, words_of(example), score_, width_, setter_, diagnostics_));
  Blocks shorts = stack_shorts(shorts_after(example), width_, setter_.measures());
  if (shorts.empty()) blocks.back().part_penalty = 0;
  append(blocks, std::move(shorts));
}

Blocks Flow::blocks() {
  Blocks blocks;
  head(blocks);
  double height = 0;
  for (const score::Example& one : score_.examples) {
    const std::size_t begin = blocks.size();
    example(one, blocks);
    height += height_of(blocks, begin);
    // What is too long is not worth laying out to its end.
    if (height > room_) return {};
  }
  if (!score_.examples.empty()) return blocks;
  if (!score_.practice.empty()) append(blocks, practice(score_.practice, {}).wide);
  if (score_.practice_log > 0) append(blocks, practice_log().wide);
  return blocks;
}

void place_cautions(const Furniture& furniture, Assembly& assembly, double left) {
  Block block;
  block.items = furniture.cautions();
  if (!block.items.empty()) assembly.place(std::move(block), left, 0);
}

sheet::Page make_page(const PagePlan& plan, Blocks& blocks, int number, int pages, const Frame& frame,
                      const Furniture& furniture, std::vector<sheet::Bookmark>& bookmarks) {
  const double left = frame.text_left(number);
  sheet::Page page;
  page.width = frame.width;
  page.height = frame.height;
  page.description = furniture.description(number, pages);
  Assembly assembly;
  // On a second page they are read first.
  if (number > 0 && number == furniture.caution_page()) place_cautions(furniture, assembly, left);
  for (const Placed& placed : plan) {
    Block& block = blocks[placed.block];
    if (block.bookmark) bookmarks.push_back({*block.bookmark, number, placed.y - std::max(0.0, block.ascent)});
    assembly.place(std::move(block), left, placed.y);
    // They stand at the foot, but are read after the title, before anything is played.
    if (number == 0 && placed.block == 0 && furniture.caution_page() == 0) place_cautions(furniture, assembly, left);
  }
  page.items = assembly.take();
  std::vector<sheet::Item> head = furniture.head(number, pages);
  std::vector<sheet::Item> foot = furniture.foot(number, pages);
  sheet::translate(head, left, 0);
  sheet::translate(foot, left, 0);
  page.items.insert(page.items.begin(), head.begin(), head.end());
  page.items.insert(page.items.end(), foot.begin(), foot.end());
  return page;
}

bool has_heading(const PagePlan& plan, const Blocks& blocks) {
  return std::any_of(plan.begin(), plan.end(),
                     [&](const Placed& placed) { return blocks[placed.block].bookmark.has_value(); });
}

// Where the cautions would push all music off the title's page, they stand at the foot of the next: a title alone looks
// like a page left unfinished.
std::vector<PagePlan> pages_of(const Blocks& blocks, Furniture& furniture) {
  std::vector<PagePlan> plans = fill_pages(blocks, furniture.room());
  if (plans.size() < 2 || has_heading(plans.front(), blocks)) return plans;
  furniture.move_cautions(1);
  std::vector<PagePlan> others = fill_pages(blocks, furniture.room());
  if (others.size() > 1 && has_heading(others.front(), blocks)) return others;
  furniture.move_cautions(0);
  return plans;
}

}  // namespace

sheet::Sheet lay_out(const score::Score& score, const score::Alternatives& alternatives,
                     const templates::Template& look, typeface::Shaper& shaper,
                     const std::vector<std::vector<typeface::FontId>>& fonts, source::Diagnostics& diagnostics,
                     std::string_view lesson_text) {
  Type type(shaper, look, fonts);
  Setter setter{type, std::string(words::language_code(score.language)), score.language, 1};
  const Frame frame = make_frame(score.paper, look);
  Furniture furniture(score, frame, most_pages_foreseen, setter);
  const double room = static_cast<double>(lesson::limits::pages) * frame.height;
  sheet::Sheet sheet;
  Blocks blocks = Flow(score, alternatives, frame.text_width, room, setter, diagnostics).blocks();
  if (blocks.empty()) return sheet;
  const std::vector<PagePlan> plans = pages_of(blocks, furniture);
  if (plans.size() > lesson::limits::pages) return sheet;

  sheet.title = score.title;
  if (score.answer_key) sheet.title += " – " + score.heading.answer_key;
  sheet.author = score.teacher;
  sheet.language = setter.language;
  const int pages = static_cast<int>(plans.size());
  for (int i = 0; i < pages; ++i) {
    sheet.pages.push_back(
        make_page(plans[static_cast<std::size_t>(i)], blocks, i, pages, frame, furniture, sheet.bookmarks));
  }
  report_missing(type.missing(), lesson_text, diagnostics);
  return sheet;
}

}  // namespace fretsheaf::layout
