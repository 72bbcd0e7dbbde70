// Signs that once lay on each other, or stood in the wrong place: one small lesson for each.
#include <algorithm>

#include "layout/music_collisions.h"
#include "layout/music_fixture.h"
#include "sheet/walk.h"

using namespace fretsheaf;
using sheet::Part;

namespace {

std::string guitar_lesson(const std::string& keys, const std::string& grid) {
  return "title = \"Low tide\"\nkey = \"G major\"\ninstrument = \"guitar\"\n[[example]]\n" + keys + "\ntab = '''\n" +
         grid + "'''\n";
}

std::vector<sheet::Box> boxes(const layout::MusicLine& line, Part part, typeface::Shaper& shaper) {
  std::vector<sheet::Box> found;
  for (const test::InkBox& ink : test::ink_boxes({0, 0, line.items}, shaper)) {
    if (ink.part == part) found.push_back(ink.box);
  }
  std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.left < b.left; });
  return found;
}

// How many paths of a part a line has.
int paths(const layout::MusicLine& line, Part part) {
  int count = 0;
  sheet::walk({0, 0, line.items}, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* path = std::get_if<sheet::Path>(&item);
    if (path != nullptr && path->part == part) ++count;
  });
  return count;
}

std::vector<std::string> texts(const layout::MusicLine& line, Part part) {
  std::vector<std::string> found;
  sheet::walk({0, 0, line.items}, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    if (run != nullptr && run->part == part) found.push_back(run->text);
  });
  return found;
}

struct Mended {
  const char* what;
  std::string lesson;
};

}  // namespace

TEST_CASE("signs that once lay on each other keep apart") {
  const Mended all[] = {
      {"slurs between the digits of chords", guitar_lesson("",
                                                           "count | 1  2  3  4  |\n"
                                                           "e     | 0  0        |\n"
                                                           "B     | 0  h1 p0    |\n"
                                                           "G     | 0  h2 0  5  |\n"
                                                           "D     | 2  2  h4 p2 |\n")},
      {"a slur from a note that is bent", guitar_lesson("",
                                                        "count | 1      2   3   4  |\n"
                                                        "B     | 5^1    h7         |\n"
                                                        "G     | 5^1/2v 7   h9 p7  |\n")},
      {"a slide from a note that is bent", guitar_lesson("", "count | 1    2  3 4 |\nB     | 5^1v /7 5\\  |\n")},
      {"a ghost note under a slur", guitar_lesson("", "count | 1   2   3 4 |\nB     | (5) h7      |\n")},
      {"a slur into a line",
       guitar_lesson("bars-per-line = 1", "count | 1 2 3 4 | 1   2 3 4 |\nB     | 5 7 8 5 | h12 5 7 8 |\n")},
      {"tremolo strokes on flags", guitar_lesson("",
                                                 "count | 1   a   2 & (3) &   4 |\n"
                                                 "mark  | TP------------------- |\n"
                                                 "B     | 5   7   5 5     (7) 8 |\n")},
      {"tremolo strokes on flags of a tab alone", guitar_lesson("staves = [\"tab\"]",
                                                                "count | 1   a   2 & (3) &   4 |\n"
                                                                "mark  | TP------------------- |\n"
                                                                "B     | 5   7   5 5     (7) 8 |\n")},
      {"articulations, ties and tuplets of a tab alone", guitar_lesson("staves = [\"tab\"]",
                                                                       "count | 1 2  la li 3  & | 1 2   3  4 |\n"
                                                                       "B     | 5 5> 7. 5_ 5> 7 |   5>  5. 7 |\n")},
      {"a dynamic in the middle of a hairpin", guitar_lesson("",
                                                             "count | 1 2 3 4 |\n"
                                                             "mark  | <------ |\n"
                                                             "mark  |   fff   |\n"
                                                             "B     | 5 7 8 7 |\n")},
      {"a tie under a new meter",
       guitar_lesson("", "count | 1 2 3 4 | 1 2 3 |\nmeter |         | 3/4   |\nB     | 5 7 8 7 |   7 8 |\n")},
      {"how often a repeat is played, under an ending's hook",
       guitar_lesson("",
                     "count  |: 1 2 3 4 | 1 2 3 4 :| 1 2 3 4 |\n"
                     "ending |          | 1.       | 2.      |\n"
                     "road   |          |       4x |         |\n"
                     "B      |  5 7 8 7 | 7 8 7 5  | 5 7 8 5 |\n")},
      {"the word of a ringing note at a bar line", guitar_lesson("",
                                                                 "count | 1 2 3 4   | 1 2 3 4 |\n"
                                                                 "mark  |       let | ---     |\n"
                                                                 "B     | 5 7 8 7   | 7 8 7 5 |\n")},
  };
  test::Music music;
  for (const Mended& mended : all) {
    INFO(mended.what);
    for (const sheet::Page& page : music.pages(mended.lesson).pages) {
      for (const test::Collision& collision : test::collisions(page, music.fonts)) {
        UNSCOPED_INFO(test::describe(collision));
        CHECK(false);
      }
    }
  }
}

