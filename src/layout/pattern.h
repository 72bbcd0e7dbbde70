#pragma once

#include <string>
#include <string_view>

#include "score/score.h"

namespace fretsheaf::layout {

// A template's pattern with its holes filled: {title}, {series}, {number} and {level} from the heading, the rest from
// `page`, where it is given. Its parts stand between middle dots; one that comes to nothing, or is said by another
// already (the teacher's name in the copyright line), is left out with its dot.
std::string filled_pattern(std::string_view pattern, const score::Heading& heading);

// What only the whole score and the page know.
struct PageTexts {
  std::string teacher;
  std::string copyright;
  std::string link;  // as people read it
  std::string page;  // "page 1 of 2"
};
std::string filled_pattern(std::string_view pattern, const score::Heading& heading, const PageTexts& page);

}  // namespace fretsheaf::layout
