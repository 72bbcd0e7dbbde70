// The lesson format, line by line: what a teacher can write stands in the document. The elements and what they mean are
// from the W3C Community Group's MusicXML 4.0 documentation.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <utility>
#include <vector>

#include "exchange/exported.h"

using namespace fretsheaf::exchange::test;

namespace {

// The document without its line breaks and indents.
std::string compact(const std::string& document) {
  std::string text;
  for (std::size_t at = 0; at < document.size();) {
    const std::size_t end = std::min(document.find('\n', at), document.size());
    const std::size_t begin = std::min(document.find_first_not_of(' ', at), end);
    text += document.substr(begin, end - begin);
    at = end + 1;
  }
  return text;
}

struct Says {
  std::string lesson;
  std::vector<std::string> said;
  std::vector<std::string> not_said = {};
};

void check(const Says& one) {
  INFO(one.lesson);
  const std::string document = compact(export_lesson(one.lesson).document);
  for (const std::string& text : one.said) {
    INFO(document);
    CHECK_THAT(text, Catch::Predicate<std::string>(
                         [&](const std::string& own) { return document.find(own) != std::string::npos; }, "is said"));
  }
  for (const std::string& text : one.not_said) {
    INFO(document);
    CHECK_THAT(text, Catch::Predicate<std::string>(
                         [&](const std::string& own) { return document.find(own) == std::string::npos; }, "is not"));
  }
}

std::string top(const std::string& more, const std::string& instrument = "bass", const std::string& key = "D minor") {
  return "title = \"Mooring line\"\ninstrument = \"" + instrument + "\"\nkey = \"" + key + "\"\n" + more;
}

std::string example(const std::string& rows, const std::string& more = {}) {
  return "[[example]]\n" + more + "tab = '''\n" + rows + "'''\n";
}

const std::string plain = "count | 1 2 3 4 |\nA     | 5   3   |\n";

// A bass lesson of one example of these rows.
std::string rows(const std::string& all) {
  return top("") + example(all);
}

// The signs of one string's tokens.
std::string tokens(const std::string& on_a) {
  std::string count;
  const char* counts = "1234";
  int next = 0;
  for (std::size_t i = 0; i < on_a.size(); ++i) {
    const bool begins = on_a[i] != ' ' && (i == 0 || on_a[i - 1] == ' ');
    count += begins ? counts[next++] : ' ';
  }
  return rows("count | " + count + " |\nA     | " + on_a + " |\n");
}

std::string direction(const std::string& type) {
  return "<direction-type>" + type + "</direction-type>";
}

std::string chord(const std::string& symbol) {
  const auto columns = std::count_if(symbol.begin(), symbol.end(), [](char c) { return (c & 0xC0) != 0x80; });
  return rows("count | 1          |\nchord | " + symbol + std::string(10 - static_cast<std::size_t>(columns), ' ') +
              " |\nA     | 5          |\n");
}

}  // namespace

TEST_CASE("the heading, and nothing of the page") {
  check({top("subtitle = \"In two *parts*\"\nteacher = \"Eelgrass Strings\"\nseries = \"Tuesday bass class\"\n"
             "number = 7\nlevel = \"intermediate\"\ncopyright = \"© Eelgrass Strings\"\nintro = \"Warm up.\"\n"
             "practice = [\"Rest.\"]\nlabels = [\"notes\"]\nbars-per-line = 4\n") +
             example(plain),
         {"<work><work-number>7</work-number><work-title>Mooring line</work-title></work>",
          "<creator type=\"composer\">Eelgrass Strings</creator>", "<rights>© Eelgrass Strings</rights>",
          "<encoding><software>fretsheaf</software></encoding>",
          "<miscellaneous><miscellaneous-field name=\"subtitle\">In two parts</miscellaneous-field>"
          "<miscellaneous-field name=\"series\">Tuesday bass class</miscellaneous-field>"
          "<miscellaneous-field name=\"level\">intermediate</miscellaneous-field></miscellaneous>"},
         {"encoding-date", "<defaults", "<credit", "<print", "<system-layout", "default-x"}});
}

