// What stands at the top right of a handout, read back from the finished page by programs that know nothing of it:
// zbarimg (ZBar) reads the QR code, pdftoppm and pdfinfo (Poppler) the PDF.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <string>
#include <vector>

#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "sheaf/referring.h"
#include "sheaf/said_by.h"
#include "sheaf/workshop.h"
#include "support/temporary_folder.h"
#include "template/reader.h"

using namespace fretsheaf;
using test::said_by;

namespace {

// A white lantern on nothing, 30 by 40.
const std::string lantern =
    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 30 40\"><path d=\"M5 10h20v25H5z\"/>"
    "<circle cx=\"15\" cy=\"6\" r=\"4\" fill=\"none\" stroke=\"#000\"/></svg>";

struct Shed {
  platform::DiskSystem disk;
  platform::MemorySystem system{disk};

  sheaf::Made make(const std::string& keys, std::vector<sheaf::Format> formats,
                   const std::optional<std::string>& look = std::nullopt) {
    system.files["tide.lesson.toml"] = "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n" + keys +
                                       "\n[[example]]\ntab = '''\ncount | 1 2 3 4 |\nA     | 5 7 5 8 |\n'''\n";
    sheaf::Workshop workshop(system);
    sheaf::Request request;
    request.lesson = "tide.lesson.toml";
    request.formats = std::move(formats);
    request.template_name = look;
    sheaf::Plan plan = workshop.plan(request);
    if (plan.jobs.empty()) return std::move(plan.made);
    sheaf::Made made = workshop.make(plan.jobs.front());
    for (sheaf::Report& report : plan.made.reports) made.reports.push_back(std::move(report));
    return made;
  }
};

std::string errors_of(const sheaf::Made& made) {
  std::string text;
  for (const sheaf::Report& report : made.reports) {
    for (const source::Diagnostic& one : report.diagnostics.list()) {
      const auto place = report.files[one.range.file].position(one.range.begin);
      text += std::to_string(place.line) + ":" + std::to_string(place.column) + ": " + one.message + "\n";
      if (!one.help.empty()) text += "help: " + one.help + "\n";
    }
  }
  return text;
}

std::string link_of(std::size_t length) {
  std::string link = "https://eelgrass.example/";
  while (link.size() < length) link += static_cast<char>('a' + link.size() % 26);
  return link;
}

}  // namespace

TEST_CASE("a phone reads the link from the page at 150 dots an inch, in every template and at every length") {
  const TemporaryFolder folder;
  Shed shed;
  for (const std::string& look : templates::template_names(shed.disk)) {
    for (const std::size_t length : {25, 60, 120, 300}) {
      CAPTURE(look, length);
      const sheaf::Made made = shed.make("link = \"" + link_of(length) + "\"", {sheaf::Format::pdf}, look);
      INFO(errors_of(made));
      REQUIRE(made.outputs.size() == 1);
      put(folder / "page.pdf", made.outputs.front().bytes);
      said_by("pdftoppm -r 150 -png -f 1 -l 1 -singlefile '" + (folder / "page.pdf") + "' '" + (folder / "page") + "'");
      CHECK(said_by("zbarimg --quiet --raw -Sdisable -Sqrcode.enable '" + (folder / "page.png") + "'") ==
            link_of(length) + "\n");
    }
  }
}

TEST_CASE("the code is a link to click, in the PDF and on the SVG page") {
  const TemporaryFolder folder;
  Shed shed;
  const sheaf::Made made = shed.make("link = \"https://eelgrass.example/7\"", {sheaf::Format::pdf, sheaf::Format::svg});
  REQUIRE(made.outputs.size() == 2);
  put(folder / "page.pdf", made.outputs[0].bytes);
  CHECK(said_by("pdfinfo -url '" + (folder / "page.pdf") + "'").find("https://eelgrass.example/7") !=
        std::string::npos);
  CHECK(made.outputs[1].bytes.find("class=\"qr-code\"") != std::string::npos);
  CHECK(made.outputs[1].bytes.find("href=\"https://eelgrass.example/7\"") != std::string::npos);
}

TEST_CASE("the same link gives the same bytes") {
  Shed one;
  Shed other;
  const std::string keys = "link = \"https://eelgrass.example/7\"\nlogo = \"lantern.svg\"\nlogo-alt = \"A lantern\"";
  one.system.files["lantern.svg"] = other.system.files["lantern.svg"] = lantern;
  const std::vector<sheaf::Format> formats = {sheaf::Format::pdf, sheaf::Format::svg};
  const sheaf::Made first = one.make(keys, formats);
  const sheaf::Made second = other.make(keys, formats);
  INFO(errors_of(first));
  REQUIRE(first.outputs.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) CHECK((first.outputs[i].bytes == second.outputs[i].bytes));
}

