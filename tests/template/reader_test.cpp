#include "template/reader.h"

#include <catch2/catch.hpp>
#include <string>

#include "platform/memory_system.h"

using namespace fretsheaf;
using templates::read_template;
using templates::ReadTemplate;

namespace {

constexpr const char* path = "looks/shed.toml";

ReadTemplate read(const std::string& text) {
  platform::MemorySystem system;
  system.files[path] = text;
  return read_template(path, system);
}

// All that is said of a template, as a teacher sees it.
std::string said(const std::string& text) {
  const ReadTemplate result = read(text);
  std::string all;
  for (const source::Diagnostic& d : result.diagnostics.sorted()) all += source::render(d, result.files);
  CHECK(result.look.has_value() == all.empty());
  return all;
}

}  // namespace

TEST_CASE("an empty template is the music-stand under another name") {
  const ReadTemplate result = read("");
  REQUIRE(result.look);
  const templates::Template plain;
  CHECK(result.look->name == "shed");
  CHECK(result.look->measures.space == plain.measures.space);
  CHECK(result.look->style(templates::Role::title).size == 27);
  CHECK(result.look->footer == plain.footer);
}

TEST_CASE("a template changes what it names and nothing else") {
  const ReadTemplate result = read(
      "accent = \"#7A0019\"\n"
      "least-type = 9\n"
      "two-sided = true\n"
      "footer = [\"{copyright}\", \"\", \"{page} · {link}\"]\n"
      "[type]\n"
      "title = { size = 30 }\n"
      "meta = { size = 9 }\n"
      "caption = { size = 9, fonts = [\"inter-medium\"], tracking = 0.5, tabular = true }\n"
      "[page]\nmargin-left = 70\n");
  // Type that the file leaves at 8 is now under its own least.
  CHECK(result.diagnostics.has_errors());
  const ReadTemplate good = read(
      "accent = \"#7A0019\"\n"
      "two-sided = true\n"
      "footer = [\"{copyright}\", \"\", \"{page} · {link}\"]\n"
      "[type]\n"
      "title = { size = 30 }\n"
      "caption = { size = 9, fonts = [\"inter-medium\"], tracking = 0.5, tabular = true }\n"
      "[page]\nmargin-left = 70\n");
  REQUIRE(good.look);
  const templates::Template& look = *good.look;
  CHECK(look.accent.red == 0x7A);
  CHECK(look.accent.green == 0);
  CHECK(look.accent.blue == 0x19);
  CHECK(look.two_sided);
  CHECK(look.footer[2] == "{page} · {link}");
  CHECK(look.style(templates::Role::title).size == 30);
  CHECK(look.style(templates::Role::title).fonts == templates::Template().style(templates::Role::title).fonts);
  CHECK(look.style(templates::Role::caption).fonts == std::vector<std::string>{"inter-medium"});
  CHECK(look.style(templates::Role::caption).tracking == 0.5);
  CHECK(look.style(templates::Role::caption).tabular);
  CHECK(look.measures.margin_left == 70);
  CHECK(look.measures.margin_right == templates::Measures().margin_right);
}

TEST_CASE("a font's path is meant from the template's folder") {
  const ReadTemplate result =
      read("[type]\ntitle = { fonts = [\"faces/Own.ttf\", \"/usr/Own.otf\", \"Own.ttf\", \"charis-bold\"] }\n");
  REQUIRE(result.look);
  CHECK(result.look->style(templates::Role::title).fonts ==
        std::vector<std::string>{"looks/faces/Own.ttf", "/usr/Own.otf", "looks/Own.ttf", "charis-bold"});
}

TEST_CASE("a key that is none suggests the nearest") {
  CHECK(said("acent = \"#000000\"\n") ==
        "looks/shed.toml:1:1: error: a template has no key 'acent' here\n"
        "  acent = \"#000000\"\n"
        "  ^^^^^\n"
        "help: did you mean 'accent'?\n");
  CHECK(said("[page]\nmargin-lefft = 3\n") ==
        "looks/shed.toml:2:1: error: a template has no key 'margin-lefft' here\n"
        "  margin-lefft = 3\n"
        "  ^^^^^^^^^^^^\n"
        "help: did you mean 'margin-left'?\n");
  CHECK(said("[type]\nheadign = { size = 14 }\n") ==
        "looks/shed.toml:2:1: error: a template has no key 'headign' here\n"
        "  headign = { size = 14 }\n"
        "  ^^^^^^^\n"
        "help: did you mean 'heading'?\n");
  CHECK(said("[type]\nheading = { colour = 14 }\n") ==
        "looks/shed.toml:2:13: error: a template has no key 'colour' here\n"
        "  heading = { colour = 14 }\n"
        "              ^^^^^^\n"
        "help: known here: fonts, size, tracking, tabular\n");
  CHECK(said("[staff]\nzzzzzzzz = 1\n") ==
        "looks/shed.toml:2:1: error: a template has no key 'zzzzzzzz' here\n"
        "  zzzzzzzz = 1\n"
        "  ^^^^^^^^\n"
        "help: templates/README.md lists the keys\n");
}

