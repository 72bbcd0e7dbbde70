#include "render/pdf_draw.h"

#include <cairo-pdf.h>

#include "render/pdf_metadata.h"
#include "render/pdf_page.h"
#include "sheet/number.h"

namespace fretsheaf::render {
namespace {

cairo_status_t append(void* out, const unsigned char* bytes, unsigned length) {
  static_cast<std::string*>(out)->append(reinterpret_cast<const char*>(bytes), length);
  return CAIRO_STATUS_SUCCESS;
}

void set_metadata(cairo_surface_t* surface, const sheet::Sheet& sheet) {
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, sheet.title.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_AUTHOR, sheet.author.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, creator);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, creation_date);
}

void add_bookmark(cairo_surface_t* surface, const sheet::Bookmark& bookmark) {
  const std::string place =
      "page=" + std::to_string(bookmark.page + 1) + " pos=[0 " + sheet::fixed(bookmark.y, 2) + "]";
  cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, bookmark.title.c_str(), place.c_str(),
                                cairo_pdf_outline_flags_t{});
}

}  // namespace

Drawn draw_pdf(const sheet::Sheet& sheet, typeface::FontSet& fonts, Marks marks) {
  Drawn drawn;
  CairoFonts cairo_fonts(fonts);
  const sheet::Page empty;
  const sheet::Page& first = sheet.pages.empty() ? empty : sheet.pages.front();
  const CairoSurface surface(cairo_pdf_surface_create_for_stream(append, &drawn.bytes, first.width, first.height));
  // Later versions would let cairo pack objects, which `CairoPdf` could not read; nothing here needs them.
  cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_4);
  set_metadata(surface.get(), sheet);
  const CairoContext context(cairo_create(surface.get()));
  PdfTags tags(context.get(), fonts, marks);
  PdfPage drawing(context.get(), cairo_fonts, tags);
  for (const sheet::Page& page : sheet.pages) {
    cairo_pdf_surface_set_size(surface.get(), page.width, page.height);
    tags.begin_page();
    drawing.draw(page.items);
    tags.end_page();
    cairo_show_page(context.get());
  }
  drawn.structure = tags.take();
  const auto pages = static_cast<int>(sheet.pages.size());
  for (const sheet::Bookmark& bookmark : sheet.bookmarks) {
    if (bookmark.page >= 0 && bookmark.page < pages) add_bookmark(surface.get(), bookmark);
  }
  cairo_surface_finish(surface.get());
  const bool good = cairo_status(context.get()) == CAIRO_STATUS_SUCCESS &&
                    cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS;
  if (!good) drawn.bytes.clear();
  return drawn;
}

}  // namespace fretsheaf::render
