#include "source/text.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::source;

namespace {

Text text(std::string bytes) {
  return {"tide.lesson.toml", std::move(bytes)};
}

}  // namespace

TEST_CASE("an empty file has one empty line") {
  const Text empty = text("");
  CHECK(empty.line_count() == 1);
  CHECK(empty.line(1).empty());
  CHECK(empty.position(0) == Position{1, 1, 1});
  CHECK(empty.position(9) == Position{1, 1, 1});
  CHECK(empty.offset(1, 1) == 0);
  CHECK(empty.offset(3, 7) == 0);
}

TEST_CASE("a line end at the end of a file begins an empty line, as in an editor") {
  const Text t = text("one\ntwo\n");
  CHECK(t.line_count() == 3);
  CHECK(t.line(2) == "two");
  CHECK(t.line(3).empty());
  CHECK(t.position(8) == Position{3, 1, 1});
  CHECK(t.position(100) == Position{3, 1, 1});
}

TEST_CASE("columns count code points and UTF-16 units") {
  // é is two bytes, ♭ three, 𝄞 four bytes and two UTF-16 units.
  const Text t = text("x\né♭𝄞z");
  CHECK(t.position(2) == Position{2, 1, 1});
  CHECK(t.position(4) == Position{2, 2, 2});
  CHECK(t.position(7) == Position{2, 3, 3});
  CHECK(t.position(11) == Position{2, 4, 5});
  CHECK(t.position(12) == Position{2, 5, 6});
}

TEST_CASE("an offset inside a code point is that code point's place") {
  const Text t = text("a𝄞b");
  for (std::size_t offset : {1u, 2u, 3u, 4u}) CHECK(t.position(offset) == Position{1, 2, 2});
  CHECK(t.position(5) == Position{1, 3, 4});
}

TEST_CASE("a CRLF is one line end") {
  const Text t = text("ab\r\ncd\r\n");
  CHECK(t.line_count() == 3);
  CHECK(t.line(1) == "ab");
  CHECK(t.line(2) == "cd");
  CHECK(t.position(2) == Position{1, 3, 3});
  CHECK(t.position(3) == Position{1, 3, 3});  // the LF is no column of its own
  CHECK(t.position(4) == Position{2, 1, 1});
  CHECK(t.offset(2, 1) == 4);
  CHECK(t.offset(1, 99) == 2);
}

TEST_CASE("a lone CR is no line end") {
  const Text t = text("a\rb");
  CHECK(t.line_count() == 1);
  CHECK(t.line(1) == "a\rb");
  CHECK(t.position(2) == Position{1, 3, 3});
}

TEST_CASE("a byte-order mark is no column") {
  const Text t = text("\xEF\xBB\xBFkey\r\nx");
  CHECK(t.line(1) == "key");
  for (std::size_t offset : {0u, 1u, 2u, 3u}) CHECK(t.position(offset) == Position{1, 1, 1});
  CHECK(t.position(4) == Position{1, 2, 2});
  CHECK(t.offset(1, 1) == 3);
  CHECK(t.offset(1, 3) == 5);
  CHECK(t.position(8) == Position{2, 1, 1});
}

TEST_CASE("offset and position undo each other at every code point") {
  const std::string bytes =
      "\xEF\xBB\xBF"
      "a é\r\n♭𝄞\n\nz\r\n";
  const Text t = text(bytes);
  for (int line = 1; line <= t.line_count(); ++line) {
    for (int column = 1; column <= 4; ++column) {
      const auto place = t.position(t.offset(line, column));
      CHECK(place.line == line);
      CHECK(place.column <= column);
      CHECK(t.offset(place.line, place.column) == t.offset(line, column));
    }
  }
}

TEST_CASE("files are numbered as they are opened") {
  Files files;
  CHECK(files.add(text("a")) == 0);
  CHECK(files.add({"sheaf.toml", "b"}) == 1);
  CHECK(files[1].name() == "sheaf.toml");
  CHECK(files.size() == 2);
}
