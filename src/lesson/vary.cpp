#include "lesson/vary.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "lesson/held.h"

namespace fretsheaf::lesson {
namespace {

struct Struck {
  const Event* event;
  const ChordMark* chord;  // the last one that stands at it or after the note before it
};

std::vector<Struck> struck_events(const Music& music) {
  std::vector<Struck> result;
  const ChordMark* waiting = nullptr;
  for (const Bar& bar : music.bars) {
    auto chord = bar.chords.begin();
    for (const Event& event : bar.events) {
      for (; chord != bar.chords.end() && chord->at <= event.at; ++chord) waiting = &*chord;
      if (event.kind != EventKind::struck) continue;
      result.push_back({&event, waiting});
      waiting = nullptr;
    }
    for (; chord != bar.chords.end(); ++chord) waiting = &*chord;
  }
  return result;
}

// The same notes going on, called as they were.
std::vector<Note> held(std::vector<Note> notes) {
  for (Note& note : notes) {
    Note plain = going_on(note);
    plain.spell = note.spell;
    note = std::move(plain);
  }
  return notes;
}

// A note can be held on only from an event that has it.
void strike_what_cannot_be_held(std::vector<Note>& notes, const std::vector<Note>& before) {
  for (Note& note : notes) {
    const bool sounds = std::any_of(before.begin(), before.end(), [&](const Note& b) { return b.place == note.place; });
    if (!sounds) note.held = false;
  }
}

bool has_hand_words(const Music& music) {
  return std::any_of(music.bars.begin(), music.bars.end(), [](const Bar& bar) {
    return std::any_of(bar.events.begin(), bar.events.end(), [](const Event& event) { return !event.hand.empty(); });
  });
}

}  // namespace

std::vector<Note*> notes_for_hand(Event& event) {
  std::vector<Note*> all;
  std::vector<Note*> fresh;
  for (Note& note : event.notes) {
    all.push_back(&note);
    if (!note.held) fresh.push_back(&note);
  }
  if (event.hand.size() == fresh.size()) return fresh;
  return event.hand.size() == all.size() ? all : std::vector<Note*>{};
}

std::size_t count_struck(const Music& music) {
  return struck_events(music).size();
}

void put_notes(const Music& source, Music& into) {
  const std::vector<Struck> from = struck_events(source);
  std::vector<Note> sounding;
  const bool own_hand = has_hand_words(into);
  auto next = from.begin();
  for (Bar& bar : into.bars) {
    if (into.chords_borrowed) bar.chords.clear();
    for (Event& event : bar.events) {
      event.strum.reset();  // a rhythm's strum until now
      if (event.kind == EventKind::rest) {
        sounding.clear();
      } else if (event.kind == EventKind::held) {
        event.notes = held(sounding);
      } else {
        event.notes = next->event->notes;
        strike_what_cannot_be_held(event.notes, sounding);
        if (own_hand) {
          for (Note& note : event.notes) note.hand.reset();
          const std::vector<Note*> plucked = notes_for_hand(event);
          for (std::size_t i = 0; i < plucked.size(); ++i) plucked[i]->hand = event.hand[i];
        }
        sounding = event.notes;
        if (into.chords_borrowed && next->chord != nullptr)
          bar.chords.push_back({event.at, next->chord->chord, next->chord->range});
        ++next;
      }
    }
  }
  into.has_strings = true;
}

}  // namespace fretsheaf::lesson
