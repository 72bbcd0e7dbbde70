#pragma once

#include <qpdf/qpdf-c.h>

namespace fretsheaf::render {

// The functions of libqpdf that are used. It is not linked: with what it needs it takes 3 to 4 ms to load, which is for
// runs that make a PDF to pay.
struct QpdfLibrary {
#define FRETSHEAF_QPDF(name) decltype(&qpdf_##name) name = nullptr;
#include "render/qpdf_functions.def"
#undef FRETSHEAF_QPDF
};

// nullptr where the library is not installed.
const QpdfLibrary* qpdf_library();

}  // namespace fretsheaf::render