TEST_CASE("values of the wrong kind say what is wanted") {
  CHECK(said("[staff]\nspace = \"wide\"\n") ==
        "looks/shed.toml:2:9: error: 'space' takes a number\n"
        "  space = \"wide\"\n"
        "          ^^^^^^\n");
  CHECK(said("two-sided = 1\n") ==
        "looks/shed.toml:1:13: error: 'two-sided' takes true or false\n"
        "  two-sided = 1\n"
        "              ^\n");
  CHECK(said("page = 3\n") ==
        "looks/shed.toml:1:8: error: 'page' takes a table of its own, [page]\n"
        "  page = 3\n"
        "         ^\n");
  CHECK(said("[type]\ntitle = 27\n") ==
        "looks/shed.toml:2:9: error: 'title' takes a table, such as { size = 10, fonts = [\"charis-regular\"] }\n"
        "  title = 27\n"
        "          ^^\n");
  CHECK(said("[type]\ntitle = { fonts = \"charis-bold\" }\n") ==
        "looks/shed.toml:2:19: error: 'fonts' takes a list of font names, such as [\"charis-regular\"]\n"
        "  title = { fonts = \"charis-bold\" }\n"
        "                    ^^^^^^^^^^^^^\n");
  CHECK(said("footer = [\"a\", \"b\"]\n") ==
        "looks/shed.toml:1:10: error: 'footer' takes three texts: left, centre, right\n"
        "  footer = [\"a\", \"b\"]\n"
        "           ^^^^^^^^^^\n");
}

TEST_CASE("a value outside its limits names them") {
  CHECK(said("[staff]\nspace = 300\n") ==
        "looks/shed.toml:2:9: error: 'space' must lie between 3 and 20\n"
        "  space = 300\n"
        "          ^^^\n");
  CHECK(said("[staff]\nspacing-ratio = nan\n") ==
        "looks/shed.toml:2:17: error: 'spacing-ratio' must lie between 1 and 2.5\n"
        "  spacing-ratio = nan\n"
        "                  ^^^\n");
}

TEST_CASE("type under the template's own least is refused, wherever it comes from") {
  CHECK(said("[type]\ndegree = { size = 7.5 }\n") ==
        "looks/shed.toml:2:19: error: 'degree' is set in 7.5 pt, under the template's least type of 8 pt\n"
        "  degree = { size = 7.5 }\n"
        "                    ^^^\n"
        "help: make it larger, or lower 'least-type'\n");
  // Every role that the file leaves at 8 is named, at the one place that makes it wrong.
  CHECK(said("least-type = 8.1\n")
            .find("looks/shed.toml:1:14: error: 'meta' is set in 8 pt, under the template's least type of 8.1 pt\n"
                  "  least-type = 8.1\n"
                  "               ^^^\n") != std::string::npos);
}

TEST_CASE("an accent is a colour, dark enough for paper") {
  CHECK(said("accent = \"teal\"\n") ==
        "looks/shed.toml:1:10: error: 'accent' takes a colour in hexadecimal figures\n"
        "  accent = \"teal\"\n"
        "           ^^^^^^\n"
        "help: write it as \"#095461\": red, green and blue, two figures each\n");
  // WCAG 2.2: on white, #767676 passes 4.5 to 1 and #777777 fails.
  CHECK(said("accent = \"#767676\"\n").empty());
  CHECK(said("accent = \"#777777\"\n") ==
        "looks/shed.toml:1:10: error: this accent is too pale for text on white paper: its contrast is under 4.5 to 1\n"
        "  accent = \"#777777\"\n"
        "           ^^^^^^^^^\n"
        "help: choose a darker colour, such as \"#095461\"\n");
}

TEST_CASE("gaps rise from the least over the natural to the most") {
  CHECK(said("[page]\nblock-gap = 60\n") ==
        "looks/shed.toml:2:13: error: 'block-gap' (60) is larger than 'block-gap-most' (44)\n"
        "  block-gap = 60\n"
        "              ^^\n"
        "help: write values that rise from the least over the natural to the most\n");
}

