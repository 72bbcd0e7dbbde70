#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "lesson/lesson.h"
#include "score/score.h"
#include "theory/meter.h"

// Short names for the checks: values as "4. 8~8 r4", lessons and bars in one line.
namespace fretsheaf::score::test {

// "1" a whole note, "4." a dotted quarter.
std::string text(NoteValue value);

// A bar's symbols: "4. 8~ 4 r8"; "~" after what is tied on, "r" before rests, "[3:2 8 8 8]" a tuplet, "R" a whole-bar
// rest.
std::string text(const Bar& bar);

// Its beams: the symbols that a beam joins in parentheses, "(8 8) 4 (8 16 16)".
std::string beams(const Bar& bar);

// A bar that is full, or runs from one place to another; each event is where it begins, rests with an "r" in front:
// "0 1/4 r1/2". A leading "=" is a held event.
lesson::Bar bar(std::string_view meter, std::string_view events);
lesson::Bar bar(std::string_view meter, std::string_view events, theory::Rational begin, theory::Rational end);

// A rhythm example of such bars.
lesson::Example rhythm(std::vector<lesson::Bar> bars);

// A bass lesson in C major of the examples given.
lesson::Lesson lesson_of(std::vector<lesson::Example> examples);

// A lesson file read; fails the test where it has errors. `example` goes under an `[[example]]`, with the grid in it.
lesson::Lesson read_whole(const std::string& text);
lesson::Lesson read(const std::string& lesson_keys, const std::string& example);
// The keys that a lesson must have, for `read`.
inline const std::string bass_in_c = "title = \"Harbour wall\"\ninstrument = \"bass\"\nkey = \"C major\"\n";
std::string grid(const std::string& rows);  // as a `tab` key

// The score's only example. Fails the test where it has errors.
Example built(const lesson::Lesson& lesson);
Example built(std::vector<lesson::Bar> bars);

}  // namespace fretsheaf::score::test
