#include "layout/build_up.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "layout/columns.h"
#include "layout/heading.h"
#include "layout/tick_box.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Measures;
using templates::Role;

// Of the box's side.
constexpr double box_to_words = 0.55;
constexpr double between = 1.78;  // from one step's words to the next one's box, at least
constexpr double row_leading = 1.9;

std::string name_of(const score::Step& step, words::Language language) {
  if (step.whole) return std::string(words::word(language, words::Word::whole));
  if (step.first == step.last) return words::fill_number(language, words::Word::bar, step.first);
  return words::fill(language, words::Word::bars,
                     {{"from", std::to_string(step.first)}, {"to", std::to_string(step.last)}});
}

void put_step(Block& row, Words words, double x, Setter& setter) {
  const double side = setter.measures().ladder_box;
  const double cap = setter.type.cap_height(Role::fact_value);
  sheet::Path box = tick_box({x + tick_box_line * side / 2, -(cap + side) / 2}, side);
  sheet::translate(words.items, x + (1 + box_to_words) * side, 0);
  sheet::Group body;
  body.tag = sheet::Tag::list_body;
  body.items = std::move(words.items);
  sheet::Group item;
  item.tag = sheet::Tag::list_item;
  item.items.emplace_back(std::move(box));
  item.items.emplace_back(std::move(body));
  row.items.emplace_back(std::move(item));
}

}  // namespace

Blocks build_up_blocks(const std::vector<score::Step>& steps, double width, Setter& setter) {
  const Measures& m = setter.measures();
  Blocks blocks;
  blocks.push_back(section_heading(std::string(words::word(setter.words, words::Word::build_up)),
                                   std::string(words::word(setter.words, words::Word::build_up_hint)), width, setter));
  std::vector<Words> names;
  double column = 0;
  for (const score::Step& step : steps) {
    names.push_back(setter.type.set(Role::fact_value, name_of(step, setter.words), Part::ladder));
    column = std::max(column, (1 + box_to_words + between) * m.ladder_box + names.back().width);
  }
  const auto fit = static_cast<std::size_t>(std::max(1.0, std::floor((width + between * m.ladder_box) / column)));
  const std::size_t columns = even_columns(steps.size(), fit);
  const Nest list{setter.new_group(), sheet::Tag::list, std::nullopt};
  for (std::size_t first = 0; first < steps.size(); first += columns) {
    Block row;
    row.gap = row.gap_least = row.gap_most = first == 0 ? m.heading_to_text : row_leading * m.ladder_box;
    row.ascent = m.ladder_box;
    row.descent = tick_box_line * m.ladder_box;
    row.part_penalty = 70;
    row.nests = {list};
    for (std::size_t i = first; i < std::min(first + columns, steps.size()); ++i) {
      put_step(row, std::move(names[i]), static_cast<double>(i - first) * column, setter);
    }
    blocks.push_back(std::move(row));
  }
  blocks.back().part_penalty = 0;
  return blocks;
}

}  // namespace fretsheaf::layout
