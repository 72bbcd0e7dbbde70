#pragma once

#include <cstddef>
#include <vector>

#include "score/score.h"

// What starts to sound, and how long that goes on through all its ties, over bar lines too.
namespace fretsheaf::spoken {

// A note as it is told: written symbols that are tied are one.
struct Sound {
  const score::Note* note = nullptr;
  theory::Rational beats;  // of the meters that it sounds in; 0 of one held from before, whose length is told already
  bool held = false;       // it goes on from before
};

enum class SoundKind {
  notes,   // in `sounds`
  rest,    // with the rests that follow in its bar
  strum,   // of an example without strings
  held,    // a strum or a hidden note goes on from before
  freely,  // slashes without stems
  to_find  // a note that an exercise hides
};

// What happens at one place of a bar.
struct Onset {
  const score::Event* event = nullptr;
  SoundKind kind = SoundKind::notes;
  std::vector<Sound> sounds;
  theory::Rational beats;  // but of notes
  bool fermata = false;
};

// The onsets of a bar, in order. What only goes on is one where it begins the bar, and none elsewhere; no more are the
// rooms that an exercise leaves.
std::vector<Onset> onsets_of(const score::Example& example, std::size_t bar);

}  // namespace fretsheaf::spoken
