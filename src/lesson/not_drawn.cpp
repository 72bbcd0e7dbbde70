#include "lesson/not_drawn.h"

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace fretsheaf::lesson {
namespace {

using Places = std::vector<Range>;

Places only_if(bool present, Range range) {
  return present ? Places{range} : Places{};
}

// What `find` finds in each example: an optional place.
template <typename Find>
Places each_example(const Lesson& lesson, Find find) {
  Places places;
  for (const Example& example : lesson.examples) {
    if (const std::optional<Range> place = find(example)) places.push_back(*place);
  }
  return places;
}

template <typename T>
std::optional<Range> range_of(const std::optional<T>& value) {
  if (!value) return {};
  return value->range;
}

std::optional<Range> range_if(bool present, Range range) {
  if (!present) return {};
  return range;
}

struct Feature {
  std::string_view name;  // with its verb
  Places (*find)(const Lesson&);
};

// One row a feature. A row goes when its feature is drawn.
const Feature features[] = {
    {"a logo is", [](const Lesson& l) { return l.logo ? Places{l.logo->range} : Places{}; }},
    {"the QR code of a link is", [](const Lesson& l) { return l.link ? Places{l.link->range} : Places{}; }},
    {"a practice log is", [](const Lesson& l) { return only_if(l.practice_log > 0, l.practice_log_range); }},

    {"what 'hide' asks for is",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) {
         return range_if(e.hide.frets || e.hide.rhythm || e.hide.labels || e.hide.chords, e.hide_range);
       });
     }},
    {"blank bars are",
     [](const Lesson& l) { return each_example(l, [](const Example& e) { return range_of(e.blank_bars); }); }},
    {"a build-up is",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) { return range_if(e.build_up != BuildUp::none, e.build_up_range); });
     }},
};

}  // namespace

void warn_not_drawn(const Lesson& lesson, source::Diagnostics& diagnostics) {
  for (const Feature& feature : features) {
    for (const Range& range : feature.find(lesson)) {
      diagnostics.warning(source::Code::not_drawn, range, std::string(feature.name) + " read but not drawn yet");
    }
  }
}

}  // namespace fretsheaf::lesson
