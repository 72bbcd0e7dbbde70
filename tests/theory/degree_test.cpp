#include "theory/degree.h"

#include <catch2/catch.hpp>

using fretsheaf::theory::Degree;
using fretsheaf::theory::degree_above;
using fretsheaf::theory::fifths_of;
using fretsheaf::theory::Letter;
using fretsheaf::theory::note_name_from_fifths;
using fretsheaf::theory::NoteName;
using fretsheaf::theory::parse_degree;

TEST_CASE("Degrees are read with up to two accidentals") {
  CHECK(parse_degree("3") == Degree{3, 0});
  CHECK(parse_degree("b7") == Degree{7, -1});
  CHECK(parse_degree("#4") == Degree{4, 1});
  CHECK(parse_degree("bb7") == Degree{7, -2});
  CHECK(parse_degree("##1") == Degree{1, 2});
}

TEST_CASE("Ninths, elevenths and thirteenths are degrees of the octave") {
  CHECK(parse_degree("9") == Degree{2, 0});
  CHECK(parse_degree("b9") == Degree{2, -1});
  CHECK(parse_degree("#11") == Degree{4, 1});
  CHECK(parse_degree("b13") == Degree{6, -1});
}

TEST_CASE("What is no degree is refused") {
  for (const char* wrong :
       {"", "0", "8", "10", "12", "14", "b", "bb", "bbb3", "###4", "b#3", "3b", " 3", "3 ", "-3", "33"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_degree(wrong));
  }
}

TEST_CASE("Every degree reads back as written, and is that of the note so far above a root") {
  for (int number = 1; number <= 7; ++number) {
    for (int alteration = -2; alteration <= 2; ++alteration) {
      const Degree degree{number, alteration};
      const NoteName root{Letter::A, -1};
      CHECK(parse_degree(degree.to_string()) == degree);
      CHECK(degree_above(root, note_name_from_fifths(root.fifths() + fifths_of(degree))) == degree);
    }
  }
}
