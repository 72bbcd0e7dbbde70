#pragma once

#include <string>

#include "sheet/sheet.h"

namespace fretsheaf::render {

// A PDF must say when it was made; saying so truly would make every run's bytes differ.
inline constexpr const char* creation_date = "2000-01-01T00:00:00Z";
inline constexpr const char* creator = "fretsheaf";

// What a PDF says of itself, as XMP (ISO 16684-1); `universal` that it keeps to PDF/UA-1 (ISO 14289-1, clause 5).
std::string pdf_metadata(const sheet::Sheet& sheet, bool universal);

}  // namespace fretsheaf::render
