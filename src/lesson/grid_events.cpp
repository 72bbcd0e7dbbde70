#include "lesson/grid_events.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "lesson/grid_hand_words.h"
#include "lesson/grid_phrases.h"
#include "lesson/held.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

// The note before on a string: what hammer-ons, pull-offs and slides come from.
struct StringMemory {
  enum class Kind { none, fret, dead, unknown };
  Kind kind = Kind::none;
  int fret = 0;
};

// The same notes as what goes on from before.
std::vector<Note> held_on(const std::vector<Note>& notes) {
  std::vector<Note> result;
  result.reserve(notes.size());
  for (const Note& note : notes) result.push_back(going_on(note));
  return result;
}

class EventMaker {
 public:
  EventMaker(const GridInput& input, const GridDraft& draft, Music& music)
      : input_(input), draft_(draft), music_(music), strings_(static_cast<std::size_t>(input.context.neck.strings())) {}

  void run() {
    const BarDraft* written = nullptr;  // the bar that a `%` repeats
    std::size_t at = 0;
    for (std::size_t i = 0; i < draft_.bars.size(); ++i) {
      const BarDraft& own = draft_.bars[i];
      if (own.damaged) forget();
      if (!own.percent) {
        written = &own;
        at = i;
        make_bar(own, music_.bars[i]);
      } else if (written != nullptr && !own.damaged) {
        const std::vector<Event>& events = music_.bars[at].events;
        begins_with_rest_ = !events.empty() && events.front().kind == EventKind::rest;
        repeat_bar(*written, own, music_.bars[i]);
      }
      close_bar(own, music_.bars[i]);
    }
  }

 private:
  // After a mistake nothing is said about what may only seem to be missing.
  void forget() {
    unsure_ = true;
    for (StringMemory& memory : strings_) memory.kind = StringMemory::Kind::unknown;
  }

  void error(Code code, Range range, std::string message, std::string help) {
    if (repeating_ == nullptr) {
      input_.diagnostics.error(code, range, std::move(message), std::move(help));
    } else if (!std::exchange(repeat_failed_, true)) {
      input_.diagnostics.error(Code::bar_repeat, *repeating_, "the bar before cannot be repeated here: " + message,
                               "write this bar's counts instead of `%`");
    }
  }

  void make_bar(const BarDraft& draft, Bar& bar) {
    for (const Count& count : draft.counts) {
      if (count.bad || count.at < bar.begin || count.at >= bar.end) continue;
      if (count.lost) forget();
      if (count.rest) {
        start(bar, EventKind::rest, count);
      } else if (count.starts()) {
        strike(bar, count);
      } else if (bar.events.empty()) {
        go_on(bar, count.range, &count);
      }
      attach(bar, count);
    }
  }

  // Read anew, so that what is held into the bar, or slid to, comes from where it now stands.
  void repeat_bar(const BarDraft& written, const BarDraft& own, Bar& bar) {
    repeating_ = &*own.percent;
    repeat_failed_ = false;
    make_bar(written, bar);
    for (Event& event : bar.events) {
      event.written_out = false;
      event.range = *own.percent;
    }
    repeating_ = nullptr;
    begins_with_rest_ = false;
  }

  // A bar with no counts that could be read still lasts.
  void close_bar(const BarDraft& draft, Bar& bar) {
    if (bar.events.empty()) go_on(bar, draft.range, nullptr);
    for (std::size_t i = 0; i < bar.events.size(); ++i) {
      const Rational next = i + 1 < bar.events.size() ? bar.events[i + 1].at : bar.end;
      bar.events[i].length = next - bar.events[i].at;
    }
    before_ = bar.events.back();
    unsure_ = draft.damaged;
  }

  // What sounds just before the next event.
  const Event* last(const Bar& bar) const {
    if (!bar.events.empty()) return &bar.events.back();
    return before_ ? &*before_ : nullptr;
  }

  Event& start(Bar& bar, EventKind kind, const Count& count) {
    Event event;
    event.kind = kind;
    event.at = count.at;
    event.range = count.range;
    bar.events.push_back(std::move(event));
    return bar.events.back();
  }

  // A bare count at a bar's start holds what was before, over the bar line too.
  void go_on(Bar& bar, Range range, const Count* count) {
    // A bar that begins by holding a rest begins with one wherever it is repeated.
    const Event* from = begins_with_rest_ ? nullptr : last(bar);
    if (from == nullptr && !begins_with_rest_ && count != nullptr && !unsure_) {
      const std::string text = count->text;
      error(Code::count_bare_first, range, "there is nothing before " + tick(text) + " to hold",
            "write " + tick("(" + text + ")") + " for a rest, or a note under it");
    }
    Event event;
    event.kind = from == nullptr || from->kind == EventKind::rest ? EventKind::rest : EventKind::held;
    event.at = bar.begin;
    event.range = range;
    event.written_out = false;
    if (from != nullptr) {
      event.notes = held_on(from->notes);
      event.strum = from->strum;
    }
    bar.events.push_back(std::move(event));
  }

