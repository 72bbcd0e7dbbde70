#include "layout/furniture.h"

#include <algorithm>
#include <utility>

#include "layout/pattern.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Role;

constexpr double text_gap = 14;        // between texts in one row
constexpr double running_clear = 1.2;  // from the running head to a page's first ink, of the head's size

sheet::Group group(sheet::Tag tag, std::vector<sheet::Item> items) {
  sheet::Group group;
  group.tag = tag;
  group.items = std::move(items);
  return group;
}

void append(std::vector<sheet::Item>& to, std::vector<sheet::Item> from, double x, double y) {
  sheet::translate(from, x, y);
  for (sheet::Item& item : from) to.push_back(std::move(item));
}

double width_of(const std::vector<TextLine>& lines) {
  double width = 0;
  for (const TextLine& line : lines) width = std::max(width, line.width);
  return width;
}

}  // namespace

std::string bare_address(const std::string& uri) {
  std::string_view text = uri;
  if (const auto scheme = text.find("://"); scheme != std::string_view::npos) text.remove_prefix(scheme + 3);
  if (text.starts_with("www.")) text.remove_prefix(4);
  if (text.ends_with('/')) text.remove_suffix(1);
  return std::string(text);
}

Furniture::Furniture(const score::Score& score, const Frame& frame, int pages, Setter& setter)
    : score_(score), frame_(frame), setter_(setter) {
  arrange(pages);
}

std::string Furniture::filled(const std::string& pattern, int page, int pages) const {
  const std::string link = score_.heading.link ? bare_address(*score_.heading.link) : std::string();
  return filled_pattern(pattern, score_.heading, {score_.teacher, score_.copyright, link, description(page, pages)});
}

std::vector<TextLine> Furniture::lines(const std::string& text, double width, Role role, Part part) const {
  return set_plain(text, width, {role, 1, part, setter_.language, {}}, setter_.type);
}

std::vector<TextLine> Furniture::caution_lines() const {
  if (!setter_.type.look().cautions) return {};
  const std::string text(words::word(setter_.words, words::Word::cautions));
  return lines(text, frame_.text_width, Role::footer, Part::text);
}

Furniture::Texts Furniture::texts(int page, int pages) const {
  const auto& patterns = setter_.type.look().footer;
  const auto text = [&](std::size_t i, double width) {
    return lines(filled(patterns[i], page, pages), width, Role::footer, Part::footer);
  };
  return {text(0, left_width_), text(1, frame_.text_width), text(2, frame_.text_width)};
}

// One row where all three texts fit; else the centre goes below, and the left text is broken. Where one thing stands in
// a line, each text has rows of its own.
void Furniture::arrange(int pages) {
  const templates::Template& look = setter_.type.look();
  left_width_ = frame_.text_width;
  if (look.one_thing_a_line) {
    const Texts all = texts(pages - 1, pages);
    rows_ = static_cast<int>(all.left.size() + all.centre.size() + all.right.size());
  } else {
    const auto width = [&](std::size_t i) {
      return setter_.type.width(Role::footer, filled(look.footer[i], pages - 1, pages));
    };
    const double right = width(2);
    if (right > 0) left_width_ = std::max(frame_.text_width / 3, frame_.text_width - right - text_gap);
    const double gaps = (width(0) > 0 ? text_gap : 0) + (right > 0 ? text_gap : 0);
    const Texts all = texts(pages - 1, pages);
    centre_below_ = !all.centre.empty() && width(0) + width(1) + right + gaps > frame_.text_width;
    rows_ = static_cast<int>(std::max<std::size_t>(1, all.left.size()) + (centre_below_ ? all.centre.size() : 0));
  }
  rows_ = std::max(1, rows_);
  caution_rows_ = static_cast<int>(caution_lines().size());
}

double Furniture::first_row(int page) const {
  const templates::Measures& m = setter_.measures();
  const int rows = rows_ + (page == caution_page_ ? caution_rows_ : 0);
  return frame_.height - m.margin_bottom - (rows - 1) * m.footer_leading;
}

PageRoom Furniture::room() const {
  const templates::Measures& m = setter_.measures();
  const double running = m.margin_top + m.running_head;
  const double foot = m.footer_rule + m.footer_clearance;
  return {m.margin_top,
          running + running_clear * setter_.type.look().style(Role::running_title).size,
          running + m.running_head_to_text,
          first_row(0) - foot,
          first_row(2) - foot,
          first_row(1) - foot};
}

