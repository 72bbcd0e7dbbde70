#pragma once

#include <compare>
#include <string>
#include <vector>

// Readers of finished handouts that share nothing with the program: what stands on an SVG page, what a MusicXML
// document sounds.
namespace fretsheaf::test {

struct StringAndFret {
  int string = 1;  // the tab's top line is 1
  int fret = 0;

  auto operator<=>(const StringAndFret&) const = default;
};

// A figure on the tab; dead notes have none.
struct Digit {
  StringAndFret place;
  std::string event;   // which moment of the line it belongs to: figures with the same sound together
  bool small = false;  // a grace note, or a held note shown again on a new line
};

// By example, the figures of the tab from the top of the page to its end. `strings`: how many lines the tab has.
std::vector<std::vector<Digit>> digits_of(const std::string& svg, int strings);

// The words of a row of labels ("note-label"), in order, as they are written.
std::vector<std::string> labels_of(const std::string& svg, const std::string& kind);

// The notes that labels name, as steps from C: "E♭" is 3.
std::vector<int> named_in(const std::vector<std::string>& labels);

// A note of the document on the tab's staff.
struct Heard {
  int midi = 0;
  StringAndFret place;
  bool harmonic = false;
  bool dead = false;
  bool grace = false;
  bool held = false;      // goes on from the note before
  bool repeated = false;  // in a bar that is shown as a repeat of the bar before
};

// Of a document of one example.
std::vector<Heard> notes_of(const std::string& document);

// What an instrument's open strings sound, the tab's top line first, as MIDI numbers; and its scale length in mm
// (common practice). Not the program's own tables.
struct Strings {
  std::vector<int> open;
  double scale_length = 0;
  bool short_last = false;  // the last begins at the neck's fifth fret
};
const Strings& strings_of(const std::string& instrument);

// What sounds at a place, with a capo; a harmonic's partial from the node that is touched.
int sounding(const Strings& strings, int capo, StringAndFret place, bool harmonic);

// The distance between two frets, in mm.
double span(const Strings& strings, int capo, int low, int high);

}  // namespace fretsheaf::test
