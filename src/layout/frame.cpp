#include "layout/frame.h"

#include <algorithm>
#include <utility>

#include "layout/title_block.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Role;

constexpr double a4_width = 595.28;
constexpr double a4_height = 841.89;
constexpr double letter_width = 612;
constexpr double letter_height = 792;
constexpr double text_gap = 14;       // between the footer's texts
constexpr double running_clear = 12;  // from the running head to a page's first ink
constexpr std::string_view dot = " \u00B7 ";

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) {
    text.replace(at, from.size(), to);
  }
  return text;
}

sheet::Group artifact(std::vector<sheet::Item> items) {
  sheet::Group group;
  group.tag = sheet::Tag::artifact;
  group.items = std::move(items);
  return group;
}

void append(std::vector<sheet::Item>& to, std::vector<sheet::Item> from, double x, double y) {
  sheet::translate(from, x, y);
  for (sheet::Item& item : from) to.push_back(std::move(item));
}

}  // namespace

std::string bare_address(const std::string& uri) {
  std::string_view text = uri;
  if (const auto scheme = text.find("://"); scheme != std::string_view::npos) text.remove_prefix(scheme + 3);
  if (text.starts_with("www.")) text.remove_prefix(4);
  if (text.ends_with('/')) text.remove_suffix(1);
  return std::string(text);
}

Frame make_frame(lesson::Paper paper, const templates::Template& look) {
  const templates::Measures& m = look.measures;
  Frame frame;
  frame.text_width = a4_width - m.margin_left - m.margin_right;
  const bool letter = paper == lesson::Paper::letter;
  frame.width = letter ? letter_width : a4_width;
  frame.height = letter ? letter_height : a4_height;
  const double wider = frame.width - a4_width;
  frame.left = m.margin_left + wider / 2;
  frame.right = m.margin_right + wider / 2;
  frame.mirrored = look.two_sided;
  return frame;
}

Furniture::Furniture(const score::Score& score, const Frame& frame, int pages, Setter& setter)
    : score_(score), frame_(frame), setter_(setter) {
  arrange(pages);
}

// A pattern's parts stand between " · "; a part whose text is empty, or is said by another part already, is left out.
std::string Furniture::filled(const std::string& pattern, int page, int pages) const {
  const std::string link = score_.heading.link ? bare_address(*score_.heading.link) : std::string();
  std::vector<std::string> parts;
  for (std::size_t begin = 0; begin <= pattern.size();) {
    const std::size_t end = std::min(pattern.find(dot, begin), pattern.size());
    std::string part = pattern.substr(begin, end - begin);
    part = replaced(part, "{copyright}", score_.copyright);
    part = replaced(part, "{teacher}", score_.teacher);
    part = replaced(part, "{link}", link);
    part = replaced(part, "{page}", words::page_of(setter_.words, page + 1, pages));
    if (!part.empty()) parts.push_back(std::move(part));
    begin = end + dot.size();
  }
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    bool said = false;
    for (std::size_t j = 0; j < parts.size(); ++j) {
      said = said || (j != i && parts[j].find(parts[i]) != std::string::npos && (parts[j] != parts[i] || j < i));
    }
    if (!said) text += (text.empty() ? std::string() : std::string(dot)) + parts[i];
  }
  return text;
}

// One row where all three texts fit; else the centre goes below, and the left text is broken.
void Furniture::arrange(int pages) {
  const templates::Template& look = setter_.type.look();
  const double left = setter_.type.width(Role::footer, filled(look.footer[0], pages - 1, pages));
  const double centre = setter_.type.width(Role::footer, filled(look.footer[1], pages - 1, pages));
  const double right = setter_.type.width(Role::footer, filled(look.footer[2], pages - 1, pages));
  left_width_ = frame_.text_width - (right > 0 ? right + text_gap : 0);
  const double gaps = (left > 0 ? text_gap : 0) + (right > 0 ? text_gap : 0);
  centre_below_ = centre > 0 && left + centre + right + gaps > frame_.text_width;
  left_rows_ = 1;
  if (left > left_width_) {
    left_rows_ = static_cast<int>(lines(filled(look.footer[0], pages - 1, pages), left_width_).size());
  }
  rows_ = left_rows_;
  if (centre_below_)
    rows_ += static_cast<int>(lines(filled(look.footer[1], pages - 1, pages), frame_.text_width).size());
}

