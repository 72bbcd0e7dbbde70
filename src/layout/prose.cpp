#include "layout/prose.h"

#include <algorithm>
#include <utility>

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using sheet::Tag;
using templates::Role;

constexpr double heading_gap = 12;  // above a heading inside prose, beyond the leading
constexpr double quote_bar = 4;     // a quote's rule, from the left
constexpr double give = 0.3;        // how far the gap between paragraphs may give way or grow, as a share

constexpr int deepest = 6;  // what is nested deeper stands no further in

const char* const bullet = "\u2022";

// How the lines of one paragraph stand.
struct Stand {
  double x = 0;
  double leading = 0;
  double gap = 0;  // before the first, beyond the leading
  Tag wrap = Tag::none;
  std::vector<Nest> nests;
};

Block line_block(TextLine line, const Stand& stand, bool first) {
  Block block;
  block.ascent = line.ascent;
  block.descent = line.descent;
  const double extra = first ? stand.gap : 0;
  block.gap = stand.leading + extra;
  block.gap_least = stand.leading + extra * (1 - give);
  block.gap_most = stand.leading + extra * (1 + give);
  block.clearance = 1;
  block.part_penalty = 10;
  block.nests = stand.nests;
  sheet::translate(line.items, stand.x, 0);
  if (stand.wrap == Tag::none) {
    block.items = std::move(line.items);
  } else {
    sheet::Group group;
    group.tag = stand.wrap;
    group.items = std::move(line.items);
    block.items.emplace_back(std::move(group));
  }
  return block;
}

// A page never begins with a paragraph's last line, nor ends with its first.
Blocks line_blocks(std::vector<TextLine> lines, const Stand& stand) {
  Blocks blocks;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    Block block = line_block(std::move(lines[i]), stand, i == 0);
    block.keep_with_next = lines.size() > 1 && (i == 0 || i + 2 == lines.size());
    blocks.push_back(std::move(block));
  }
  if (!blocks.empty()) blocks.back().part_penalty = 0;
  return blocks;
}

void append(Blocks& to, Blocks from) {
  for (Block& block : from) to.push_back(std::move(block));
}

class Prose {
 public:
  Prose(double width, Setter& setter) : width_(width), setter_(setter), type_(setter.type) {}

  void add(const score::Block& block, bool first_of_list);
  Blocks take() { return std::move(blocks_); }

 private:
  double indent_step() const { return setter_.measures().list_indent; }
  double indent_of(int level) const { return std::clamp(level, 0, deepest) * indent_step(); }
  ParagraphStyle style() const {
    ParagraphStyle style;
    style.language = setter_.language;
    return style;
  }
  void paragraph(const score::Block& block);
  void heading(const score::Block& block);
  void item(const score::Block& block, bool first_of_list);
  void quote(const score::Block& block);
  void rule();

  double width_;
  Setter& setter_;
  Type& type_;
  Blocks blocks_;
  Nest list_;
};

void Prose::paragraph(const score::Block& block) {
  const auto& m = setter_.measures();
  const double x = indent_of(block.level);
  append(blocks_,
         line_blocks(
             set_paragraph(block.runs, width_ - x, style(), type_),
             {x, m.body_leading, m.paragraph_gap, Tag::none, {{setter_.new_group(), Tag::paragraph, std::nullopt}}}));
}

void Prose::heading(const score::Block& block) {
  const Role role = block.level <= 2 ? Role::heading : Role::body_strong;
  ParagraphStyle heading = style();
  heading.role_of = [role](const score::Run&) { return role; };
  heading.part = Part::heading;
  const double leading = std::max(setter_.measures().body_leading, 1.25 * type_.look().style(role).size);
  Blocks lines =
      line_blocks(set_paragraph(block.runs, width_, heading, type_),
                  {0, leading, heading_gap, Tag::none, {{setter_.new_group(), Tag::heading2, std::nullopt}}});
  for (Block& line : lines) line.keep_with_next = true;
  append(blocks_, std::move(lines));
}

