// Files that mean harm, or are none: a clear word, soon, in little memory.
#include <catch2/catch.hpp>
#include <string>
#include <utility>
#include <vector>

#include "exchange/adopt.h"
#include "exchange/container.h"
#include "exchange/packing.h"
#include "exchange/said.h"
#include "exchange/scores.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

std::string said(const std::string& bytes) {
  const exchange::Adopted adopted = exchange::adopt("a.mxl", bytes, {});
  REQUIRE(!adopted.lesson);
  return said_of(adopted);
}

std::string container_of(const std::string& path) {
  return "<container><rootfiles><rootfile full-path=\"" + path + "\"/></rootfiles></container>";
}

std::string repeated(const std::string& text, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

const std::string score = score_of(measure(1, plain_attributes + note("E4", 16)));
const std::string anew = "help: export the score anew from the program that made it\n";

// The score in UTF-16 of either order, with its mark.
std::string utf16(const std::string& ascii, bool high_first) {
  std::string bytes = high_first ? "\xFE\xFF" : "\xFF\xFE";
  for (const char c : ascii) bytes += high_first ? std::string(1, '\0') + c : c + std::string(1, '\0');
  return bytes;
}

}  // namespace

TEST_CASE("UTF-16 of either order is read, other encodings are refused by name") {
  for (const bool high_first : {true, false}) {
    const auto plain = exchange::adopt("a", score, {});
    REQUIRE(plain.lesson);
    CHECK(exchange::adopt("a", utf16(score, high_first), {}).lesson == plain.lesson);
  }
  const std::string help = "help: save or export it as UTF-8\n";
  std::string latin = score;
  latin.replace(latin.find("UTF-8"), 5, "ISO-8859-1");
  CHECK(said(latin) ==
        "a.mxl:1:1: error: this file is written in ISO-8859-1, and only UTF-8 and UTF-16 are read\n" + help);
  CHECK(said(utf16(score, true).substr(2)) ==
        "a.mxl:1:1: error: this file is written in UTF-16 without a byte-order mark, and only UTF-8 and UTF-16 are "
        "read\n" +
            help);
  CHECK(said(utf16(score, true) + "x") == "a.mxl:1:1: error: this file begins as UTF-16, and is not\n" + help);
  CHECK(said(std::string("\xFF\xFE\0\0<\0\0\0", 8)) ==
        "a.mxl:1:1: error: this file is written in UTF-32, and only UTF-8 and UTF-16 are read\n" + help);
  CHECK(said("<score-partwise>\xC3\x28") == "a.mxl:1:1: error: this file is not sound UTF-8\n" + help);
}

TEST_CASE("entities of a document's own are refused, however few lines they take") {
  const std::string bomb =
      "<?xml version=\"1.0\"?>\n<!DOCTYPE score-partwise [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b "
      "\"&a;&a;&a;&a;&a;&a;&a;&a;\">]>\n<score-partwise>&b;</score-partwise>";
  CHECK(said(bomb) ==
        "a.mxl:2:1: error: this document declares entities of its own\n"
        "help: no program needs them for a score: export it anew\n");
}

TEST_CASE("what is no score is said to be none") {
  CHECK(said("") == "a.mxl:1:1: error: this is not sound XML from here on\n" + anew);
  CHECK(said("<html/>") ==
        "a.mxl:1:1: error: this is no MusicXML score: it begins with `html`\n"
        "help: a score begins with `score-partwise`\n");
  CHECK(said("<score-timewise/>") ==
        "a.mxl:1:1: error: this score puts its parts into measures (score-timewise)\n"
        "help: export it as score-partwise, as programs do by themselves\n");
  CHECK(said("<score-partwise/>") == "a.mxl:1:1: error: this score has no part\nhelp: export the score anew\n");
  CHECK(said("<score-partwise><part>") == "a.mxl:1:1: error: this is not sound XML from here on\n" + anew);
}

TEST_CASE("deep nesting, and more elements than there is memory for, are refused before they are parsed") {
  CHECK(said(repeated("<a>", 1000000)) ==
        "a.mxl:1:193: error: elements stand more than 64 deep here\nhelp: this is no score\n");
  CHECK(said("<score-partwise>" + repeated("<a/>", 4000000) + "</score-partwise>")
            .find("error: this document has more elements than a lesson's score can have\nhelp: take it in parts\n") !=
        std::string::npos);
  CHECK(said(std::string(17 * 1024 * 1024, ' ')) ==
        "a.mxl:1:1: error: this file has more than 16 MiB\nhelp: a lesson's score is smaller: take it in parts\n");
}

