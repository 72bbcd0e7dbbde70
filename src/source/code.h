#pragma once

#include <string_view>

namespace fretsheaf::source {

// Every kind of diagnostic that there is. Codes are stable: programs that read `check --json` rely on them. A new one
// is a line in codes.def; its name is the enumerator's with `-` for `_`.
enum class Code {
#define FRETSHEAF_CODE(name) name,
#include "source/codes.def"
#undef FRETSHEAF_CODE
};

std::string_view code_name(Code code);

}  // namespace fretsheaf::source
