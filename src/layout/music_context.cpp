#include "layout/music_context.h"

#include <algorithm>

namespace fretsheaf::layout {
namespace {

Staves staves_of(const score::Example& example) {
  Staves staves{false, false};
  for (const lesson::Staff staff : example.staves) {
    staves.tab = staves.tab || staff == lesson::Staff::tab;
    // The notes staff is not drawn: the slash staff carries the rhythm in its place.
    staves.slash = staves.slash || staff != lesson::Staff::tab;
  }
  if (!example.has_strings) staves = {true, false};
  if (!staves.slash && !staves.tab) staves.slash = true;
  return staves;
}

std::vector<Joint> joints_of(const score::Example& example, int strings) {
  struct Latest {
    int bar = -1;
    int event = 0;
    int sounding = -1;  // counts the events with notes
  };
  std::vector<Joint> joints;
  std::vector<Latest> latest(static_cast<std::size_t>(strings) + 1);
  int sounding = 0;
  for (int b = 0; b < static_cast<int>(example.bars.size()); ++b) {
    const auto& events = example.bars[static_cast<std::size_t>(b)].events;
    for (int e = 0; e < static_cast<int>(events.size()); ++e) {
      const auto& notes = events[static_cast<std::size_t>(e)].notes;
      if (notes.empty()) continue;
      ++sounding;
      for (const score::Note& note : notes) {
        Latest& before = latest[static_cast<std::size_t>(std::clamp(note.place.string, 1, strings))];
        const bool joined = note.approach != lesson::Approach::none && !note.approach_from_nowhere;
        if (joined && !note.tie_from && note.graces.empty() && before.bar >= 0) {
          joints.push_back(
              {before.bar, before.event, b, e, note.place.string, note.approach, before.sounding + 1 == sounding});
        }
        before = {b, e, sounding};
      }
    }
  }
  return joints;
}

}  // namespace

Context make_context(const score::Example& example, const score::Score& score, double width, Type& type,
                     source::Diagnostics& diagnostics) {
  Context context{example,
                  score,
                  type,
                  diagnostics,
                  width,
                  type.measures().space,
                  type.measures().tab_gap,
                  staves_of(example),
                  std::max(1, static_cast<int>(score.string_letters.size())),
                  0,
                  type.width(templates::Role::digit, "12"),
                  type.width(templates::Role::bar_number, "0"),
                  {}};
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) {
      if (!event.rest) context.most_beams = std::max(context.most_beams, event.value.beams());
    }
  }
  context.joints = joints_of(example, context.strings);
  return context;
}

}  // namespace fretsheaf::layout
