// A teacher's own texts, as plain text and as HTML.
#include <catch2/catch.hpp>
#include <string>

#include "spoken/sample.h"
#include "spoken/spoken.h"

namespace fretsheaf::spoken::test {
namespace {

const std::string rows = "count | 1 2 |\nG     | 2 2 |\n";
const std::string practice_end = "## Practice notes\n\n";

std::string between(const std::string& text, const std::string& begin, const std::string& end) {
  const auto from = text.find(begin);
  REQUIRE(from != std::string::npos);
  const auto to = text.find(end, from + begin.size());
  REQUIRE(to != std::string::npos);
  return text.substr(from + begin.size(), to - from - begin.size());
}

Walk walk(const std::string& intro, const std::string& more = "") {
  return walk_through(example(rows, "meter = \"2/4\"\nintro = \"\"\"\n" + intro + "\"\"\"\n" + more));
}

std::string text_of(const std::string& intro) {
  return between(as_text(walk(intro)), "E A D G.\n\n", "\n## Example 1");
}

std::string html_of(const std::string& intro) {
  return between(as_html(walk(intro)), "E A D G.</p>\n", "<h2>Example 1");
}

}  // namespace

TEST_CASE("a text's headings come right under what they stand in") {
  CHECK(text_of("### Low\n\nSand.\n\n#### Lower\n") == "## Low\n\nSand.\n\n### Lower\n");
  CHECK(html_of("# Low\n\nSand.\n\n### Lower\n") == "<h2>Low</h2>\n<p>Sand.</p>\n<h4>Lower</h4>\n");
}

TEST_CASE("links are told where their words are not the address") {
  CHECK(text_of("The [shed](https://eelgrass.example/a), <https://eelgrass.example>, <shed@eelgrass.example>.\n") ==
        "The shed (https://eelgrass.example/a), https://eelgrass.example, shed@eelgrass.example.\n");
  CHECK(html_of("The [*shed* <1>](https://eelgrass.example/?a&b)\n") ==
        "<p>The <a href=\"https://eelgrass.example/?a&amp;b\"><em>shed</em></a><a "
        "href=\"https://eelgrass.example/?a&amp;b\"> &lt;1&gt;</a></p>\n");
}

TEST_CASE("lists lie in each other") {
  const std::string lists = "1. one\n   - in it\n   - and\n     1. deeper\n2. two\n\nAfter.\n\n- other\n\n5. five\n";
  CHECK(text_of(lists) == "1. one\n  - in it\n  - and\n    1. deeper\n2. two\n\nAfter.\n\n- other\n5. five\n");
  CHECK(html_of(lists) ==
        "<ol>\n<li>one<ul>\n<li>in it</li>\n<li>and<ol>\n<li>deeper</li>\n</ol>\n</li>\n</ul>\n</li>\n<li>two</li>\n"
        "</ol>\n<p>After.</p>\n<ul>\n<li>other</li>\n</ul>\n<ol start=\"5\">\n<li>five</li>\n</ol>\n");
}

TEST_CASE("quotes, lines as they stand, breaks and rules") {
  const std::string prose = "> said\n\nhard\\\nbreak\n\n    a  <b\n      c\n\n---\n\nB♭ and ♭3\n";
  std::string toml;
  for (const char c : prose) toml += c == '\\' ? std::string("\\\\") : std::string(1, c);
  CHECK(text_of(toml) == "said\n\nhard\nbreak\n\na  <b\n  c\n\nB flat and flat 3\n");
  CHECK(html_of(toml) ==
        "<blockquote>\n<p>said</p>\n</blockquote>\n<p>hard<br>\nbreak</p>\n<pre><code>a  &lt;b\n  c</code></pre>\n"
        "<hr>\n<p>B flat and flat 3</p>\n");
}

TEST_CASE("practice notes are a list, and a log a table") {
  const Walk told = walk("Sand.\n", "practice = [\"One.\", \"\"\"\nTwo:\n\n- a\n- b\"\"\"]\npractice-log = 2\n");
  CHECK(between(as_text(told), practice_end, "\n## Practice log") == "- One.\n- Two:\n  - a\n  - b\n");
  CHECK(between(as_text(told), "## Practice log\n\n", "\nWarm up") ==
        "Date, Tempo, Clean passes, Note.\n2 empty rows.\n");
  CHECK(
      between(as_html(told), "<h2>Practice log</h2>\n", "<p>Warm up") ==
      "<table>\n<caption>2 empty rows.</caption>\n<tr><th scope=\"col\">Date</th><th scope=\"col\">Tempo</th><th "
      "scope=\"col\">Clean passes</th><th scope=\"col\">Note</th></tr>\n<tr><td></td><td></td><td></td><td></td></tr>\n"
      "<tr><td></td><td></td><td></td><td></td></tr>\n</table>\n");
}

}  // namespace fretsheaf::spoken::test
