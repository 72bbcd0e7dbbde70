#pragma once

#include <string>
#include <vector>

#include "exchange/second_reader.h"
#include "lesson/lesson.h"

namespace fretsheaf::exchange::test {

// What is heard, each note in a line, sorted: of the lesson as its model has it, by nothing but its tuning, capo, frets
// and times; and of a document, each measure on the staff that `staff_of` names. The two are equal where the document
// says the lesson's music.
std::string heard_in(const lesson::Lesson& lesson);
std::string heard_on(const WrittenPart& part, const std::vector<int>& staff_of, std::vector<std::string>& problems);

// The same of a whole staff, by pitch and time alone: what two staves of one part have in common. Strums are left out.
std::string pitches_on(const WrittenPart& part, int staff, std::vector<std::string>& problems);

// How many bars of slashes a form that is written out has around its example.
struct Slashes {
  std::size_t before = 0;
  std::size_t after = 0;
};
Slashes slashes_around(const lesson::Example& example);

// "0: 1/4": each bar's number and how long it is.
std::string bars_in(const lesson::Lesson& lesson);
std::string bars_in(const WrittenPart& part);

}  // namespace fretsheaf::exchange::test