TEST_CASE("a slide goes over the notes of other strings, from its first note to its second") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("", "count | 1 2 3 4  |\nB     |   5 7    |\nG     | 5     /9 |\n"));
  const auto slides = boxes(lines.at(0), Part::slide, music.fonts);
  const auto digits = boxes(lines.at(0), Part::digit, music.fonts);
  REQUIRE(digits.size() == 4);
  REQUIRE(!slides.empty());
  CHECK(slides.front().left < digits[1].left);
  CHECK(slides.back().right > digits[2].right);
}

TEST_CASE("a hairpin goes on after a dynamic in its middle") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("",
                                               "count | 1 2 3 4 |\n"
                                               "mark  | <------ |\n"
                                               "mark  |     f   |\n"
                                               "B     | 5 7 8 7 |\n"));
  CHECK(paths(lines.at(0), Part::hairpin) == 2);
}

TEST_CASE("what reaches to the last count of a bar that repeats the one before ends at its bar line") {
  test::Music music;
  const auto line = music
                        .lines(test::bass_lesson("",
                                                 "count | 1 2 3 4 | % | 1 2 3 4 |\n"
                                                 "mark  | <-------|---| f       |\n"
                                                 "mark  | PM------|---|         |\n"
                                                 "A     | 3 5 3 5 |   | 3 3 3 3 |\n"))
                        .front();
  const auto bar_lines = boxes(line, Part::bar_line, music.fonts);
  REQUIRE(bar_lines.size() >= 3);
  double end = 0;
  for (const sheet::Box& piece : boxes(line, Part::hairpin, music.fonts)) end = std::max(end, piece.right);
  // By the second bar line, counted from the start of the music.
  const double second = bar_lines[bar_lines.size() - 3].left;
  CHECK(end < second);
  CHECK(end > second - 8);
  const auto words = boxes(line, Part::technique, music.fonts);
  CHECK(std::all_of(words.begin(), words.end(), [&](const sheet::Box& box) { return box.right < second; }));
  CHECK(paths(line, Part::hairpin) == 1);
}

TEST_CASE("strings that do the same share one letter") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("", "count | 1 2  3  4 |\nB     | 5 h7 p5   |\nG     | 5 h7 h9   |\n"));
  CHECK(texts(lines.at(0), Part::technique) == std::vector<std::string>{"h", "p h"});
}

TEST_CASE("what is muted or rings on is named again where it goes on in the next line") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("bars-per-line = 1",
                                               "count | 1 2 3 4 | 1 2 3 4 |\n"
                                               "mark  | PM----- | ----    |\n"
                                               "B     | 5 7 8 7 | 7 8 7 5 |\n"));
  REQUIRE(lines.size() == 2);
  CHECK(texts(lines[0], Part::technique) == std::vector<std::string>{"P.M."});
  CHECK(texts(lines[1], Part::technique) == std::vector<std::string>{"(P.M.)"});
}

TEST_CASE("both kinds of degrees have a row each, named for what it counts in") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("labels = [\"chord-degrees\", \"key-degrees\"]",
                                               "count | 1 2 3 4 |\nchord | C       |\nB     | 5 7 8 7 |\n"));
  CHECK(texts(lines.at(0), Part::row_name) == std::vector<std::string>{"in chord", "in key"});
  // Frets 5, 7 and 8 of the B string are E, F sharp and G: 3, #4 and 5 of a C chord, 6, 7 and 1 of G major.
  const std::vector<std::string> both{"3", "♯", "4", "5", "♯", "4", "6", "7", "1", "7"};
  CHECK(texts(lines.at(0), Part::degree_label) == both);
  const auto one = music.lines(guitar_lesson("labels = [\"key-degrees\"]", "count | 1 2 3 4 |\nB     | 5 7 8 7 |\n"));
  CHECK(texts(one.at(0), Part::row_name) == std::vector<std::string>{"degree"});
}

