#include "source/nearest.h"

#include <array>
#include <catch2/catch.hpp>
#include <string>

using namespace fretsheaf::source;

namespace {

constexpr std::array<std::string_view, 9> keys = {"title",  "tempo", "template",  "teacher", "tuning",
                                                  "labels", "capo",  "copyright", "count"};

std::string key(std::string_view word) {
  return nearest(word, keys);
}

}  // namespace

TEST_CASE("a slip finds the word that was meant") {
  CHECK(key("tittle") == "title");  // one letter too many
  CHECK(key("tempo") == "tempo");
  CHECK(key("temp") == "tempo");     // one missing
  CHECK(key("capp") == "capo");      // one wrong
  CHECK(key("cuont") == "count");    // two neighbours swapped
  CHECK(key("Lables") == "labels");  // swapped, and a capital
  CHECK(key("TITLE") == "title");    // case alone is always near
  CHECK(key("TITEL") == "");         // case and more: six halves are more than a third of five letters
  CHECK(key("Capo") == "capo");      // a half is near
  CHECK(key("copyrihgt") == "copyright");
}

TEST_CASE("what is no slip finds nothing") {
  CHECK(key("zebra") == "");
  CHECK(key("tpm") == "");
  CHECK(key("") == "");
  CHECK(key("t") == "");
  CHECK(nearest("tempo", {}) == "");
}

TEST_CASE("the nearest wins, and of equals the first") {
  constexpr std::array<std::string_view, 3> modes = {"lydian", "mixolydian", "ydian"};
  CHECK(nearest("lydiann", modes) == "lydian");
  constexpr std::array<std::string_view, 2> equals = {"bass-5", "bass-6"};
  CHECK(nearest("bass-7", equals) == "bass-5");
}

TEST_CASE("a case difference counts a half") {
  constexpr std::array<std::string_view, 2> words = {"abd", "ABc"};
  CHECK(nearest("abc", words) == "abd");  // one whole, against two halves: the first of equals
  constexpr std::array<std::string_view, 2> nearer = {"abd", "Abc"};
  CHECK(nearest("abc", nearer) == "Abc");
}

TEST_CASE("a single letter is not another one, but its own other case is near") {
  constexpr std::array<std::string_view, 2> strings = {"G", "e"};
  CHECK(nearest("E", strings) == "e");
  CHECK(nearest("q", strings) == "");
}

TEST_CASE("letters are code points") {
  constexpr std::array<std::string_view, 1> words = {"vii°7"};
  CHECK(nearest("vii7", words) == "vii°7");
  constexpr std::array<std::string_view, 1> notes = {"bé♭c"};
  CHECK(nearest("bé♭d", notes) == "bé♭c");
}

TEST_CASE("a word of megabytes takes no time and finds nothing") {
  CHECK(key(std::string(4u << 20, 't')) == "");
}
