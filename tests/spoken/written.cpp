#include "spoken/written.h"

#include <algorithm>

namespace fretsheaf::spoken::test {
namespace {

using lesson::Event;
using lesson::EventKind;
using lesson::Note;

bool goes_on(const Event& event, const Note& note) {
  return note.held || event.kind == EventKind::held;
}

class Writer {
 public:
  explicit Writer(const lesson::Music& music) : music_(music) {}

  std::vector<Heard> write() {
    for (std::size_t bar = 0; bar < music_.bars.size(); ++bar) {
      const std::vector<Event>& events = music_.bars[bar].events;
      for (std::size_t event = 0; event < events.size(); ++event) add(bar, event);
    }
    std::sort(all_.begin(), all_.end());
    return all_;
  }

 private:
  const Event& at(std::size_t bar, std::size_t event) const { return music_.bars[bar].events[event]; }
  Rational beats(std::size_t bar, std::size_t event) const {
    return at(bar, event).length / music_.bars[bar].meter.count();
  }

  void add(std::size_t bar, std::size_t index) {
    const Event& event = at(bar, index);
    const Rational place = event.at / music_.bars[bar].meter.count();
    const bool rests_on = index > 0 && at(bar, index - 1).kind == EventKind::rest;
    if (event.kind == EventKind::rest && !rests_on) {
      Rational total;
      for (std::size_t i = index; i < music_.bars[bar].events.size() && at(bar, i).kind == EventKind::rest; ++i) {
        total += beats(bar, i);
      }
      all_.push_back({static_cast<int>(bar), place, -1, 0, total, false});
    }
    if (event.strum && event.kind == EventKind::struck) {
      const auto on = [](const Event& next) { return next.kind == EventKind::held; };
      all_.push_back({static_cast<int>(bar), place, 0, static_cast<int>(*event.strum), sum(bar, index, on), false});
    }
    const bool starts = event.kind == EventKind::struck &&
                        std::any_of(event.notes.begin(), event.notes.end(), [](const Note& n) { return !n.held; });
    for (const Note& note : event.notes) {
      const int string = note.place.string;
      if (goes_on(event, note)) {
        // What only goes on is told again where a bar begins, or something else starts beside it.
        if (index == 0 || starts) all_.push_back({static_cast<int>(bar), place, string, 0, {}, true});
        continue;
      }
      const auto on = [&](const Event& next) {
        return std::any_of(next.notes.begin(), next.notes.end(),
                           [&](const Note& n) { return n.place == note.place && goes_on(next, n); });
      };
      all_.push_back(
          {static_cast<int>(bar), place, string, note.dead ? -1 : note.place.fret, sum(bar, index, on), false});
    }
  }

  template <typename GoesOn>
  Rational sum(std::size_t bar, std::size_t event, const GoesOn& on) const {
    Rational total = beats(bar, event);
    for (++event;; ++event) {
      while (bar < music_.bars.size() && event == music_.bars[bar].events.size()) {
        ++bar;
        event = 0;
      }
      if (bar == music_.bars.size() || !on(at(bar, event))) return total;
      total += beats(bar, event);
    }
  }

  const lesson::Music& music_;
  std::vector<Heard> all_;
};

}  // namespace

std::vector<std::vector<Heard>> written(const lesson::Lesson& lesson) {
  std::vector<std::vector<Heard>> examples;
  for (const lesson::Example& example : lesson.examples) examples.push_back(Writer(example.music).write());
  return examples;
}

}  // namespace fretsheaf::spoken::test
