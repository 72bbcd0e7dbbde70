// Reading XML: what stands in a document, and what XML 1.0 (W3C, fifth edition) says of it.
#include "platform/xml_document.h"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <cstddef>
#include <cstdio>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "support/temporary_folder.h"

using namespace fretsheaf;
using platform::parse_xml;
using platform::XmlDocument;
using platform::XmlElement;
using platform::XmlEncoding;
using platform::XmlFault;

namespace {

XmlDocument document_of(std::string_view bytes, XmlEncoding encoding = XmlEncoding::utf8) {
  auto parsed = parse_xml(bytes, encoding);
  CAPTURE(bytes.substr(0, 200));
  REQUIRE(std::holds_alternative<XmlDocument>(parsed));
  return std::get<XmlDocument>(std::move(parsed));
}

// The line from which a document is not sound; 0 where it is.
int fault_line(std::string_view bytes, XmlEncoding encoding = XmlEncoding::utf8) {
  const auto parsed = parse_xml(bytes, encoding);
  const auto* fault = std::get_if<XmlFault>(&parsed);
  return fault == nullptr ? 0 : fault->line;
}

std::string repeated(std::string_view text, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

std::string nested(std::size_t deep) {
  return repeated("<a>", deep) + repeated("</a>", deep);
}

}  // namespace

TEST_CASE("elements stand in each other as they are written, with their attributes and lines") {
  const XmlDocument document =
      document_of("<?xml version=\"1.0\"?>\n<shed>\n  <rack id=\"r1\" name=\"left\"/>\n  <hook/><rack/>\n</shed>\n");
  const XmlElement& shed = document.root;
  CHECK(shed.name == "shed");
  CHECK(shed.line == 2);
  REQUIRE(shed.children.size() == 3);
  const XmlElement& rack = shed.children.front();
  CHECK(rack.line == 3);
  REQUIRE(rack.attributes.size() == 2);
  CHECK(rack.attributes[1].name == "name");
  REQUIRE(rack.attribute("id") != nullptr);
  CHECK(*rack.attribute("id") == "r1");
  CHECK(rack.attribute("i") == nullptr);
  CHECK(shed.child("rack") == &rack);
  CHECK(shed.child("oar") == nullptr);
  CHECK(shed.all("rack") == std::vector<const XmlElement*>{&rack, &shed.children.back()});
  CHECK(shed.all("oar").empty());
  CHECK(shed.children.back().line == 4);
}

TEST_CASE("the predefined entities and numbers of characters are the characters that they name") {
  // XML 1.0, sections 4.1 and 4.6.
  const XmlDocument document = document_of(
      "<a b=\"&amp;&lt;&gt;&quot;&apos;&#60;&#x266D;&amp;amp;&#38;#38;\">&amp;&lt;&gt;&quot;&apos;&#38;lt;</a>");
  CHECK(*document.root.attribute("b") == "&<>\"'<\u266D&amp;&#38;");
  CHECK(document.root.text == "&<>\"'&lt;");
}

TEST_CASE("white space in a value is read as the standard has it") {
  // XML 1.0, sections 2.11 and 3.3.3: line ends are one, and stand for blanks in a value.
  const XmlDocument document = document_of("<a b=\"1\t2\r\n3&#10;4\">x\r\ny\rz</a>");
  CHECK(*document.root.attribute("b") == "1 2 3\n4");
  CHECK(document.root.text == "x\ny\nz");
}

TEST_CASE("an element's text is its own in one: CDATA is text, comments and instructions are none") {
  const XmlDocument document =
      document_of("<a>\n  low <!-- not this -->tide<![CDATA[ <b> & ]]>now<c>its own</c> and<?odd x?> later<d/>\n</a>");
  CHECK(document.root.text == "low tide <b> & now and later\n");
  CHECK(document.root.child("c")->text == "its own");
  CHECK(document.root.child("d")->text.empty());
  CHECK(document.root.children.size() == 2);
}

TEST_CASE("a long text comes whole") {
  std::string text;
  for (int i = 0; i < 20000; ++i) text += "line " + std::to_string(i) + " \u266F\n";
  CHECK(document_of("<a>" + text + "</a>").root.text == text);
  CHECK(document_of("<a b=\"" + repeated("\u266F", 20000) + "\"/>").root.attributes[0].value ==
        repeated("\u266F", 20000));
}

TEST_CASE("processing instructions say whom they are for, wherever they stand") {
  const XmlDocument document = document_of("<?xml version=\"1.0\"?><?first x?><a><?second?></a><?third?>");
  CHECK(document.instructions == std::vector<std::string>{"first", "second", "third"});
}

TEST_CASE("names keep their prefixes, bound or not, and what binds them is no attribute") {
  const XmlDocument document = document_of(
      "<s:a xmlns:s=\"urn:shed\" xmlns=\"urn:other\" s:b=\"1\" b=\"2\" xml:lang=\"en\"><c o:d=\"3\"/><o:e/></s:a>");
  CHECK(document.root.name == "s:a");
  CHECK(document.root.attributes.size() == 3);
  CHECK(*document.root.attribute("s:b") == "1");
  CHECK(*document.root.attribute("b") == "2");
  CHECK(*document.root.attribute("xml:lang") == "en");
  CHECK(*document.root.child("c")->attribute("o:d") == "3");
  CHECK(document.root.child("o:e") != nullptr);
}

TEST_CASE("a byte-order mark is no part of the document") {
  CHECK(document_of("\xEF\xBB\xBF<?xml version=\"1.0\"?><a/>").root.name == "a");
}

TEST_CASE("a document is UTF-8 whatever it says, or what it says") {
  const std::string says_utf16 = "<?xml version=\"1.0\" encoding=\"UTF-16\"?><a>\u266D</a>";
  CHECK(document_of(says_utf16).root.text == "\u266D");
  CHECK(fault_line(says_utf16, XmlEncoding::declared) == 1);
  // 0xE9 is é in ISO 8859-1, and no sound UTF-8 before `<`.
  const std::string latin = "<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>\n<a>\xE9</a>";
  CHECK(document_of(latin, XmlEncoding::declared).root.text == "\u00E9");
  CHECK(fault_line(latin) == 2);
  std::string wide = "\xFE\xFF";
  for (const char c : std::string("<a b=\"c\"/>")) wide += std::string(1, '\0') + c;
  CHECK(*document_of(wide, XmlEncoding::declared).root.attribute("b") == "c");
}

TEST_CASE("an element's line is where its tag begins, also beyond the 65,535th and in tags of several lines") {
  const std::string lines = repeated("\n", 70000);
  const XmlDocument document =
      document_of("<a>" + lines + "<b\n\n c=\"x\ny\"\n/><d\n>\n<e/>" + lines + "<f/></d>\n<g/></a>");
  CHECK(document.root.line == 1);
  CHECK(document.root.child("b")->line == 70001);
  const XmlElement* d = document.root.child("d");
  CHECK(d->line == 70005);
  CHECK(d->child("e")->line == 70007);
  CHECK(d->child("f")->line == 140007);
  CHECK(document.root.child("g")->line == 140008);
  CHECK(fault_line("<a>" + lines + "<b>\n</c>\n</a>") == 70002);
}

TEST_CASE("what is not sound XML is a fault at its line") {
  CHECK(fault_line("") == 1);
  CHECK(fault_line(" \n\n") >= 1);
  CHECK(fault_line("<!-- nothing else -->") == 1);
  CHECK(fault_line("no tag") == 1);
  CHECK(fault_line("<a>\n<b>\n") == 3);          // ends too soon
  CHECK(fault_line("<a>\n<b></a>\n</b>") == 2);  // ends out of order
  CHECK(fault_line("<a/>\n<b/>") == 2);          // two roots
  CHECK(fault_line("<a>\n&nothing;</a>") == 2);  // an entity that nothing declares
  CHECK(fault_line("<a>\n<b c=1/></a>") == 2);   // a value without quotes
  CHECK(fault_line("<a>\n<b c=\"<\"/></a>") == 2);
  CHECK(fault_line("<a>\n<b c=\"1\" c=\"2\"/></a>") == 2);
  CHECK(fault_line("<a>\n\x01</a>") == 2);
  CHECK(fault_line("<a>\n\xC3\x28</a>") == 2);
  CHECK(fault_line(std::string("<a>\n\0</a>", 9)) == 2);
  CHECK(fault_line("<a>]]></a>") == 1);  // section 2.4
}

TEST_CASE("texts that the parser still tells after a fault belong to no element") {
  CHECK(fault_line("<?xml version=\"1.0\" encoding(\"UTF-8\"?>\n<a>text<b>more</b>\n</a>\n") == 1);
  CHECK(fault_line("<a b=c>text</a><![CDATA[more]]>") == 1);
}

TEST_CASE("a document that declares entities is refused at the first") {
  CHECK(fault_line("<!DOCTYPE a [\n<!ENTITY b \"c\">]>\n<a>&b;</a>") == 2);
  CHECK(fault_line("<!DOCTYPE a [\n<!ENTITY b \"c\">]>\n<a/>") == 2);
  CHECK(fault_line("<!DOCTYPE a [\n<!ENTITY % b \"c\">]>\n<a/>") == 2);
  CHECK(fault_line("<!DOCTYPE a [<!NOTATION n SYSTEM \"n\">\n<!ENTITY b SYSTEM \"c\" NDATA n>]>\n<a/>") == 2);
  // Each of ten in ten of the next: 10^9 letters of six hundred.
  std::string bomb = "<!DOCTYPE a [<!ENTITY e0 \"mussel\">";
  for (int i = 1; i < 10; ++i) {
    bomb += "<!ENTITY e" + std::to_string(i) + " \"" + repeated("&e" + std::to_string(i - 1) + ";", 10) + "\">";
  }
  CHECK(fault_line(bomb + "]>\n<a>&e9;</a>") == 1);
  CHECK(fault_line(bomb + "]>\n<a b=\"&e9;\"/>") == 1);
}

TEST_CASE("no other file is read, whatever a document names") {
  const TemporaryFolder folder;
  const std::string secret = folder / "secret.dtd";
  const std::string text = "<!ENTITY b \"the key is under the mat\"><!ATTLIST a c CDATA \"default\">";
  put(secret, text);
  CHECK(fault_line("<!DOCTYPE a [<!ENTITY b SYSTEM \"" + secret + "\">]><a>&b;</a>") == 1);
  CHECK(fault_line("<!DOCTYPE a [<!ENTITY % b SYSTEM \"" + secret + "\"> %b;]><a/>") == 1);
  // What the outside document type could say stays unsaid.
  const XmlDocument outside = document_of("<!DOCTYPE a SYSTEM \"" + secret + "\"><a>1 &b; 2</a>");
  CHECK(outside.root.text == "1 &b; 2");
  CHECK(outside.root.attributes.empty());
  const XmlDocument included = document_of(
      "<a xmlns:xi=\"http://www.w3.org/2001/XInclude\"><xi:include parse=\"text\" href=\"" + secret + "\"/></a>");
  CHECK(included.root.child("xi:include")->text.empty());
}

TEST_CASE("a value that the document itself declares for an attribute is read") {
  // XML 1.0, section 3.3.2.
  const XmlDocument document = document_of("<!DOCTYPE a [<!ATTLIST a b CDATA \"c&amp;d\">]><a/>");
  REQUIRE(document.root.attribute("b") != nullptr);
  CHECK(*document.root.attribute("b") == "c&d");
}

TEST_CASE("elements may stand 250 deep, and not much deeper") {
  CHECK(fault_line(nested(250)) == 0);
  CHECK(fault_line(nested(260)) == 1);
  CHECK(fault_line(nested(1000000)) == 1);
}

TEST_CASE("many elements and many values are read") {
  const std::string rung = "<rung at=\"1\" of=\"2\">&lt;<b/></rung>\n";
  const std::size_t count = (std::size_t{12} << 20) / rung.size();
  const XmlDocument document = document_of("<ladder>\n" + repeated(rung, count) + "</ladder>");
  REQUIRE(document.root.children.size() == count);
  CHECK(document.root.children.back().line == static_cast<int>(count) + 1);
  CHECK(document.root.children.back().text == "<");
}

TEST_CASE("nothing is written to the standard error output, whatever is wrong with a document") {
  const TemporaryFolder folder;
  const std::string file = folder / "said";
  std::fflush(stderr);
  const int kept = ::dup(STDERR_FILENO);
  std::FILE* const said = std::fopen(file.c_str(), "wb");
  ::dup2(::fileno(said), STDERR_FILENO);
  const std::string declared = "<?xml version=\"1.0\" encoding=\"";
  const int faults = fault_line("<a><b></a>") + fault_line("<a>&b;</a>") +
                     fault_line("<!DOCTYPE a SYSTEM \"/no/such.dtd\"><a b:c=\"1\" xmlns:d=\":\">&e;</a") +
                     fault_line(declared + "EUC-JP\"?><a>\x8F\xFF\xFF</a>", XmlEncoding::declared) +
                     fault_line(declared + "no-such\"?><a/>", XmlEncoding::declared) +
                     fault_line(std::string("\xFF\xFE<\0a\0>\0\0\xDC", 10), XmlEncoding::declared);
  std::fflush(stderr);
  ::dup2(kept, STDERR_FILENO);
  ::close(kept);
  std::fclose(said);
  CHECK(faults == 6);
  CHECK(bytes_of(file).empty());
}

TEST_CASE("documents are read in several threads at once") {
  std::vector<int> sound(4);
  std::vector<std::thread> threads;
  for (int& count : sound) {
    threads.emplace_back([&count] {
      for (int i = 0; i < 200; ++i) {
        count += fault_line("<a><b c=\"d\"/></a>") == 0 ? 1 : 0;
        count += fault_line("<a><b></a>") == 1 ? 1 : 0;
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  CHECK(sound == std::vector<int>(4, 400));
}
