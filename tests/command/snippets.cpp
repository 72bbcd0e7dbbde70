#include "command/snippets.h"

#include <algorithm>
#include <optional>
#include <sstream>

#include "render/ink.h"
#include "render/render.h"
#include "sheet/walk.h"

namespace fretsheaf::test {

namespace {

constexpr double edge = 6;  // white around the ink, in points

enum class Shows { music, example, page };

Shows shown_by(const Snippet& snippet) {
  if (snippet.text.starts_with("tab ")) return Shows::music;
  return snippet.text.starts_with("title ") ? Shows::page : Shows::example;
}

// As wide as the grid is, so that bars are not stretched.
double width_for(const std::string& text) {
  std::istringstream lines(text);
  std::size_t longest = 0;
  for (std::string line; std::getline(lines, line);) longest = std::max(longest, line.size());
  return std::clamp(60 + 7.4 * static_cast<double>(longest), 200.0, 488.0);
}

std::vector<sheet::Item> stacked(std::vector<layout::MusicLine> lines) {
  std::vector<sheet::Item> all;
  double y = 0;
  for (layout::MusicLine& line : lines) {
    sheet::translate(line.items, 0, y - line.top);
    y += line.bottom - line.top + 16;
    std::move(line.items.begin(), line.items.end(), std::back_inserter(all));
  }
  return all;
}

bool is_artifact(const sheet::Item& item) {
  const auto* group = std::get_if<sheet::Group>(&item);
  return group != nullptr && group->tag == sheet::Tag::artifact;
}

// The rule under the page's head: the first one as wide as the text.
double head_rule(const std::vector<sheet::Item>& items) {
  std::optional<double> found;
  sheet::walk(items, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* rule = std::get_if<sheet::Rule>(&item);
    if (rule != nullptr && !found && rule->part == sheet::Part::rule && rule->to.x - rule->from.x > 400) {
      found = rule->from.y;
    }
  });
  REQUIRE(found);
  return *found;
}

std::vector<sheet::Item> under_the_head(std::vector<sheet::Item> items, typeface::Shaper& shaper) {
  const double rule = head_rule(items);
  std::erase_if(items, [&](const sheet::Item& item) {
    const auto ink = render::ink_box(item, shaper);
    return !ink || ink->top < rule + 1;
  });
  return items;
}

sheet::Sheet cut(std::vector<sheet::Item> items, typeface::Shaper& shaper) {
  std::optional<sheet::Box> all;
  for (const sheet::Item& item : items) {
    const auto ink = render::ink_box(item, shaper);
    if (!ink) continue;
    if (!all) all = ink;
    all = sheet::Box{std::min(all->left, ink->left), std::min(all->top, ink->top), std::max(all->right, ink->right),
                     std::max(all->bottom, ink->bottom)};
  }
  REQUIRE(all);
  sheet::translate(items, edge - all->left, edge - all->top);
  sheet::Page page{all->right - all->left + 2 * edge, all->bottom - all->top + 2 * edge, {}};
  // Paper, so that a dark page around it does not swallow the ink.
  sheet::Path paper;
  using Kind = sheet::Segment::Kind;
  paper.segments = {{Kind::move, {0, 0}, {}, {}},
                    {Kind::line, {page.width, 0}, {}, {}},
                    {Kind::line, {page.width, page.height}, {}, {}},
                    {Kind::line, {0, page.height}, {}, {}},
                    {Kind::close, {}, {}, {}}};
  paper.fill = sheet::Color{255, 255, 255};
  page.items.emplace_back(std::move(paper));
  std::move(items.begin(), items.end(), std::back_inserter(page.items));
  sheet::Sheet sheet;
  sheet.language = "en";
  sheet.pages.push_back(std::move(page));
  return sheet;
}

}  // namespace

std::vector<Snippet> snippets(const std::string& markdown) {
  std::istringstream lines(markdown);
  std::vector<Snippet> found;
  bool open = false;
  bool waits = false;  // for the line that shows the last one's picture
  int number = 0;
  for (std::string line; std::getline(lines, line);) {
    ++number;
    if (line == "```toml") {
      found.push_back({"", "", number});
      open = true;
    } else if (line == "```") {
      waits = open;
      open = false;
    } else if (open) {
      found.back().text += line + "\n";
    } else if (waits && !line.empty()) {
      const std::size_t begin = line.find("](");
      if (line.starts_with("![") && begin != std::string::npos) {
        found.back().picture = line.substr(begin + 2, line.find(')', begin) - begin - 2);
      }
      waits = false;
    }
  }
  return found;
}

std::string whole_lesson(const Snippet& snippet) {
  const std::string head = "title = \"Manual\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";
  const bool is_bare = snippet.text.find("[[example]]") == std::string::npos;
  if (snippet.text.starts_with("title ")) return snippet.text;
  return head + (is_bare ? "[[example]]\n" : "") + snippet.text;
}

std::string picture_of(const Snippet& snippet, Music& music) {
  const std::string lesson = whole_lesson(snippet);
  std::vector<sheet::Item> items;
  if (shown_by(snippet) == Shows::music) {
    items = stacked(music.lines(lesson, width_for(snippet.text)));
  } else {
    music.look.cautions = false;  // at the foot of a page, far from all else
    sheet::Sheet sheet = music.pages(lesson);
    REQUIRE(!sheet.pages.empty());
    items = std::move(sheet.pages.front().items);
    std::erase_if(items, is_artifact);
    if (shown_by(snippet) == Shows::example) items = under_the_head(std::move(items), music.fonts);
  }
  return render::svg(cut(std::move(items), music.fonts), music.fonts).front();
}

}  // namespace fretsheaf::test
