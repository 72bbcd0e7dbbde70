#pragma once

#include <string>
#include <utility>
#include <vector>

#include "theory/rational.h"

namespace fretsheaf::spoken::test {

// What a listener knows of a language: written here by hand, so that it is no copy of the program's own words.
struct Lexicon {
  std::string example;  // before an example's number
  std::string tuning;
  std::string flat;
  std::string sharp;
  std::string bar;
  std::string pickup;
  std::string beat;
  std::vector<std::pair<std::string, theory::Rational>> after_beat;  // what may follow its number
  std::string plus;                                                  // before any other fraction
  std::string beats_one;
  std::string beats_other;
  std::vector<std::pair<std::string, theory::Rational>> less_than_beat;
  std::string of_beat;                                                // after any other fraction
  std::vector<std::pair<std::string, theory::Rational>> after_beats;  // what may follow whole beats
  std::string and_part;                                               // before any other fraction
  std::string a_bar;                                                  // after the beats that it has
  std::string rest;
  std::string rest_of_bar;
  std::string each_lasts;
  std::string as_bar;
  std::vector<std::string> higher;
  std::vector<std::string> lower;
  std::string string;                                       // after its letter or number
  std::vector<std::string> ordinals;                        // what may follow a number that counts strings or frets
  std::string fret;                                         // after that
  std::vector<std::pair<std::string, std::string>> joints;  // what must not part a sentence, and what stands for it
  std::string open;
  std::string dead;
  std::string held;
  std::string freely;               // but its first letter, which may be a capital
  std::vector<std::string> strums;  // plain, muted, accented, ghost
  std::string quote_begin;
  std::string quote_end;
};

const Lexicon& english();
const Lexicon& german();

}  // namespace fretsheaf::spoken::test
