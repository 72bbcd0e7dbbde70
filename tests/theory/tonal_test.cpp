// This room's answers against those of the library tonal 6.4.3, as tonal_table.mjs wrote them into tonal.tsv.

#include <array>
#include <catch2/catch.hpp>
#include <fstream>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "names.h"
#include "support/project.h"
#include "theory/chord.h"
#include "theory/interval.h"
#include "theory/key.h"
#include "theory/keys.h"
#include "theory/spelling.h"

using namespace fretsheaf::theory;
using namespace fretsheaf::theory::testing;

namespace {

struct Row {
  std::string question;
  std::string answer;
};

std::vector<Row> rows(std::string_view topic) {
  std::ifstream file(fretsheaf::test::project_folder() + "/tests/theory/tonal.tsv");
  std::vector<Row> result;
  std::string line;
  while (std::getline(file, line)) {
    const std::size_t first = line.find('\t');
    if (line.substr(0, first) != topic) continue;
    const std::size_t second = line.find('\t', first + 1);
    result.push_back({line.substr(first + 1, second - first - 1), line.substr(second + 1)});
  }
  return result;
}

// The question's last word and what stands before it.
std::pair<std::string, std::string> split_last(const std::string& question) {
  const std::size_t space = question.rfind(' ');
  return {question.substr(0, space), question.substr(space + 1)};
}

// "3m" is a minor third up: letters, then semitones.
const std::map<std::string, Interval> intervals = {
    {"1P", {0, 0}}, {"1A", {0, 1}}, {"2m", {1, 1}}, {"2M", {1, 2}},  {"2A", {1, 3}}, {"3m", {2, 3}},
    {"3M", {2, 4}}, {"4P", {3, 5}}, {"4A", {3, 6}}, {"5d", {4, 6}},  {"5P", {4, 7}}, {"5A", {4, 8}},
    {"6m", {5, 8}}, {"6M", {5, 9}}, {"7d", {6, 9}}, {"7m", {6, 10}}, {"7M", {6, 11}}};

}  // namespace

TEST_CASE("Chord tones agree with tonal") {
  const std::vector<Row> table = rows("chord");
  CHECK(table.size() == 588);
  for (const Row& row : table) {
    CAPTURE(row.question);
    const Chord each = chord(row.question);

    CHECK(joined(chord_tones(each)) == row.answer);
  }
}

TEST_CASE("Scales agree with tonal") {
  const std::vector<Row> table = rows("scale");
  CHECK(table.size() == 147);
  for (const Row& row : table) {
    CAPTURE(row.question);
    CHECK(joined(key(row.question).scale()) == row.answer);
  }
}

TEST_CASE("Signatures agree with tonal") {
  const std::vector<Row> table = rows("signature");
  CHECK(table.size() == 30);
  for (const Row& row : table) {
    CAPTURE(row.question);
    CHECK(std::to_string(key(row.question).signature()) == row.answer);
  }
}

TEST_CASE("Transposed pitches agree with tonal") {
  const std::vector<Row> table = rows("transpose");
  CHECK(table.size() == 357);
  for (const Row& row : table) {
    CAPTURE(row.question);
    const auto [from, by] = split_last(row.question);
    const Pitch moved = transposed(pitch(from), intervals.at(by));
    CHECK(moved.to_string() == row.answer);
    CHECK(interval(pitch(from), moved) == intervals.at(by));
  }
}

TEST_CASE("Roman numerals in fifteen major and fifteen minor keys agree with tonal") {
  const std::vector<Row> table = rows("numeral");
  CHECK(table.size() == 735);
  for (const Row& row : table) {
    CAPTURE(row.question);
    const auto [where, text] = split_last(row.question);
    CHECK(to_string(resolve(numeral(text), key(where))) == row.answer);
  }
}

TEST_CASE("A scale moved along the line of fifths is tonal's scale on the new tonic, from every key to every other") {
  const std::vector<Row> table = rows("scale");
  int moves = 0;
  for (const Row& from : table) {
    const Key home = key(from.question);
    if (!has_signature(home)) continue;
    for (const Row& to : table) {
      const Key there = key(to.question);
      if (there.mode != home.mode || !has_signature(there)) continue;
      std::string moved;
      for (const NoteName& name : home.scale()) {
        moved += (moved.empty() ? "" : " ") + shifted(name, there.tonic.fifths() - home.tonic.fifths()).to_string();
      }
      CAPTURE(from.question, to.question);
      CHECK(moved == to.answer);
      ++moves;
    }
  }
  CHECK(moves > 7 * 10 * 10);
}

TEST_CASE("A pitch spelled in fifteen major and fifteen minor keys has tonal's name of its scale or chord") {
  const std::vector<Row> chords = rows("chord");
  for (const Row& row : rows("numeral")) {
    const auto [where, text] = split_last(row.question);
    const Key home = key(where);
    const Chord in_force = chord(row.answer);
    CAPTURE(row.question);
    for (const Row& tones : chords) {
      if (tones.question != row.answer) continue;
      std::string spelled;
      for (const NoteName& tone : chord_tones(in_force)) {
        spelled += (spelled.empty() ? "" : " ") + spell(60 + tone.pitch_class(), {home, in_force, {}, {}}).to_string();
      }
      CHECK(spelled == tones.answer);
    }
  }
}
