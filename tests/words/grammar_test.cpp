#include <catch2/catch.hpp>
#include <string>

#include "words/words.h"

using namespace fretsheaf::words;

TEST_CASE("keys are named as each language names them (common practice)") {
  CHECK(key_name(Language::en, "D", Word::key_dorian) == "D Dorian");
  CHECK(key_name(Language::en, "B♭", Word::key_major) == "B♭ major");
  CHECK(key_name(Language::de, "D", Word::key_dorian) == "D dorisch");
  CHECK(key_name(Language::de, "D", Word::key_major) == "D-Dur");
  CHECK(key_name(Language::de, "F♯", Word::key_minor) == "f♯-Moll");  // German and Dutch write a minor tonic small
  CHECK(key_name(Language::nl, "A", Word::key_minor) == "a-klein");
  CHECK(key_name(Language::fr, "A", Word::key_mixolydian) == "A mixolydien");
  CHECK(key_name(Language::it, "re", Word::key_minor) == "re minore");
  CHECK(key_name(Language::es, "si", Word::key_locrian) == "si locrio");
  CHECK(key_name(Language::pt, "E", Word::key_phrygian) == "E frígio");
}

TEST_CASE("places are named by string and fret") {
  CHECK(place_by_letter(Language::en, "A", 5) == "A string, 5th fret");
  CHECK(place_by_letter(Language::en, "A", 0) == "A string, open");
  CHECK(place_by_number(Language::en, 1, 3) == "1st string, 3rd fret");
  CHECK(place_by_letter(Language::de, "A", 5) == "A-Saite, 5. Bund");
  CHECK(place_by_letter(Language::es, "la", 5) == "cuerda la, traste 5");
  CHECK(place_by_number(Language::es, 6, 0) == "6.ª cuerda, al aire");
  CHECK(place_by_number(Language::fr, 1, 2) == "1re corde, case 2");
  CHECK(place_by_number(Language::fr, 2, 2) == "2e corde, case 2");
  CHECK(place_by_letter(Language::it, "la", 0) == "corda la, a vuoto");
  CHECK(place_by_letter(Language::nl, "G", 12) == "G-snaar, fret 12");
  CHECK(place_by_letter(Language::pt, "G", 7) == "corda G, casa 7");
}

TEST_CASE("English numbers in a row end as they are spoken") {
  const auto fret = [](int n) { return place_by_letter(Language::en, "E", n); };
  CHECK(fret(1) == "E string, 1st fret");
  CHECK(fret(2) == "E string, 2nd fret");
  CHECK(fret(4) == "E string, 4th fret");
  CHECK(fret(10) == "E string, 10th fret");
  CHECK(fret(11) == "E string, 11th fret");
  CHECK(fret(12) == "E string, 12th fret");
  CHECK(fret(13) == "E string, 13th fret");
  CHECK(fret(21) == "E string, 21st fret");
  CHECK(fret(22) == "E string, 22nd fret");
  CHECK(fret(23) == "E string, 23rd fret");
}

TEST_CASE("one and many are told apart by the plural rules of Unicode CLDR (from memory)") {
  CHECK(counted(Language::en, Counted::once_through, 1) == "once through = 1 bar");
  CHECK(counted(Language::en, Counted::once_through, 16) == "once through = 16 bars");
  CHECK(counted(Language::en, Counted::passes, 0) == "0 clean passes");
  CHECK(counted(Language::fr, Counted::passes, 0) == "0 passage propre");
  CHECK(counted(Language::pt, Counted::write_bars, 0) == "escreva 0 compasso");
  CHECK(counted(Language::de, Counted::write_bars, 1) == "schreibe 1 Takt");
  CHECK(counted(Language::de, Counted::write_bars, 4) == "schreibe 4 Takte");
  CHECK(counted(Language::nl, Counted::once_through, 12) == "één keer = 12 maten");
}

TEST_CASE("pages and examples are numbered") {
  CHECK(page_of(Language::en, 1, 2) == "page 1 of 2");
  CHECK(page_of(Language::fr, 1, 2) == "page 1 sur 2");
  CHECK(fill_number(Language::es, Word::example, 3) == "Ejemplo 3");
  CHECK(fill_number(Language::en, Word::example_caps, 3) == "EXAMPLE 3");
}
