#include "layout/paragraph.h"

#include <algorithm>
#include <utility>

#include "layout/ink.h"
#include "layout/line_break.h"
#include "source/utf8.h"
#include "typeface/line_breaks.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Role;

constexpr std::string_view soft_hyphen = "\u00AD";
constexpr double underline_drop = 1.8;

// A stretch of the paragraph's text, in bytes.
struct Stretch {
  std::size_t begin = 0;
  std::size_t end = 0;
};

class Paragraph {
 public:
  Paragraph(const score::Runs& runs, double width, const ParagraphStyle& style, Type& type)
      : runs_(runs), width_(width), style_(style), type_(type) {
    for (const score::Run& run : runs) {
      const std::size_t begin = text_.size();
      text_ += without_soft_hyphens(run.text);
      spans_.push_back({begin, text_.size()});
    }
    while (!text_.empty() && is_space(text_.back())) text_.pop_back();
  }

  std::vector<TextLine> set();

 private:
  static bool is_space(char c) { return c == ' ' || c == '\n'; }
  static std::string without_soft_hyphens(std::string text);
  std::size_t trimmed_end(Stretch s) const;
  double size_of(Role role) const { return type_.look().style(role).size * style_.scale; }
  std::size_t run_at(std::size_t byte) const;  // the first that ends beyond it
  double width_of(Stretch s);
  std::size_t fitting(Stretch s);
  void add_piece(Stretch s);
  void add_split(Stretch s);
  TextLine line(Stretch s);
  void add_run(TextLine& line, const score::Run& run, std::string_view text);

  const score::Runs& runs_;
  double width_;
  const ParagraphStyle& style_;
  Type& type_;
  std::string text_;
  std::vector<Stretch> spans_;  // of each run
  std::vector<Stretch> stretches_;
  std::vector<Piece> pieces_;
};

std::string Paragraph::without_soft_hyphens(std::string text) {
  for (std::size_t at = 0; (at = text.find(soft_hyphen, at)) != std::string::npos;) text.erase(at, soft_hyphen.size());
  return text;
}

std::size_t Paragraph::trimmed_end(Stretch s) const {
  while (s.end > s.begin && is_space(text_[s.end - 1])) --s.end;
  return s.end;
}

std::size_t Paragraph::run_at(std::size_t byte) const {
  const auto ends_by = [byte](Stretch span) { return span.end <= byte; };
  return static_cast<std::size_t>(std::partition_point(spans_.begin(), spans_.end(), ends_by) - spans_.begin());
}

double Paragraph::width_of(Stretch s) {
  double width = 0;
  for (std::size_t i = run_at(s.begin); i < runs_.size() && spans_[i].begin < s.end; ++i) {
    const std::size_t begin = std::max(s.begin, spans_[i].begin);
    const std::size_t end = std::min(s.end, spans_[i].end);
    if (begin >= end) continue;
    const Role role = style_.role_of(runs_[i]);
    width += type_.width_at_size(role, size_of(role), std::string_view(text_).substr(begin, end - begin));
  }
  return width;
}

void Paragraph::add_piece(Stretch s) {
  const std::size_t end = trimmed_end(s);
  const bool forced = s.end > s.begin && text_[s.end - 1] == '\n';
  const double width = width_of({s.begin, end});
  if (width > width_) return add_split(s);
  pieces_.push_back({width, forced ? 0 : width_of({end, s.end}), forced});
  stretches_.push_back(s);
}

// How much of a word fits into a line: at least one character. A line's worth is found by halving, from as many as the
// measure has points: no letter of a text is much narrower.
std::size_t Paragraph::fitting(Stretch s) {
  std::vector<std::size_t> ends;  // of its characters
  const auto most = std::max<std::size_t>(1, static_cast<std::size_t>(width_));
  for (std::size_t at = s.begin; at < s.end && ends.size() < most;) {
    at += source::decode_utf8(std::string_view(text_).substr(at)).length;
    ends.push_back(at);
  }
  const auto fits = [&](std::size_t end) { return width_of({s.begin, end}) <= width_; };
  const auto beyond = std::partition_point(ends.begin(), ends.end(), fits);
  return beyond == ends.begin() ? ends.front() : *(beyond - 1);
}

// A word wider than the measure (an address, say) breaks where it must.
void Paragraph::add_split(Stretch s) {
  const std::size_t end = trimmed_end(s);
  std::size_t begin = s.begin;
  for (std::size_t next = fitting({begin, end}); next < end; next = fitting({begin, end})) {
    pieces_.push_back({width_of({begin, next}), 0, false});
    stretches_.push_back({begin, next});
    begin = next;
  }
  const bool forced = text_[s.end - 1] == '\n';
  pieces_.push_back({width_of({begin, end}), forced ? 0 : width_of({end, s.end}), forced});
  stretches_.push_back({begin, s.end});
}