void Prose::item(const score::Block& block, bool first_of_list) {
  const auto& m = setter_.measures();
  if (first_of_list) list_ = {setter_.new_group(), Tag::list, std::nullopt};
  Words label = block.ordinal > 0 ? type_.set(Role::list_number, std::to_string(block.ordinal), Part::text)
                                  : type_.set(Role::body, bullet, Part::text);
  const double label_x = indent_of(block.level - 1);
  const double x = label_x + std::max(indent_step(), label.width + 4);
  const Stand stand{x,
                    m.list_leading,
                    first_of_list ? m.paragraph_gap : m.list_item_gap,
                    Tag::list_body,
                    {list_, {setter_.new_group(), Tag::list_item, std::nullopt}}};
  Blocks lines = line_blocks(set_paragraph(block.runs, width_ - x, style(), type_), stand);
  if (lines.empty()) lines.push_back(line_block({}, stand, true));
  sheet::translate(label.items, label_x, 0);
  sheet::Group group;
  group.tag = Tag::list_label;
  group.items = std::move(label.items);
  lines.front().items.insert(lines.front().items.begin(), std::move(group));
  lines.front().ascent = std::max(lines.front().ascent, -label.ink.top);
  append(blocks_, std::move(lines));
}

void Prose::quote(const score::Block& block) {
  const auto& m = setter_.measures();
  const double x = indent_of(std::max(1, block.level));
  Blocks lines = line_blocks(
      set_paragraph(block.runs, width_ - 2 * x, style(), type_),
      {x, m.body_leading, m.paragraph_gap, Tag::none, {{setter_.new_group(), Tag::paragraph, std::nullopt}}});
  // The rule beside it runs through from line to line.
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double top = i == 0 ? -lines[i].ascent : 0.3 * m.body_leading - m.body_leading;
    const double bottom = i + 1 == lines.size() ? lines[i].descent : 0.3 * m.body_leading;
    const double rule_x = x - indent_step() + quote_bar;
    lines[i].items.emplace_back(sheet::Rule{Part::rule, {rule_x, top}, {rule_x, bottom}, m.rule, sheet::Color{}, 0, 0});
  }
  append(blocks_, std::move(lines));
}

void Prose::rule() {
  const auto& m = setter_.measures();
  Block block;
  block.gap = block.gap_least = block.gap_most = m.body_leading;
  const double third = width_ / 3;
  block.items.emplace_back(sheet::Rule{Part::rule, {third, 0}, {2 * third, 0}, m.rule, sheet::Color{}, 0, 0});
  block.keep_with_next = true;
  blocks_.push_back(std::move(block));
}

void Prose::add(const score::Block& block, bool first_of_list) {
  switch (block.kind) {
    case score::Block::Kind::paragraph:
      return paragraph(block);
    case score::Block::Kind::heading:
      return heading(block);
    case score::Block::Kind::list_item:
      return item(block, first_of_list);
    case score::Block::Kind::quote:
      return quote(block);
    case score::Block::Kind::rule:
      return rule();
  }
}

}  // namespace

Blocks set_prose(const score::Blocks& blocks, double width, Setter& setter) {
  Prose prose(width, setter);
  bool in_list = false;
  for (const score::Block& block : blocks) {
    const bool item = block.kind == score::Block::Kind::list_item;
    prose.add(block, item && !in_list);
    in_list = item || (in_list && block.kind == score::Block::Kind::paragraph && block.level > 0);
  }
  return prose.take();
}

Blocks set_numbered(const std::vector<score::Runs>& items, double width, Setter& setter) {
  score::Blocks blocks;
  for (const score::Runs& runs : items) {
    blocks.push_back({score::Block::Kind::list_item, 1, static_cast<int>(blocks.size()) + 1, runs});
  }
  return set_prose(blocks, width, setter);
}

}  // namespace fretsheaf::layout
