#include "render/pdf_tags.h"

#include "render/ink.h"

namespace fretsheaf::render {

const char* structure_type(sheet::Tag tag) {
  using sheet::Tag;
  switch (tag) {
    case Tag::none:
      return "Document";
    case Tag::heading1:
      return "H1";
    case Tag::heading2:
      return "H2";
    case Tag::heading3:
      return "H3";
    case Tag::paragraph:
      return "P";
    case Tag::list:
      return "L";
    case Tag::list_item:
      return "LI";
    case Tag::list_label:
      return "Lbl";
    case Tag::list_body:
      return "LBody";
    case Tag::quote:
      return "BlockQuote";
    case Tag::table:
      return "Table";
    case Tag::table_row:
      return "TR";
    case Tag::table_header:
      return "TH";
    case Tag::table_cell:
      return "TD";
    case Tag::figure:
      return "Figure";
    case Tag::span:
      return "Span";
    case Tag::link:
      return "Link";
    case Tag::artifact:
      break;
  }
  return nullptr;
}

void PdfTags::open(const sheet::Group& group) {
  if (marks_ == Marks::off) return;
  structure_.open(group, group.tag == sheet::Tag::figure ? ink_box(group, shaper_) : std::nullopt);
}

void PdfTags::ink() {
  if (marks_ == Marks::off) return;
  const StructureBuilder::Owner owner = structure_.owner();
  if (drawn_for_ && *drawn_for_ == owner) return;
  end_content();
  using Kind = StructureBuilder::Owner::Kind;
  // To cairo a link is an area with an address; here it is words.
  open_tag_ = owner.kind == Kind::page_furniture ? furniture_tag
              : owner.kind == Kind::decoration   ? decoration_tag
                                                 : "Span";
  structure_.begin_content(owner);
  cairo_tag_begin(context_, open_tag_, nullptr);
  drawn_for_ = owner;
}

void PdfTags::close() {
  if (marks_ == Marks::on) structure_.close();
}

void PdfTags::end_content() {
  if (!drawn_for_) return;
  cairo_tag_end(context_, open_tag_);
  drawn_for_.reset();
}

}  // namespace fretsheaf::render
