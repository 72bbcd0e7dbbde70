#include "render/svg_page.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "render/image.h"
#include "render/svg_path.h"
#include "render/uri.h"

namespace fretsheaf::render {
namespace {

// WAI-ARIA 1.2 roles; nullptr where a group needs none.
const char* role_of(sheet::Tag tag) {
  switch (tag) {
    case sheet::Tag::heading1:
    case sheet::Tag::heading2:
    case sheet::Tag::heading3:
      return "heading";
    case sheet::Tag::paragraph:
      return "paragraph";
    case sheet::Tag::quote:
      return "blockquote";
    case sheet::Tag::list:
      return "list";
    case sheet::Tag::list_item:
      return "listitem";
    case sheet::Tag::table:
      return "table";
    case sheet::Tag::table_row:
      return "row";
    case sheet::Tag::table_header:
      return "columnheader";
    case sheet::Tag::table_cell:
      return "cell";
    case sheet::Tag::figure:
      return "img";
    default:
      return nullptr;
  }
}

// Whether what is drawn in a group may be words of it; what is drawn straight into a list or a table is its lines.
bool holds_words(sheet::Tag tag) {
  const bool made_of_parts = tag == sheet::Tag::none || tag == sheet::Tag::list || tag == sheet::Tag::list_item ||
                             tag == sheet::Tag::table || tag == sheet::Tag::table_row || tag == sheet::Tag::quote;
  return !made_of_parts && tag != sheet::Tag::figure && tag != sheet::Tag::artifact;
}

// A row that has cells too is named by its header.
bool has_cells(const sheet::Group& row) {
  return std::ranges::any_of(row.items, [](const sheet::Item& item) {
    const auto* group = std::get_if<sheet::Group>(&item);
    return group != nullptr && group->tag == sheet::Tag::table_cell;
  });
}

bool has_link(const std::vector<sheet::Item>& items) {
  return std::ranges::any_of(items, [](const sheet::Item& item) {
    const auto* group = std::get_if<sheet::Group>(&item);
    return std::holds_alternative<sheet::Link>(item) || (group != nullptr && has_link(group->items));
  });
}

std::string path_data(const sheet::Path& path) {
  SvgPath data(2);
  for (const sheet::Segment& segment : path.segments) {
    switch (segment.kind) {
      case sheet::Segment::Kind::move:
        data.draw('M', {segment.end.x, segment.end.y});
        break;
      case sheet::Segment::Kind::line:
        data.draw('L', {segment.end.x, segment.end.y});
        break;
      case sheet::Segment::Kind::curve:
        data.draw('C', {segment.control1.x, segment.control1.y, segment.control2.x, segment.control2.y, segment.end.x,
                        segment.end.y});
        break;
      case sheet::Segment::Kind::close:
        data.draw('Z', {});
        break;
    }
  }
  return data.data();
}

}  // namespace

void SvgPage::write(const std::vector<sheet::Item>& items) {
  bool said = false;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const bool is_run = std::holds_alternative<sheet::GlyphRun>(items[i]);
    // What stands between two groups is said in one go, before it is drawn.
    if (std::holds_alternative<sheet::Group>(items[i])) said = false;
    if (is_run && voice_ == Voice::words && !said) {
      say(std::span(items).subspan(i));
      said = true;
    }
    std::visit(*this, items[i]);
  }
}

// The words of runs as far as the next group: real text that draws nothing, each line of it where its glyphs are, for
// screen readers, searching and copying.
void SvgPage::say(std::span<const sheet::Item> items) {
  writer_.open("text");
  writer_.attribute("fill", "none");
  const sheet::Glyph* line = nullptr;
  for (const sheet::Item& item : items) {
    if (std::holds_alternative<sheet::Group>(item)) break;
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    if (run == nullptr || run->text.empty() || run->glyphs.empty()) continue;
    const sheet::Glyph& first = run->glyphs.front();
    if (line == nullptr || std::abs(first.y - line->y) > run->size / 2) {
      if (line != nullptr) writer_.close();
      line = &first;
      writer_.open("tspan");
      writer_.attribute("x", first.x);
      writer_.attribute("y", first.y);
      writer_.attribute("font-size", run->size);
    }
    writer_.text(run->text);
  }
  if (line != nullptr) writer_.close();
  writer_.close();
}

// Outlines are 1000 units to the em; the glyphs' places count from the run's first in the same units.
void SvgPage::operator()(const sheet::GlyphRun& run) {
  if (run.glyphs.empty() || run.size <= 0) return;
  const sheet::Glyph& first = run.glyphs.front();
  const double scale = run.size / 1000;
  writer_.open("g");
  part(run.part);
  if (run.text.find_first_not_of(' ') != std::string::npos) {
    writer_.attribute("data-text", run.text);
    // Outside all that is told, each says itself.
    if (voice_ == Voice::runs) {
      writer_.attribute("role", "img");
      writer_.attribute("aria-label", run.text);
    }
  }
  if (run.color != sheet::Color{}) writer_.attribute("fill", hex_color(run.color));
  writer_.attribute("transform", "translate(" + sheet::shortest(first.x, 2) + " " + sheet::shortest(first.y, 2) +
                                     ") scale(" + sheet::shortest(scale, 6) + ")");
  for (const sheet::Glyph& glyph : run.glyphs) {
    const SvgGlyphs::Definition& definition = glyphs_.definition({run.font, glyph.id});
    if (definition.outline.empty()) continue;
    writer_.open("use");
    writer_.attribute("href", "#" + definition.id);
    if (glyph.x != first.x) writer_.attribute("x", (glyph.x - first.x) / scale, 1);
    if (glyph.y != first.y) writer_.attribute("y", (glyph.y - first.y) / scale, 1);
    writer_.close();
  }
  writer_.close();
}

