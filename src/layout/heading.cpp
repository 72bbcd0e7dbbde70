#include "layout/heading.h"

#include <algorithm>
#include <utility>

#include "layout/ink.h"
#include "layout/tempo_sign.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Role;

constexpr double label_gap = 8;     // between "EXAMPLE 1" and the title
constexpr double hint_gap = 8.5;    // between a title and its hint
constexpr double signs_gap = 16;    // between the tempo and the feel, and from the title to either
constexpr double block_clear = 14;  // ink to ink above a heading
constexpr double leading = 1.3;     // of the heading's size, where a title takes two lines

void append(std::vector<sheet::Item>& to, std::vector<sheet::Item> from, double x, double y) {
  sheet::translate(from, x, y);
  for (sheet::Item& item : from) to.push_back(std::move(item));
}

sheet::Group group(sheet::Tag tag, std::vector<sheet::Item> items) {
  sheet::Group group;
  group.tag = tag;
  group.items = std::move(items);
  return group;
}

double leading_of(Setter& setter) {
  return leading * setter.type.look().style(Role::heading).size;
}

// The block's outline from what it holds: its first baseline at 0, its last at `height`.
void finish(Block& block, double height, Setter& setter) {
  block.height = height;
  if (const auto ink = ink_of(block.items, setter.type)) {
    block.ascent = -ink->top;
    block.descent = ink->bottom - height;
  }
  block.keep_with_next = true;
  set_block_gap(block, setter.measures());
}

// The feel as a sign or as words; empty where the heading says nothing of it.
Words feel_mark(const score::Example& example, Setter& setter) {
  if (!example.show_feel) return {};
  switch (example.feel) {
    case theory::Feel::swing:
    case theory::Feel::shuffle:
      return swing_sign({3, 0}, setter.type);
    case theory::Feel::swing_16:
      return swing_sign({4, 0}, setter.type);
    case theory::Feel::straight:
      break;
  }
  bool sixteenths = false;
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) sixteenths = sixteenths || event.value.log2 >= 4;
  }
  const words::Word word = sixteenths ? words::Word::straight_sixteenths : words::Word::straight_eighths;
  return setter.type.set(Role::expression, words::word(setter.words, word), Part::tempo_mark);
}

}  // namespace

void set_block_gap(Block& block, const templates::Measures& measures) {
  block.gap = measures.block_gap;
  block.gap_least = measures.block_gap_least;
  block.gap_most = measures.block_gap_most;
  block.clearance = block_clear;
}

Block section_heading(const std::string& title, const std::string& hint, double width, Setter& setter) {
  Block block;
  std::vector<sheet::Item> items;
  std::vector<TextLine> lines =
      set_plain(title, width, {Role::heading, 1, Part::heading, setter.language, {}}, setter.type);
  double y = 0;
  double end = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    y = static_cast<double>(i) * leading_of(setter);
    end = lines[i].width;
    append(items, std::move(lines[i].items), 0, y);
  }
  block.items.emplace_back(group(sheet::Tag::heading2, std::move(items)));
  if (!hint.empty()) {
    double x = end + hint_gap;
    std::vector<TextLine> beside =
        set_plain(hint, width, {Role::caption, 1, Part::text, setter.language, {}}, setter.type);
    const bool fits = beside.size() == 1 && x + beside.front().width <= width;
    std::vector<sheet::Item> words;
    if (!fits) x = 0;
    for (TextLine& line : beside) {
      if (!fits) y += setter.measures().list_leading;
      append(words, std::move(line.items), x, y);
    }
    block.items.emplace_back(group(sheet::Tag::paragraph, std::move(words)));
  }
  finish(block, y, setter);
  return block;
}

Block example_heading(const score::Example& example, double width, Setter& setter) {
  Type& type = setter.type;
  Block block;
  std::vector<sheet::Item> signs;
  double right = width;
  if (Words feel = feel_mark(example, setter); !feel.items.empty()) {
    right -= feel.width;
    append(signs, std::move(feel.items), right, 0);
    right -= signs_gap;
  }
  if (example.tempo) {
    Words tempo = tempo_sign(*example.tempo, type);
    right -= tempo.width;
    append(signs, std::move(tempo.items), right, 0);
    right -= signs_gap;
  }
  const templates::Rgb accent = type.look().accent;
  Words label =
      type.set(Role::example_label, words::fill_number(setter.words, words::Word::example_caps, example.number),
               Part::heading, {accent.red, accent.green, accent.blue});
  const double x = label.width + label_gap;
  std::vector<sheet::Item> items = std::move(label.items);
  ParagraphStyle style;
  style.role_of = [](const score::Run&) { return Role::heading; };
  style.part = Part::heading;
  style.language = setter.language;
  double y = 0;
  std::vector<TextLine> lines = set_paragraph(example.title, std::max(right - x, 60.0), style, type);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    y = static_cast<double>(i) * leading_of(setter);
    append(items, std::move(lines[i].items), x, y);
  }
  block.items.emplace_back(group(sheet::Tag::heading2, std::move(items)));
  if (!signs.empty()) block.items.emplace_back(group(sheet::Tag::paragraph, std::move(signs)));
  finish(block, y, setter);
  return block;
}

}  // namespace fretsheaf::layout
