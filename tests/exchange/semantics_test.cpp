// What the schema accepts and is no music: good documents have nothing to complain of, and of each of many changes that
// the schema still accepts, what is wrong is found.
#include "exchange/semantics.h"

#include <catch2/catch.hpp>
#include <filesystem>

#include "exchange/exported.h"
#include "exchange/schema.h"
#include "exchange/sound_lesson.h"
#include "support/project.h"
#include "support/random_lesson.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

// A change to a sound document, which the schema still accepts, and what must be said of it.
struct Change {
  const char* from;
  const char* to;
  int which;  // the so-manieth of its kind, from 0; −1 the last
  const char* said;
};

// XML without the white space between its elements, so that changes can be written down.
std::string flat(const std::string& document) {
  std::string result;
  for (std::size_t i = 0; i < document.size(); ++i) {
    if (document[i] != '\n') {
      result += document[i];
      continue;
    }
    while (i + 1 < document.size() && document[i + 1] == ' ') ++i;
  }
  return result;
}

std::string changed(const std::string& document, const Change& change) {
  const std::string from = change.from;
  std::size_t at = change.which < 0 ? document.rfind(from) : document.find(from);
  for (int i = 0; i < change.which && at != std::string::npos; ++i) at = document.find(from, at + 1);
  INFO(from);
  REQUIRE(at != std::string::npos);
  std::string result = document;
  return result.replace(at, from.size(), change.to);
}

