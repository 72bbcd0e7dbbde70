#include "layout/music_context.h"

#include <algorithm>

namespace fretsheaf::layout {
namespace {

Staves staves_of(const score::Example& example) {
  // A rhythm has neither places nor pitches.
  if (!example.has_strings) return {true, false, false};
  Staves staves{false, false, false};
  for (const lesson::Staff staff : example.staves) {
    staves.slash = staves.slash || staff == lesson::Staff::slash;
    staves.notes = staves.notes || staff == lesson::Staff::notes;
    staves.tab = staves.tab || staff == lesson::Staff::tab;
  }
  if (!staves.slash && !staves.notes && !staves.tab) staves.slash = true;
  return staves;
}

std::vector<Joint> joints_of(const score::Example& example, int strings) {
  struct Latest {
    int bar = -1;
    int event = 0;
  };
  std::vector<Joint> joints;
  std::vector<Latest> latest(static_cast<std::size_t>(strings) + 1);
  for (int b = 0; b < static_cast<int>(example.bars.size()); ++b) {
    const auto& events = example.bars[static_cast<std::size_t>(b)].events;
    for (int e = 0; e < static_cast<int>(events.size()); ++e) {
      for (const score::Note& note : events[static_cast<std::size_t>(e)].notes) {
        Latest& before = latest[static_cast<std::size_t>(std::clamp(note.place.string, 1, strings))];
        const bool joined = note.approach != lesson::Approach::none && !note.approach_from_nowhere;
        if (joined && !note.tie_from && note.graces.empty() && before.bar >= 0) {
          joints.push_back({before.bar, before.event, b, e, note.place.string, note.approach});
        }
        before = {b, e};
      }
    }
  }
  return joints;
}

// The events of the spans of tremolo picking.
std::vector<const score::Event*> in_tremolo(const score::Example& example) {
  std::vector<const score::Event*> found;
  for (const lesson::Span& span : example.spans) {
    if (span.kind != lesson::SpanKind::tremolo) continue;
    for (int b = span.first.bar; b <= span.last.bar; ++b) {
      for (const score::Event& event : example.bars[static_cast<std::size_t>(b)].events) {
        const bool begun = b > span.first.bar || event.at >= span.first.at;
        const bool over = b == span.last.bar && event.at > span.last.at;
        if (begun && !over && !event.rest) found.push_back(&event);
      }
    }
  }
  std::sort(found.begin(), found.end(), std::less<>());
  return found;
}

std::span<const Joint> within(const std::vector<Joint>& joints, int Joint::*bar, int first, int last) {
  const auto begin = std::lower_bound(joints.begin(), joints.end(), first,
                                      [&](const Joint& joint, int value) { return joint.*bar < value; });
  const auto end =
      std::upper_bound(begin, joints.end(), last, [&](int value, const Joint& joint) { return value < joint.*bar; });
  return {begin, end};
}

}  // namespace

std::span<const Joint> Context::joints_into(int first_bar, int last_bar) const {
  return within(joints, &Joint::bar, first_bar, last_bar);
}
std::span<const Joint> Context::joints_out_of(int first_bar, int last_bar) const {
  return within(leaving, &Joint::from_bar, first_bar, last_bar);
}

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
                  !score.answer_key && example.hidden.rhythm,
                  std::max(1, static_cast<int>(score.string_letters.size())),
                  0,
                  type.width(templates::Role::digit, "12"),
                  type.width(templates::Role::bar_number, "0"),
                  {},
                  {},
                  in_tremolo(example),
                  {}};
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) {
      if (!event.rest) context.most_beams = std::max(context.most_beams, event.value.beams());
    }
  }
  if (context.staves.notes) context.chords = staff_chords(example, score.clef);
  context.joints = joints_of(example, context.strings);
  context.leaving = context.joints;
  std::stable_sort(context.leaving.begin(), context.leaving.end(),
                   [](const Joint& a, const Joint& b) { return a.from_bar < b.from_bar; });
  return context;
}

}  // namespace fretsheaf::layout
