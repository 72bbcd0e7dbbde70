#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "lesson/music.h"
#include "platform/xml_document.h"
#include "theory/key.h"
#include "theory/meter.h"
#include "theory/pitch.h"
#include "theory/tempo.h"

// A part as its document says it, measure by measure, before it is made a lesson: positions are counted in whole notes
// from each measure's start. Elements live as long as the document.
namespace fretsheaf::exchange {

using theory::Rational;
using Xml = platform::XmlElement;

enum class JoinKind { hammer_on, pull_off, slide };

// One end of a hammer-on, pull-off or slide.
struct JoinEnd {
  JoinKind kind = JoinKind::slide;
  bool start = false;
  std::string number;
};

struct SlurEnd {
  bool start = false;
  std::string number;
};

// A head: a note of a chord, or a grace note.
struct Head {
  const Xml* element = nullptr;
  std::optional<theory::Pitch> pitch;  // as it sounds; none where it is unpitched
  std::optional<int> string;
  std::optional<int> fret;
  bool cross = false;
  bool slash = false;
  bool parentheses = false;
  bool harmonic = false;
  bool tie_stop = false;
  bool tie_start = false;
  bool let_ring = false;
  bool palm_mute = false;
  bool accent = false;
  bool staccato = false;
  bool tenuto = false;
  bool vibrato = false;
  std::optional<lesson::Bend> bend;
  lesson::SlideOff slide_off = lesson::SlideOff::none;
  lesson::Approach from_nowhere = lesson::Approach::none;
  std::string finger;
  std::string hand;
  std::vector<JoinEnd> joins;
  std::vector<SlurEnd> slurs;
};

struct Syllable {
  std::string verse;  // the lyric's number
  std::string text;
  bool goes_on = false;
  const Xml* element = nullptr;
};

// What one staff has from one moment to another: heads, or a rest.
struct Symbol {
  int staff = 1;
  std::string voice;
  Rational at;
  Rational length;
  bool rest = false;
  std::vector<Head> heads;
  std::vector<Head> graces;  // before it, in order
  bool fermata = false;
  bool tremolo = false;
  std::optional<lesson::Stroke> stroke;
  std::vector<Syllable> lyrics;
  const Xml* element = nullptr;
};

struct Harmony {
  Rational at;
  theory::ChordToken chord;
};

// A sign or word of a direction.
struct Mark {
  enum class Kind {
    words,
    rehearsal,
    dynamic,
    crescendo,
    diminuendo,
    wedge_stop,
    line_start,  // dashes, a bracket
    line_stop,
    road,     // "segno", "D.S. al Coda"
    loudness  // a sound without a sign: a dynamic
  };
  Kind kind = Kind::words;
  Rational at;
  std::string text;
  std::string number;
  const Xml* element = nullptr;
};

struct BarEdge {
  bool repeat = false;
  std::string style;
  int times = 0;
  std::string ending;        // its number, where one begins (left) or ends (right)
  std::string ending_words;  // what is printed
  const Xml* element = nullptr;
};

struct TakenMeasure {
  const Xml* element = nullptr;
  std::string number;
  bool implicit = false;
  bool new_system = false;
  std::optional<theory::Key> key;      // where it is set anew
  std::optional<theory::Meter> meter;  // where it is set anew
  std::optional<theory::Tempo> tempo;  // the first of the measure
  std::optional<theory::Feel> feel;
  Rational length;                // as far as its music reaches
  bool only_rests_of_bar = true;  // nothing but <rest measure="yes"/>
  int repeats_before = 0;         // a bar-repeat sign of so many measures
  bool slashes = false;           // its unpitched heads are strums
  BarEdge left;
  BarEdge right;
  std::vector<Symbol> symbols;
  std::vector<Harmony> harmonies;
  std::vector<Mark> marks;
};

struct StaffFacts {
  bool tab = false;
  bool percussion = false;
  int lines = 0;
  std::map<int, theory::Pitch> tuning;  // by line, from 1 at the bottom
  int capo = 0;
  std::string clef;  // "G", "F", "TAB"
};

struct TakenPart {
  std::string name;
  std::string sound;  // its instrument-sound
  int program = 0;    // MIDI, from 1; 0 where none is given
  std::vector<TakenMeasure> measures;
  std::map<int, StaffFacts> staves;
  bool octave_lower = false;  // a staff is written an octave above what sounds
  std::optional<Rational> swing_ratio;
};

struct TakenHeading {
  std::string title;
  std::string subtitle;
  std::string creator;
  std::string rights;
  std::string series;
  std::string level;
  std::optional<int> number;
};

}  // namespace fretsheaf::exchange
