#include <hb-ft.h>

#include <catch2/catch.hpp>
#include <memory>
#include <numeric>

#include "real_fonts.h"

using namespace fretsheaf::typeface;

namespace {

struct Shaping : RealFonts {
  ShapedText shape(std::string_view text, std::vector<FontId> list, double size = 10, double tracking = 0,
                   bool tabular = false) {
    return set.shape(text, TextStyle{list, size, tracking, tabular});
  }
};

std::string text_of(const ShapedText& shaped) {
  std::string text;
  for (const ShapedRun& run : shaped.runs) text += run.text;
  return text;
}

void check_sums(const ShapedText& shaped) {
  for (const ShapedRun& run : shaped.runs) {
    std::size_t bytes = 0;
    std::size_t glyphs = 0;
    for (const ShapedCluster& cluster : run.clusters) {
      CHECK(cluster.bytes > 0);
      CHECK(cluster.glyphs > 0);
      bytes += cluster.bytes;
      glyphs += cluster.glyphs;
    }
    CHECK(bytes == run.text.size());
    CHECK(glyphs == run.glyphs.size());
  }
}

}  // namespace

TEST_CASE_METHOD(Shaping, "Text is as wide as its glyphs, whatever the size") {
  const ShapedText small = shape("H", {inter}, 10);
  CHECK(small.advance == Approx(set.extents(inter, small.runs.at(0).glyphs.at(0).id, 10).advance));
  const ShapedText word = shape("Low tide vamp", {charis}, 10);
  const ShapedText large = shape("Low tide vamp", {charis}, 27);
  CHECK(large.advance == Approx(2.7 * word.advance));
  CHECK(large.ink.top == Approx(2.7 * word.ink.top));
  check_sums(word);
}

TEST_CASE_METHOD(Shaping, "Kerning is on") {
  const double apart = shape("A", {inter}).advance + shape("V", {inter}).advance;
  CHECK(shape("AV", {inter}).advance < apart - 0.1);
}

TEST_CASE_METHOD(Shaping, "Tabular figures are of one width, others are not") {
  CHECK(shape("1", {inter}, 10, 0, true).advance == Approx(shape("0", {inter}, 10, 0, true).advance));
  CHECK(shape("1", {inter}).advance < shape("0", {inter}).advance - 0.5);
}

TEST_CASE_METHOD(Shaping, "Tracking is added after each letter") {
  const ShapedText tight = shape("EXAMPLE", {inter});
  const ShapedText loose = shape("EXAMPLE", {inter}, 10, 0.25);
  CHECK(loose.advance == Approx(tight.advance + 7 * 0.25));
  CHECK(loose.runs[0].glyphs[3].x == Approx(tight.runs[0].glyphs[3].x + 3 * 0.25));
  CHECK(loose.ink.right == Approx(tight.ink.right + 6 * 0.25));
}

TEST_CASE_METHOD(Shaping, "A ligature is one glyph for all its letters, and tracking takes it apart") {
  const ShapedText joined = shape("office", {charis});
  REQUIRE(joined.runs.size() == 1);
  CHECK(joined.runs[0].glyphs.size() < 6);
  check_sums(joined);
  const ShapedText spaced = shape("office", {charis}, 10, 0.5);
  CHECK(spaced.runs[0].glyphs.size() == 6);
  CHECK(shape("of\u200Cfice", {charis}).runs[0].glyphs.size() > joined.runs[0].glyphs.size());
}

TEST_CASE_METHOD(Shaping, "A letter with an accent looks the same composed and decomposed") {
  for (const FontId font : {charis, inter}) {
    const ShapedText composed = shape("caf\u00E9 \u1E0D", {font});
    const ShapedText decomposed = shape("cafe\u0301 d\u0323", {font});
    CHECK(composed.missing.empty());
    CHECK(decomposed.missing.empty());
    CHECK(decomposed.advance == Approx(composed.advance));
    CHECK(decomposed.ink.top == Approx(composed.ink.top));
    CHECK(decomposed.ink.bottom == Approx(composed.ink.bottom));
    CHECK(text_of(decomposed) == "cafe\u0301 d\u0323");
    check_sums(decomposed);
  }
}

