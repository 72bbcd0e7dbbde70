#include "layout/title_block.h"

#include <algorithm>
#include <utility>

#include "layout/head_corner.h"
#include "layout/paragraph.h"
#include "layout/pattern.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using sheet::Tag;
using templates::Role;

constexpr double title_alone = 800;        // a page break after it: better than a heading without its music
constexpr double least_title_scale = 0.8;  // a long title steps down so far before it takes two lines
constexpr double name_share = 0.66;        // of the width: where the name's line ends
constexpr double field_gap = 0.75;         // from a field's word to its line, of the word's size
constexpr double field_drop = 0.25;        // of the line under the word's baseline
constexpr double corner_gap = 10;          // under what stands at the top right
constexpr double corner_clear = 2;         // from it to the words under it
constexpr double cap_share = 0.75;         // how high words reach, of their size
constexpr double hang_share = 0.27;        // and how low
constexpr double line_clear = 2.5;         // between the two, of lines under each other

constexpr double beside_gap = 0.6;  // from a label to the value beside it, of the value's size

void append(std::vector<sheet::Item>& items, TextLine line, double y) {
  sheet::translate(line.items, 0, y);
  for (sheet::Item& item : line.items) items.push_back(std::move(item));
}

templates::FactName name_of(score::Fact::Kind kind) {
  switch (kind) {
    case score::Fact::Kind::key:
      return templates::FactName::key;
    case score::Fact::Kind::meter:
      return templates::FactName::meter;
    case score::Fact::Kind::tuning:
      return templates::FactName::tuning;
    case score::Fact::Kind::capo:
      break;
  }
  return templates::FactName::capo;
}

class TitleBlock {
 public:
  TitleBlock(const score::Heading& heading, double width, Setter& setter)
      : heading_(heading),
        width_(width),
        setter_(setter),
        type_(setter.type),
        m_(setter.measures()),
        corner_(head_corner(heading, width, setter)) {}

  Block make();

 private:
  // For words of a role whose baseline lies `drop` under the last one.
  double free_width(Role role, double drop) const {
    const double top = y_ + drop - cap_share * type_.look().style(role).size;
    return top < corner_.bottom + corner_clear ? width_ - corner_.taken : width_;
  }
  // From the last baseline to that of small words: as the template says, but clear of large letters over them.
  double down_to(Role role, double wanted) const {
    return std::max(wanted, hang_ + cap_share * type_.look().style(role).size + line_clear);
  }
  // The title in lines, and the baseline of the first.
  struct SetTitle {
    std::vector<TextLine> lines;
    double scale = 1;
    double first = 0;
  };
  SetTitle title_in(double room);
  void put_part(templates::HeadPart part);
  void top_line();
  void title();
  void subtitle();
  void facts();
  void fact_row(std::size_t begin, std::size_t end);
  double value_indent(const score::Fact& fact);
  double fact_width(const score::Fact& fact);
  void name_line();
  void field(words::Word word, double left, double right);
  void put(std::vector<sheet::Item> items, double x, double y, Tag tag);
  std::vector<TextLine> lines_of(const std::string& text, Role role, double drop);

  const score::Heading& heading_;
  double width_;
  Setter& setter_;
  Type& type_;
  const templates::Measures& m_;
  HeadCorner corner_;
  Block block_;
  std::vector<score::Fact> facts_;
  double y_ = 0;       // the last baseline
  double hang_ = 0;    // how low its letters may reach
  bool empty_ = true;  // nothing above yet
};

void TitleBlock::put(std::vector<sheet::Item> items, double x, double y, Tag tag) {
  sheet::translate(items, x, y);
  sheet::Group group;
  group.tag = tag;
  group.items = std::move(items);
  block_.items.emplace_back(std::move(group));
}

std::vector<TextLine> TitleBlock::lines_of(const std::string& text, Role role, double drop) {
  return set_plain(text, free_width(role, drop), {role, 1, Part::heading, setter_.language, {}}, type_);
}

void TitleBlock::top_line() {
  std::vector<sheet::Item> items;
  for (TextLine& line : lines_of(filled_pattern(type_.look().top_line, heading_), Role::meta, m_.meta)) {
    const double before = empty_ ? m_.meta : down_to(Role::meta, m_.title_to_top_line);
    y_ += items.empty() ? before : 1.4 * type_.look().style(Role::meta).size;
    append(items, std::move(line), y_);
    empty_ = false;
    hang_ = 0;
  }
  if (!items.empty()) put(std::move(items), 0, 0, Tag::paragraph);
}

TitleBlock::SetTitle TitleBlock::title_in(double room) {
  const std::string text = score::plain(heading_.title);
  const double natural = type_.width(Role::title, text);
  SetTitle set;
  set.scale = natural > room ? std::max(least_title_scale, room / natural * 0.999) : 1;
  set.lines = set_plain(text, room, {Role::title, set.scale, Part::heading, setter_.language, {}}, type_);
  set.first = empty_ && !set.lines.empty() ? set.lines.front().ascent : y_ + m_.meta_to_title;
  return set;
}

// Beside what stands at the top right, or under it where that ends higher: a long title would run far down the page
// between the margin and a corner that is full. The whole title is one heading, whatever its lines.
void TitleBlock::title() {
  const auto end_of = [&](const SetTitle& set) {
    return set.first + (static_cast<double>(set.lines.size()) - 1) * m_.title_leading * set.scale;
  };
  const double beside = free_width(Role::title, m_.meta_to_title);
  SetTitle set = title_in(beside);
  if (beside < width_ && set.lines.size() > 2) {
    SetTitle under = title_in(width_);
    under.first = corner_.bottom + corner_gap + cap_share * type_.look().style(Role::title).size * under.scale;
    if (end_of(under) < end_of(set)) set = std::move(under);
  }
  std::vector<sheet::Item> items;
  for (std::size_t i = 0; i < set.lines.size(); ++i) {
    y_ = i > 0 ? y_ + m_.title_leading * set.scale : set.first;
    append(items, std::move(set.lines[i]), y_);
    empty_ = false;
  }
  put(std::move(items), 0, 0, Tag::heading1);
  hang_ = hang_share * type_.look().style(Role::title).size * set.scale;
}

