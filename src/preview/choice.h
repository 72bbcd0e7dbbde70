#pragma once

#include <compare>
#include <string>

namespace fretsheaf::preview {

// How a lesson is to be seen.
struct Choice {
  std::string key;       // "E dorian"; "" is the lesson's own
  std::string look;      // a template's name; "" is the lesson's own
  bool answers = false;  // the answer key, of a lesson that has one

  auto operator<=>(const Choice&) const = default;
};

}  // namespace fretsheaf::preview