TEST_CASE("the instrument: two staves of one part, its tuning, its capo, its octave") {
  check({top("") + example(plain),
         {"<score-part id=\"P1\"><part-name>Bass</part-name></score-part>", "<staves>2</staves>",
          "<clef number=\"1\"><sign>F</sign><line>4</line></clef><clef number=\"2\"><sign>TAB</sign><line>5</line>"
          "</clef><staff-details number=\"1\"><staff-lines>5</staff-lines></staff-details>"
          "<staff-details number=\"2\"><staff-lines>4</staff-lines><staff-tuning line=\"1\"><tuning-step>E"
          "</tuning-step><tuning-octave>1</tuning-octave></staff-tuning>",
          "<transpose number=\"1\"><chromatic>0</chromatic><octave-change>-1</octave-change></transpose>",
          "<backup><duration>4</duration></backup>"}});
  check({top("tuning = [\"Eb1\", \"Ab1\", \"Db2\", \"Gb2\"]\n") + example("count | 1 |\nAb    | 5 |\n"),
         {"<tuning-step>E</tuning-step><tuning-alter>-1</tuning-alter><tuning-octave>1</tuning-octave>"}});
  check({top("capo = 3\n", "guitar", "C major") + example("count | 1 |\nA     | 0 |\n"),
         {"<capo>3</capo>", "<step>C</step><octave>4</octave>", "<step>C</step><octave>3</octave>"}});
  check({top("", "mandolin", "G major") + example("count | 1 |\nA     | 0 |\n"),
         {"<sign>G</sign><line>2</line>", "<step>A</step><octave>4</octave>"},
         {"<transpose"}});
  check({top("", "banjo", "G major") + example("count | 1 |\n5     | 7 |\n"),
         {"<step>A</step><octave>4</octave></pitch>", "<string>5</string><fret>7</fret>"}});
}

TEST_CASE("keys, meters, feels and tempos") {
  const std::vector<std::pair<std::string, std::string>> keys = {
      {"D major", "<fifths>2</fifths><mode>major"},           {"D minor", "<fifths>-1</fifths><mode>minor"},
      {"D dorian", "<fifths>0</fifths><mode>dorian"},         {"D phrygian", "<fifths>-2</fifths><mode>phrygian"},
      {"D lydian", "<fifths>3</fifths><mode>lydian"},         {"D locrian", "<fifths>-3</fifths><mode>locrian"},
      {"D mixolydian", "<fifths>1</fifths><mode>mixolydian"},
  };
  for (const auto& [key, said] : keys) check({top("", "bass", key) + example(plain), {said}});
  check({top("meter = \"2+2+3/8\"\n") + example("count | 1 3 5 |\nA     | 5 3 5 |\n"),
         {"<time><beats>2+2+3</beats><beat-type>8</beat-type></time>"}});
  check({rows("count | 1 2 3 4 | 1   2 3 |\nmeter |         | 3/4     |\nA     | 5       | 3       |\n"),
         {"<measure number=\"2\"><attributes><time><beats>3</beats><beat-type>4</beat-type></time></attributes>"}});
  check({rows("count | 4 | 1 2 3 4 |\nA     | 5 | 3       |\n"),
         {"<measure number=\"0\" implicit=\"yes\">", "<measure number=\"1\">"}});
  check({rows("count | 1 2 3 || 4 | 1 2 3 4 |\nA     | 5      | 3 | 5       |\n"),
         {"<measure number=\"1\">", "<bar-style>light-light</bar-style>", "<measure number=\"1\" implicit=\"yes\">"}});
  const auto feel = [](const std::string& keys, const std::string& more = {}) {
    return top(keys) + example(plain, more);
  };
  check({feel("feel = \"swing\"\n"),
         {direction("<words>swing</words>"),
          "<swing><first>2</first><second>1</second><swing-type>eighth</swing-type></swing>"}});
  check({feel("feel = \"swing\"\nswing-ratio = \"3:2\"\n"), {"<swing><first>3</first><second>2</second>"}});
  check({feel("feel = \"swing-16\"\n"), {"<swing-type>16th</swing-type>"}});
  check({feel("feel = \"shuffle\"\nlanguage = \"de\"\n"), {"<swing-style>shuffle</swing-style>"}});
  check({feel("feel = \"swing\"\n") + example(plain, "feel = \"straight\"\n"), {"<swing><straight/></swing>"}});
  const auto tempo = [&](const std::string& value) { return feel("", "tempo = " + value + "\n"); };
  check(
      {tempo("92"),
       {"<metronome><beat-unit>quarter</beat-unit><per-minute>92</per-minute></metronome>", "<sound tempo=\"92\"/>"}});
  check({tempo("[80, 100]"), {"<per-minute>100</per-minute>"}});
  check({tempo("{ from = 60, to = 108, step = 12, passes = 4 }"), {"<per-minute>108</per-minute>"}});
  check({tempo("{ from = 60, to = 60, beat = \"dotted quarter\" }"),
         {"<beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute>", "<sound tempo=\"90\"/>"}});
}