void SvgPage::operator()(const sheet::Rule& rule) {
  writer_.open("line");
  part(rule.part);
  writer_.attribute("x1", rule.from.x);
  writer_.attribute("y1", rule.from.y);
  writer_.attribute("x2", rule.to.x);
  writer_.attribute("y2", rule.to.y);
  writer_.attribute("stroke", hex_color(rule.color));
  writer_.attribute("stroke-width", rule.width, 3);
  if (rule.dash > 0) {
    writer_.attribute("stroke-dasharray", sheet::shortest(rule.dash, 2) + " " + sheet::shortest(rule.gap, 2));
  }
  writer_.close();
}

void SvgPage::operator()(const sheet::Path& path) {
  writer_.open("path");
  part(path.part);
  writer_.attribute("d", path_data(path));
  if (!path.fill) {
    writer_.attribute("fill", "none");
  } else if (*path.fill != sheet::Color{}) {
    writer_.attribute("fill", hex_color(*path.fill));
  }
  if (path.stroke) {
    writer_.attribute("stroke", hex_color(*path.stroke));
    writer_.attribute("stroke-width", path.stroke_width, 3);
    if (path.round_ends) {
      writer_.attribute("stroke-linecap", "round");
      writer_.attribute("stroke-linejoin", "round");
    }
  }
  writer_.close();
}

// In a link's own group the area is that of the words.
void SvgPage::operator()(const sheet::Link& link) {
  const std::optional<std::string> uri = safe_uri(link.uri);
  if (!uri) return;
  if (!in_link_) {
    writer_.open("a");
    writer_.attribute("href", *uri);
    writer_.attribute("aria-label", link.uri);
  }
  writer_.open("rect");
  writer_.attribute("x", link.area.left);
  writer_.attribute("y", link.area.top);
  writer_.attribute("width", link.area.right - link.area.left);
  writer_.attribute("height", link.area.bottom - link.area.top);
  writer_.attribute("fill", "none");
  writer_.attribute("pointer-events", "all");
  writer_.close();
  if (!in_link_) writer_.close();
}

void SvgPage::operator()(const sheet::Image& image) {
  writer_.open("image");
  part(image.part);
  writer_.attribute("x", image.area.left);
  writer_.attribute("y", image.area.top);
  writer_.attribute("width", image.area.right - image.area.left);
  writer_.attribute("height", image.area.bottom - image.area.top);
  writer_.attribute("href", data_uri(image));
  writer_.close();
}

SvgPage::Voice SvgPage::voice_in(const sheet::Group& group) const {
  if (voice_ == Voice::none || group.tag == sheet::Tag::figure || group.tag == sheet::Tag::artifact) return Voice::none;
  if (group.tag == sheet::Tag::none) return voice_;
  return holds_words(group.tag) ? Voice::words : Voice::none_here;
}

void SvgPage::operator()(const sheet::Group& group) {
  const Voice before = voice_;
  const bool row_before = in_named_row_;
  const bool link_before = in_link_;
  const std::optional<std::string> uri = group.tag == sheet::Tag::link ? address_of(group) : std::nullopt;
  voice_ = voice_in(group);
  const bool says_something =
      group.example || group.event || uri || role_of(group.tag) != nullptr || group.tag == sheet::Tag::artifact;
  if (says_something) {
    writer_.open(uri ? "a" : "g");
    if (uri) writer_.attribute("href", *uri);
    describe(group);
  }
  if (group.tag == sheet::Tag::table_row) in_named_row_ = has_cells(group);
  in_link_ = in_link_ || uri;
  write(group.items);
  if (says_something) writer_.close();
  voice_ = before;
  in_named_row_ = row_before;
  in_link_ = link_before;
}

void SvgPage::part(sheet::Part part) {
  std::string name = sheet::part_name(part);
  std::replace(name.begin(), name.end(), '_', '-');
  writer_.attribute("class", name);
}

// The attributes of a group first, then what it is called: that is the order XML needs.
void SvgPage::describe(const sheet::Group& group) {
  if (group.example) {
    writer_.attribute("class", "example");
    writer_.attribute("data-example", std::to_string(group.example->number));
  }
  if (group.event) {
    const sheet::EventInfo& event = *group.event;
    writer_.attribute("class", "event");
    writer_.attribute("data-bar", std::to_string(event.bar));
    writer_.attribute("data-at", event.at);
    writer_.attribute("data-staff", event.staff);
    writer_.attribute("data-line", std::to_string(event.line));
    writer_.attribute("data-x", sheet::fixed(event.x, 2));
  }
  const char* role = role_of(group.tag);
  if (group.tag == sheet::Tag::table_header && in_named_row_) role = "rowheader";
  if (role != nullptr) writer_.attribute("role", role);
  if (group.tag == sheet::Tag::heading1) writer_.attribute("aria-level", "1");
  if (group.tag == sheet::Tag::heading2) writer_.attribute("aria-level", "2");
  if (group.tag == sheet::Tag::heading3) writer_.attribute("aria-level", "3");
  // A link in a running foot can be reached, though the foot is not told.
  if (group.tag == sheet::Tag::artifact && !has_link(group.items)) writer_.attribute("aria-hidden", "true");
  // No <title>: a browser would hold all the words of a picture under the mouse.
  if (!group.alternative.empty()) writer_.attribute("aria-label", group.alternative);
  if (!group.example) return;
  const std::string number = std::to_string(group.example->number);
  writer_.text_element("title", group.example->title.empty() ? number : group.example->title);
}

}  // namespace fretsheaf::render