void Paragraph::add_run(TextLine& line, const score::Run& run, std::string_view text) {
  const Role role = style_.role_of(run);
  Words set = type_.set_at_size(role, size_of(role), text, style_.part, style_.color);
  sheet::translate(set.items, line.width, 0);
  const double end = line.width + set.width;
  if (!run.link) {
    for (sheet::Item& item : set.items) line.items.push_back(std::move(item));
    line.width = end;
    return;
  }
  const templates::Rgb accent = type_.look().accent;
  const sheet::Color color{accent.red, accent.green, accent.blue};
  sheet::Group group;
  group.tag = sheet::Tag::link;
  group.items = std::move(set.items);
  const double size = size_of(role);
  group.items.emplace_back(sheet::Link{{line.width, -0.9 * size, end, 0.3 * size}, *run.link});
  group.items.emplace_back(
      sheet::Rule{Part::rule, {line.width, underline_drop}, {end, underline_drop}, type_.measures().rule, color, 0, 0});
  line.items.emplace_back(std::move(group));
  line.width = end;
}

TextLine Paragraph::line(Stretch s) {
  const bool spaced = trimmed_end(s) < s.end;
  s.end = trimmed_end(s);
  TextLine line;
  Role role{};
  for (std::size_t i = run_at(s.begin); i < runs_.size() && spans_[i].begin < s.end; ++i) {
    const std::size_t begin = std::max(s.begin, spans_[i].begin);
    const std::size_t end = std::min(s.end, spans_[i].end);
    if (begin >= end) continue;
    add_run(line, runs_[i], std::string_view(text_).substr(begin, end - begin));
    role = style_.role_of(runs_[i]);
  }
  if (spaced) add_word_space(line.items, role, line.width, type_);
  if (const auto ink = ink_of(line.items, type_)) {
    // A letter that leans or swings out to the left of its origin begins at the margin all the same.
    if (ink->left < 0) sheet::translate(line.items, -ink->left, 0);
    line.ascent = -ink->top;
    line.descent = ink->bottom;
  }
  return line;
}

std::vector<TextLine> Paragraph::set() {
  std::vector<TextLine> lines;
  if (text_.empty()) return lines;
  std::size_t begin = 0;
  std::vector<std::size_t> ends = typeface::line_breaks(text_, style_.language);
  ends.push_back(text_.size());
  for (const std::size_t end : ends) {
    add_piece({begin, end});
    begin = end;
  }
  const std::vector<int> begins = break_lines(pieces_, width_);
  for (std::size_t i = 0; i < begins.size(); ++i) {
    const std::size_t last = i + 1 < begins.size() ? static_cast<std::size_t>(begins[i + 1]) : stretches_.size();
    lines.push_back(line({stretches_[static_cast<std::size_t>(begins[i])].begin, stretches_[last - 1].end}));
  }
  return lines;
}

}  // namespace

Role body_role(const score::Run& run) {
  if (run.code) return Role::code;
  if (run.emphasis && run.strong) return Role::body_strong_emphasis;
  if (run.strong) return Role::body_strong;
  return run.emphasis ? Role::body_emphasis : Role::body;
}

std::vector<TextLine> set_paragraph(const score::Runs& runs, double width, const ParagraphStyle& style, Type& type) {
  return Paragraph(runs, width, style, type).set();
}

void add_word_space(std::vector<sheet::Item>& items, Role role, double x, Type& type) {
  if (items.empty()) return;
  if (auto* group = std::get_if<sheet::Group>(&items.back())) return add_word_space(group->items, role, x, type);
  const auto is_run = [](const sheet::Item& item) { return std::holds_alternative<sheet::GlyphRun>(item); };
  const auto last = std::find_if(items.rbegin(), items.rend(), is_run);
  if (last == items.rend()) return;
  auto& before = std::get<sheet::GlyphRun>(*last);
  Words space = type.set_at_size(role, before.size, " ", before.part, before.color);
  if (space.items.empty()) return;
  auto& run = std::get<sheet::GlyphRun>(space.items.front());
  for (sheet::Glyph& glyph : run.glyphs) {
    glyph.x += x;
    glyph.y = before.glyphs.empty() ? 0 : before.glyphs.back().y;
  }
  if (run.font != before.font || before.text.empty()) {
    items.insert(last.base(), std::move(run));
    return;
  }
  before.text += run.text;
  before.glyphs.insert(before.glyphs.end(), run.glyphs.begin(), run.glyphs.end());
  before.clusters.insert(before.clusters.end(), run.clusters.begin(), run.clusters.end());
}

std::vector<TextLine> set_plain(const std::string& text, double width, const PlainStyle& style, Type& type) {
  const ParagraphStyle paragraph{[&](const score::Run&) { return style.role; }, style.scale, style.part, style.language,
                                 style.color};
  return set_paragraph({score::Run{text, false, false, false, std::nullopt}}, width, paragraph, type);
}

}  // namespace fretsheaf::layout
