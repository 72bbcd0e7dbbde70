// Writing XML (XML 1.0, W3C, fifth edition).
#include "platform/xml_writer.h"

#include <catch2/catch.hpp>
#include <string>

#include "platform/xml_document.h"

using namespace fretsheaf;
using platform::XmlElement;
using platform::XmlWriter;

namespace {

const std::string declaration = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

}  // namespace

TEST_CASE("elements are written one a line, each level to the right") {
  XmlWriter writer(2);
  writer.open("shed");
  writer.open("rack");
  writer.attribute("id", "r1");
  writer.attribute("name", "left");
  writer.open("hook");
  writer.close();
  writer.close();
  writer.open("door");
  writer.text("blue");
  writer.close();
  writer.open("window");
  writer.text("");
  writer.close();
  writer.close();
  CHECK(writer.take() == declaration +
                             "<shed>\n"
                             "  <rack id=\"r1\" name=\"left\">\n"
                             "    <hook/>\n"
                             "  </rack>\n"
                             "  <door>blue</door>\n"
                             "  <window></window>\n"
                             "</shed>\n");
}

TEST_CASE("no blank and no line end comes into an element that has text") {
  XmlWriter writer(4);
  writer.open("a");
  writer.open("b");
  writer.text("low ");
  writer.open("c");
  writer.open("d");
  writer.close();
  writer.close();
  writer.text(" tide");
  writer.close();
  writer.open("e");
  writer.close();
  writer.close();
  CHECK(writer.take() == declaration + "<a>\n    <b>low <c><d/></c> tide</b>\n    <e/>\n</a>\n");
}

TEST_CASE("what would be taken for markup is escaped") {
  // Section 2.4: & and < always, > for `]]>`, quotes in values.
  XmlWriter writer(0);
  writer.open("a");
  writer.attribute("b", "1 < 2 > 0 & \"x\" 'y' \u266D");
  writer.text("1 < 2 > 0 & ]]> \"x\" 'y' &amp; \u266D");
  writer.close();
  CHECK(writer.take() == declaration +
                             "<a b=\"1 &lt; 2 &gt; 0 &amp; &quot;x&quot; &apos;y&apos; \u266D\">"
                             "1 &lt; 2 &gt; 0 &amp; ]]&gt; \"x\" 'y' &amp;amp; \u266D</a>\n");
  CHECK(platform::xml_escaped("<b> & \"c\"") == "&lt;b&gt; &amp; \"c\"");
}

TEST_CASE("a tree is written as a document, and read again is the same") {
  XmlElement root;
  root.name = "shed";
  root.attributes = {{"of", "Tom & \"Jo\""}, {"at", "<quay>"}};
  XmlElement& rack = root.children.emplace_back();
  rack.name = "rack";
  rack.children.emplace_back().name = "hook";
  XmlElement& door = root.children.emplace_back();
  door.name = "door";
  door.text = "blue & <green>\n";
  const std::string text = platform::xml_written(root);
  CHECK(text == declaration +
                    "<shed of=\"Tom &amp; &quot;Jo&quot;\" at=\"&lt;quay&gt;\">\n"
                    "    <rack>\n"
                    "        <hook/>\n"
                    "    </rack>\n"
                    "    <door>blue &amp; &lt;green&gt;\n</door>\n"
                    "</shed>\n");
  const auto parsed = platform::parse_xml(text, platform::XmlEncoding::utf8);
  const auto* again = std::get_if<platform::XmlDocument>(&parsed);
  REQUIRE(again != nullptr);
  REQUIRE(again->root.attribute("of") != nullptr);
  CHECK(*again->root.attribute("of") == "Tom & \"Jo\"");
  CHECK(*again->root.attribute("at") == "<quay>");
  REQUIRE(again->root.child("rack") != nullptr);
  CHECK(again->root.child("rack")->child("hook") != nullptr);
  REQUIRE(again->root.child("door") != nullptr);
  CHECK(again->root.child("door")->text == door.text);
}