TEST_CASE_METHOD(Shaping, "A mark that has no composed form sits on its letter, in one cluster") {
  const ShapedText shaped = shape("x\u0301", {charis});
  REQUIRE(shaped.runs.size() == 1);
  CHECK(shaped.runs[0].clusters.size() == 1);
  CHECK(shaped.runs[0].clusters[0].bytes == 3);
  CHECK(shaped.advance == Approx(shape("x", {charis}).advance));
  CHECK(shaped.ink.top < shape("x", {charis}).ink.top - 1);
}

TEST_CASE_METHOD(Shaping, "A character that a font lacks comes from the next font of the list") {
  const ShapedText shaped = shape("B\U0001D12B7", {inter, music});
  REQUIRE(shaped.runs.size() == 3);
  CHECK(shaped.runs[0].font == inter);
  CHECK(shaped.runs[1].font == music);
  CHECK(shaped.runs[1].text == "\U0001D12B");
  CHECK(shaped.runs[2].font == inter);
  CHECK(shaped.missing.empty());
  const double before = shape("B", {inter}).advance;
  CHECK(shaped.runs[1].glyphs[0].x == Approx(before));
  CHECK(shaped.advance == Approx(before + shape("\U0001D12B", {music}).advance + shape("7", {inter}).advance));
}

TEST_CASE_METHOD(Shaping, "What no font has is reported once and left out") {
  const ShapedText shaped = shape("tide \u6F6E\u6F6E in \u05D0", {charis, inter, music});
  CHECK(shaped.missing == std::vector<char32_t>{U'\u6F6E', U'\u05D0'});
  CHECK(text_of(shaped) == "tide  in ");
  check_sums(shaped);
}

TEST_CASE_METHOD(Shaping, "Control characters, non-characters and unassigned ones are missing in every font") {
  const std::vector<std::pair<char32_t, std::string>> cases = {{0x01, "\x01"},
                                                               {0x09, "\t"},
                                                               {0x0A, "\n"},
                                                               {0x85, "\xC2\x85"},
                                                               {0x378, "\xCD\xB8"},
                                                               {0x2028, "\u2028"},
                                                               {0xFFFE, "\xEF\xBF\xBE"},
                                                               {0xFDD0, "\xEF\xB7\x90"},
                                                               {0x10FFFF, "\U0010FFFF"}};
  for (const auto& [c, utf8] : cases) {
    INFO("U+" << std::hex << static_cast<unsigned>(c));
    const ShapedText shaped = shape("a" + utf8, {charis, inter, music});
    CHECK(shaped.missing == std::vector<char32_t>{c});
    CHECK(text_of(shaped) == "a");
  }
}

TEST_CASE_METHOD(Shaping, "Soft hyphens and zero-width characters take no room and are not missing") {
  const ShapedText shaped = shape("prac\u00ADtice\u200B\u2060 \uFEFFend\uFE0F", {charis});
  CHECK(shaped.missing.empty());
  CHECK(text_of(shaped) == "practice end");
  CHECK(shaped.advance == Approx(shape("practice end", {charis}).advance));
  CHECK(shape("\u200D", {charis}).runs.empty());
}

TEST_CASE_METHOD(Shaping, "Spaces of other widths are made where a font lacks them") {
  const ShapedText shaped = shape("a\u202F\u2009b\u00A0c", {charis});
  CHECK(shaped.missing.empty());
  CHECK(text_of(shaped) == "a\u202F\u2009b\u00A0c");
  check_sums(shaped);
}

TEST_CASE_METHOD(Shaping, "A tower of marks is cut at thirty") {
  std::string tower = "a";
  for (int i = 0; i < 50000; ++i) tower += "\u0301";
  const ShapedText shaped = shape(tower + "b", {charis});
  CHECK(shaped.missing == std::vector<char32_t>{U'\u0301'});
  CHECK(text_of(shaped).size() == 1 + 2 * 30 + 1);
  check_sums(shaped);
}

