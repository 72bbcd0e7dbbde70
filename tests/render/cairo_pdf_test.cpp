#include "render/cairo_pdf.h"

#include <catch2/catch.hpp>

#include "readers.h"
#include "render/pdf_draw.h"
#include "render/pdf_syntax.h"
#include "sample.h"

using namespace fretsheaf;
using namespace fretsheaf::render;
using Catch::Matchers::Contains;

TEST_CASE("texts for people are ASCII, or UTF-16 with its mark (ISO 32000-1, 7.9.2.2)") {
  CHECK(pdf_text("low tide") == "(low tide)");
  CHECK(pdf_text("a (b) \\") == "(a \\(b\\) \\\\)");
  CHECK(pdf_text("\u00FC\u2669") == "<FEFF00FC2669>");
  CHECK(pdf_text("\U0001D15E") == "<FEFFD834DD5E>");  // the surrogates of the Unicode standard, 3.9
  CHECK(pdf_text("a\nb") == "<FEFF0061000A0062>");
  CHECK(pdf_text("").size() == 2);
  CHECK(pdf_number(1.005) == "1.00");
  CHECK(pdf_reference(12) == "12 0 R");
}

TEST_CASE_METHOD(Sample, "cairo's own file is read, changed and written so that others can read it") {
  const std::string drawn = draw_pdf(a4(text("low tide", {inter}, 62, 100)), fonts, Marks::on).bytes;
  std::optional<CairoPdf> file = CairoPdf::read(drawn);
  REQUIRE(file);
  REQUIRE(file->pages().size() == 1);
  const int page = file->pages().front();
  const int contents = file->number_of(page, "/Contents").value();
  const std::string drawing = file->unpacked(contents).value();
  CHECK_THAT(drawing, Contains("/NonStruct << /MCID 0 >> BDC\n"));
  file->pack(contents, drawing + "% and no more\n");
  file->set_key(page, "/Tabs", "/S");
  file->set_key(page, "/Tabs", "/R");
  const int added = file->add("(a note)\n");
  file->set_key(file->catalog(), "/Tide", pdf_reference(added));
  const std::string written = file->written();
  CHECK(written.starts_with("%PDF-1.7\n"));
  CHECK(written == file->written());
  CHECK_THAT(reader("qpdf", "--check", written), Contains("No syntax or stream encoding errors found"));
  const std::string objects = reader("qpdf", "--qdf --object-streams=disable", written, "-");
  CHECK_THAT(objects,
             Contains("% and no more") && Contains("/Tabs /R") && !Contains("/Tabs /S") && Contains("(a note)"));
}

TEST_CASE_METHOD(Sample, "the number of an object that is dropped is taken by the next") {
  const std::string drawn = draw_pdf(a4(text("low tide", {inter}, 62, 100)), fonts, Marks::off).bytes;
  std::optional<CairoPdf> file = CairoPdf::read(drawn);
  REQUIRE(file);
  const int objects = file->objects();
  const int first = file->add("1\n");
  const int second = file->add("2\n");
  CHECK(first == objects);
  file->drop(first);
  CHECK_THAT(reader("qpdf", "--check", file->written()), Contains("No syntax or stream encoding errors found"));
  CHECK(file->add("3\n") == first);
  CHECK(file->body(second) == "2\n");
}

// Whatever a later cairo writes: it is refused whole, and read nowhere past its end.
TEST_CASE_METHOD(Sample, "bytes that are not as cairo writes them are refused") {
  const std::string drawn = draw_pdf(a4(text("low tide", {inter}, 62, 100)), fonts, Marks::on).bytes;
  CHECK_FALSE(CairoPdf::read(""));
  CHECK_FALSE(CairoPdf::read("%PDF-1.7\nstartxref\n99999999\n%%EOF\n"));
  for (std::size_t size = 0; size + 8 < drawn.size(); size += 7) CHECK_FALSE(CairoPdf::read(drawn.substr(0, size)));
  for (const auto& [from, to] : {std::pair{"/Size ", "/Size 9"}, std::pair{"/Root ", "/Root 9"},
                                 std::pair{"xref\n0", "xref\n1"}, std::pair{"/Kids [ ", "/Kids [ 9"}}) {
    std::string other = drawn;
    other.replace(other.find(from), std::string_view(from).size(), to);
    INFO(to);
    CHECK_FALSE(CairoPdf::read(other));
  }
}