TEST_CASE("patterns know their holes") {
  CHECK(said("footer = [\"{copyrigt}\", \"\", \"\"]\n") ==
        "looks/shed.toml:1:11: error: 'footer' knows no '{copyrigt}'\n"
        "  footer = [\"{copyrigt}\", \"\", \"\"]\n"
        "            ^^^^^^^^^^^^\n"
        "help: did you mean '{copyright}'?\n");
  CHECK(said("footer = [\"\", \"{link\", \"\"]\n") ==
        "looks/shed.toml:1:15: error: 'footer' has a '{' that is not closed\n"
        "  footer = [\"\", \"{link\", \"\"]\n"
        "                ^^^^^^^\n"
        "help: it knows {title}, {series}, {number}, {level}, {teacher}, {copyright}, {link}, {page}\n");
}

TEST_CASE("the top line and the head of later pages have holes of their own") {
  CHECK(said("top-line = \"{page}\"\n") ==
        "looks/shed.toml:1:12: error: 'top-line' knows no '{page}'\n"
        "  top-line = \"{page}\"\n"
        "             ^^^^^^^^\n"
        "help: it knows {series}, {number}, {level}\n");
  CHECK(said("top-line = 3\n") ==
        "looks/shed.toml:1:12: error: 'top-line' takes a text\n"
        "  top-line = 3\n"
        "             ^\n");
  CHECK(said("later-pages = [\"{titel}\", \"\"]\n") ==
        "looks/shed.toml:1:16: error: 'later-pages' knows no '{titel}'\n"
        "  later-pages = [\"{titel}\", \"\"]\n"
        "                 ^^^^^^^^^\n"
        "help: did you mean '{title}'?\n");
  CHECK(said("later-pages = \"{title}\"\n") ==
        "looks/shed.toml:1:15: error: 'later-pages' takes two texts: left, right\n"
        "  later-pages = \"{title}\"\n"
        "                ^^^^^^^^^\n");
}

TEST_CASE("a template chooses its paper, its head and its facts") {
  const ReadTemplate result = read(
      "paper = \"letter\"\nhead = [\"title\", \"facts\"]\nfacts = [\"tuning\", \"key\"]\n"
      "fact-labels = \"beside\"\ncautions = false\none-thing-a-line = true\n"
      "top-line = \"{level}\"\nlater-pages = [\"{series}\", \"{page}\"]\n");
  REQUIRE(result.look);
  using namespace templates;
  CHECK(result.look->paper == Paper::letter);
  CHECK(read("paper = \"a4\"\n").look->paper == Paper::a4);
  CHECK(read("").look->paper == Paper::a4);
  CHECK(result.look->head == std::vector{HeadPart::title, HeadPart::facts});
  CHECK(result.look->facts == std::vector{FactName::tuning, FactName::key});
  CHECK(result.look->labels_beside);
  CHECK_FALSE(result.look->cautions);
  CHECK(result.look->one_thing_a_line);
  CHECK(result.look->top_line == "{level}");
  CHECK(result.look->later_pages[1] == "{page}");
  CHECK(read("facts = []\n").look->facts.empty());
}

TEST_CASE("a word that a key does not know is refused") {
  CHECK(said("fact-labels = \"besides\"\n") ==
        "looks/shed.toml:1:15: error: 'fact-labels' knows no 'besides'\n"
        "  fact-labels = \"besides\"\n"
        "                ^^^^^^^^^\n"
        "help: did you mean 'beside'?\n");
  CHECK(said("fact-labels = \"underneath\"\n") ==
        "looks/shed.toml:1:15: error: 'fact-labels' knows no 'underneath'\n"
        "  fact-labels = \"underneath\"\n"
        "                ^^^^^^^^^^^^\n"
        "help: it knows above, beside\n");
  CHECK(said("paper = \"legal\"\n") ==
        "looks/shed.toml:1:9: error: 'paper' knows no 'legal'\n"
        "  paper = \"legal\"\n"
        "          ^^^^^^^\n"
        "help: it knows a4, letter\n");
  CHECK(said("paper = 4\n") ==
        "looks/shed.toml:1:9: error: 'paper' takes one of \"a4\", \"letter\"\n"
        "  paper = 4\n"
        "          ^\n");
  CHECK(said("fact-labels = true\n") ==
        "looks/shed.toml:1:15: error: 'fact-labels' takes one of \"above\", \"beside\"\n"
        "  fact-labels = true\n"
        "                ^^^^\n");
  CHECK(said("facts = \"key\"\n") ==
        "looks/shed.toml:1:9: error: 'facts' takes a list\n"
        "  facts = \"key\"\n"
        "          ^^^^^\n");
  CHECK(said("facts = [\"key\", \"metre\", \"key\"]\n") ==
        "looks/shed.toml:1:17: error: 'facts' knows no 'metre'\n"
        "  facts = [\"key\", \"metre\", \"key\"]\n"
        "                  ^^^^^^^\n"
        "help: did you mean 'meter'?\n"
        "looks/shed.toml:1:26: error: 'facts' names this a second time\n"
        "  facts = [\"key\", \"metre\", \"key\"]\n"
        "                           ^^^^^\n"
        "help: take one of them out\n");
  CHECK(said("head = [\"facts\"]\n") ==
        "looks/shed.toml:1:8: error: 'head' leaves out the title\n"
        "  head = [\"facts\"]\n"
        "         ^^^^^^^^^\n"
        "help: every handout says what it is: put \"title\" in\n");
}