TEST_CASE("one part for all examples, each on a new system, named, with its own key and bar numbers") {
  check({top("") + example(plain, "title = \"Cast off\"\n") + example(plain, "key = \"E minor\"\n"),
         {direction("<words>Example 1: Cast off</words>"),
          "<measure number=\"1\"><print new-system=\"yes\"/><attributes><key><fifths>1</fifths><mode>minor</mode>"
          "</key></attributes>",
          direction("<words>Example 2</words>")}});
  check({top("") + example(plain) + "[[example]]\nblank-bars = 4\n", {"<words>Example 1</words>"}, {"Example 2"}});
  check({top("language = \"fr\"\n") + example(plain) + example(plain), {"<words>Exemple 2</words>"}});
}

TEST_CASE("repeats at both ends, endings, times, bar repeats and ways") {
  check({rows("count | 1 2 3 4 | 1 2 3 4 :|\nA     | 5       | 3        |\n"),
         {"<barline location=\"left\"><bar-style>heavy-light</bar-style><repeat direction=\"forward\"/></barline>",
          "<barline location=\"right\"><bar-style>light-heavy</bar-style><repeat direction=\"backward\"/></barline>"}});
  check({rows("count  |: 1 2 3 4 | 1 2 3 4 :| 1 2 3 4 |\nending |          | 1.       | 2.      |\n"
              "A      |  5       | 3        | 5       |\n"),
         {"<ending number=\"1\" type=\"start\">1.</ending>",
          "<ending number=\"1\" type=\"stop\"/><repeat direction=\"backward\"/>",
          "<ending number=\"2\" type=\"start\">2.</ending>", "<ending number=\"2\" type=\"discontinue\"/>"}});
  check({rows("count | 1 2 3 4 :|\nroad  |       4x |\nA     | 5        |\n"),
         {"<repeat direction=\"backward\" times=\"4\"/>", direction("<words>4x</words>")}});
  check({rows("count | 1 2 3 4 | % | 1 2 3 4 |\nA     | 5       |   | 3       |\n"),
         {"<measure-style><measure-repeat type=\"start\">1</measure-repeat></measure-style>",
          "<measure-style><measure-repeat type=\"stop\"/></measure-style>"}});
  check({rows("count | 1     2 3 4 | 1         2 3 4 | 1              2 3 4 | 1    2 3 4 |\n"
              "road  | segno       | \"To Coda\"       | \"D.S. al Coda\"       | coda       |\n"
              "A     | 5           | 3               | 5                    | 3          |\n"),
         {direction("<segno/>") + "<staff>1</staff><sound segno=\"segno\"/>", direction("<words>To Coda</words>"),
          "tocoda=\"coda\"", direction("<words>D.S. al Coda</words>"), "dalsegno=\"segno\"",
          direction("<coda/>") + "<staff>1</staff><sound coda=\"coda\"/>"}});
  check({rows("count | 1    2 3 4 | 1              2 3 4 |\nroad  | fine       | \"D.C. al Fine\"       |\n"
              "A     | 5          | 3                    |\n"),
         {direction("<words>fine</words>"), "fine=\"yes\"", "dacapo=\"yes\""}});
}

