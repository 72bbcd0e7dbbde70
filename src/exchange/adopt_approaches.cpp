#include "exchange/adopt_approaches.h"

#include <algorithm>
#include <map>
#include <string>

namespace fretsheaf::exchange {

using lesson::Approach;
using source::Code;

namespace {

// Walks the strings as a reader of the grid does, and lets only those signs stand that it will accept.
class ApproachSettler {
 public:
  ApproachSettler(const AdoptContext& context, std::vector<Happening>& happenings)
      : context_(context), happenings_(happenings) {}

  void run() {
    for (Happening& own : happenings_) {
      for (TakenTone& tone : own.tones) settle(own, tone);
      for (TakenTone& tone : own.tones) latest_[tone.place->string] = &tone;
    }
  }

 private:
  struct Memory {
    bool any = false;
    bool dead = false;
    int fret = 0;
  };

  void settle(const Happening& own, TakenTone& tone) {
    Memory& memory = memory_[tone.place->string];
    if (tone.held) {
      if (tone.approach != Approach::none) left_out(own, tone.head, "a sign that leads to a note that is held on");
      return;
    }
    if (tone.head.cross) {
      if (tone.approach != Approach::none) left_out(own, tone.head, "a sign that leads to a dead note");
      tone.approach = Approach::none;
      memory = {true, true, 0};
      return;
    }
    settle_graces(own, tone, memory);
    if (tone.graces.empty()) check_origin(own, tone);
    if (tone.head.from_nowhere != Approach::none && tone.approach == Approach::none) {
      tone.approach = tone.head.from_nowhere;
      tone.from_nowhere = true;
      if (memory.any) {
        left_out(own, tone.head, "a slide from nowhere after another note on its string");
        tone.approach = Approach::none;
        tone.from_nowhere = false;
      }
    } else {
      settle_approach(own, tone.head, tone.approach, tone.place->fret, memory);
      const bool slide = tone.approach == Approach::slide_up || tone.approach == Approach::slide_down;
      tone.from_nowhere = slide && !memory.any;
    }
    memory = {true, false, tone.place->fret};
  }

  // A grace note is joined to what follows it.
  void settle_graces(const Happening& own, TakenTone& tone, Memory& memory) {
    for (std::size_t g = 0; g < tone.graces.size();) {
      GraceTone& grace = tone.graces[g];
      Approach& next = g + 1 < tone.graces.size() ? tone.graces[g + 1].approach : tone.approach;
      const int next_fret = g + 1 < tone.graces.size() ? tone.graces[g + 1].place.fret : tone.place->fret;
      if (grace.place.fret == next_fret) {
        left_out(own, grace.head, "a grace note that nothing joins to its note");
        tone.graces.erase(tone.graces.begin() + static_cast<std::ptrdiff_t>(g));
        continue;
      }
      if (next == Approach::none) {
        next = next_fret > grace.place.fret ? Approach::hammer_on : Approach::pull_off;
        context_.losses.lose(Code::adopt_changed, grace.head.element, own.measure,
                             "a grace note is joined to its note as a hammer-on or pull-off",
                             "a lesson's grace notes always lead to their note");
      }
      if (g > 0) {
        settle_approach(own, grace.head, grace.approach, grace.place.fret, memory);
      } else if (grace.approach != Approach::none) {
        settle_approach(own, grace.head, grace.approach, grace.place.fret, memory);
        if (!memory.any) grace.approach = Approach::none;
      }
      memory = {true, false, grace.place.fret};
      ++g;
    }
  }

  // A joint from another string, or from an earlier note than the latest, is none.
  void check_origin(const Happening& own, TakenTone& tone) {
    if (tone.approach == Approach::none || tone.from_event < 0) return;
    const auto& from_tones = happenings_[static_cast<std::size_t>(tone.from_event)].tones;
    const auto latest = latest_.find(tone.place->string);
    const bool sound =
        latest != latest_.end() && std::any_of(from_tones.begin(), from_tones.end(),
                                               [&](const TakenTone& from) { return &from == latest->second; });
    if (sound) return;
    left_out(own, tone.head, "a hammer-on, pull-off or slide from another string");
    tone.approach = Approach::none;
  }

  void settle_approach(const Happening& own, const Head& head, Approach& approach, int fret, const Memory& memory) {
    if (approach == Approach::none) return;
    const bool ligature = approach == Approach::hammer_on || approach == Approach::pull_off;
    if (!memory.any) {
      if (!ligature) return;
      left_out(own, head, "a hammer-on or pull-off from no note");
      approach = Approach::none;
      return;
    }
    if (memory.dead) return;
    if (fret == memory.fret) {
      left_out(own, head, "a hammer-on, pull-off or slide to the same fret");
      approach = Approach::none;
      return;
    }
    const bool up = fret > memory.fret;
    approach =
        ligature ? (up ? Approach::hammer_on : Approach::pull_off) : (up ? Approach::slide_up : Approach::slide_down);
  }

  void left_out(const Happening& own, const Head& head, const std::string& what) {
    context_.losses.left_out(head.element, own.measure, what);
  }

  const AdoptContext& context_;
  std::vector<Happening>& happenings_;
  std::map<int, Memory> memory_;            // by string
  std::map<int, const TakenTone*> latest_;  // by string
};

}  // namespace

void settle_approaches(const AdoptContext& context, std::vector<Happening>& happenings) {
  ApproachSettler(context, happenings).run();
}

}  // namespace fretsheaf::exchange