TEST_CASE("a syntax error ends the reading, all else is reported together") {
  CHECK(said("[page]\nmargin-left = = 3\n[nonsense]\n") ==
        "looks/shed.toml:2:15: error: this template cannot be read as TOML from here on\n"
        "  margin-left = = 3\n"
        "                ^\n"
        "help: look here and just before for a missing quote, bracket or '=', or a key written twice\n");
  const ReadTemplate result = read("acent = 1\n[staff]\nspace = 300\n");
  CHECK(result.diagnostics.list().size() == 2);
}

TEST_CASE("what the parser cannot bear does not come to it") {
  const std::string help =
      "help: look here and just before for a missing quote, bracket or '=', or a key written twice\n";
  CHECK(said("[page]\nmargin-left = 8\"© Eelgrass\"\n") ==
        "looks/shed.toml:2:16: error: this template cannot be read as TOML from here on\n"
        "  margin-left = 8\"© Eelgrass\"\n"
        "                 ^\n" +
            help);
  CHECK(said("é = 3\n") ==
        "looks/shed.toml:1:1: error: this template cannot be read as TOML from here on\n"
        "  é = 3\n"
        "  ^\n" +
            help);
  std::string deep = "a";
  for (int i = 0; i < 100000; ++i) deep += ".a";
  const ReadTemplate result = read(deep + " = 1\n");
  REQUIRE(result.diagnostics.list().size() == 1);
  CHECK(result.diagnostics.list()[0].code == source::Code::template_syntax);
}

TEST_CASE("a place counts code points, after a byte-order mark and CRLF too") {
  CHECK(said("\xEF\xBB\xBF# Gezeiten ♪\r\nfooter = [\"é♪\", 3, \"\"]\r\n") ==
        "looks/shed.toml:2:17: error: 'footer' takes three texts: left, centre, right\n"
        "  footer = [\"é♪\", 3, \"\"]\n"
        "                  ^\n");
}

TEST_CASE("files that are no template say why") {
  platform::MemorySystem system;
  CHECK(read_template("gone", system).missing);
  CHECK(read_template("looks/gone.toml", system).missing);

  system.files[path] = std::string("a = 1\0", 6);
  ReadTemplate result = read_template(path, system);
  CHECK_FALSE(result.look);
  CHECK(source::render(result.diagnostics.list().front(), result.files)
            .find("looks/shed.toml:1:1: error: this is not a text file: it holds a NUL byte\n") == 0);

  system.files[path] = "a = \"\xFF\"";
  result = read_template(path, system);
  CHECK(source::render(result.diagnostics.list().front(), result.files)
            .find("looks/shed.toml:1:1: error: this is not a text file in UTF-8\n") == 0);

  system.files[path] = std::string(256 * 1024 + 1, '#');
  result = read_template(path, system);
  CHECK_FALSE(result.look);
  CHECK_FALSE(result.missing);

  system.read_failures[path] = {platform::FileError::Kind::folder, "is a folder"};
  result = read_template(path, system);
  CHECK(source::render(result.diagnostics.list().front(), result.files)
            .find("looks/shed.toml:1:1: error: is a folder\n") == 0);
}

TEST_CASE("names are looked for among the program's own templates") {
  platform::MemorySystem system;
  const std::string folder = system.data_path("templates");
  system.files[folder + "/plain.toml"] = "";
  system.files[folder + "/README.md"] = "";
  CHECK(templates::template_names(system) == std::vector<std::string>{"plain"});
  const ReadTemplate result = read_template("plain", system);
  REQUIRE(result.look);
  CHECK(result.look->name == "plain");
}
