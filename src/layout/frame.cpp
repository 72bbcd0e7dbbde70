#include "layout/frame.h"

namespace fretsheaf::layout {
namespace {

constexpr double a4_width = 595.28;
constexpr double a4_height = 841.89;
constexpr double letter_width = 612;
constexpr double letter_height = 792;

bool is_letter(std::optional<lesson::Paper> asked, const templates::Template& look) {
  return asked ? *asked == lesson::Paper::letter : look.paper == templates::Paper::letter;
}

}  // namespace

Frame make_frame(std::optional<lesson::Paper> asked, const templates::Template& look) {
  const templates::Measures& m = look.measures;
  Frame frame;
  frame.text_width = a4_width - m.margin_left - m.margin_right;
  const bool letter = is_letter(asked, look);
  frame.width = letter ? letter_width : a4_width;
  frame.height = letter ? letter_height : a4_height;
  const double wider = frame.width - a4_width;
  frame.left = m.margin_left + wider / 2;
  frame.right = m.margin_right + wider / 2;
  frame.mirrored = look.two_sided;
  return frame;
}

}  // namespace fretsheaf::layout
