#include "render/structure.h"

#include <algorithm>
#include <utility>

#include "render/uri.h"

namespace fretsheaf::render {
namespace {

using sheet::Tag;

// Only these may hold marked content; what is drawn straight into a list or a table is decoration: its lines.
bool holds_content(Tag tag) {
  switch (tag) {
    case Tag::heading1:
    case Tag::heading2:
    case Tag::heading3:
    case Tag::paragraph:
    case Tag::list_label:
    case Tag::list_body:
    case Tag::table_header:
    case Tag::table_cell:
    case Tag::figure:
    case Tag::span:
    case Tag::link:
      return true;
    default:
      return false;
  }
}

int level_of(Tag tag) {
  switch (tag) {
    case Tag::heading1:
      return 1;
    case Tag::heading2:
      return 2;
    case Tag::heading3:
      return 3;
    default:
      return 0;
  }
}

}  // namespace

bool is_universal(const sheet::Sheet& sheet, const Structure& structure) {
  if (sheet.title.empty() || sheet.language.empty()) return false;
  int level = 0;
  for (const Element& element : structure.elements) {
    if (element.tag == Tag::figure && element.alternative.empty()) return false;
    const int here = level_of(element.tag);
    if (here == 0 || element.kids.empty()) continue;
    if (here > level + 1) return false;
    level = here;
  }
  return true;
}

StructureBuilder::StructureBuilder() {
  structure_.elements.emplace_back();
  open_.push_back({});
}

void StructureBuilder::begin_page() {
  structure_.owners.emplace_back();
}

std::size_t StructureBuilder::add(std::size_t parent, const sheet::Group& group) {
  Element element;
  element.tag = group.tag;
  element.alternative = group.alternative;
  const std::size_t index = structure_.elements.size();
  structure_.elements.push_back(std::move(element));
  structure_.elements[parent].kids.emplace_back(index);
  return index;
}

std::size_t StructureBuilder::element_of(const sheet::Group& group) {
  const std::size_t parent = open_.back().element;
  if (group.tag == Tag::none) return parent;
  if (const auto known = flows_.find(group.flow); group.flow != 0 && known != flows_.end()) return known->second;
  if (group.tag != Tag::link) {
    const std::size_t index = add(parent, group);
    if (group.flow != 0) flows_[group.flow] = index;
    return index;
  }
  const std::optional<std::string> uri = address_of(group);
  sheet::Group plain;
  plain.tag = Tag::span;
  if (!uri) return add(parent, plain);
  // A link that goes on in a further line is one.
  const auto& kids = structure_.elements[parent].kids;
  const auto* last = kids.empty() ? nullptr : std::get_if<std::size_t>(&kids.back());
  if (last != nullptr && structure_.elements[*last].uri == *uri) return *last;
  const std::size_t index = add(parent, group);
  structure_.elements[index].uri = *uri;
  return index;
}

void StructureBuilder::open(const sheet::Group& group, const std::optional<sheet::Box>& box) {
  if (open_.back().furniture || group.tag == Tag::artifact) return open_.push_back({open_.back().element, true});
  const std::size_t element = element_of(group);
  if (group.tag == Tag::figure && box) structure_.elements[element].boxes.emplace_back(page(), *box);
  open_.push_back({element, false});
}

void StructureBuilder::close() {
  open_.pop_back();
}

StructureBuilder::Owner StructureBuilder::owner() const {
  if (open_.back().furniture) return {Owner::Kind::page_furniture, 0};
  const std::size_t element = open_.back().element;
  if (!holds_content(structure_.elements[element].tag)) return {Owner::Kind::decoration, 0};
  return {Owner::Kind::content, element};
}

void StructureBuilder::begin_content(const Owner& owner) {
  auto& owners = structure_.owners.back();
  const int number = static_cast<int>(owners.size());
  if (owner.kind != Owner::Kind::content) {
    owners.emplace_back();
    return;
  }
  owners.emplace_back(owner.element);
  structure_.elements[owner.element].kids.emplace_back(Content{page(), number});
}

void StructureBuilder::link(const sheet::Link& link) {
  const std::optional<std::string> uri = safe_uri(link.uri);
  if (!uri) return;
  const Area area{page(), link.area};
  Element& element = structure_.elements[open_.back().element];
  if (!open_.back().furniture && element.uri == *uri) {
    element.kids.emplace_back(area);
    return;
  }
  auto loose = std::find_if(loose_links_.begin(), loose_links_.end(), [&](const Element& e) { return e.uri == *uri; });
  if (loose == loose_links_.end()) {
    loose_links_.emplace_back();
    loose = loose_links_.end() - 1;
    loose->tag = Tag::link;
    loose->uri = *uri;
  }
  loose->kids.emplace_back(area);
}

// A link that every page's foot has is told once, at the end.
Structure StructureBuilder::take() {
  for (Element& link : loose_links_) {
    structure_.elements.front().kids.emplace_back(structure_.elements.size());
    structure_.elements.push_back(std::move(link));
  }
  loose_links_.clear();
  return std::move(structure_);
}

}  // namespace fretsheaf::render
