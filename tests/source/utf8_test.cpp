#include "source/utf8.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace fretsheaf::source;

TEST_CASE("code points are decoded as RFC 3629 has it") {
  struct Row {
    std::string bytes;
    char32_t code_point;
  };
  // The examples of RFC 3629, section 7, and the borders between lengths of its section 3.
  const std::vector<Row> rows = {
      {"\x41", U'A'},           {"\xE2\x89\xA2", 0x2262}, {"\xCE\x91", 0x0391},
      {"\xED\x95\x9C", 0xD55C}, {"\xE6\x97\xA5", 0x65E5}, {"\xF0\xA3\x8E\xB4", 0x233B4},
      {"\x7F", 0x7F},           {"\xC2\x80", 0x80},       {"\xDF\xBF", 0x7FF},
      {"\xE0\xA0\x80", 0x800},  {"\xEF\xBF\xBF", 0xFFFF}, {"\xF0\x90\x80\x80", 0x10000},
      {"\xED\x9F\xBF", 0xD7FF}, {"\xEE\x80\x80", 0xE000}, {"\xF4\x8F\xBF\xBF", 0x10FFFF},
  };
  for (const Row& row : rows) {
    const auto decoded = decode_utf8(row.bytes + "z");
    CHECK(decoded.valid);
    CHECK(decoded.code_point == row.code_point);
    CHECK(decoded.length == row.bytes.size());
    std::string again;
    append_utf8(again, row.code_point);
    CHECK(again == row.bytes);
    CHECK(from_utf8("a" + row.bytes) == std::u32string{U'a', row.code_point});
    CHECK(to_utf8(from_utf8("a" + row.bytes)) == "a" + row.bytes);
  }
  CHECK(from_utf8("x\x80") == U"x\uFFFD");
}

TEST_CASE("what is no UTF-8 is found at its first byte") {
  const std::vector<std::string> bad = {
      "\x80",              // a tail with no head
      "\xC0\x80",          // overlong, two bytes (RFC 3629, section 10)
      "\xC1\xBF",          //
      "\xE0\x9F\xBF",      // overlong, three bytes
      "\xF0\x8F\xBF\xBF",  // overlong, four bytes
      "\xED\xA0\x80",      // the first surrogate
      "\xED\xBF\xBF",      // the last surrogate
      "\xF4\x90\x80\x80",  // above U+10FFFF
      "\xF8\x88\x80\x80\x80",
      "\xFE",
      "\xFF",
      "\xE2\x89",  // cut short at the end
      "\xE2\x89"
      "a"  // cut short before a letter
  };
  for (const std::string& bytes : bad) {
    CAPTURE(bytes);
    CHECK(first_invalid_utf8(bytes) == 0u);
    CHECK(first_invalid_utf8("né" + bytes + "x") == 3u);
    CHECK_FALSE(is_valid_utf8(bytes));
    CHECK_FALSE(decode_utf8(bytes).valid);
    CHECK(decode_utf8(bytes).length == 1);
  }
  CHECK(is_valid_utf8(""));
  CHECK(is_valid_utf8("a\0b\n"));
  CHECK(is_valid_utf8("𝄞 ♭ é z"));
}

TEST_CASE("what cannot be written becomes the replacement character") {
  std::string out;
  append_utf8(out, 0xD800);
  append_utf8(out, 0x110000);
  CHECK(out == "\uFFFD\uFFFD");
}

TEST_CASE("code points are counted, stray bytes one each") {
  CHECK(count_code_points("") == 0);
  CHECK(count_code_points("𝄞♭é") == 3);
  CHECK(count_code_points("a\x80\x80z") == 4);
}

TEST_CASE("control characters are not printed, and bytes of another encoding stay") {
  CHECK(printable("a\x1b[31mb\nc\td\x7f") == "a\uFFFD[31mb\uFFFDc\td\uFFFD");
  CHECK(printable("\u009b31m \u00e9") == "\uFFFD31m \u00e9");
  CHECK(printable("caf\xE9") == "caf\xE9");
}