TEST_CASE("chord symbols: root, kind, alterations, bass, none, and numerals in the key") {
  // The kinds as the standard names them (MusicXML 4.0, kind-value).
  const std::vector<std::pair<std::string, std::string>> kinds = {
      {"D", "major"},
      {"Dm", "minor"},
      {"D5", "power"},
      {"D6", "major-sixth"},
      {"Dm6", "minor-sixth"},
      {"D7", "dominant"},
      {"Dmaj7", "major-seventh"},
      {"Dm7", "minor-seventh"},
      {"DmMaj7", "major-minor"},
      {"Ddim", "diminished"},
      {"Ddim7", "diminished-seventh"},
      {"Dm7b5", "half-diminished"},
      {"Daug", "augmented"},
      {"Daug7", "augmented-seventh"},
      {"Dsus2", "suspended-second"},
      {"Dsus4", "suspended-fourth"},
      {"D9", "dominant-ninth"},
      {"Dmaj9", "major-ninth"},
      {"Dm9", "minor-ninth"},
      {"D11", "dominant-11th"},
      {"Dm11", "minor-11th"},
      {"D13", "dominant-13th"},
      {"Dmaj13", "major-13th"},
      {"Dm13", "minor-13th"},
  };
  for (const auto& [symbol, kind] : kinds) {
    check({chord(symbol), {"<root><root-step>D</root-step></root><kind text=", ">" + kind + "</kind>"}});
  }
  const auto degree = [](int value, int alter, const std::string& type) {
    return "<degree-value>" + std::to_string(value) + "</degree-value><degree-alter>" + std::to_string(alter) +
           "</degree-alter><degree-type>" + type + "</degree-type>";
  };
  check({chord("D6/9"), {">major-sixth</kind>", degree(9, 0, "add")}});
  check({chord("Dadd9"), {">major</kind>", degree(9, 0, "add")}});
  check({chord("Dmadd9"), {">minor</kind>", degree(9, 0, "add")}});
  check({chord("D7sus4"), {">suspended-fourth</kind>", degree(7, 0, "add")}});
  check({chord("D7b9"), {">dominant</kind>", degree(9, -1, "add")}});
  check({chord("D7#9"), {degree(9, 1, "add")}});
  check({chord("D9#11"), {">dominant-ninth</kind>", degree(11, 1, "add")}});
  check({chord("D7b13"), {degree(13, -1, "add")}});
  check({chord("D7b5"), {degree(5, -1, "alter")}});
  check({chord("D7#5"), {">dominant</kind>", degree(5, 1, "alter")}});
  check({chord("Bb/D"),
         {"<root-step>B</root-step><root-alter>-1</root-alter>", "<bass><bass-step>D</bass-step></bass>"}});
  check({chord("N.C."), {"<kind text=\"N.C.\">none</kind>"}});
  check({chord("iv7"), {"<root-step>G</root-step></root>", ">minor-seventh</kind>"}});
  check({chord("bVII"), {"<root-step>C</root-step></root>", ">major</kind>"}});
  check({chord("V7/iv"), {"<root-step>D</root-step></root>", ">dominant</kind>"}});
  check({chord("vii°"), {"<root-step>C</root-step><root-alter>1</root-alter>", ">diminished</kind>"}});
}

TEST_CASE("the mark row: dynamics, hairpins, palm mute, let ring, tremolo, fermata") {
  for (const std::string sign : {"ppp", "pp", "p", "mp", "mf", "f", "ff", "fff", "sfz"}) {
    const std::string pad(3 - sign.size(), ' ');
    check({rows("count | 1       |\nmark  | " + sign + pad + "     |\nA     | 5       |\n"),
           {direction("<dynamics><" + sign + "/></dynamics>")}});
  }
  const auto marked = [](const std::string& mark) {
    return rows("count | 1 2 3 4 |\nmark  | " + mark + std::string(7 - mark.size(), ' ') + " |\nA     | 5 3 5 3 |\n");
  };
  check({marked("<---"), {"<wedge type=\"crescendo\"/>", "<wedge type=\"stop\"/>"}});
  check({marked(">---"), {"<wedge type=\"diminuendo\"/>"}});
  check({marked("PM---"),
         {direction("<words>P.M.</words>"), "<dashes type=\"start\" number=\"1\"/>",
          "<dashes type=\"stop\" number=\"1\"/>", "<play><mute>palm</mute></play>"}});
  check({marked("let---"),
         {direction("<words>let ring</words>"), "<dashes type=\"start\" number=\"2\"/>", "<tied type=\"let-ring\"/>"}});
  check({marked("TP---"), {"<tremolo type=\"single\">3</tremolo>"}});
  check({marked("fermata"), {"<fermata type=\"upright\"/>"}});
}

