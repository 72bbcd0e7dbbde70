#include "source/code.h"

#include "source/kebab_name.h"

namespace fretsheaf::source {

std::string_view code_name(Code code) {
  switch (code) {
#define FRETSHEAF_CODE(name)                 \
  case Code::name: {                         \
    static constexpr KebabName kebab(#name); \
    return kebab.view();                     \
  }
#include "source/codes.def"
#undef FRETSHEAF_CODE
  }
  return {};
}

}  // namespace fretsheaf::source
