#include "render/render.h"
#include "render/svg_page.h"
#include "sheet/number.h"

namespace fretsheaf::render {
namespace {

constexpr double mm_per_point = 25.4 / 72;

std::string page_svg(const sheet::Sheet& sheet, const sheet::Page& page, SvgGlyphs& glyphs) {
  SvgWriter writer;
  writer.open("svg");
  writer.attribute("xmlns", "http://www.w3.org/2000/svg");
  writer.attribute("width", sheet::shortest(page.width * mm_per_point, 2) + "mm");
  writer.attribute("height", sheet::shortest(page.height * mm_per_point, 2) + "mm");
  writer.attribute("viewBox", "0 0 " + sheet::shortest(page.width, 2) + " " + sheet::shortest(page.height, 2));
  writer.attribute("role", "document");
  if (!sheet.language.empty()) {
    writer.attribute("lang", sheet.language);
    writer.attribute("xml:lang", sheet.language);
  }
  // What cairo cuts pointed corners at.
  writer.attribute("stroke-miterlimit", "10");
  if (!sheet.title.empty()) writer.text_element("title", sheet.title);
  if (!page.description.empty()) writer.text_element("desc", page.description);
  writer.open("defs");
  for (const SvgGlyphs::Definition* glyph : glyphs.used_on(page)) {
    writer.open("path");
    writer.attribute("id", glyph->id);
    writer.attribute("d", glyph->outline);
    writer.close();
  }
  writer.close();
  SvgPage(writer, glyphs).write(page.items);
  writer.close();
  return writer.take();
}

}  // namespace

std::vector<std::string> svg(const sheet::Sheet& sheet, typeface::FontSet& fonts) {
  SvgGlyphs glyphs(fonts);
  std::vector<std::string> pages;
  for (const sheet::Page& page : sheet.pages) pages.push_back(page_svg(sheet, page, glyphs));
  return pages;
}

}  // namespace fretsheaf::render