void Furniture::put(std::vector<sheet::Item>& items, TextLine line, double x, double y,
                    const std::string& pattern) const {
  append(items, std::move(line.items), x, y);
  if (!score_.heading.link || pattern.find("{link}") == std::string::npos) return;
  const double size = setter_.type.look().style(Role::footer).size;
  items.emplace_back(sheet::Link{{x, y - size, x + line.width, y + 0.3 * size}, *score_.heading.link});
}

// Lines under one another from the left edge; returns the next row's baseline.
double Furniture::put_column(std::vector<sheet::Item>& items, std::vector<TextLine> lines, double y,
                             const std::string& pattern) const {
  for (TextLine& line : lines) {
    put(items, std::move(line), 0, y, pattern);
    y += setter_.measures().footer_leading;
  }
  return y;
}

void Furniture::put_footer(std::vector<sheet::Item>& items, Texts texts, double y) const {
  const auto& patterns = setter_.type.look().footer;
  const double left_end = width_of(texts.left);
  const double right_begin = frame_.text_width - width_of(texts.right);
  const double below = put_column(items, std::move(texts.left), y, patterns[0]);
  if (setter_.type.look().one_thing_a_line) {
    put_column(items, std::move(texts.right), put_column(items, std::move(texts.centre), below, patterns[1]),
               patterns[2]);
    return;
  }
  for (TextLine& line : texts.right) put(items, std::move(line), right_begin, y, patterns[2]);
  double centre_y = centre_below_ ? std::max(below, y + setter_.measures().footer_leading) : y;
  for (TextLine& line : texts.centre) {
    double x = std::max(0.0, (frame_.text_width - line.width) / 2);
    if (!centre_below_) {
      // In the middle where there is room, else as near to it as the others let it.
      x = std::min(x, right_begin - (texts.right.empty() ? 0 : text_gap) - line.width);
      if (left_end > 0) x = std::max(x, left_end + text_gap);
    }
    put(items, std::move(line), x, centre_y, patterns[1]);
    centre_y += setter_.measures().footer_leading;
  }
}

std::string Furniture::description(int page, int pages) const {
  return words::page_of(setter_.words, page + 1, pages);
}

std::vector<sheet::Item> Furniture::cautions() const {
  std::vector<sheet::Item> items;
  if (caution_rows_ == 0) return items;
  std::vector<sheet::Item> words;
  put_column(words, caution_lines(), first_row(caution_page_), {});
  items.emplace_back(group(sheet::Tag::paragraph, std::move(words)));
  return items;
}

std::vector<sheet::Item> Furniture::foot(int page, int pages) const {
  const templates::Measures& m = setter_.measures();
  const double y = first_row(page);
  std::vector<sheet::Item> items;
  items.emplace_back(
      sheet::Rule{Part::rule, {0, y - m.footer_rule}, {frame_.text_width, y - m.footer_rule}, m.rule, {}, 0, 0});
  put_footer(items, texts(page, pages), y + (page == caution_page_ ? caution_rows_ * m.footer_leading : 0));
  std::vector<sheet::Item> foot;
  foot.emplace_back(group(sheet::Tag::artifact, std::move(items)));
  return foot;
}

std::vector<sheet::Item> Furniture::head(int page, int pages) const {
  if (page == 0) return {};
  const templates::Measures& m = setter_.measures();
  const auto& patterns = setter_.type.look().later_pages;
  const double y = m.margin_top + m.running_head;
  std::vector<sheet::Item> items;
  std::string side = filled(patterns[1], page, pages);
  const std::string& answer_key = score_.heading.answer_key;
  if (!answer_key.empty()) side = answer_key + (side.empty() ? "" : "  \u00B7  " + side);
  double room = frame_.text_width;
  // Only the first line of either: they say which handout this is.
  std::vector<TextLine> right = lines(side, frame_.text_width * 2 / 3, Role::running_class, Part::footer);
  if (!right.empty()) {
    room -= right.front().width + text_gap;
    append(items, std::move(right.front().items), frame_.text_width - right.front().width, y);
  }
  std::vector<TextLine> left = lines(filled(patterns[0], page, pages), room, Role::running_title, Part::footer);
  if (!left.empty()) append(items, std::move(left.front().items), 0, y);
  std::vector<sheet::Item> head;
  head.emplace_back(group(sheet::Tag::artifact, std::move(items)));
  return head;
}

}  // namespace fretsheaf::layout
