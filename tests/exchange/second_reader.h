#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "theory/rational.h"

// A second reader of the open interchange format, written from the W3C Community Group's MusicXML 4.0 schema and its
// annotations alone, so that what the exporter writes is not judged by the exporter's own mind. It knows what decides
// which pitch sounds when, and on which string and fret.
namespace fretsheaf::exchange::test {

using theory::Rational;

// One note of a staff as written: one head, whatever it is tied to.
struct WrittenNote {
  int measure = 0;  // index in the part, from 0
  Rational at;      // from the measure's start, in whole notes
  Rational length;  // in whole notes, 0 for a grace note
  int staff = 1;
  std::optional<int> midi;  // as it sounds; nullopt where the note is unpitched
  std::optional<int> string;
  std::optional<int> fret;
  bool grace = false;
  bool cross = false;          // an x for its head
  bool harmonic = false;       // and then `midi` is of
  std::string harmonic_pitch;  // "base-pitch", "touching-pitch", "sounding-pitch", or "" where it is not said
  bool tie_stop = false;       // it goes on from the note before
  bool tie_start = false;      // it goes on in the next
  bool operator==(const WrittenNote&) const = default;
};

struct WrittenMeasure {
  std::string number;
  bool implicit = false;
  Rational start;   // in the part
  Rational length;  // as far as its music reaches
};

struct WrittenPart {
  std::vector<WrittenMeasure> measures;
  std::vector<WrittenNote> notes;     // in the document's order
  std::set<int> tab_staves;           // the staves that have a TAB clef somewhere
  int staves = 1;                     // the most that it ever has
  std::vector<std::string> problems;  // what could not be understood, with its measure
};

// The first part of a score-partwise document. Never throws: what it cannot make out is a problem.
WrittenPart read_part(const std::string& document);

// What is heard: notes tied together are one. A tie with no partner is a problem.
std::vector<WrittenNote> sounding(const WrittenPart& part, int staff, std::vector<std::string>& problems);

}  // namespace fretsheaf::exchange::test