TEST_CASE("a logo is drawn with its words") {
  Shed shed;
  shed.system.files["lantern.svg"] = lantern;
  const sheaf::Made made =
      shed.make("logo = \"lantern.svg\"\nlogo-alt = \"A lantern\"", {sheaf::Format::svg, sheaf::Format::pdf});
  INFO(errors_of(made));
  REQUIRE(made.outputs.size() == 2);
  const std::string& page = made.outputs[0].bytes;
  CHECK(page.find("aria-label=\"A lantern\"") != std::string::npos);
  // 44 points high, as wide as it is drawn.
  CHECK(page.find("width=\"33\" height=\"44\" href=\"data:image/svg+xml;base64,") != std::string::npos);
  const sheaf::Made bare = shed.make("", {sheaf::Format::pdf});
  CHECK(made.outputs[1].bytes.size() > bare.outputs[0].bytes.size());
}

TEST_CASE("a logo that cannot be drawn is an error where the lesson names it") {
  struct Wrong {
    std::string file;
    std::string bytes;
    std::string said;
  };
  const std::string shapes =
      "\nhelp: an SVG logo is made of shapes alone: turn its text into outlines, and what it refers to into parts of "
      "it\n";
  const auto svg = [](const std::string& inside) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">" + inside + "</svg>";
  };
  const std::vector<Wrong> all = {
      {"a.png", "", "is an empty file\nhelp: save the picture anew from the program that drew it\n"},
      {"a.svg", "", "is an empty file\nhelp: save the picture anew from the program that drew it\n"},
      {"a.png", "no picture",
       "is not a PNG file that can be drawn\n"
       "help: open it in a program that shows pictures, and save it as a PNG from there\n"},
      {"a.svg", "<svg", "is not an SVG file that can be read" + shapes},
      {"a.svg", "<html/>", "is not an SVG file that can be read" + shapes},
      {"a.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"/>",
       "is not an SVG file that can be drawn\nhelp: an SVG says its size in width and height, or in viewBox\n"},
      {"a.svg", svg("<text>x</text>"), "holds text, which every machine would set in fonts of its own" + shapes},
      {"a.svg", svg("<script>x</script>"), "holds a script" + shapes},
      {"a.svg", svg("<path onclick=\"x()\"/>"), "holds a script" + shapes},
      {"a.svg", svg("<image href=\"other.png\"/>"), "needs parts outside its file" + shapes},
      {"a.svg", svg("<use href=\"http://example.org/a.svg#b\"/>"), "needs parts outside its file" + shapes},
      {"a.svg", svg("<path fill=\"url(http://example.org/a.svg#b)\"/>"), "needs parts outside its file" + shapes},
      {"a.svg", svg("<style>@import 'a.css';</style>"), "needs parts outside its file" + shapes},
      {"a.svg", svg("<style>/**/<!-- --><![CDATA[ @import 'a.css'; ]]></style>"),
       "needs parts outside its file" + shapes},
      {"a.svg", "<?xml-stylesheet href=\"a.css\"?>" + svg(""), "needs parts outside its file" + shapes},
      {"a.svg", "<!DOCTYPE svg [<!ATTLIST image href CDATA \"other.png\">]>" + svg("<image/>"),
       "needs parts outside its file" + shapes},
      {"a.svg", svg(test::referring(4)), "has its parts drawn more than 10000 times by reference" + shapes},
      {"a.svg", "<!DOCTYPE svg [<!ENTITY a \"b\">]>" + svg(""), "defines entities" + shapes},
      {"a.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 900 9\"/>",
       "is too long and thin to be seen in a handout's head\nhelp: it may be up to 20 times as long as it is wide\n"},
  };
  for (const Wrong& wrong : all) {
    Shed shed;
    shed.system.files[wrong.file] = wrong.bytes;
    const sheaf::Made made = shed.make("logo = \"" + wrong.file + "\"\nlogo-alt = \"A lantern\"", {sheaf::Format::pdf});
    CAPTURE(wrong.bytes);
    CHECK(made.status == sheaf::Made::Status::lesson_wrong);
    CHECK(made.outputs.empty());
    CHECK(errors_of(made) == "4:8: this logo " + wrong.said);
  }
}
