#pragma once

#include <string>

namespace fretsheaf::render {

// What an independent reader of PDF (Poppler's programs, qpdf) says of a PDF on its standard output. `arguments` come
// before the file's name, `after` behind it.
std::string reader(const std::string& program, const std::string& arguments, const std::string& pdf,
                   const std::string& after = "");

}  // namespace fretsheaf::render
