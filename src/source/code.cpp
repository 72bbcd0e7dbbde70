#include "source/code.h"

#include <cstddef>

namespace fretsheaf::source {
namespace {

// An enumerator's name with `-` for `_`, made by the compiler.
template <std::size_t size>
struct KebabName {
  char text[size]{};

  constexpr explicit KebabName(const char (&name)[size]) {
    for (std::size_t i = 0; i < size; ++i) text[i] = name[i] == '_' ? '-' : name[i];
  }

  constexpr std::string_view view() const { return {text, size - 1}; }
};

}  // namespace

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
