#include "layout/heading.h"

#include <algorithm>
#include <utility>

#include "layout/ink.h"
#include "layout/paragraph.h"
#include "layout/tempo_sign.h"
#include "score/exercise.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Role;

// For a heading of 14 points; others in proportion.
constexpr double natural_size = 14;
constexpr double label_gap = 8;        // between "EXAMPLE 1" and the title
constexpr double hint_gap = 8.5;       // between a title and its hint
constexpr double signs_gap = 16;       // between the tempo and the feel, and from the title to either
constexpr double leading = 1.3;        // of the heading's size, from line to line
constexpr double stacked_signs = 1.2;  // of that leading, to signs on a line of their own,
constexpr double signs_clear = 0.2;    // and ink to ink at least so much of the heading's size
constexpr double block_clear = 0.39;   // ink to ink above a heading, as a share of the gap

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

double scale_of(Setter& setter) {
  return setter.type.look().style(Role::heading).size / natural_size;
}

// Whether each part of a heading has a line of its own.
bool alone(Setter& setter) {
  return setter.type.look().one_thing_a_line;
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

// How many bars there are to write, beside the heading's last line where there is room.
void put_hint(Block& block, const score::Example& example, double left, double right, double y, Setter& setter) {
  const auto bars = std::count_if(example.bars.begin(), example.bars.end(), score::to_write_in);
  const std::string text = words::counted(setter.words, words::Counted::write_bars, static_cast<int>(bars));
  Words hint = setter.type.set(Role::caption, text, Part::text);
  if (left + hint_gap * scale_of(setter) + hint.width > right) return;
  std::vector<sheet::Item> items;
  append(items, std::move(hint.items), left + hint_gap * scale_of(setter), y);
  block.items.emplace_back(group(sheet::Tag::paragraph, std::move(items)));
}

// A sign with its name before it.
Words named(words::Word name, Words sign, Setter& setter) {
  Words all = setter.type.set(Role::expression, words::word(setter.words, name), Part::tempo_mark);
  const double x = all.width + label_gap * scale_of(setter);
  append(all.items, std::move(sign.items), x, 0);
  all.width = x + sign.width;
  return all;
}

words::Word feel_word(const score::Example& example) {
  switch (example.feel) {
    case theory::Feel::swing:
      return words::Word::swing;
    case theory::Feel::shuffle:  // played as swing, and named
      return words::Word::shuffle;
    case theory::Feel::swing_16:
      return words::Word::swing_sixteenths;
    case theory::Feel::straight:
      break;
  }
  bool sixteenths = false;
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) sixteenths = sixteenths || event.value.log2 >= 4;
  }
  return sixteenths ? words::Word::straight_sixteenths : words::Word::straight_eighths;
}

// The feel as a sign or as words; empty where the heading says nothing of it.
Words feel_mark(const score::Example& example, Setter& setter) {
  if (!example.show_feel) return {};
  switch (example.feel) {
    case theory::Feel::swing:
      return swing_sign({3, 0}, setter.type);
    case theory::Feel::shuffle:
      return named(feel_word(example), swing_sign({3, 0}, setter.type), setter);
    case theory::Feel::swing_16:
      return swing_sign({4, 0}, setter.type);
    case theory::Feel::straight:
      break;
  }
  return setter.type.set(Role::expression, words::word(setter.words, feel_word(example)), Part::tempo_mark);
}

}  // namespace

void set_block_gap(Block& block, const templates::Measures& measures) {
  block.gap = measures.block_gap;
  block.gap_least = measures.block_gap_least;
  block.gap_most = measures.block_gap_most;
  block.clearance = block_clear * measures.block_gap;
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
    double x = end + hint_gap * scale_of(setter);
    std::vector<TextLine> beside =
        set_plain(hint, width, {Role::caption, 1, Part::text, setter.language, {}}, setter.type);
    const bool fits = beside.size() == 1 && x + beside.front().width <= width && !alone(setter);
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

namespace {

// The tempo and the feel side by side; `width` is theirs together.
struct Signs {
  std::vector<sheet::Item> items;
  double width = 0;
  std::string spelled;  // what they say

  double rise = 0;  // of their ink over the baseline

  void add(Words sign, const std::string& says, double gap) {
    if (sign.items.empty()) return;
    rise = std::max(rise, -sign.ink.top);
    if (width > 0) width += gap;
    append(items, std::move(sign.items), width, 0);
    width += sign.width;
    spelled += (spelled.empty() ? "" : ", ") + says;
  }
};

Signs signs_of(const score::Example& example, Setter& setter) {
  Signs signs;
  const double gap = signs_gap * scale_of(setter);
  if (example.tempo) signs.add(tempo_sign(*example.tempo, setter.type), spelled_tempo(*example.tempo), gap);
  signs.add(feel_mark(example, setter), std::string(words::word(setter.words, feel_word(example))), gap);
  return signs;
}

// From the title's last baseline at `y` to that of the signs under it: a bracket over them keeps clear of letters that
// hang.
double drop_to(const Signs& signs, const Block& title, double y, Setter& setter) {
  const auto ink = ink_of(title.items, setter.type);
  const double hanging = ink ? std::max(0.0, ink->bottom - y) : 0;
  const double clear = signs_clear * setter.type.look().style(Role::heading).size;
  return std::max(stacked_signs * leading_of(setter), hanging + clear + signs.rise);
}

// "EXAMPLE 1", in the accent colour.
Words label_of(const score::Example& example, Setter& setter) {
  const templates::Rgb accent = setter.type.look().accent;
  return setter.type.set(Role::example_label,
                         words::fill_number(setter.words, words::Word::example_caps, example.number), Part::heading,
                         {accent.red, accent.green, accent.blue});
}

}  // namespace

Block example_heading(const score::Example& example, double width, Setter& setter) {
  Block block;
  Signs signs = signs_of(example, setter);
  Words label = label_of(example, setter);
  const bool stacked = alone(setter);
  const double x = stacked ? 0 : label.width + label_gap * scale_of(setter);
  const double signs_room = stacked || signs.items.empty() ? 0 : signs.width + signs_gap * scale_of(setter);
  std::vector<sheet::Item> items = std::move(label.items);
  ParagraphStyle style;
  style.role_of = [](const score::Run&) { return Role::heading; };
  style.part = Part::heading;
  style.language = setter.language;
  double y = 0;
  std::vector<TextLine> lines =
      set_paragraph(example.title, std::max(width - signs_room - x, 60.0), style, setter.type);
  if (!lines.empty()) add_word_space(items, Role::example_label, label.width, setter.type);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i > 0 || stacked) y += leading_of(setter);
    append(items, std::move(lines[i].items), x, y);
  }
  const double title_end = x + (lines.empty() ? 0 : lines.back().width);
  block.items.emplace_back(group(sheet::Tag::heading2, std::move(items)));
  if (example.blank) put_hint(block, example, title_end, width - signs_room, y, setter);
  if (!signs.items.empty()) {
    if (stacked) y += drop_to(signs, block, y, setter);
    sheet::translate(signs.items, stacked ? 0 : width - signs.width, stacked ? y : 0);
    sheet::Group figure = group(sheet::Tag::figure, std::move(signs.items));
    figure.alternative = std::move(signs.spelled);
    block.items.emplace_back(std::move(figure));
  }
  finish(block, y, setter);
  return block;
}

}  // namespace fretsheaf::layout