TEST_CASE("a chord's lower label stands above the next row, also where that row has nothing under the chord") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("labels = [\"key-degrees\"]",
                                               "count  | 1 2   3 4 |\n"
                                               "D      |   0       |\n"
                                               "A      | 3 2   5 7 |\n"
                                               "finger | 1     3   |\n"));
  double lowest_degree = 0;
  double highest_finger = 1000;
  for (const auto& box : boxes(lines.at(0), Part::degree_label, music.fonts)) {
    lowest_degree = std::max(lowest_degree, box.bottom);
  }
  const auto fingers = boxes(lines.at(0), Part::finger_label, music.fonts);
  CHECK(fingers.size() == 2);
  for (const auto& box : fingers) highest_finger = std::min(highest_finger, box.top);
  CHECK(lowest_degree < highest_finger);
}

namespace {

// Where a line's paths of a part begin.
std::vector<sheet::Point> begins(const layout::MusicLine& line, Part part) {
  std::vector<sheet::Point> found;
  sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* path = std::get_if<sheet::Path>(&item);
    if (path != nullptr && path->part == part) found.push_back(path->segments.at(0).end);
  });
  return found;
}

// The origins of a line's texts of a part.
std::vector<sheet::Point> origins(const layout::MusicLine& line, Part part) {
  std::vector<sheet::Point> found;
  sheet::walk(line.items, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    if (run != nullptr && run->part == part && !run->text.empty())
      found.push_back({run->glyphs.at(0).x, run->glyphs.at(0).y});
  });
  return found;
}

}  // namespace

TEST_CASE("the ties of two staves do not face each other like the lids of an eye") {
  // High notes have their stems down and their ties above.
  test::Music music;
  const std::string keys = "staves = [\"slash\", \"notes\", \"tab\"]";
  const std::string grid = "count | 1 2 3 4 | 1 2 3 4 |\ne     | 3 5 3 5 |   7 5 3 |\n";
  const auto above = music.lines(guitar_lesson(keys, grid)).at(0);
  const auto slash_line = boxes(above, Part::staff_line, music.fonts);
  double top = 1e9;
  for (const sheet::Box& line : slash_line) top = std::min(top, line.top);
  const auto ties = begins(above, Part::tie);
  REQUIRE(ties.size() == 2);
  CHECK(ties[0].y < top);
  // Low notes have theirs below, and the slashes too; so have they without a notes staff.
  const auto below = begins(
      music.lines(guitar_lesson(keys, "count | 1 2 3 4 | 1 2 3 4 |\nE     | 3 5 3 5 |   7 5 3 |\n")).at(0), Part::tie);
  REQUIRE(below.size() == 2);
  CHECK(below[0].y > top);
  CHECK(begins(music.lines(guitar_lesson("", grid)).at(0), Part::tie).size() == 1);
}

TEST_CASE("a tied note that a slide or a pull-off leaves has its digit, smaller") {
  test::Music music;
  for (const char* sign : {"/9", "p5"}) {
    const auto with =
        music.lines(guitar_lesson("", "count | 1 2 3 4 | 1 2  |\nB     | 5 5 5 7 |   " + std::string(sign) + " |\n"));
    const auto digits = boxes(with.at(0), Part::digit, music.fonts);
    INFO(sign);
    REQUIRE(digits.size() == 6);
    CHECK(digits[4].bottom - digits[4].top < digits[3].bottom - digits[3].top);
  }
  const auto without = music.lines(guitar_lesson("", "count | 1 2 3 4 | 1 2 |\nB     | 5 5 5 7 |   9 |\n"));
  CHECK(boxes(without.at(0), Part::digit, music.fonts).size() == 5);
}

TEST_CASE("hammer-ons and pull-offs that go on are under one slur on the notes staff") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson(
      "staves = [\"notes\"]", "count | 1   &  2   &  3   &  4   |\nB     | 5  h7 p5   3  5  h7  5   |\n"));
  CHECK(paths(lines.at(0), Part::slur) == 2);
}

TEST_CASE("the letters of a line stand on one baseline") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("", "count | 1 2  3 4  |\ne     |      0 h2 |\nB     | 5 h7      |\n"));
  const auto letters = origins(lines.at(0), Part::technique);
  REQUIRE(letters.size() == 2);
  CHECK(letters[0].y == Approx(letters[1].y));
}

TEST_CASE("a letter is not read together with a bend's amount") {
  test::Music music;
  const auto lines =
      music.lines(guitar_lesson("", "count | 1    2    3 4 |\nB     | 8^1       5   |\nG     | 5    h7       |\n"));
  const auto amount = boxes(lines.at(0), Part::technique, music.fonts);
  REQUIRE(amount.size() == 2);
  const bool apart =
      amount[0].right + 5 < amount[1].left || amount[0].bottom < amount[1].top || amount[1].bottom < amount[0].top;
  CHECK(apart);
}

