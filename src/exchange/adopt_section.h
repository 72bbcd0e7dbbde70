#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/losses.h"
#include "exchange/taken.h"
#include "fretboard/instrument.h"
#include "fretboard/neck.h"
#include "lesson/lesson.h"

// A section of a part on its way to an example: the shapes that its steps share.
namespace fretsheaf::exchange {

// What stays the same for the whole part.
struct AdoptContext {
  const TakenPart& part;
  const fretboard::Neck& neck;
  const fretboard::Instrument& instrument;
  Losses& losses;
};

// Measures [first, last) of the part that become one example.
struct Section {
  int first = 0;
  int last = 0;
  theory::Key key;
  theory::Meter meter;  // of its first measure
  bool strings = true;  // false: a rhythm of strums
  int bars_before = 0;  // of a form that is written out, before its first measure
};

struct GraceTone {
  Head head;
  lesson::Approach approach = lesson::Approach::none;
  fretboard::Place place;
};

// A head on its way to a note.
struct TakenTone {
  Head head;
  bool held = false;  // goes on from the event before
  std::optional<JoinKind> join;
  int from_event = -1;  // what it, or its first grace note, is joined to
  int from_tone = -1;
  bool grace_joined = false;  // the first grace note is joined to what was before
  std::vector<GraceTone> graces;
  std::optional<fretboard::Place> place;
  lesson::Approach approach = lesson::Approach::none;
  bool from_nowhere = false;
};

// What sounds from one moment to another, in a bar.
struct Happening {
  int bar = 0;      // from the section's first
  int measure = 0;  // of the part
  Rational at;      // from the measure's start
  Rational length;
  lesson::EventKind kind = lesson::EventKind::rest;
  std::vector<TakenTone> tones;
  std::optional<lesson::Strum> strum;
  std::optional<lesson::Stroke> stroke;
  bool fermata = false;
  bool tremolo = false;
  std::vector<std::pair<Rational, Syllable>> lyrics;
  const Xml* element = nullptr;
};

}  // namespace fretsheaf::exchange
