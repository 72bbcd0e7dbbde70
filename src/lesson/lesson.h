#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "fretboard/neck.h"
#include "lesson/music.h"
#include "source/range.h"
#include "theory/key.h"
#include "theory/meter.h"
#include "theory/tempo.h"

namespace fretsheaf::lesson {

enum class Staff { slash, notes, tab };
enum class Label { notes, chord_degrees, key_degrees, fingers, counts };
enum class NoteNames { letters, letters_h, syllables };
enum class Paper { a4, letter };
enum class BuildUp { none, bars, pairs, add_one };

// A text as the teacher wrote it: CommonMark, with its `{{…}}` not yet filled in. The range is the whole TOML value.
using Prose = Located<std::string>;

// One bar of a form: its chords at equal distances.
struct FormBar {
  std::vector<theory::ChordToken> chords;
  bool begins_line = false;  // of the chart
  bool repeat_begin = false;
  bool repeat_end = false;
  bool same_as_previous = false;  // written `%`; its chords are those of the bar before
  Range range;
};

struct Form {
  Prose bars;
  std::vector<FormBar> chart;  // what `bars` says, in order
  int here_first = 0;          // 1-based, 0 where none is given
  int here_last = 0;
  Range here_range;
  bool write_out = false;
  Range range;
};

struct NeckPicture {
  enum class Of { notes, key, chord };
  enum class Labels { degrees, notes, fingers, none };
  Of of = Of::notes;
  std::optional<Located<theory::ChordToken>> chord;
  Labels labels = Labels::degrees;
  std::optional<std::pair<int, int>> frets;
  Range frets_range;
  Range range;
};

// "Dm7 x535": the frets, bottom line first, nullopt for a string not played.
struct Shape {
  theory::ChordToken chord;
  std::optional<std::vector<std::optional<int>>> frets;
  Range range;
};

struct Hidden {
  bool frets = false;
  bool rhythm = false;
  bool labels = false;
  bool chords = false;
};

// Lesson-level values that an example may override are resolved here: every example has its own. The `…_range` of a key
// that is not written is empty.
struct Example {
  std::optional<Prose> title;
  std::optional<Prose> intro;
  theory::Key key;
  Range key_range;  // of its own
  theory::Meter meter;
  theory::Feel feel = theory::Feel::straight;
  std::vector<Staff> staves;
  Range staves_range;
  std::vector<Label> labels;
  Range labels_range;
  std::optional<int> bars_per_line;  // nullopt: auto
  Range bars_per_line_range;
  std::optional<theory::Tempo> tempo;
  Range tempo_range;
  std::vector<Prose> practice;
  BuildUp build_up = BuildUp::none;
  Range build_up_range;
  std::optional<Form> form;
  std::optional<NeckPicture> neck;
  std::vector<Shape> shapes;
  std::optional<Located<int>> vary;  // the example whose notes it takes, from 1
  std::optional<Located<int>> blank_bars;
  Hidden hide;
  Range hide_range;
  Music music;  // empty where blank_bars is set
  Range grid;   // of its `tab`, between the quotes
  Range range;  // of its `[[example]]`
};

struct Lesson {
  Prose title;
  std::optional<Prose> subtitle;
  std::string teacher;
  std::string series;
  std::optional<int> number;
  std::string level;
  theory::Key key;
  Range key_range;
  std::vector<Located<theory::Key>> also_in;  // "all" is written out
  theory::Meter meter;
  theory::Feel feel = theory::Feel::straight;
  // How swing is played: the long part to the short one.
  theory::Rational swing_ratio{2};
  const fretboard::Instrument* instrument = nullptr;  // never null in a lesson without errors
  fretboard::Neck neck;
  std::vector<Staff> staves;
  std::vector<Label> labels;
  Located<std::string> template_name;  // "music-stand" where none is given (then with an empty range)
  std::string template_path;           // where the name is a path: from the folder that the lesson's path is from
  std::optional<Paper> paper;          // none: the template's
  std::string language = "en";
  Range language_range;
  NoteNames note_names = NoteNames::letters;
  Range note_names_range;
  std::optional<Located<std::string>> link;
  std::optional<Located<std::string>> logo;  // as written
  std::string logo_path;                     // of the file that `logo` names, as the system reads it
  std::string logo_alt;
  bool left_handed = false;
  Range handed_range;
  bool name_line = false;
  std::string copyright;
  std::optional<Prose> intro;
  std::vector<Prose> practice;
  int practice_log = 0;  // rows
  Range practice_log_range;
  std::vector<Example> examples;
};

}  // namespace fretsheaf::lesson