  void strike(Bar& bar, const Count& count) {
    const Event* previous = last(bar);
    std::vector<Note> notes;
    for (const NoteDraft& draft : count.notes) {
      if (auto note = draft.note.held ? hold(draft, previous) : play(draft)) notes.push_back(std::move(*note));
    }
    std::sort(notes.begin(), notes.end(), [](const Note& a, const Note& b) { return a.place.string < b.place.string; });
    const bool held = !notes.empty() && std::all_of(notes.begin(), notes.end(), [](const Note& n) { return n.held; });
    if (held && !bar.events.empty() && says_nothing_new(bar.events.back(), notes)) return;
    Event& event = start(bar, held ? EventKind::held : EventKind::struck, count);
    event.notes = std::move(notes);
    event.strum = count.strum;
  }

  // All that sounds is held on: one longer event.
  static bool says_nothing_new(const Event& event, const std::vector<Note>& notes) {
    if (event.notes.size() != notes.size()) return false;
    return std::equal(notes.begin(), notes.end(), event.notes.begin(), [](const Note& a, const Note& b) {
      const bool plain = !a.staccato && !a.tenuto && !a.vibrato && !a.bend && a.slide_off == SlideOff::none;
      return plain && a.place == b.place && b.slide_off == SlideOff::none;
    });
  }

  // `=`
  std::optional<Note> hold(const NoteDraft& draft, const Event* previous) {
    Note note = draft.note;
    const auto sounds = [&](const Note& other) { return other.place.string == note.place.string; };
    if (previous != nullptr) {
      const auto from = std::find_if(previous->notes.begin(), previous->notes.end(), sounds);
      if (from != previous->notes.end() && !from->dead) {
        note.place = from->place;
        note.ghost = from->ghost;
        note.harmonic = from->harmonic;
        return note;
      }
      if (from != previous->notes.end()) {
        error(Code::token_hold, note.range, "a dead note cannot be held on",
              "write the fret of the note that sounds on");
        return std::nullopt;
      }
    }
    if (!unsure_) {
      error(Code::token_hold, note.range, "there is no note on this string for `=` to hold on",
            "`=` stands at the count after its note, on the same string");
    }
    return std::nullopt;
  }

  Note play(const NoteDraft& draft) {
    Note note = draft.note;
    StringMemory& memory = strings_[static_cast<std::size_t>(note.place.string) - 1];
    for (const GraceNote& grace : note.graces) {
      check_approach(grace.approach, grace.place, grace.range, memory);
      memory = {StringMemory::Kind::fret, grace.place.fret};
    }
    const bool slide = note.approach == Approach::slide_up || note.approach == Approach::slide_down;
    note.approach_from_nowhere = slide && memory.kind == StringMemory::Kind::none;
    check_approach(note.approach, note.place, note.range, memory);
    memory = {note.dead ? StringMemory::Kind::dead : StringMemory::Kind::fret, note.place.fret};
    return note;
  }

  void check_approach(Approach approach, fretboard::Place place, Range range, const StringMemory& memory) {
    if (approach == Approach::none || memory.kind == StringMemory::Kind::unknown) return;
    const bool ligature = approach == Approach::hammer_on || approach == Approach::pull_off;
    const bool up = approach == Approach::hammer_on || approach == Approach::slide_up;
    const std::string what = approach == Approach::hammer_on ? "a hammer-on" : ligature ? "a pull-off" : "a slide";
    if (memory.kind == StringMemory::Kind::none) {
      if (!ligature) return;
      error(Code::token_from_nothing, range, what + " needs a note before it on its string",
            "write the note that it comes from, or leave the `" + std::string(up ? "h" : "p") + "` out");
      return;
    }
    if (memory.kind == StringMemory::Kind::dead || (up ? place.fret > memory.fret : place.fret < memory.fret)) return;
    const std::string other = ligature ? (up ? "p" : "h") : (up ? "\\" : "/");
    const std::string sign = ligature ? (up ? "h" : "p") : (up ? "/" : "\\");
    error(Code::token_direction, range,
          tick(sign) + " leads " + (up ? "up" : "down") + ", but the note before on this string is at fret " +
              std::to_string(memory.fret),
          place.fret == memory.fret ? "between equal frets leave the sign out"
                                    : "write " + tick(other + std::to_string(place.fret)));
  }

  // What hand rows and fermatas say at this count.
  void attach(Bar& bar, const Count& count) {
    if (bar.events.empty()) return;
    Event& event = bar.events.back();
    if (count.fermata) event.fermata = true;
    Event* starts = event.at == count.at ? &event : nullptr;
    attach_hand_words({input_, count, starts, input_.context.vary, repeating_ == nullptr && !unsure_ && !count.lost});
  }

  const GridInput& input_;
  const GridDraft& draft_;
  Music& music_;
  std::vector<StringMemory> strings_;
  std::optional<Event> before_;       // the last of the bar before
  bool unsure_ = false;               // something just before was reported
  const Range* repeating_ = nullptr;  // the `%` of the bar that is being repeated
  bool repeat_failed_ = false;
  bool begins_with_rest_ = false;  // that bar, where it was written
};

}  // namespace

void make_events(const GridInput& input, const GridDraft& draft, Music& music) {
  EventMaker(input, draft, music).run();
}

}  // namespace fretsheaf::lesson
