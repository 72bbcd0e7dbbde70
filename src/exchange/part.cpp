#include "exchange/part.h"

#include <numeric>

namespace fretsheaf::exchange {

namespace {

// The latest note on each string, while the example is walked from left to right.
class StringWalk {
 public:
  explicit StringWalk(std::map<Tone, Joins>& joins) : joins_(joins) {}

  void reach(int string, Tone tone, lesson::Approach approach, bool from_nowhere) {
    const auto before = latest_.find(string);
    if (approach != lesson::Approach::none && !from_nowhere && before != latest_.end()) {
      joins_[before->second].to = Join{approach, string};
      joins_[tone].from = Join{approach, string};
    }
    latest_[string] = tone;
  }

 private:
  std::map<Tone, Joins>& joins_;
  std::map<int, Tone> latest_;
};

}  // namespace

std::map<Tone, Joins> joins_of(const score::Example& example) {
  std::map<Tone, Joins> joins;
  StringWalk walk(joins);
  for (int bar = 0; bar < static_cast<int>(example.bars.size()); ++bar) {
    const std::vector<score::Event>& events = example.bars[bar].events;
    for (int event = 0; event < static_cast<int>(events.size()); ++event) {
      const std::vector<score::Note>& notes = events[event].notes;
      for (int note = 0; note < static_cast<int>(notes.size()); ++note) {
        for (int grace = 0; grace < static_cast<int>(notes[note].graces.size()); ++grace) {
          const score::GraceNote& early = notes[note].graces[grace];
          walk.reach(early.place.string, {bar, event, note, grace}, early.approach, false);
        }
        walk.reach(notes[note].place.string, {bar, event, note, -1}, notes[note].approach,
                   notes[note].approach_from_nowhere);
      }
    }
  }
  return joins;
}

std::int64_t divisions_of(const score::Example& example) {
  std::int64_t divisions = 1;
  const auto take_in = [&](theory::Rational length) {
    divisions = std::lcm(divisions, (length * theory::Rational(4)).denominator());
  };
  for (const score::Bar& bar : example.bars) {
    take_in(bar.end - bar.begin);
    for (const score::Event& event : bar.events) take_in(event.length);
    for (const score::ChordMark& chord : bar.chords) take_in(chord.at);
  }
  return divisions;
}

std::vector<bool> repeat_targets(const score::Example& example) {
  std::vector<bool> targets(example.bars.size(), false);
  std::size_t latest = 0;
  for (std::size_t i = 0; i < example.bars.size(); ++i) {
    const lesson::BarSign right = example.bars[i].right;
    if (right == lesson::BarSign::repeat_end || right == lesson::BarSign::repeat_both) targets[latest] = true;
    if (right == lesson::BarSign::repeat_begin || right == lesson::BarSign::repeat_both) latest = i + 1;
  }
  return targets;
}

}  // namespace fretsheaf::exchange
