#include "score/labels.h"

#include <catch2/catch.hpp>

#include "spell_out.h"

using namespace fretsheaf;
using score::test::bass_in_c;

namespace {

// What stands under each symbol, "-" for nothing.
std::string row(const score::Example& example, std::string score::Event::*text) {
  std::string out;
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) out += "|" + (event.*text);
  }
  return out.substr(1);
}

std::string counts(const score::Example& example) {
  std::string out;
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) {
      out += (out.empty() ? "" : " ") + (event.count ? event.count->text : "-");
    }
  }
  return out;
}

score::Example example(const std::string& lesson_keys, const std::string& rows, const std::string& keys = "") {
  return score::test::built(score::test::read(lesson_keys, keys + score::test::grid(rows)));
}

}  // namespace

TEST_CASE("counts stand only where something starts, rests in parentheses") {
  const score::Example one = example(bass_in_c,
                                     "count | 1 2 & (3) & 4 e | 1 2 (3) |\n"
                                     "E     | 1   3     5   6 |   8     |\n",
                                     "labels = [\"counts\"]\n");
  CHECK(one.show_counts);
  CHECK(score::test::text(one.bars[0]) == "4. 8 r8 8~ 16 8.~");
  CHECK(counts(one) == "1 & (3) & - e - 2 (3)");
  const std::string rests = "count | (1) 2 | (1) | 1 |\nE     |     3 |     | 5 |\n";
  const score::Example held = example(bass_in_c, rests);
  CHECK(counts(held) == "(1) 2 - (1) 1");
  CHECK_FALSE(held.show_counts);
}

TEST_CASE("degrees are counted in the chord in force, in the key where there is none") {
  const std::string rows =
      "count | 1 2 3 4   | 1 2  3      |\n"
      "chord |     Dm7   |      N.C.   |\n"
      "A     | 3 2 5 (8) | x    0      |\n"
      "E     |           |   1         |\n";
  CHECK(row(example(bass_in_c, rows, "labels = [\"chord-degrees\"]\n"), &score::Event::degree) == "1|7|1|b3||b3|6");
  CHECK(row(example(bass_in_c, rows, "labels = [\"key-degrees\"]\n"), &score::Event::degree) == "1|7|2|4||4|6");
  CHECK(row(example(bass_in_c, rows, "labels = [\"key-degrees\", \"chord-degrees\"]\n"), &score::Event::degree) ==
        "1|7|2|4||4|6");
  CHECK(row(example(bass_in_c, rows, "labels = [\"notes\"]\n"), &score::Event::note_name) == "C|B|D|F||F|A");
  CHECK(row(example(bass_in_c, rows), &score::Event::degree) == "||||||");
  const score::Example both = example(bass_in_c, rows, "labels = [\"key-degrees\", \"chord-degrees\"]\n");
  CHECK(row(both, &score::Event::second_degree) == "1|7|1|b3||b3|6");
  CHECK(both.degree_kinds == std::vector{lesson::Label::key_degrees, lesson::Label::chord_degrees});
}

TEST_CASE("a chord's labels go from its lowest note up") {
  const score::Example one = example(bass_in_c,
                                     "count | 1 2 |\n"
                                     "chord | Bb7 |\n"
                                     "G     | 1 = |\n"
                                     "D     | 0 3 |\n"
                                     "A     | 1   |\n",
                                     "labels = [\"chord-degrees\", \"notes\"]\n");
  CHECK(row(one, &score::Event::degree) == "1 3 b7|5|");
  CHECK(row(one, &score::Event::note_name) == "B♭ D A♭|F|");
}

TEST_CASE("the rows that show are those asked for, or written") {
  const std::string rows = "count  | 1 |\nfinger | 2 |\nE      | 1 |\n";
  const score::Example written = example(bass_in_c, rows);
  CHECK(written.show_fingers);
  CHECK(written.bars[0].events[0].notes[0].finger == "2");
  CHECK_FALSE(written.show_degrees);
  CHECK_FALSE(written.show_notes);
  const score::Example asked =
      example(bass_in_c, "count | 1 |\nE     | 1 |\n", "labels = [\"key-degrees\", \"notes\", \"fingers\"]\n");
  CHECK(asked.show_fingers);
  CHECK(asked.show_degrees);
  CHECK(asked.show_notes);
}
