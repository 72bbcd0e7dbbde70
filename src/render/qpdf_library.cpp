#include "render/qpdf_library.h"

#include "render/loaded.h"

namespace fretsheaf::render {
namespace {

bool load(QpdfLibrary& qpdf) {
  void* const library = dlopen("libqpdf.so.29", RTLD_LAZY | RTLD_LOCAL);
  bool all = library != nullptr;
#define FRETSHEAF_QPDF(name) all = all && find(library, "qpdf_" #name, qpdf.name);
#include "render/qpdf_functions.def"
#undef FRETSHEAF_QPDF
  return all;
}

}  // namespace

const QpdfLibrary* qpdf_library() {
  static QpdfLibrary qpdf;
  static const bool loaded = load(qpdf);
  return loaded ? &qpdf : nullptr;
}

}  // namespace fretsheaf::render