TEST_CASE("what a bar repeat repeats is said of its notes, and its loudness in sounds that are not printed") {
  const auto repeated = [](const std::string& marks) {
    const std::string text = rows("count | 1 2 3 4 | % |\nmark  | " + marks + "   |   |\nA     | 5 3 5 3 |   |\n");
    const std::string document = compact(export_lesson(text).document);
    return document.substr(document.find("<measure number=\"2\">"));
  };
  const auto count = [](const std::string& text, const std::string& word) {
    int found = 0;
    for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) ++found;
    return found;
  };
  // Three notes on each of two staves.
  CHECK(count(repeated("PM---"), "<play><mute>palm</mute></play>") == 6);
  CHECK(count(repeated("let--"), "<tied type=\"let-ring\"/>") == 6);
  CHECK(count(repeated("TP---"), "<tremolo type=\"single\">3</tremolo>") == 6);
  CHECK(count(repeated("PM---"), "<direction") == 0);
  CHECK(count(repeated("mf   "), "<sound dynamics=\"88.888889\"/>") == 1);
  // From mf to the next louder one, f, in two steps: 88.9, 97.8, 106.7.
  const std::string swell = repeated("<----");
  CHECK(count(swell, "<direction") == 0);
  CHECK(count(swell, "<sound dynamics=\"97.777778\"/>") == 1);
  CHECK(count(swell, "<sound dynamics=\"106.666667\"/>") == 1);
  CHECK(count(swell, "<sound") == 2);
}

TEST_CASE("rows of words: text with its names filled in, syllables, sections") {
  check({rows("count | 1                      |\nA     | 5                      |\n"
              "text  | \"up to {{degree b3}}\"  |\n"),
         {direction("<words>up to F</words>")}});
  check({rows("count | 1    2  3    4  |\nA     | 5    3  5    3  |\nlyric | haul a- way  oh |\n"
              "lyric | low  tide       |\n"),
         {"<lyric number=\"1\"><syllabic>single</syllabic><text>haul</text></lyric><lyric number=\"2\">",
          "<syllabic>begin</syllabic><text>a</text>", "<syllabic>end</syllabic><text>way</text>"}});
  check({rows("count   | 1 2 3 4 |\nsection | A       |\nA       | 5       |\n"),
         {direction("<rehearsal>A</rehearsal>")}});
}

TEST_CASE("rows of the hands, and forced spellings") {
  const auto handed = [](const std::string& row) {
    return rows("count  | 1 2 3 4 |\nA      | 5   3   |\n" + row + " |\n");
  };
  check({handed("finger | 3   1  "), {"<fingering>3</fingering>", "<fingering>1</fingering>"}});
  check({handed("finger | T      "), {"<fingering>T</fingering>"}});
  check({handed("hand   | i   m  "), {"<pluck>i</pluck>", "<pluck>m</pluck>"}});
  check({handed("hand   | T   P  "),
         {"<other-technical>thumb slap</other-technical>", "<other-technical>pop</other-technical>"}});
  check({handed("stroke | d   u  "), {"<down-bow/>", "<up-bow/>"}});
  check({rows("count | 1  2 |\nspell | C# D |\nA     | 4  5 |\n"),
         {"<step>C</step><alter>1</alter>", "<accidental>sharp</accidental>"}});
  check({rows("count | 1   2 |\nspell | Db    |\nA     | 4   5 |\n"), {"<step>D</step><alter>-1</alter>"}});
}

