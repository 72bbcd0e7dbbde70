#pragma once

#include <vector>

#include "lesson/lesson.h"
#include "score/score.h"

// Exercises: bars to write in, and what a student's copy leaves out. What is hidden is taken out here, so that nothing
// made from a score can give it away; two lessons that differ only in what they hide have equal scores.
namespace fretsheaf::score {

// So many bars with nothing in them.
std::vector<Bar> empty_bars(const theory::Meter& meter, int count);

// Whether a bar is one of those: around an example's blank bars, a form that is written out has slashes.
bool to_write_in(const Bar& bar);

// A lesson without the chords that it hides, those of a form where the example stands among them, and without the
// labels that count from them. Spelling listens to the chords too, so that they must be gone before a score is built.
lesson::Lesson without_hidden_chords(const lesson::Lesson& lesson);

// Takes out what the example hides of frets, rhythm and labels:
// - frets: all notes, and the labels that name them. A dead or ghost note's head and articulations stay, on the slash
//   staff, which is added where the notes staff alone had the rhythm;
// - rhythm: values, rests, ties, tuplets and counts. What is struck stands evenly over its bar in its order, marks with
//   the note that they stood at, or the next; the chords of a bar stand evenly over it too, whatever is under them;
// - labels: what stands in every row of them. The rows stay, to be written in.
void hide(Example& example);

}  // namespace fretsheaf::score
