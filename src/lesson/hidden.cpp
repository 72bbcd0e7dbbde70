#include "lesson/hidden.h"

#include <algorithm>
#include <cstddef>

namespace fretsheaf::lesson {

Hidden hidden_in(const Lesson& lesson, const Example& example) {
  Hidden hidden = example.hide;
  if (!example.vary) return hidden;
  // A lesson that is still being checked may name an example that is not there.
  const auto source = static_cast<std::size_t>(example.vary->value - 1);
  if (source >= lesson.examples.size()) return hidden;
  const Hidden& there = lesson.examples[source].hide;
  hidden.frets = hidden.frets || there.frets;
  hidden.chords = hidden.chords || (there.chords && example.music.chords_borrowed);
  return hidden;
}

bool hides_anything(const Lesson& lesson) {
  return std::any_of(lesson.examples.begin(), lesson.examples.end(),
                     [&](const Example& example) { return any(hidden_in(lesson, example)); });
}

}  // namespace fretsheaf::lesson
