#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "score/score.h"
#include "theory/meter.h"
#include "theory/rational.h"
#include "words/sentences.h"
#include "words/words.h"

namespace fretsheaf::spoken {

using theory::Rational;
using words::Sentence;

// The phrases that every sentence is made of, in a score's language. Keeps a reference to the score; the names of its
// strings and frets are made once.
class Phrases {
 public:
  explicit Phrases(const score::Score& score);

  const score::Score& score() const { return score_; }
  words::Language language() const { return score_.language; }

  std::string_view operator[](Sentence pattern) const { return words::sentence(language(), pattern); }
  std::string operator()(Sentence pattern, std::initializer_list<words::Hole> holes) const {
    return words::fill((*this)[pattern], holes);
  }
  std::string operator()(Sentence pattern, int n) const;
  // "2 bars": `one` names the first of the noun's forms.
  std::string counted(Sentence one, int n) const;

  const std::string& string(int string) const { return strings_[static_cast<std::size_t>(string) - 1]; }
  const std::string& fret(int fret) const { return frets_[static_cast<std::size_t>(fret)]; }

  // "beat 2 and": a place in the full bar.
  std::string beat(Rational at, const theory::Meter& meter) const;
  // "1 beat and a half"
  std::string beats(Rational count) const;
  // "eighth notes", "dotted quarter notes"
  std::string values(const score::NoteValue& value) const;
  // "4/4" as "meter 4/4, 4 beats a bar, in quarter notes"
  std::string meter(const theory::Meter& meter) const;

  // A text in which signs are words: "B♭m7" as "B flat m7".
  std::string plain(std::string_view text) const;
  // "flat 3" of "b3", as the score's labels have it.
  std::string degree(std::string_view label) const;

 private:
  const score::Score& score_;
  std::vector<std::string> strings_;  // the top line first
  std::vector<std::string> frets_;
};

// Adds to a text what stands in a row, with commas between.
void add_item(std::string& list, std::string_view item);
// Adds a sentence: its first letter a capital, a full stop after it, a blank before it where it is not the first.
void add_sentence(std::string& text, std::string_view sentence);

}  // namespace fretsheaf::spoken