void TitleBlock::subtitle() {
  std::vector<sheet::Item> items;
  for (TextLine& line : lines_of(score::plain(heading_.subtitle), Role::subtitle, m_.title_to_subtitle)) {
    const double before = empty_ ? line.ascent : m_.title_to_subtitle;
    y_ += items.empty() ? before : m_.subtitle_leading;
    append(items, std::move(line), y_);
    empty_ = false;
    hang_ = hang_share * type_.look().style(Role::subtitle).size;
  }
  if (!items.empty()) put(std::move(items), 0, 0, Tag::paragraph);
}

// How far right of its label a value stands: at one place for all where each has a row of its own.
double TitleBlock::value_indent(const score::Fact& fact) {
  if (!type_.look().labels_beside) return 0;
  double label = type_.width(Role::fact_label, fact.label);
  if (type_.look().one_thing_a_line) {
    for (const score::Fact& other : facts_) label = std::max(label, type_.width(Role::fact_label, other.label));
  }
  return label + beside_gap * type_.look().style(Role::fact_value).size;
}

double TitleBlock::fact_width(const score::Fact& fact) {
  return std::max(type_.width(Role::fact_label, fact.label),
                  value_indent(fact) + type_.width(Role::fact_value, score::plain(fact.value)));
}

void TitleBlock::fact_row(std::size_t begin, std::size_t end) {
  const bool beside = type_.look().labels_beside;
  y_ += begin > 0 && beside ? m_.fact_label_to_value : down_to(Role::fact_label, m_.title_to_facts);
  hang_ = 0;
  const double drop = beside ? 0 : m_.fact_label_to_value;
  double x = 0;
  for (std::size_t i = begin; i < end; ++i) {
    const score::Fact& fact = facts_[i];
    Words label = type_.set(Role::fact_label, fact.label, Part::text);
    sheet::translate(label.items, x, y_);
    add_word_space(label.items, Role::fact_label, x + label.width, type_);
    Words value = type_.set(Role::fact_value, score::plain(fact.value), Part::text);
    sheet::translate(value.items, x + value_indent(fact), y_ + drop);
    for (sheet::Item& item : value.items) label.items.push_back(std::move(item));
    put(std::move(label.items), 0, 0, Tag::paragraph);
    x += fact_width(fact) + m_.fact_gap;
  }
  y_ += drop;
}

// The template's facts in its order, as many to a row as fit.
void TitleBlock::facts() {
  for (const templates::FactName name : type_.look().facts) {
    for (const score::Fact& fact : heading_.facts) {
      if (name_of(fact.kind) == name) facts_.push_back(fact);
    }
  }
  std::size_t begin = 0;
  double x = 0;
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    const double width = fact_width(facts_[i]);
    if (i > begin && (x + width > free_width(Role::fact_label, m_.title_to_facts) || type_.look().one_thing_a_line)) {
      fact_row(begin, i);
      begin = i;
      x = 0;
    }
    x += width + m_.fact_gap;
  }
  if (begin < facts_.size()) fact_row(begin, facts_.size());
}

void TitleBlock::field(words::Word word, double left, double right) {
  Words label = type_.set(Role::fact_label, words::word(setter_.words, word), Part::text);
  const double size = type_.look().style(Role::fact_label).size;
  const double from = left + label.width + field_gap * size;
  const double y = y_ + field_drop * size;
  put(std::move(label.items), left, y_, Tag::paragraph);
  block_.items.emplace_back(sheet::Rule{Part::rule, {from, y}, {right, y}, m_.rule, sheet::Color{}, 0, 0});
}

void TitleBlock::name_line() {
  y_ += m_.facts_to_name_line;
  const bool alone = type_.look().one_thing_a_line;
  field(words::Word::name, 0, alone ? width_ : name_share * width_ - m_.column_gutter / 2);
  if (alone) y_ += m_.facts_to_name_line;
  field(words::Word::date, alone ? 0 : name_share * width_ + m_.column_gutter / 2, width_);
}

void TitleBlock::put_part(templates::HeadPart part) {
  switch (part) {
    case templates::HeadPart::top_line:
      return top_line();
    case templates::HeadPart::title:
      return title();
    case templates::HeadPart::subtitle:
      return subtitle();
    case templates::HeadPart::facts:
      return facts();
  }
}

Block TitleBlock::make() {
  for (const templates::HeadPart part : type_.look().head) put_part(part);
  if (heading_.name_line) {
    y_ = std::max(y_, corner_.bottom + corner_gap - m_.facts_to_name_line);
    name_line();
  }
  y_ += heading_.name_line ? m_.name_line_to_rule : m_.facts_to_rule;
  y_ = std::max(y_, corner_.bottom + corner_gap);
  for (sheet::Item& item : corner_.items) block_.items.push_back(std::move(item));
  block_.items.emplace_back(sheet::Rule{Part::rule, {0, y_}, {width_, y_}, m_.rule, sheet::Color{}, 0, 0});
  block_.height = y_;
  block_.part_penalty = title_alone;
  return std::move(block_);
}

}  // namespace

Block title_block(const score::Heading& heading, double width, Setter& setter) {
  return TitleBlock(heading, width, setter).make();
}

}  // namespace fretsheaf::layout