TEST_CASE("archives that are damaged, name no score, or name one outside are refused") {
  const auto packed = [](const std::string& container) {
    return zip_of({{"META-INF/container.xml", container}, {"score.musicxml", score}});
  };
  CHECK(exchange::adopt("a.mxl", packed(container_of("score.musicxml")), {}).lesson.has_value());
  CHECK(said("PK\x03\x04 and no more") == "a.mxl:1:1: error: this archive is damaged\n" + anew);
  CHECK(said(zip_of({{"score.musicxml", score}})) ==
        "a.mxl:1:1: error: this archive has no readable `META-INF/container.xml`\n" + anew);
  CHECK(said(packed("<container/>")) ==
        "a.mxl:1:1: error: `META-INF/container.xml` in this archive names no score\n" + anew);
  for (const char* path :
       {"../score.musicxml", "/etc/score.musicxml", "a/../../b", "c:score", "..\\score", "./score"}) {
    CHECK(said(packed(container_of(path))) ==
          "a.mxl:1:1: error: `META-INF/container.xml` names a score outside its archive\n" + anew);
  }
  CHECK(said(packed(container_of("other.musicxml"))) ==
        "a.mxl:1:1: error: this archive has no readable `other.musicxml`\n" + anew);
}

TEST_CASE("an archive that swells is stopped at the limit") {
  const std::string bomb = zip_of({{"META-INF/container.xml", container_of("score.musicxml")},
                                   {"score.musicxml", std::string(std::size_t{200} * 1024 * 1024, ' ')}});
  REQUIRE(bomb.size() < 1024 * 1024);
  CHECK(said(bomb) ==
        "a.mxl:1:1: error: `score.musicxml` in this archive is larger than its kind ever is\n"
        "help: a score may have 16 MiB: take it in parts\n");
}

TEST_CASE("durations beyond all counting are errors") {
  CHECK(said(score_of(measure(1, plain_attributes + note("E4", 999999999)))) ==
        "a.mxl:9:1: error: measure 1: a duration is no part of a beat that could be counted\n" + anew);
  CHECK(said(score_of(measure(1, plain_attributes + "<backup><duration>4</duration></backup>\n"))) ==
        "a.mxl:9:1: error: measure 1: `backup` goes back behind the measure's start\n" + anew);
  CHECK(said(score_of(measure(1, plain_attributes + note("E4", 0)))) ==
        "a.mxl:9:1: error: measure 1: a duration of `0` is none\n" + anew);
}

TEST_CASE("of thousands of parts each is found at once, of two with one id the first") {
  std::string list;
  std::string parts;
  for (int i = 0; i < 20000; ++i) {
    const std::string id = "id=\"P" + std::to_string(i) + "\"";
    list += "<score-part " + id + "/>";
    parts += "<part " + id + ">" + (i == 19998 ? measure(1, plain_attributes + note("E4", 16)) : "") + "</part>";
  }
  const std::string bytes =
      "<score-partwise><part-list>" + list + "</part-list>" + parts + "<part id=\"P19998\"/></score-partwise>";
  exchange::AdoptWish wish;
  wish.part = "19999";
  CHECK(exchange::adopt("a.mxl", bytes, wish).lesson);
}

TEST_CASE("thousands of kinds of losses are told, each at its own element") {
  std::string kinds;
  for (int i = 0; i < 9000; ++i) kinds += "<k" + std::to_string(i) + "/>";
  const exchange::Adopted adopted =
      exchange::adopt("a.mxl", score_of(measure(1, plain_attributes + note("E4", 16) + kinds)), {});
  REQUIRE(adopted.lesson);
  const std::string_view bytes = adopted.files[0].bytes();
  int told = 0;
  for (const source::Diagnostic& one : adopted.diagnostics.list()) {
    if (one.code != source::Code::adopt_left_out) continue;
    const std::string_view tag = bytes.substr(one.range.begin, one.range.end - one.range.begin);
    CHECK(one.message == "measure 1: `" + std::string(tag.substr(1)) + "` is left out");
    // And not at one whose name begins so.
    CHECK(bytes[one.range.end] == '/');
    ++told;
  }
  CHECK(told == 9000);
}