PageRoom Furniture::room() const {
  const templates::Measures& m = setter_.measures();
  const double rule = frame_.height - m.margin_bottom - (rows_ - 1) * m.footer_leading - m.footer_rule;
  const double running = m.margin_top + m.running_head;
  return {m.margin_top, running + running_clear, running + m.running_head_to_text, rule - m.footer_clearance};
}

std::vector<TextLine> Furniture::lines(const std::string& text, double width) const {
  return set_plain(text, width, {Role::footer, 1, Part::footer, setter_.language, {}}, setter_.type);
}

void Furniture::put_footer(std::vector<sheet::Item>& items, int page, int pages) const {
  const templates::Measures& m = setter_.measures();
  const auto& patterns = setter_.type.look().footer;
  const double first = frame_.height - m.margin_bottom - (rows_ - 1) * m.footer_leading;
  items.emplace_back(sheet::Rule{
      Part::rule, {0, first - m.footer_rule}, {frame_.text_width, first - m.footer_rule}, m.rule, {}, 0, 0});
  double y = first;
  double left_end = 0;
  for (TextLine& line : lines(filled(patterns[0], page, pages), left_width_)) {
    left_end = std::max(left_end, line.width);
    append(items, std::move(line.items), 0, y);
    y += m.footer_leading;
  }
  Words right = setter_.type.set(Role::footer, filled(patterns[2], page, pages), Part::footer);
  const double right_begin = frame_.text_width - right.width;
  append(items, std::move(right.items), right_begin, first);
  y = centre_below_ ? first + left_rows_ * m.footer_leading : first;
  for (TextLine& line : lines(filled(patterns[1], page, pages), frame_.text_width)) {
    double x = std::max(0.0, (frame_.text_width - line.width) / 2);
    if (!centre_below_) {
      // In the middle where there is room, else as near to it as the others let it.
      x = std::min(x, right_begin - (right.width > 0 ? text_gap : 0) - line.width);
      if (left_end > 0) x = std::max(x, left_end + text_gap);
    }
    put_centre(items, std::move(line), x, y);
    y += m.footer_leading;
  }
}

void Furniture::put_centre(std::vector<sheet::Item>& items, TextLine line, double x, double y) const {
  append(items, std::move(line.items), x, y);
  const templates::Template& look = setter_.type.look();
  if (!score_.heading.link || look.footer[1].find("{link}") == std::string::npos) return;
  const double size = look.style(Role::footer).size;
  items.emplace_back(sheet::Link{{x, y - size, x + line.width, y + 0.3 * size}, *score_.heading.link});
}

void Furniture::put_running_head(std::vector<sheet::Item>& items) const {
  const templates::Measures& m = setter_.measures();
  const double y = m.margin_top + m.running_head;
  Words side = setter_.type.set(Role::running_class, meta_line(score_.heading, false), Part::footer);
  const double room = frame_.text_width - (side.width > 0 ? side.width + text_gap : 0);
  append(items, std::move(side.items), frame_.text_width - side.width, y);
  // Only a title's first line: it says which handout this is.
  std::vector<TextLine> title = set_plain(score::plain(score_.heading.title), std::max(room, frame_.text_width / 3),
                                          {Role::running_title, 1, Part::footer, setter_.language, {}}, setter_.type);
  if (!title.empty()) append(items, std::move(title.front().items), 0, y);
}

std::vector<sheet::Item> Furniture::items(int page, int pages) const {
  std::vector<sheet::Item> footer;
  put_footer(footer, page, pages);
  std::vector<sheet::Item> items;
  if (page > 0) {
    std::vector<sheet::Item> head;
    put_running_head(head);
    items.emplace_back(artifact(std::move(head)));
  }
  items.emplace_back(artifact(std::move(footer)));
  return items;
}

}  // namespace fretsheaf::layout