TEST_CASE("labels of notes that sound together stand under each other, the highest on top") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson(
      "labels = [\"notes\"]", "count | 1 2 3 4 |\ne     | 3 3     |\nB     |   0     |\nG     |   0     |\n"));
  CHECK(texts(lines.at(0), Part::note_label) == std::vector<std::string>{"G", "G", "B", "G"});
  const auto labels = origins(lines.at(0), Part::note_label);
  CHECK(labels[1].x == Approx(labels[3].x));
  // From the lowest note up; the highest has the baseline of single labels.
  CHECK(labels[1].y > labels[2].y);
  CHECK(labels[2].y > labels[3].y);
  CHECK(labels[3].y == Approx(labels[0].y));
}

TEST_CASE("a tab has the ties of a string that is held alone from its digit on") {
  // The last two ties hold everything, and are on the slash staff too.
  test::Music music;
  const auto lines = music.lines(guitar_lesson(
      "", "count | 1 2 3 4 | 1 2 |\ne     | 0       |     |\nB     | 5 = = = | = 7 |\nG     |   0 2   |     |\n"));
  CHECK(paths(lines.at(0), Part::slur) == 4);
}

TEST_CASE("a section's box keeps apart from the hook of an ending before it") {
  test::Music music;
  const auto lines = music.lines(guitar_lesson("",
                                               "count   |: 1 2 3 4 | 1 2 3 4 :| 1 2 3 4 || 1 2 3 4 |\n"
                                               "ending  |          | 1.       | 2.      ||         |\n"
                                               "section |          |          |         || B       |\n"
                                               "chord   |          |          |         || G       |\n"
                                               "B       |  5 7 8 7 | 7 8 7 5  | 5 7 8 5 || 5 7 8 5 |\n"));
  const auto box = boxes(lines.at(0), Part::section_box, music.fonts);
  double hook = 0;
  for (const sheet::Box& bracket : boxes(lines.at(0), Part::ending_bracket, music.fonts)) {
    hook = std::max(hook, bracket.right);
  }
  REQUIRE(!box.empty());
  CHECK(box.front().left - hook > 0.8 * music.look.measures.space);
}

TEST_CASE("a grace note's digit stands apart from the digit before it, which it would make a number of two figures") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    test::Music music(name);
    const auto lines =
        music.lines(guitar_lesson("bars-per-line = 2",
                                  "count | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |\n"
                                  "e     | 7   5 8p7   5 7h8   7 5h7   8   | 7   5 8p7   5 7h8   7 5h7   8   |\n"));
    INFO(name);
    const double tab = music.look.measures.tab_gap;
    for (const auto& line : lines) {
      const auto digits = boxes(line, Part::digit, music.fonts);
      for (std::size_t i = 1; i < digits.size(); ++i) CHECK(digits[i].left - digits[i - 1].right >= 0.55 * tab);
    }
  }
}

TEST_CASE("a row is named once, though its first bar is cut into several lines") {
  test::Music music("large-print");
  const auto lines = music.lines(guitar_lesson("labels = [\"counts\", \"notes\"]",
                                               "count | 1 e & a 2 e & a 3 e & a 4 e & a |\n"
                                               "e     | 0 1 2 3 0 1 2 3 0 1 2 3 0 1 2 3 |\n"));
  REQUIRE(lines.size() >= 2);
  CHECK(texts(lines[0], Part::row_name) == std::vector<std::string>{"note", "count"});
  for (std::size_t i = 1; i < lines.size(); ++i) CHECK(texts(lines[i], Part::row_name).empty());
}

TEST_CASE("an ending has its number once, though its first bar is cut into several lines") {
  test::Music music("large-print");
  const auto lines = music.lines(guitar_lesson("",
                                               "count  | 1 e & a 2 e & a 3 e & a 4 e & a :| 1 2 3 4 |\n"
                                               "ending | 1.                              |  2.      |\n"
                                               "e      | 0 1 2 3 0 1 2 3 0 1 2 3 0 1 2 3 |  0       |\n"));
  REQUIRE(lines.size() >= 2);
  std::vector<std::string> numbers;
  for (const layout::MusicLine& line : lines) {
    for (const std::string& number : texts(line, Part::ending_bracket)) numbers.push_back(number);
  }
  CHECK(numbers == std::vector<std::string>{"1.", "2."});
}
