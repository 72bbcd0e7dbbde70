#pragma once

#include <random>

#include "fretboard/lines.h"

// Lines made up at random, the same on every machine (only the generator's own numbers are used).
namespace fretsheaf::fretboard {

class RandomLines {
 public:
  explicit RandomLines(unsigned seed) : numbers_(seed) {}

  struct Kind {
    int events = 3;
    int most_notes = 1;       // of an event
    bool original = true;     // each note has one; without, half of them still may
    bool techniques = false;  // joints, grace notes, harmonics, dead notes
    int most_shift = 7;       // semitones either way
  };

  Played instrument();
  Line line(const Neck& neck, const Kind& kind);
  int number(int below) { return static_cast<int>(numbers_() % static_cast<unsigned>(below)); }

 private:
  EventToPlace event(const Neck& neck, const Kind& kind, int hand, int shift);
  void join(Line& line, const Neck& neck);
  void add_graces(Line& line, const Neck& neck, int shift);

  std::mt19937 numbers_;
};

}  // namespace fretsheaf::fretboard
