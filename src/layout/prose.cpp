#include "layout/prose.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <string>
#include <utility>

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using sheet::Tag;
using templates::Role;

constexpr double heading_gap = 12;  // above a heading inside prose, beyond the leading
constexpr double quote_bar = 4;     // a quote's rule, from the left
constexpr double give = 0.3;        // how far the gap between paragraphs may give way or grow, as a share

constexpr double label_gap = 4;               // from an item's mark to its words, at least
constexpr double below_line = 0.3;            // of the leading: where a quote's rule ends under a line
constexpr double first_heading_scale = 1.15;  // of a heading of the first level, in sizes of the body

constexpr std::size_t deepest = 6;  // what is nested deeper stands no further in

const char* const bullet = "\u2022";

// How the lines of one paragraph stand.
struct Stand {
  double x = 0;
  double leading = 0;
  double gap = 0;  // before the first, beyond the leading
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
  block.items = std::move(line.items);
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

// Each line of code as a run of its own.
score::Runs code_lines(const score::Runs& runs) {
  score::Runs lines(1, score::Run{"", false, false, true, std::nullopt});
  for (const score::Run& run : runs) {
    for (const char c : run.text) {
      if (c == '\n') {
        lines.push_back(score::Run{"", false, false, true, std::nullopt});
      } else {
        lines.back().text += c;
      }
    }
  }
  return lines;
}

void append(Blocks& to, Blocks from) {
  for (Block& block : from) to.push_back(std::move(block));
}

class Prose {
 public:
  Prose(double width, int under, Setter& setter)
      : width_(width), under_(under), level_(under), setter_(setter), type_(setter.type) {}

  void add(const score::Block& block);
  Blocks take();

 private:
  // A list or quote that the block before lies in.
  struct Open {
    score::Container kind{};
    Nest nest{};
    std::optional<Nest> item;  // of a list: the one that is open,
    std::optional<Nest> body;  // and what it says
    double x = 0;              // of what lies in it
    double quote_bar = 0;      // the rule beside a quote
  };

  double step() const { return setter_.measures().list_indent; }
  double left() const { return open_.empty() ? 0 : open_.back().x; }
  // A quote stands in from the right, too.
  double measure(double x) const;
  ParagraphStyle style() const {
    ParagraphStyle style;
    style.language = setter_.language;
    return style;
  }
  Nest new_nest(Tag tag) { return {setter_.new_group(), tag, std::nullopt, {}}; }
  std::vector<Nest> nests(Tag leaf);
  Tag heading_tag(int level);
  double gap_before(const score::Block& block) const;
  double leading() const;

  void go_into(const score::Block& block);
  void paragraph(const score::Block& block);
  void heading(const score::Block& block);
  void item(const score::Block& block);
  void code(const score::Block& block);
  void rule();
  // Adds a block's lines, with the mark of an item that begins with them.
  void put(Blocks lines, const score::Block& block);
  bool is_of_the_item(const score::Block& block) const;
  void put_bars(Block& line, bool first, const score::Block& block) const;