const std::vector<Change> changes = {
    // Time.
    {"<duration>12</duration>", "<duration>11</duration>", 0, "do not make its duration"},
    {"<type>quarter</type>", "<type>half</type>", 0, "do not make its duration"},
    {"<type>quarter</type><dot/>", "<type>quarter</type>", 0, "do not make its duration"},
    {"<divisions>12</divisions>", "<divisions>6</divisions>", 0, "do not make its duration"},
    {"<beats>4</beats>", "<beats>3</beats>", 0, "longer than its time signature"},
    {"<beats>4</beats>", "<beats>5</beats>", 0, "shorter than its time signature"},
    {"<backup><duration>48</duration></backup>", "<backup><duration>36</duration></backup>", 0, "a gap in a staff"},
    {"<backup><duration>48</duration></backup>", "<backup><duration>60</duration></backup>", 0, "behind its start"},
    {"<backup><duration>48</duration></backup>", "", 0, "a gap in a staff"},
    {"<voice>2</voice>", "<voice>1</voice>", 0, "one voice on two staves"},
    {"<staff>2</staff>", "<staff>1</staff>", 1, "overlap"},
    {"<actual-notes>3</actual-notes>", "<actual-notes>5</actual-notes>", 0, "does not share its ratio"},
    {"<tuplet type=\"stop\"/>", "", 0, "a tuplet"},
    {"<tuplet type=\"start\" bracket=\"no\"/>", "", 0, "a tuplet stops that nothing started"},
    {"<chord/><pitch><step>D</step><octave>4</octave></pitch><duration>6</duration>",
     "<chord/><pitch><step>D</step><octave>4</octave></pitch><duration>12</duration>", 0, "of another duration"},
    {"implicit=\"yes\"", "implicit=\"no\"", 0, "a pickup that is numbered"},
    {"<rest/><duration>12</duration>", "<rest measure=\"yes\"/><duration>12</duration>", 0, "a bar's rest of another"},
    // Pairs.
    {"<tie type=\"start\"/>", "", 0, "a tie stops that nothing started"},
    {"<tie type=\"stop\"/>", "", 0, "a tie starts and never stops"},
    {"<tied type=\"stop\"/>", "", 0, "a tie sounds and is not drawn"},
    {"<slur type=\"stop\" number=\"2\"/>", "", 0, "a slur starts and never stops"},
    {"<hammer-on type=\"stop\" number=\"1\"/>", "", 0, "a hammer-on starts and never stops"},
    {"<hammer-on type=\"start\" number=\"1\">H</hammer-on>", "", 0, "a hammer-on stops that nothing started"},
    {"<pull-off type=\"start\" number=\"2\">P</pull-off>", "<hammer-on type=\"start\" number=\"2\">P</hammer-on>", 0,
     "a hammer-on starts and never stops"},
    {"<slide type=\"start\" number=\"2\"", "<slide type=\"start\" number=\"3\"", 0, "a slide"},
    {"<wavy-line type=\"stop\" number=\"2\"/>", "", 0, "a wavy-line starts and never stops"},
    {"<wedge type=\"stop\"/>", "<wedge type=\"crescendo\"/>", 0, "a wedge starts while another is open"},
    {"<dashes type=\"start\" number=\"1\"/>", "<dashes type=\"start\" number=\"3\"/>", 0, "a dashes"},
    {"<syllabic>end</syllabic>", "<syllabic>single</syllabic>", 0, "a syllable that does not fit"},
    {"<syllabic>single</syllabic>", "<syllabic>begin</syllabic>", 0, "a syllable that does not fit"},
    // Strings.
    {"<string>3</string>", "<string>9</string>", 0, "a string that the staff has not"},
    {"<string>3</string>", "<string>2</string>", 0, "a pitch that its string and fret do not make"},
    {"<fret>5</fret>", "<fret>6</fret>", 0, "a pitch that its string and fret do not make"},
    {"<string>1</string>", "<string>2</string>", 0, "played twice at once"},
    {"<string>3</string><fret>5</fret>", "", 0, "without its place"},
    {"<staff-tuning line=\"2\">", "<staff-tuning line=\"1\">", 0, "two tunings for one line"},
    {"<staff-tuning line=\"4\">", "<staff-tuning line=\"7\">", 0, "a tuning for a line that the staff has not"},
    {"<staff-lines>4</staff-lines>", "<staff-lines>5</staff-lines>", 0, "lines are not all tuned"},
    {"<octave-change>-1</octave-change>", "<octave-change>1</octave-change>", 0,
     "two staves of the part sound different"},
    {"<transpose number=\"1\">", "<transpose>", 0, "a pitch that its string and fret do not make"},
    {"<clef number=\"2\">", "<clef number=\"3\">", 0, "a staff without a clef"},
    {"<bend-alter>-2</bend-alter>", "<bend-alter>2</bend-alter>", 0, "a bend whose direction is wrong"},
    {"<sounding-pitch/>", "<base-pitch/>", -1, "a pitch that its string and fret do not make"},
    {"<accidental>natural</accidental>", "", 0, "an accidental is missing"},
    // Beams.
    {"<beam number=\"1\">end</beam>", "", 0, "a beam begins inside a beam"},
    {"<beam number=\"1\">begin</beam>", "", 0, "a beam goes on that nothing began"},
    {"<beam number=\"1\">continue</beam>", "<beam number=\"1\">forward hook</beam>", 0, "a hook"},
    {"<beam number=\"2\">begin</beam>", "", 0, "not as many as its type has flags"},
    {"<beam number=\"2\">end</beam>", "<beam number=\"3\">end</beam>", 0, "a beam's level is left out"},
    // Form.
    {"<repeat direction=\"forward\"/>", "", 0, "a repeat ends that nothing began"},
    {"<repeat direction=\"backward\"/>", "", 0, "a repeat begins inside a repeat"},
    {"<repeat direction=\"backward\"/>", "<repeat direction=\"backward\" times=\"3\"/>", 1, "a number of times"},
    {"<ending number=\"1\" type=\"stop\"/>", "", 0, "an ending starts inside an ending"},
    {"<ending number=\"1\" type=\"stop\"/>", "<ending number=\"1\" type=\"discontinue\"/>", 0, "without closing"},
    {"<ending number=\"2\" type=\"start\">", "<ending number=\"3\" type=\"start\">", 0, "an ending out of order"},
    {"<measure number=\"3\">", "<measure number=\"7\">", 0, "does not follow the one before"},
    {"<sound segno=\"segno\"/>", "", 0, "a segno that no jump can find"},
    {"dalsegno=\"segno\"", "dalsegno=\"other\"", 0, "a jump to a segno that is not there"},
    {"<sound tocoda=\"coda\"/>", "", 0, "does nothing when it is played"},
    {"<measure-repeat type=\"stop\"/>", "<measure-repeat type=\"start\">1</measure-repeat>", 0,
     "a measure-repeat starts inside another"},
    {"<slash type=\"start\"", "<slash type=\"stop\"", 0, "a slash stops that nothing started"},
    // Directions.
    {"<sound tempo=\"90\"/>", "<sound tempo=\"60\"/>", 0, "a tempo that its metronome mark does not say"},
    {"<beat-unit-dot/>", "", 0, "a tempo that its metronome mark does not say"},
    {"<sound tempo=\"92\"/>", "", 0, "a metronome mark that does not sound"},
    {"<first>2</first><second>1</second>", "<first>4</first><second>2</second>", 0, "not in lowest terms"},
    {"<sound dynamics=\"106.666667\"/>", "<sound dynamics=\"30\"/>", 0, "not as loud as its sign"},
    {"<degree-type>add</degree-type>", "<degree-type>alter</degree-type>", 0, "a degree is added that is there"},
    {"<root-step text=\"\">C</root-step>", "<root-step>C</root-step>", 0, "a root is shown of no chord"},
    {"<offset>-2</offset>", "<offset>-9</offset>", 0, "a sign outside its bar"},
    // The head.
    {"<score-part id=\"P1\">", "<score-part id=\"P2\">", 0, "the parts are not those of the list"},
    {"<software>fretsheaf</software>", "<software>fretsheaf</software><encoding-date>2026-01-01</encoding-date>", 0,
     "a date that changes"},
};

