#include "render/pdf_draw.h"
#include "render/pdf_finish.h"
#include "render/render.h"

namespace fretsheaf::render {

std::string pdf(const sheet::Sheet& sheet, typeface::FontSet& fonts) {
  const Drawn drawn = draw_pdf(sheet, fonts, Marks::on);
  if (drawn.bytes.empty() || sheet.pages.empty()) return drawn.bytes;
  // What a later cairo may write otherwise is a sound PDF all the same, only not one for a screen reader.
  return finish_pdf(drawn.bytes, sheet, drawn.structure).value_or(drawn.bytes);
}

}  // namespace fretsheaf::render