  double width_;
  int under_;
  int level_;  // of the heading before
  Setter& setter_;
  Type& type_;
  Blocks blocks_;
  std::vector<Open> open_;
  bool in_tight_list_ = false;
  std::optional<Block> mark_;   // of an item whose first block is still to come
  std::size_t mark_depth_ = 0;  // containers that it lies in
};

double Prose::measure(double x) const {
  double right = width_;
  for (const Open& open : open_) {
    if (open.kind == score::Container::quote) right -= step();
  }
  return std::max(right - x, std::min(width_, 4 * step()));
}

// The quotes, the lists with their items, and the leaf: a list in an item lies in the item's body.
std::vector<Nest> Prose::nests(Tag leaf) {
  std::vector<Nest> nests;
  for (const Open& open : open_) {
    nests.push_back(open.nest);
    if (open.item) nests.push_back(*open.item);
    if (open.body) nests.push_back(*open.body);
  }
  nests.push_back(new_nest(leaf));
  return nests;
}

// Leaves what the block no longer lies in and opens what begins with it.
void Prose::go_into(const score::Block& block) {
  const std::size_t depth = std::min(block.inside.size(), deepest);
  const std::size_t kept = block.inside.size() - static_cast<std::size_t>(block.opens);
  if (open_.size() > std::min(kept, depth)) open_.resize(std::min(kept, depth));
  while (open_.size() < depth) {
    Open open;
    open.kind = block.inside[open_.size()];
    open.quote_bar = left() + quote_bar;
    open.x = left() + step();
    open.nest = new_nest(open.kind == score::Container::list ? Tag::list : Tag::quote);
    open_.push_back(open);
  }
}

// Beyond the leading.
double Prose::gap_before(const score::Block& block) const {
  const auto& m = setter_.measures();
  const bool nested = !block.inside.empty() && block.inside.back() == score::Container::list;
  const bool begins_outermost = static_cast<std::size_t>(block.opens) == block.inside.size();
  if (block.kind == score::Block::Kind::list_item && !begins_outermost)
    return block.loose ? m.paragraph_gap : m.list_item_gap;
  return nested && in_tight_list_ && !begins_outermost ? m.list_item_gap : m.paragraph_gap;
}

// Lines in a list keep its leading.
double Prose::leading() const {
  const auto is_list = [](const Open& open) { return open.kind == score::Container::list; };
  const bool listed = std::any_of(open_.begin(), open_.end(), is_list);
  return listed ? setter_.measures().list_leading : setter_.measures().body_leading;
}

void Prose::paragraph(const score::Block& block) {
  const double x = left();
  put(line_blocks(set_paragraph(block.runs, measure(x), style(), type_),
                  {x, leading(), gap_before(block), nests(Tag::paragraph)}),
      block);
}

void Prose::code(const score::Block& block) {
  const double x = left() + step();
  Blocks lines;
  for (score::Run line : code_lines(block.runs)) {
    // An empty line of code is a line.
    if (line.text.find_first_not_of(' ') == std::string::npos) line.text = "\u00A0";
    for (TextLine& set : set_paragraph({line}, measure(x), style(), type_)) {
      add_word_space(set.items, Role::code, set.width, type_);
      const Stand stand{x, setter_.measures().list_leading, lines.empty() ? gap_before(block) : 0, {}};
      lines.push_back(line_block(std::move(set), stand, true));
    }
  }
  const std::vector<Nest> nest = nests(Tag::paragraph);
  for (Block& line : lines) line.nests = nest;
  put(std::move(lines), block);
}

// No level is left out on the way down, whatever the text begins with.
Tag Prose::heading_tag(int level) {
  level_ = std::min({level, level_ + 1, 3});
  return level_ == 2 ? Tag::heading2 : Tag::heading3;
}

// Headings inside a text are words of its own size: the block that holds it has a larger one.
void Prose::heading(const score::Block& block) {
  const Role role = block.level == 1 ? Role::body_strong : Role::body_strong_emphasis;
  ParagraphStyle heading = style();
  heading.role_of = [role](const score::Run&) { return role; };
  heading.part = Part::heading;
  heading.scale = block.level == 1 ? first_heading_scale : 1;
  const double x = left();
  Blocks lines = line_blocks(
      set_paragraph(block.runs, measure(x), heading, type_),
      {x, setter_.measures().body_leading * heading.scale, heading_gap, nests(heading_tag(under_ + block.level))});
  for (Block& line : lines) line.keep_with_next = true;
  put(std::move(lines), block);
}

void Prose::item(const score::Block& block) {
  const auto& m = setter_.measures();
  Words label = block.ordinal ? type_.set(Role::list_number, std::to_string(*block.ordinal), Part::text)
                              : type_.set(Role::body, bullet, Part::text);
  const double label_x = open_.size() > 1 ? open_[open_.size() - 2].x : 0;
  const double x = label_x + std::max(step(), label.width + label_gap);
  if (!open_.empty()) open_.back().x = std::max(x, block.opens == 0 ? open_.back().x : x);
  in_tight_list_ = !block.loose;
  if (!open_.empty()) {
    open_.back().item = new_nest(Tag::list_item);
    open_.back().body = new_nest(Tag::list_body);
  }
  const Stand stand{x, m.list_leading, gap_before(block), nests(Tag::paragraph)};
  Blocks lines = line_blocks(set_paragraph(block.runs, measure(x), style(), type_), stand);
  const bool empty = lines.empty();
  if (empty) lines.push_back(line_block({}, stand, true));
  sheet::translate(label.items, label_x, 0);
  sheet::Group group;
  group.tag = Tag::list_label;
  group.items = std::move(label.items);
  lines.front().items.insert(lines.front().items.begin(), std::move(group));
  lines.front().ascent = std::max(lines.front().ascent, -label.ink.top);
  if (empty && !mark_) {
    put_bars(lines.front(), true, block);
    mark_ = std::move(lines.front());
    mark_depth_ = block.inside.size();
    return;
  }
  put(std::move(lines), block);
}

void Prose::rule() {
  const auto& m = setter_.measures();
  Block block;
  block.gap = block.gap_least = block.gap_most = m.body_leading;
  const double third = measure(left()) / 3;
  block.items.emplace_back(
      sheet::Rule{Part::rule, {left() + third, 0}, {left() + 2 * third, 0}, m.rule, sheet::Color{}, 0, 0});
  block.keep_with_next = true;
  Blocks lines;
  lines.push_back(std::move(block));
  put(std::move(lines), {});
}

// The rules beside quotes run through from line to line, and begin with their quote.
void Prose::put_bars(Block& line, bool first, const score::Block& block) const {
  const auto& m = setter_.measures();
  const double foot = below_line * m.body_leading;
  const std::size_t goes_on = block.inside.size() - static_cast<std::size_t>(block.opens);
  for (std::size_t i = 0; i < open_.size(); ++i) {
    if (open_[i].kind != score::Container::quote) continue;
    const bool begins = first && i >= goes_on;
    const double top = begins ? -line.ascent : foot - line.gap;
    const double x = open_[i].quote_bar;
    line.items.emplace_back(sheet::Rule{Part::rule, {x, top}, {x, foot}, m.rule, sheet::Color{}, 0, 0});
    if (!begins) line.gap_least = line.gap_most = line.gap;
  }
}

void Prose::put(Blocks lines, const score::Block& block) {
  if (mark_ && !lines.empty()) {
    // The mark stands on the first line of what its item begins with.
    Block& first = lines.front();
    first.items.insert(first.items.begin(), std::make_move_iterator(mark_->items.begin()),
                       std::make_move_iterator(mark_->items.end()));
    first.ascent = std::max(first.ascent, mark_->ascent);
    first.gap = mark_->gap;
    first.gap_least = mark_->gap_least;
    first.gap_most = mark_->gap_most;
    mark_.reset();
  }
  for (std::size_t i = 0; i < lines.size(); ++i) put_bars(lines[i], i == 0, block);
  append(blocks_, std::move(lines));
}

// Whether the item whose mark waits begins with this block.
bool Prose::is_of_the_item(const score::Block& block) const {
  if (block.opens > 0) return block.inside.size() > mark_depth_;
  const bool alone = block.kind == score::Block::Kind::list_item || block.kind == score::Block::Kind::paragraph;
  return !alone && block.inside.size() >= mark_depth_;
}

void Prose::add(const score::Block& block) {
  if (mark_ && !is_of_the_item(block)) blocks_.push_back(*std::exchange(mark_, std::nullopt));
  go_into(block);
  switch (block.kind) {
    case score::Block::Kind::paragraph:
      return paragraph(block);
    case score::Block::Kind::heading:
      return heading(block);
    case score::Block::Kind::list_item:
      return item(block);
    case score::Block::Kind::code:
      return code(block);
    case score::Block::Kind::rule:
      return rule();
  }
}

Blocks Prose::take() {
  if (mark_) blocks_.push_back(*std::exchange(mark_, std::nullopt));
  return std::move(blocks_);
}

// Puts a text into a list as an item: a paragraph that it begins with carries the mark.
void add_item(const score::Blocks& text, int ordinal, score::Blocks& list) {
  const bool begins_list = list.empty();
  score::Block mark;
  const bool marks = !text.empty() && text.front().kind == score::Block::Kind::paragraph && text.front().inside.empty();
  if (marks) mark.runs = text.front().runs;
  mark.kind = score::Block::Kind::list_item;
  mark.ordinal = ordinal;
  mark.inside = {score::Container::list};
  mark.opens = begins_list ? 1 : 0;
  list.push_back(std::move(mark));
  for (std::size_t i = marks ? 1 : 0; i < text.size(); ++i) {
    list.push_back(text[i]);
    list.back().inside.insert(list.back().inside.begin(), score::Container::list);
  }
}

}  // namespace

Blocks set_prose(const score::Blocks& blocks, double width, Setter& setter, int under) {
  Prose prose(width, under, setter);
  for (const score::Block& block : blocks) prose.add(block);
  return prose.take();
}

bool code_fits(const score::Blocks& text, double width, Setter& setter) {
  for (const score::Block& block : text) {
    if (block.kind != score::Block::Kind::code) continue;
    // The item's own indent, that of what it lies in, and the code's.
    const double left = static_cast<double>(block.inside.size() + 2) * setter.measures().list_indent;
    for (const score::Run& line : code_lines(block.runs)) {
      if (left + setter.type.width(Role::code, line.text) > width) return false;
    }
  }
  return true;
}

Blocks set_numbered(const std::vector<score::Blocks>& items, double width, Setter& setter) {
  score::Blocks list;
  for (std::size_t i = 0; i < items.size(); ++i) add_item(items[i], static_cast<int>(i) + 1, list);
  return set_prose(list, width, setter, 2);
}

}  // namespace fretsheaf::layout
