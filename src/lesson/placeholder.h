#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "lesson/lesson.h"

// The `{{…}}` of printed texts: what they are, and which note of the music they mean. The reader checks every one with
// this code and the score fills them in with it, so that the two cannot disagree.
namespace fretsheaf::lesson {

struct KeyPlaceholder {};  // {{key}}

struct DegreePlaceholder {  // {{degree b3}}: a note name
  theory::Degree degree;
};

struct ChordPlaceholder {  // {{chord V7}}: a chord symbol
  theory::ChordToken chord;
};

// The `note`th struck note of bar `bar` (as printed), both from the file; of the example that the text belongs to where
// none is named. Bar 0 is a pickup.
struct StruckNote {
  std::optional<int> example;  // from 1
  int bar = 0;
  int note = 1;  // from 1
};

struct NotePlaceholder {  // {{note 3.2}}: its name
  StruckNote of;
};

struct PlacePlaceholder {  // {{place 3.2}}, {{place 2:3.2}}: "A string, 5th fret"
  StruckNote of;
};

struct TempoPlaceholder {  // {{tempo first}}, {{tempo last}}
  bool last = false;
};

using Placeholder = std::variant<KeyPlaceholder, DegreePlaceholder, ChordPlaceholder, NotePlaceholder, PlacePlaceholder,
                                 TempoPlaceholder>;

// What is wrong with a `{{…}}`, in the words of a diagnostic.
struct PlaceholderProblem {
  std::string message;
  std::string help;
};

// A stretch of a text: words as they are, or one `{{…}}`.
struct TextPart {
  std::size_t begin = 0;  // bytes into the text, braces included
  std::size_t end = 0;
  std::variant<std::string, Placeholder, PlaceholderProblem> value;
};

// The parts of a text in order; together they are all of it. A single brace is just a brace; of three in a row the
// outermost is one. A `{{` must be closed on its own line. Texts of a lesson without errors have no PlaceholderProblem.
std::vector<TextPart> parse_placeholders(std::string_view text);

// The event that holds the nth struck note (from 1) of the bar with that printed number. Held notes, rests and grace
// notes are not counted, a chord is one; the two parts of a bar that a repeat cuts count as one bar. nullptr where
// there is none.
const Event* find_struck(const Music& music, int bar, int note);

// The note that a struck event is named by: the lowest sounding one that starts there; where all are dead, the one on
// the lowest string. nullptr for a strum.
const Note* naming_note(const Event& event, const fretboard::Neck& neck);

// The example that a text means: the one it names (from 1), else the one it belongs to (an index; nullopt for a text of
// the lesson itself), else the lesson's only one. nullptr where there is none or the choice is open.
const Example* example_meant(const Lesson& lesson, std::optional<int> named, std::optional<std::size_t> text_of);

}  // namespace fretsheaf::lesson
