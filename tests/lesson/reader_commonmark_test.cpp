#include "lesson/reader_support.h"

// What CommonMark can say and a printed page cannot.
namespace fretsheaf::lesson::test {
namespace {

const std::string no_html = "help: write it in CommonMark (*emphasis*, **strong**, `code`), and a plain < as \\<\n";
const std::string no_picture = "help: write a link, [a boat](https://example.org/boat.png), or take the '!' out\n";
const std::string no_link = "help: a link begins with https://, http:// or mailto:\n";

}  // namespace

TEST_CASE("raw HTML is an error at its place, in every kind of text") {
  const std::vector<Case> cases = {
      {"inline", lesson_with("intro = \"a <b>c</b>\""),
       "4:12-15: error: raw HTML cannot be printed\n" + no_html + "4:16-20: error: raw HTML cannot be printed\n" +
           no_html},
      {"a block", lesson_with("intro = \"<div>\\n\\nhi\""), "4:10-15: error: raw HTML cannot be printed\n" + no_html},
      {"a comment", lesson_with("intro = \"tide <!-- low -->\""),
       "4:15-27: error: raw HTML cannot be printed\n" + no_html},
      {"a subtitle", lesson_with("subtitle = \"A <b>t\""), "4:15-18: error: raw HTML cannot be printed\n" + no_html},
      {"a practice note", lesson_with("practice = [\"ok\", \"see <br>\"]"),
       "4:24-28: error: raw HTML cannot be printed\n" + no_html},
      {"an example's title", lesson_with("", "title = \"<i>Tide\"\nblank-bars = 2"),
       "7:10-13: error: raw HTML cannot be printed\n" + no_html},
      {"an example's intro, deep in lists and quotes",
       lesson_with("", "intro = \"\"\"\n- one\n  two\n  - > three\n    > four <i>\n\"\"\"\nblank-bars = 2"),
       "11:12-15: error: raw HTML cannot be printed\n" + no_html},
      {"an example's practice note", lesson_with("", "practice = [\"<u>\"]\nblank-bars = 2"),
       "7:14-17: error: raw HTML cannot be printed\n" + no_html},
  };
  for (const Case& one : cases) check(one);
}

TEST_CASE("a picture in a text is an error at its place") {
  check({"a picture", lesson_with("intro = \"see ![a boat](boat.png) now\""),
         "4:14-16: error: a text cannot hold a picture\n" + no_picture});
  check({"a picture in a link", lesson_with("intro = \"[![a](https://example.org/a)](https://example.org)\""),
         "4:11-13: error: a text cannot hold a picture\n" + no_picture});
}

TEST_CASE("a link that leads nowhere is an error at its place") {
  check({"a script", lesson_with("intro = \"[x](javascript:alert)\""),
         "4:10-11: error: this link leads neither to the web nor to a mailbox\n" + no_link});
  check({"a file", lesson_with("intro = \"see [x](boat.png)\""),
         "4:14-15: error: this link leads neither to the web nor to a mailbox\n" + no_link});
  check({"links that lead somewhere",
         lesson_with(
             "intro = \"<https://example.org> [x](HTTP://example.org) [y](mailto:shed@example.org) <a@b.example>\""),
         ""});
}

TEST_CASE("what only looks like HTML is text") {
  check({"signs", lesson_with("intro = \"2 < 3, <3, `<b>`, \\\\<b> and &lt;b&gt;\""), ""});
}

}  // namespace fretsheaf::lesson::test
