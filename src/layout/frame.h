#pragma once

#include <optional>

#include "lesson/lesson.h"
#include "template/template.h"

namespace fretsheaf::layout {

// The paper and where text stands on it.
struct Frame {
  double width = 0;
  double height = 0;
  double text_width = 0;
  double left = 0;  // margin of a right-hand page
  double right = 0;
  bool mirrored = false;

  // The text's left edge on a page counted from 0: a two-sided left-hand page has the margins changed over.
  double text_left(int page) const { return mirrored && page % 2 == 1 ? right : left; }
};

// The paper that a lesson asks for, else the template's. Letter keeps A4's text width, with what it is wider shared by
// both margins.
Frame make_frame(std::optional<lesson::Paper> asked, const templates::Template& look);

}  // namespace fretsheaf::layout
