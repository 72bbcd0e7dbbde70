#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lesson/lesson.h"
#include "lesson/placeholder.h"
#include "score/naming.h"
#include "score/spelled_notes.h"

namespace fretsheaf::score {

// Fills in the `{{…}}` of a lesson's texts. Keeps a reference to the lesson and to its spelled notes (one for each
// example, in order).
class Filler {
 public:
  Filler(const lesson::Lesson& lesson, const Naming& naming, const std::vector<SpelledNotes>& notes)
      : lesson_(lesson), naming_(naming), notes_(notes) {}

  // `example` is the one that the text belongs to, an index; nullopt for a text of the lesson itself. What a lesson
  // without errors does not have (a note that is not there) stays as it is written.
  std::string fill(std::string_view text, std::optional<std::size_t> example) const;

 private:
  std::optional<std::string> value(const lesson::Placeholder& placeholder, std::optional<std::size_t> example) const;
  std::optional<std::string> note_name(const lesson::StruckNote& of, std::optional<std::size_t> text_of) const;
  std::optional<std::string> place(const lesson::StruckNote& of, std::optional<std::size_t> text_of) const;
  std::optional<std::string> tempo(bool last, std::optional<std::size_t> text_of) const;
  const lesson::Note* find(const lesson::StruckNote& of, const lesson::Example* example) const;

  const lesson::Lesson& lesson_;
  Naming naming_;
  const std::vector<SpelledNotes>& notes_;
};

// "A string, 5th fret": by the string's letter, or by its number where two strings share one; of a dead note the
// string alone.
std::string printed_place(const lesson::Note& note, const fretboard::Neck& neck, const Naming& naming);

}  // namespace fretsheaf::score
