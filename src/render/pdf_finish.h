#pragma once

#include <optional>
#include <string>

#include "render/structure.h"

namespace fretsheaf::render {

// A PDF that cairo has drawn with `PdfTags`, finished after PDF/UA-1 (ISO 14289-1): its structure, with alternatives
// and links; artifacts; language, title, metadata. It says that it keeps to that standard only where `is_universal`.
// nullopt where the bytes are no PDF, or not as the cairo writes them that this was made for (cairo_pdf.h).
std::optional<std::string> finish_pdf(const std::string& drawn, const sheet::Sheet& sheet, const Structure& structure);

}  // namespace fretsheaf::render
