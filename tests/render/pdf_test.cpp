#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <sstream>

#include "readers.h"
#include "render/render.h"
#include "sample.h"

using namespace fretsheaf;
using namespace fretsheaf::render;
using Catch::Matchers::Contains;

namespace {

std::string text_of(const std::string& pdf) {
  return reader("pdftotext", "-enc UTF-8 -layout", pdf, "-");
}

int count_of(const std::string& part, const std::string& text) {
  int count = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE_METHOD(Sample, "Poppler finds the text of a PDF: ligatures, accents, tracking, spacing") {
  for (const char* words : {"An efficient office flows", "Fingers \u2013 caf\u00E9, na\u00EFve \u00DCbung",
                            "EXAMPLE 12", "\u201CLand on the third.\u201D \u00BD", "AV To We. 1/4 x-x"}) {
    for (const typeface::FontId font : {charis, inter}) {
      for (const double tracking : {0.0, 0.25, -0.2}) {
        INFO(words << " " << font << " " << tracking);
        CHECK_THAT(text_of(pdf(a4(text(words, {font}, 62, 100, 12, tracking)), fonts)), Contains(words));
      }
    }
  }
}

TEST_CASE_METHOD(Sample, "Accidentals of the music font are found within their words") {
  const std::string made = pdf(a4(text("B\u266D7 and F\u266Fm, then C\u266E", {charis, music}, 62, 100)), fonts);
  const std::string found = reader("pdftotext", "-enc UTF-8 -raw", made, "-");
  CHECK_THAT(found, Contains("B\u266D7 and F\u266Fm, then C\u266E"));
}

TEST_CASE_METHOD(Sample, "A mark that has no composed form is found as it was written") {
  CHECK_THAT(text_of(pdf(a4(text("x\u0301 end", {charis}, 62, 100)), fonts)), Contains("x\u0301 end"));
}

// Poppler gives a glyph without text the character of its font's own map, at most; it must join no word.
TEST_CASE_METHOD(Sample, "A sign without text is drawn and leaves the words beside it whole") {
  const std::uint32_t clef = fonts.glyph(music, U'\U0001D122').value();
  sheet::GlyphRun sign{sheet::Part::clef, music, 22, {}, {{clef, 100, 100}}, "", {}};
  std::vector<sheet::Item> items = text("low tide", {inter}, 62, 140);
  items.emplace_back(sign);
  const std::string made = pdf(a4(std::move(items)), fonts);
  CHECK_THAT(reader("pdffonts", "", made), Contains("NotoMusic"));
  CHECK_THAT(text_of(made), Contains("low tide"));
}

TEST_CASE_METHOD(Sample, "All fonts are embedded as subsets with a way back to Unicode") {
  std::vector<sheet::Item> items = text("The pulse \u266D", {charis, music}, 62, 100);
  for (const char* name : {"inter-regular", "inter-bold", "charis-bold", "charis-italic", "charis-bold-italic"}) {
    std::vector<sheet::Item> more = text("Eelgrass", {open(name)}, 62, 100 + 20.0 * open(name));
    items.insert(items.end(), more.begin(), more.end());
  }
  std::istringstream lines(reader("pdffonts", "", pdf(a4(std::move(items)), fonts)));
  std::string line;
  std::getline(lines, line);
  REQUIRE_THAT(line, Contains("emb sub uni"));
  const std::size_t at = line.find("emb sub uni");
  std::getline(lines, line);
  int fonts_seen = 0;
  while (std::getline(lines, line)) {
    INFO(line);
    CHECK(line.substr(at, 11) == "yes yes yes");
    ++fonts_seen;
  }
  CHECK(fonts_seen >= 7);
}

// Poppler draws what it read as an SVG page: a path a stroke.
TEST_CASE_METHOD(Sample, "Rules of one pen that follow one another are one stroke, and none is lost") {
  const auto rule = [](double y, double width, double dash) {
    return sheet::Rule{sheet::Part::staff_line, {62, y}, {300, y}, width, {}, dash, dash};
  };
  std::vector<sheet::Item> items;
  for (const double y : {100.0, 110.0, 120.0}) items.emplace_back(rule(y, 0.6, 0));
  items.emplace_back(rule(130, 1.2, 0));
  for (const double y : {140.0, 150.0}) items.emplace_back(rule(y, 1.2, 3));
  items.emplace_back(rule(160, 0.6, 0));
  const std::string page = reader("pdftocairo", "-svg", pdf(a4(std::move(items)), fonts), "-");
  CHECK(count_of("<path", page) == 4);
  CHECK(count_of(" L ", page) == 7);
  CHECK(count_of("stroke-dasharray", page) == 1);
}

TEST_CASE_METHOD(Sample, "Title, author, creator and a fixed date are in the PDF, and its page is A4") {
  const std::string info = reader("pdfinfo", "-isodates", pdf(a4(text("x", {inter}, 62, 100)), fonts));
  CHECK_THAT(info, Contains("Title:           Low tide vamp\n"));
  CHECK_THAT(info, Contains("Author:          Eelgrass Strings\n"));
  CHECK_THAT(info, Contains("Creator:         fretsheaf\n"));
  CHECK_THAT(info, Contains("CreationDate:    2000-01-01T00:00:00Z\n"));
  CHECK_THAT(info, Contains("(A4)"));
}

TEST_CASE_METHOD(Sample, "Web and mail addresses can be clicked, others cannot") {
  std::vector<sheet::Item> items = text("Hear it", {inter}, 62, 100);
  items.emplace_back(sheet::Link{{62, 90, 102, 103}, "https://example.org/tide?a=1&b='(x)'"});
  items.emplace_back(sheet::Link{{62, 190, 102, 203}, "mailto:class@example.org"});
  items.emplace_back(sheet::Link{{62, 290, 102, 303}, "javascript:alert(1)"});
  items.emplace_back(sheet::Link{{62, 390, 102, 403}, "file:///etc/hosts"});
  sheet::Sheet sheet = a4(items);
  sheet.pages.push_back(sheet.pages[0]);
  const std::string made = pdf(sheet, fonts);
  const std::string links = reader("pdfinfo", "-url", made);
  CHECK_THAT(links, Contains("https://example.org/tide?a=1&b=%27(x)%27"));
  CHECK_THAT(links, Contains("mailto:class@example.org"));
  CHECK_THAT(links, !Contains("javascript"));
  CHECK_THAT(links, !Contains("file:"));
  CHECK(std::count(links.begin(), links.end(), '\n') == 1 + 2 * 2);  // a head, and two on each page
  // Outside the text, as a foot's are, all that lead to one place are one, told at the end.
  const std::string told = reader("pdfinfo", "-struct", made);
  CHECK(told.find("Link") != told.rfind("Link"));
  CHECK_THAT(reader("qpdf", "--qdf --object-streams=disable", made, "-"),
             Contains("/Contents (https://example.org/tide?a=1&b=%27\\(x\\)%27)"));
  CHECK_THAT(reader("qpdf", "--check", made), Contains("No syntax or stream encoding errors found"));
}

TEST_CASE_METHOD(Sample, "Bookmarks lead to their pages") {
  sheet::Sheet sheet = a4(text("one", {inter}, 62, 100));
  sheet.pages.push_back({612, 792, text("two", {inter}, 62, 100)});
  sheet.bookmarks = {{"The pulse", 0, 100}, {"Gl\u00FCck", 1, 300}, {"nowhere", 7, 0}};
  const std::string made = pdf(sheet, fonts);
  CHECK_THAT(reader("pdfinfo", "", made), Contains("Pages:           2"));
  const std::string objects = reader("qpdf", "--qdf --object-streams=disable", made, "-");
  // Titles are UTF-16 (PDF 1.7, 7.9.2.2), places count from the page's bottom: 841.89 - 100 and 792 - 300.
  CHECK_THAT(objects, Contains("/Title (The pulse)") || Contains("<feff00540068006500200070"));
  CHECK_THAT(objects, Contains("<feff0047006c00fc0063006b>"));
  CHECK_THAT(objects, Contains("741.8898") && Contains("/XYZ") && Contains(" 492\n"));
  CHECK_THAT(objects, !Contains("006e006f00770068"));  // "nowh"
}

TEST_CASE("The same sheet gives the same bytes") {
  std::string first;
  for (int time = 0; time < 3; ++time) {
    Sample sample;
    sheet::Sheet sheet = a4(sample.text("The pulse B\u266D", {sample.charis, sample.music}, 62, 100));
    sheet.bookmarks = {{"The pulse", 0, 80}};
    sheet.pages[0].items.emplace_back(sheet::Link{{62, 90, 102, 103}, "https://example.org/tide"});
    const std::string made = pdf(sheet, sample.fonts);
    CHECK(made.starts_with("%PDF-"));
    if (time == 0) first = made;
    CHECK(made == first);
  }
}

// cairo keeps fonts when a set is gone; a later set's fonts must not be taken for them.
TEST_CASE("Sets of fonts that come and go do not mix their glyphs") {
  const auto draw = [](const char* name) {
    const platform::DiskSystem system;
    typeface::FontSet fonts(system);
    const auto font = std::get<typeface::FontId>(fonts.open(name));
    const std::uint32_t glyph = fonts.glyph(font, U'g').value();
    return pdf(a4({sheet::GlyphRun{sheet::Part::text, font, 10, {}, {{glyph, 62, 100}}, "g", {{1, 1}}}}), fonts);
  };
  const std::string charis = draw("charis-bold");
  const std::string inter = draw("inter-bold");
  for (int time = 0; time < 20; ++time) {
    CHECK(draw("charis-bold") == charis);
    CHECK(draw("inter-bold") == inter);
  }
}

TEST_CASE_METHOD(Sample, "A sheet without pages, and one whose lengths are no numbers, do no harm") {
  CHECK(pdf(sheet::Sheet{}, fonts).starts_with("%PDF-"));
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  const std::string made = pdf(a4({sheet::Rule{sheet::Part::rule, {no_number, 0}, {1, 1}, 1, {}, 0, 0}}), fonts);
  CHECK((made.empty() || made.starts_with("%PDF-")));
}
