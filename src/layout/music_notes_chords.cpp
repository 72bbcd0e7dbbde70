#include "layout/music_notes_chords.h"

#include <algorithm>

namespace fretsheaf::layout {
namespace {

// The middle line: B4 under a G clef, D3 under an F clef.
int middle_line(fretboard::Clef clef) {
  return clef == fretboard::Clef::bass ? theory::Pitch{{theory::Letter::D, 0}, 3}.diatonic()
                                       : theory::Pitch{{theory::Letter::B, 0}, 4}.diatonic();
}

std::vector<StaffHead> heads_of(const score::Event& event, fretboard::Clef clef) {
  std::vector<StaffHead> heads;
  if (event.rest) return heads;
  for (const score::Note& note : event.notes) heads.push_back({&note, staff_step(note.written, clef), false});
  // Of one line's two heads the lower pitch is the lower.
  std::stable_sort(heads.begin(), heads.end(), [](const StaffHead& a, const StaffHead& b) {
    return a.step != b.step ? a.step < b.step : a.note->written.midi() < b.note->written.midi();
  });
  return heads;
}

// From the stem's foot on: a head next to one that is in place gives way.
void displace(StaffChord& chord) {
  const auto walk = [](auto begin, auto end) {
    for (auto head = begin; head != end; ++head) {
      if (head == begin) continue;
      const auto before = head - 1;
      const int apart = head->step > before->step ? head->step - before->step : before->step - head->step;
      head->displaced = apart <= 1 && !before->displaced;
    }
  };
  if (chord.up) {
    walk(chord.heads.begin(), chord.heads.end());
  } else {
    walk(chord.heads.rbegin(), chord.heads.rend());
  }
}

// Sets the direction of chords `first` to `last`, one beamed group.
void direct(std::vector<StaffChord>& chords, std::size_t first, std::size_t last) {
  int above = 0;  // how far heads reach above the middle line, and below it
  int below = 0;
  bool any = false;
  for (std::size_t i = first; i <= last; ++i) {
    if (chords[i].heads.empty()) continue;
    above = any ? std::max(above, chords[i].highest()) : chords[i].highest();
    below = any ? std::max(below, -chords[i].lowest()) : -chords[i].lowest();
    any = true;
  }
  for (std::size_t i = first; i <= last; ++i) {
    chords[i].up = any && below > above;
    displace(chords[i]);
  }
}

}  // namespace

int staff_step(theory::Pitch written, fretboard::Clef clef) {
  return written.diatonic() - middle_line(clef);
}

StaffChords staff_chords(const score::Example& example, fretboard::Clef clef) {
  StaffChords all;
  all.reserve(example.bars.size());
  for (const score::Bar& bar : example.bars) {
    std::vector<StaffChord> chords(bar.events.size());
    for (std::size_t i = 0; i < chords.size(); ++i) chords[i].heads = heads_of(bar.events[i], clef);
    std::size_t first = 0;
    for (std::size_t i = 0; i < chords.size(); ++i) {
      if (bar.events[i].beams_right > 0 && i + 1 < chords.size()) continue;
      direct(chords, first, i);
      first = i + 1;
    }
    all.push_back(std::move(chords));
  }
  return all;
}

}  // namespace fretsheaf::layout