void check_sound(const std::string& text) {
  INFO(text);
  const Exported exported = export_lesson(text);
  REQUIRE(complaints(exported.document, exported.lesson.neck.short_fifth_string) == std::vector<std::string>{});
}

}  // namespace

TEST_CASE("every demo lesson and the format's example export to sound music") {
  std::vector<std::string> lessons = {test::project_folder() + "/tests/command/format-example.lesson.toml"};
  for (const auto& entry : std::filesystem::directory_iterator(test::project_folder() + "/demo-lessons")) {
    if (entry.path().extension() == ".toml") lessons.push_back(entry.path().string());
  }
  REQUIRE(lessons.size() >= 7);
  for (const std::string& path : lessons) check_sound(bytes_of(path));
}

TEST_CASE("four hundred generated lessons export to sound music") {
  for (unsigned seed = 1; seed <= 400; ++seed) check_sound(fretsheaf::test::random_lesson(seed));
}

TEST_CASE("every example of a lesson exports by itself to sound music, and a lesson without music to one empty bar") {
  for (std::size_t example = 0; example < 3; ++example) {
    const std::string document = export_example(sound_lesson, example);
    CHECK(complaints(document) == std::vector<std::string>{});
    CHECK(schema_accepts({document}));
  }
  const std::string keys = "title = \"a\"\nkey = \"C major\"\ninstrument = \"bass\"\n";
  CHECK(schema_accepts({export_lesson(keys + "[[example]]\nblank-bars = 4\n").document}));
}

TEST_CASE("what the schema accepts and is no music is found: seventy changes to a sound document") {
  const std::string sound = flat(export_lesson(sound_lesson).document);
  REQUIRE(complaints(sound) == std::vector<std::string>{});
  REQUIRE(changes.size() >= 70);
  std::vector<std::string> documents = {sound};
  for (const Change& change : changes) {
    const std::string wrong = changed(sound, change);
    documents.push_back(wrong);
    std::string said;
    for (const std::string& complaint : complaints(wrong)) said += complaint + "\n";
    INFO(change.from << " -> " << change.to << "\n" << said);
    CHECK(said.find(change.said) != std::string::npos);
  }
  CHECK(schema_accepts(documents));
}
