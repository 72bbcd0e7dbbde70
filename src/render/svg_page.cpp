#include "render/svg_page.h"

#include <algorithm>
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
    default:
      return nullptr;
  }
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
  for (const sheet::Item& item : items) std::visit(*this, item);
}

// Outlines are 1000 units to the em; the glyphs' places count from the run's first in the same units.
void SvgPage::operator()(const sheet::GlyphRun& run) {
  if (run.glyphs.empty() || run.size <= 0) return;
  const sheet::Glyph& first = run.glyphs.front();
  const double scale = run.size / 1000;
  writer_.open("g");
  part(run.part);
  if (run.text.find_first_not_of(' ') != std::string::npos) {
    writer_.attribute("role", "img");
    writer_.attribute("aria-label", run.text);
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

void SvgPage::operator()(const sheet::Link& link) {
  const std::optional<std::string> uri = safe_uri(link.uri);
  if (!uri) return;
  writer_.open("a");
  writer_.attribute("href", *uri);
  writer_.attribute("aria-label", link.uri);
  writer_.open("rect");
  writer_.attribute("x", link.area.left);
  writer_.attribute("y", link.area.top);
  writer_.attribute("width", link.area.right - link.area.left);
  writer_.attribute("height", link.area.bottom - link.area.top);
  writer_.attribute("fill", "none");
  writer_.attribute("pointer-events", "all");
  writer_.close();
  writer_.close();
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

void SvgPage::operator()(const sheet::Group& group) {
  const bool says_something = group.example || group.event || !group.alternative.empty() ||
                              role_of(group.tag) != nullptr || group.tag == sheet::Tag::artifact;
  if (!says_something) return write(group.items);
  writer_.open("g");
  describe(group);
  write(group.items);
  writer_.close();
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
  if (const char* role = role_of(group.tag)) writer_.attribute("role", role);
  if (group.tag == sheet::Tag::heading1) writer_.attribute("aria-level", "1");
  if (group.tag == sheet::Tag::heading2) writer_.attribute("aria-level", "2");
  if (group.tag == sheet::Tag::heading3) writer_.attribute("aria-level", "3");
  if (group.tag == sheet::Tag::artifact) writer_.attribute("aria-hidden", "true");
  if (!group.example) {
    if (!group.alternative.empty()) writer_.text_element("title", group.alternative);
    return;
  }
  const std::string number = std::to_string(group.example->number);
  writer_.text_element("title", group.example->title.empty() ? number : group.example->title);
  if (!group.alternative.empty()) writer_.text_element("desc", group.alternative);
}

}  // namespace fretsheaf::render
