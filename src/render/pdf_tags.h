#pragma once

#include <cairo.h>

#include <optional>

#include "render/structure.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// What a structure element is called in a PDF (ISO 32000-1, 14.8.4); nullptr for groups that are none.
const char* structure_type(sheet::Tag tag);

// What cairo can write as the tag of marked content that is decoration, or the furniture of a page: it knows no
// artifacts, and the finished file has those in place of these.
inline constexpr const char* decoration_tag = "NonStruct";
inline constexpr const char* furniture_tag = "Private";

// Marks what cairo draws, stretch by stretch, with the element that it belongs to.
//
// cairo 1.16 writes a structure of its own from nested tags, but cannot be left to it: an element that goes on over the
// end of a page breaks the file, text beside child elements is lost, and there are no artifacts, alternatives or links
// with words. So each stretch of drawing has just one tag, which cairo numbers on each page from 0, in the order of
// drawing; the structure over them is kept here and written when cairo is done. Thus nothing is drawn unmarked.
class PdfTags {
 public:
  // Both must outlive it.
  PdfTags(cairo_t* context, typeface::Shaper& shaper, Marks marks)
      : context_(context), shaper_(shaper), marks_(marks) {}

  void begin_page() { structure_.begin_page(); }
  void end_page() { end_content(); }
  void open(const sheet::Group& group);
  void close();
  void link(const sheet::Link& link) { structure_.link(link); }
  // To be called before anything is drawn.
  void ink();

  Structure take() { return structure_.take(); }

 private:
  void end_content();

  cairo_t* context_;
  typeface::Shaper& shaper_;
  Marks marks_;
  StructureBuilder structure_;
  std::optional<StructureBuilder::Owner> drawn_for_;  // nothing between stretches
  const char* open_tag_ = nullptr;
};

}  // namespace fretsheaf::render
