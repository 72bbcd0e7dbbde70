#pragma once

#include "lesson/music.h"

namespace fretsheaf::score {

// Whether a repeat begins at a bar line, or ends there.
constexpr bool opens(lesson::BarSign sign) {
  return sign == lesson::BarSign::repeat_begin || sign == lesson::BarSign::repeat_both;
}
constexpr bool closes(lesson::BarSign sign) {
  return sign == lesson::BarSign::repeat_end || sign == lesson::BarSign::repeat_both;
}

}  // namespace fretsheaf::score