TEST_CASE_METHOD(Shaping, "Greek and Cyrillic are runs of their own script beside Latin") {
  const ShapedText shaped = shape("beat \u03B2, \u0431", {charis});
  REQUIRE(shaped.runs.size() == 3);
  CHECK(shaped.runs[1].text == "\u03B2, ");
  CHECK(shaped.missing.empty());
}

TEST_CASE_METHOD(Shaping, "A line is its words and spaces side by side, where no font kerns with a space") {
  const ShapedText line = shape("tide and tide", {charis});
  const double word = shape("tide", {charis}).advance;
  const double space = shape(" ", {charis}).advance;
  CHECK(line.advance == Approx(2 * word + shape("and", {charis}).advance + 2 * space));
  REQUIRE(line.runs.size() == 1);
  CHECK(line.runs[0].glyphs.size() == 13);
  CHECK(line.runs[0].glyphs[9].x == Approx(line.advance - word));
  check_sums(line);
}

// HarfBuzz, asked for a whole line, is the judge of lines that are put together from words.
TEST_CASE_METHOD(Shaping, "Between small letters, no font of handouts kerns with a space") {
  std::string line;
  for (char c = 'a'; c <= 'z'; ++c) (((line += c) += ' ') += c) += ' ';
  line.pop_back();
  for (const char* name : {"charis-regular", "charis-bold", "charis-italic", "charis-bold-italic", "inter-regular",
                           "inter-medium", "inter-semibold", "inter-bold", "dejavu-mono"}) {
    CAPTURE(name);
    const FontId font = std::get<FontId>(set.open(name));
    std::unique_ptr<hb_buffer_t, decltype(&hb_buffer_destroy)> buffer(hb_buffer_create(), hb_buffer_destroy);
    hb_buffer_add_utf8(buffer.get(), line.data(), static_cast<int>(line.size()), 0, static_cast<int>(line.size()));
    hb_buffer_guess_segment_properties(buffer.get());
    const std::unique_ptr<hb_face_t, decltype(&hb_face_destroy)> face(
        hb_ft_face_create_referenced(static_cast<FT_Face>(set.native_face(font))), hb_face_destroy);
    const std::unique_ptr<hb_font_t, decltype(&hb_font_destroy)> whole(hb_font_create(face.get()), hb_font_destroy);
    hb_shape(whole.get(), buffer.get(), nullptr, 0);
    unsigned count = 0;
    const hb_glyph_position_t* positions = hb_buffer_get_glyph_positions(buffer.get(), &count);
    REQUIRE(count == line.size());
    const ShapedText shaped = shape(line, {font}, hb_face_get_upem(face.get()));
    REQUIRE(shaped.runs.size() == 1);
    double pen = 0;
    for (unsigned i = 0; i < count; ++i) {
      CHECK(shaped.runs[0].glyphs[i].x == Approx(pen).margin(0.01));
      pen += positions[i].x_advance;
    }
  }
}

TEST_CASE_METHOD(Shaping, "No text has no width, and bytes that are no text do no harm") {
  const ShapedText nothing = shape("", {charis});
  CHECK(nothing.runs.empty());
  CHECK(nothing.advance == 0);
  CHECK(nothing.ink.right == 0);
  CHECK(text_of(shape(std::string_view("a\xFF\xC3", 3), {charis})) == "a\uFFFD\uFFFD");
  CHECK(shape("a", {}).missing == std::vector<char32_t>{U'a'});
}

TEST_CASE_METHOD(Shaping, "What is remembered is what was shaped, also after the memory was emptied") {
  const ShapedText first = shape("P.M.", {charis}, 8.5);
  for (int i = 0; i < 20000; ++i) shape("word " + std::to_string(i), {inter});
  const ShapedText again = shape("P.M.", {charis}, 8.5);
  CHECK(again.advance == first.advance);
  CHECK(again.runs.at(0).glyphs.at(2).x == first.runs.at(0).glyphs.at(2).x);
  CHECK(shape("P.M.", {charis}, 17).advance == Approx(2 * first.advance));
  CHECK(shape("P.M.", {inter}, 8.5).advance != Approx(first.advance));
}
