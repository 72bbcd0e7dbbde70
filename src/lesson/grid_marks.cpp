#include <algorithm>
#include <string>

#include "lesson/grid_form.h"
#include "lesson/grid_phrases.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

class MarkSetter {
 public:
  MarkSetter(const GridInput& input, const GridDraft& draft, Music& music)
      : input_(input), draft_(draft), music_(music) {}

  void run() {
    for (const DynamicDraft& dynamic : draft_.dynamics) {
      if (const auto moment = find(dynamic.moment, dynamic.range)) add(*moment, dynamic);
    }
    for (const SpanDraft& span : draft_.spans) {
      const auto first = find(span.first, span.range);
      if (!first) continue;
      const auto last = find(span.last, span.range);
      music_.spans.push_back({span.kind, *first, last ? *last : *first, span.range});
    }
    repeat_marks();
  }

 private:
  std::optional<Moment> find(CountRef ref, Range range) {
    const BarDraft& draft = draft_.bars[static_cast<std::size_t>(ref.bar)];
    const Bar& bar = music_.bars[static_cast<std::size_t>(ref.bar)];
    const auto at = moment_of(draft, bar, ref.count);
    if (!at) return std::nullopt;
    if (*at >= bar.begin) return Moment{ref.bar, *at};
    input_.diagnostics.error(Code::word_before_start, range, "this mark stands before the bar's first note",
                             "the bar begins late, at its first note or rest: move the mark there");
    return std::nullopt;
  }

  void add(Moment moment, const DynamicDraft& dynamic) {
    const auto same = std::find_if(music_.dynamics.begin(), music_.dynamics.end(), [&](const Dynamic& other) {
      const bool here = other.moment.bar == moment.bar && other.moment.at == moment.at;
      return here && (other.text == "sfz") == (dynamic.text == "sfz");
    });
    if (same != music_.dynamics.end()) {
      input_.diagnostics.error(Code::word_twice, dynamic.range,
                               tick(dynamic.text) + " is the second dynamic at one count", "write one");
      return;
    }
    music_.dynamics.push_back({moment, dynamic.text, dynamic.range});
  }

  // A `%` bar repeats the signs of the bar before, too: they sound and are not printed.
  void repeat_marks() {
    int written = 0;
    for (int i = 0; i < static_cast<int>(music_.bars.size()); ++i) {
      if (!music_.bars[static_cast<std::size_t>(i)].same_as_previous) {
        written = i;
        continue;
      }
      for (const Dynamic& dynamic : music_.dynamics) {
        if (dynamic.moment.bar != written) continue;
        music_.repeated_dynamics.push_back({{i, dynamic.moment.at}, dynamic.text, dynamic.range});
      }
      for (const Span& span : music_.spans) {
        if (span.first.bar != written || span.last.bar != written) continue;
        music_.repeated_spans.push_back({span.kind, {i, span.first.at}, {i, span.last.at}, span.range});
      }
    }
  }

  const GridInput& input_;
  const GridDraft& draft_;
  Music& music_;
};

}  // namespace

void set_marks(const GridInput& input, const GridDraft& draft, Music& music) {
  MarkSetter(input, draft, music).run();
}

}  // namespace fretsheaf::lesson