TEST_CASE("string tokens: places, holds, signs and what joins notes") {
  check({tokens("5 =   0"),
         {"<string>3</string><fret>5</fret>", "<string>3</string><fret>0</fret>", "<step>D</step><octave>2</octave>"}});
  check({rows("count | 1 2 3 4 | 1 2 3 4 |\nA     | 5       | =       |\n"),
         {"<tie type=\"start\"/>", "<tied type=\"start\"/>", "<tie type=\"stop\"/>", "<tied type=\"stop\"/>"}});
  check({tokens("x"), {"<notehead>x</notehead>"}});
  check({tokens("(5)"), {"<notehead parentheses=\"yes\">normal</notehead>"}});
  check({tokens("<12>"), {"<harmonic><natural/><sounding-pitch/></harmonic>", "<step>A</step><octave>2</octave>"}});
  check({tokens("3 h5"),
         {"<hammer-on type=\"start\" number=\"3\">H</hammer-on>", "<hammer-on type=\"stop\" number=\"3\"",
          "<slur type=\"start\" number=\"3\"/>", "<slur type=\"stop\" number=\"3\"/>"}});
  check(
      {tokens("5 p3"), {"<pull-off type=\"start\" number=\"3\">P</pull-off>", "<pull-off type=\"stop\" number=\"3\""}});
  check({tokens("3 /5"), {"<slide type=\"start\" number=\"3\"", "<slide type=\"stop\" number=\"3\""}});
  check({tokens("5 \\3"), {"<slide type=\"start\" number=\"3\"", "<slide type=\"stop\" number=\"3\""}});
  check({tokens("/5"), {"<scoop/>"}});
  check({tokens("\\5"), {"<plop/>"}});
  check({tokens("5/"), {"<doit/>"}});
  check({tokens("5\\"), {"<falloff/>"}});
  check({tokens("5>"), {"<accent/>"}});
  check({tokens("5."), {"<staccato/>"}});
  check({tokens("5_"), {"<tenuto/>"}});
  check({tokens("5~"), {"<wavy-line type=\"start\" number=\"3\"/><wavy-line type=\"stop\" number=\"3\"/>"}});
  check({tokens("5^1/2"), {"<bend><bend-alter>1</bend-alter></bend>"}});
  check(
      {tokens("5^1v"), {"<bend><bend-alter>2</bend-alter></bend><bend><bend-alter>-2</bend-alter><release/></bend>"}});
  check({rows("count |   1 |\nA     | 3h5 |\n"), {"<note><grace slash=\"yes\"/>"}});
  check({rows("count | 1 la li 2 3 4 |\nA     | 5 3  5  3 5 3 |\n"),
         {"<time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes>",
          "<tuplet type=\"start\" bracket=\"no\"/>", "<tuplet type=\"stop\"/>", "<beam number=\"1\">begin</beam>",
          "<beam number=\"1\">continue</beam>", "<beam number=\"1\">end</beam>"}});
  check({rows("count | 1 |\nD     | 3 |\nA     | 5 |\n"), {"<note><chord/><pitch>"}});
}

TEST_CASE("a rhythm's strums: slashes, held, muted, accented and ghost ones, and what is dashed over them") {
  check({top("", "ukulele", "C major") + example("count | 1 2 & (3) 4 |\nchord | C           |\n"),
         {"<clef number=\"1\"><sign>percussion</sign></clef>", "<slash type=\"start\" use-stems=\"yes\"/>",
          "<unpitched><display-step>B</display-step><display-octave>4</display-octave></unpitched>",
          "<notehead>slash</notehead>", "<rest/>"},
         {"<staves>"}});
  check({top("", "ukulele", "C major") + example("count | 1 2 3   4   | 1 2 3 4 |\nplay  | > x (*)     |   * * * |\n"
                                                 "mark  | PM--        | let---- |\nstroke| d u d       |         |\n"),
         {"<notehead>x</notehead>", "<notehead parentheses=\"yes\">slash</notehead>", "<accent/>", "<down-bow/>",
          "<tie type=\"start\"/>", "<tie type=\"stop\"/>", "<play><mute>palm</mute></play>",
          "<tied type=\"let-ring\"/>"}});
}

TEST_CASE("a variation's notes, and a form that is written out around its example") {
  check({top("") + example("count | 1 2  3 4 |\nchord | i        |\nA     | 5 h7 5 3 |\n") +
             example("count | 1 2 3 4 | 1 2 3 4 |\nplay  | *   *   |   *   * |\nmark  | p       |         |\n",
                     "vary = 1\n"),
         {"<dynamics><p/></dynamics>", "<tie type=\"stop\"/>"},
         {"<unpitched>"}});
  const std::string form = "form = { bars = \"|: i7 % iv7 bVII7 :| i7 iv7,V7\", here = \"5\", write-out = true }\n";
  const std::string said = compact(export_lesson(top("") + example(plain, form)).document);
  for (int number = 1; number <= 6; ++number) {
    CHECK(said.find("<measure number=\"" + std::to_string(number) + "\"") != std::string::npos);
  }
}
