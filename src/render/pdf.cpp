#include <cairo-pdf.h>

#include "render/pdf_page.h"
#include "render/render.h"
#include "sheet/number.h"

namespace fretsheaf::render {
namespace {

// A PDF must say when it was made; saying so truly would make every run's bytes differ.
constexpr const char* creation_date = "2000-01-01T00:00:00Z";
constexpr const char* creator = "fretsheaf";

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

// Links make cairo call the whole file tagged, though nothing else of it is: a screen reader would read the links and
// no word more. The claim stands in the catalog, near the end; blanks leave every offset as it was.
void withdraw_claim_of_tags(std::string& bytes) {
  const std::size_t catalog = bytes.rfind("/Type /Catalog");
  if (catalog == std::string::npos) return;
  const std::size_t end = bytes.find("endobj", catalog);
  for (const std::string_view claim : {"/StructTreeRoot", "/MarkInfo"}) {
    const std::size_t from = bytes.find(claim, catalog);
    if (from >= end) continue;
    for (std::size_t i = from; i < end && bytes[i] != '\n'; ++i) bytes[i] = ' ';
  }
}

}  // namespace

std::string pdf(const sheet::Sheet& sheet, typeface::FontSet& fonts) {
  std::string bytes;
  CairoFonts cairo_fonts(fonts);
  const sheet::Page empty;
  const sheet::Page& first = sheet.pages.empty() ? empty : sheet.pages.front();
  const CairoSurface surface(cairo_pdf_surface_create_for_stream(append, &bytes, first.width, first.height));
  set_metadata(surface.get(), sheet);
  const CairoContext context(cairo_create(surface.get()));
  PdfPage drawing(context.get(), cairo_fonts);
  for (const sheet::Page& page : sheet.pages) {
    cairo_pdf_surface_set_size(surface.get(), page.width, page.height);
    drawing.draw(page.items);
    cairo_show_page(context.get());
  }
  const auto pages = static_cast<int>(sheet.pages.size());
  for (const sheet::Bookmark& bookmark : sheet.bookmarks) {
    if (bookmark.page >= 0 && bookmark.page < pages) add_bookmark(surface.get(), bookmark);
  }
  cairo_surface_finish(surface.get());
  const bool drawn = cairo_status(context.get()) == CAIRO_STATUS_SUCCESS &&
                     cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS;
  withdraw_claim_of_tags(bytes);
  return drawn ? bytes : std::string();
}

}  // namespace fretsheaf::render
