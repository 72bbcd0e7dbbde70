#include <tinyxml2.h>

#include <catch2/catch.hpp>
#include <functional>
#include <set>

#include "render/render.h"
#include "sample.h"
#include "sheet/walk.h"

using namespace fretsheaf;
using namespace fretsheaf::render;
using tinyxml2::XMLElement;

namespace {

class Page {
 public:
  explicit Page(const std::string& svg) { REQUIRE(document_.Parse(svg.c_str(), svg.size()) == tinyxml2::XML_SUCCESS); }

  const XMLElement& root() const { return *document_.RootElement(); }

  // All elements, in order.
  std::vector<const XMLElement*> all(const std::string& name, const std::string& css_class = "") const {
    std::vector<const XMLElement*> found;
    const std::function<void(const XMLElement&)> visit = [&](const XMLElement& element) {
      const char* given = element.Attribute("class");
      if (element.Name() == name && (css_class.empty() || (given != nullptr && given == css_class))) {
        found.push_back(&element);
      }
      for (auto* child = element.FirstChildElement(); child != nullptr; child = child->NextSiblingElement()) {
        visit(*child);
      }
    };
    visit(root());
    return found;
  }

 private:
  tinyxml2::XMLDocument document_;
};

std::string value(const XMLElement& element, const char* attribute) {
  const char* found = element.Attribute(attribute);
  return found == nullptr ? "(none)" : found;
}

}  // namespace

TEST_CASE_METHOD(Sample, "An SVG page has its size in millimetres and its unit is the point") {
  const std::vector<std::string> pages = svg(a4(text("x", {inter}, 62, 100)), fonts);
  REQUIRE(pages.size() == 1);
  CHECK(pages[0].starts_with("<?xml version=\"1.0\" encoding=\"UTF-8\"?>"));
  const Page page(pages[0]);
  CHECK(std::string(page.root().Name()) == "svg");
  CHECK(value(page.root(), "xmlns") == "http://www.w3.org/2000/svg");
  CHECK(value(page.root(), "width") == "210mm");  // ISO 216
  CHECK(value(page.root(), "height") == "297mm");
  CHECK(value(page.root(), "viewBox") == "0 0 595.28 841.89");
  CHECK(value(page.root(), "lang") == "en");
  CHECK(value(page.root(), "xml:lang") == "en");
  CHECK(value(page.root(), "role") == "document");
  CHECK(std::string(page.root().FirstChildElement("title")->GetText()) == "Low tide vamp");
}

TEST_CASE_METHOD(Sample, "Each outline is defined once and used for every glyph that draws something") {
  std::vector<sheet::Item> items = text("see the sea", {inter}, 62, 100, 20);
  items.push_back(text("see", {charis}, 62, 140, 10).front());
  const Page page(svg(a4(std::move(items)), fonts).front());
  std::set<std::string> defined;
  for (const XMLElement* path : page.all("path")) {
    CHECK(defined.insert(value(*path, "id")).second);
    CHECK(value(*path, "d").front() == 'M');
  }
  CHECK(defined.size() == 5 + 2);  // s e t h a, and s e of the other font
  const auto uses = page.all("use");
  CHECK(uses.size() == 9 + 3);  // spaces draw nothing
  for (const XMLElement* use : uses) CHECK(defined.count(value(*use, "href").substr(1)) == 1);
}

TEST_CASE_METHOD(Sample, "A run stands where its glyphs do, and says its text") {
  const std::vector<sheet::Item> items = text("Go", {inter}, 62, 100.5, 20);
  const auto& run = std::get<sheet::GlyphRun>(items[0]);
  const Page page(svg(a4(items), fonts).front());
  const auto groups = page.all("g", "text");
  REQUIRE(groups.size() == 1);
  CHECK(value(*groups[0], "role") == "img");
  CHECK(value(*groups[0], "aria-label") == "Go");
  CHECK(value(*groups[0], "transform") == "translate(62 100.5) scale(0.02)");
  const auto uses = page.all("use");
  REQUIRE(uses.size() == 2);
  CHECK(value(*uses[0], "x") == "(none)");
  CHECK(62 + 0.02 * uses[1]->DoubleAttribute("x") == Approx(run.glyphs[1].x).margin(0.01));
}

TEST_CASE_METHOD(Sample, "The music can be found: examples, events, their bars, counts and places") {
  sheet::Group event;
  event.event = sheet::EventInfo{3, "1/4", "tab", 1, 123.449};
  event.items = text("5", {inter}, 120, 200);
  sheet::Group example;
  example.example = sheet::ExampleInfo{1, "Tom & Jo's <pulse>"};
  example.items = {event};
  const Page page(svg(a4({example}), fonts).front());
  const auto examples = page.all("g", "example");
  REQUIRE(examples.size() == 1);
  CHECK(value(*examples[0], "data-example") == "1");
  CHECK(std::string(examples[0]->FirstChildElement()->Name()) == "title");
  CHECK(std::string(examples[0]->FirstChildElement()->GetText()) == "Tom & Jo's <pulse>");
  const auto events = page.all("g", "event");
  REQUIRE(events.size() == 1);
  CHECK(events[0]->Parent() == examples[0]);
  CHECK(value(*events[0], "data-bar") == "3");
  CHECK(value(*events[0], "data-at") == "1/4");
  CHECK(value(*events[0], "data-staff") == "tab");
  CHECK(value(*events[0], "data-line") == "1");
  CHECK(value(*events[0], "data-x") == "123.45");
}

TEST_CASE_METHOD(Sample, "Rules and paths are drawn as the sheet has them") {
  sheet::Path path;
  path.part = sheet::Part::slash_head;
  path.segments = {{sheet::Segment::Kind::move, {1, 2}, {}, {}},
                   {sheet::Segment::Kind::line, {-3, 4}, {}, {}},
                   {sheet::Segment::Kind::curve, {9, 10}, {5, 6}, {7.256, -8}},
                   {sheet::Segment::Kind::close, {}, {}, {}}};
  path.fill = sheet::Color{9, 84, 97};
  sheet::Path stroke = path;
  stroke.fill.reset();
  stroke.stroke = sheet::Color{};
  stroke.stroke_width = 0.66;
  stroke.round_ends = true;
  const Page page(
      svg(a4({sheet::Rule{sheet::Part::staff_line, {62, 100}, {550, 100}, 0.55, {}, 3, 2.4}, path, stroke}), fonts)
          .front());
  const auto lines = page.all("line", "staff-line");
  REQUIRE(lines.size() == 1);
  CHECK(value(*lines[0], "x2") == "550");
  CHECK(value(*lines[0], "stroke") == "#000000");
  CHECK(value(*lines[0], "stroke-width") == "0.55");
  CHECK(value(*lines[0], "stroke-dasharray") == "3 2.4");
  const auto paths = page.all("path", "slash-head");
  REQUIRE(paths.size() == 2);
  CHECK(value(*paths[0], "d") == "M1 2L-3 4C5 6 7.26-8 9 10Z");
  CHECK(value(*paths[0], "fill") == "#095461");
  CHECK(value(*paths[0], "stroke") == "(none)");
  CHECK(value(*paths[1], "fill") == "none");
  CHECK(value(*paths[1], "stroke-width") == "0.66");
  CHECK(value(*paths[1], "stroke-linecap") == "round");
}

TEST_CASE_METHOD(Sample, "Links lead to web and mail addresses only, and there is no script") {
  std::vector<sheet::Item> items;
  for (const char* uri : {"https://example.org/tide?a=1&b=\"2\"", "HTTP://example.org", "mailto:class@example.org",
                          "javascript:alert(1)", "data:text/html,x", "//example.org", "https://"}) {
    items.emplace_back(sheet::Link{{10, 20, 40, 30}, uri});
  }
  const std::string made = svg(a4(std::move(items)), fonts).front();
  const Page page(made);
  const auto links = page.all("a");
  REQUIRE(links.size() == 3);
  CHECK(value(*links[0], "href") == "https://example.org/tide?a=1&b=%222%22");
  CHECK(value(*links[0]->FirstChildElement("rect"), "width") == "30");
  CHECK(made.find("javascript") == std::string::npos);
  CHECK(page.all("script").empty());
}

TEST_CASE_METHOD(Sample, "Any text gives an SVG that can be parsed") {
  sheet::Sheet sheet = a4({});
  sheet.title = "bell \x07 and ]]> &amp; \xEF\xBF\xBE \xEF\xBF\xBF \t\"'<title>";
  sheet::Group figure;
  figure.tag = sheet::Tag::figure;
  figure.alternative = std::string("nul \0 escape \x1B", 14);
  sheet.pages[0].items = {figure};
  const std::string made = svg(sheet, fonts).front();
  for (const char c : made) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
  const Page page(made);
  CHECK(std::string(page.root().FirstChildElement("title")->GetText()) ==
        "bell \uFFFD and ]]> &amp; \uFFFD \uFFFD  \"'<title>");
}

TEST_CASE_METHOD(Sample, "Headings, lists and tables say what they are, and decoration that it is none") {
  sheet::Group heading;
  heading.tag = sheet::Tag::heading2;
  heading.items = text("The pulse", {charis}, 62, 100, 14);
  sheet::Group footer;
  footer.tag = sheet::Tag::artifact;
  sheet::Group plain;
  plain.items = {sheet::Rule{sheet::Part::rule, {0, 0}, {1, 1}, 1, {}, 0, 0}};
  const Page page(svg(a4({heading, footer, plain}), fonts).front());
  const auto groups = page.all("g");
  REQUIRE(groups.size() == 3);  // heading, its run, footer: a group that says nothing leaves no trace
  CHECK(value(*groups[1], "role") == "(none)");
  CHECK(value(*groups[0], "role") == "heading");
  CHECK(value(*groups[0], "aria-level") == "2");
  CHECK(value(*groups[2], "aria-hidden") == "true");
}

TEST_CASE_METHOD(Sample, "What is drawn as outlines is real text too, where it stands, and not twice") {
  sheet::Group paragraph;
  paragraph.tag = sheet::Tag::paragraph;
  paragraph.items = text("low tide ", {charis}, 62, 100, 12);
  for (sheet::Item& item : text("by the quay", {charis}, 62, 116, 12)) paragraph.items.push_back(item);
  sheet::Sheet sheet = a4({paragraph});
  sheet.pages[0].description = "page 1 of 1";
  const Page page(svg(sheet, fonts).front());
  CHECK(std::string(page.root().FirstChildElement("desc")->GetText()) == "page 1 of 1");
  const auto texts = page.all("text");
  REQUIRE(texts.size() == 1);
  CHECK(value(*texts[0], "fill") == "none");
  CHECK(value(*page.all("g")[0], "role") == "paragraph");
  const auto lines = page.all("tspan");
  REQUIRE(lines.size() == 2);
  CHECK(std::string(lines[0]->GetText()) == "low tide ");
  CHECK(value(*lines[1], "x") == "62");
  CHECK(value(*lines[1], "y") == "116");
  CHECK(value(*lines[1], "font-size") == "12");
  for (const XMLElement* group : page.all("g", "text")) CHECK(value(*group, "aria-label") == "(none)");
}

TEST_CASE_METHOD(Sample, "A picture says its words, and what is in it says nothing") {
  sheet::Group figure;
  figure.tag = sheet::Tag::figure;
  figure.alternative = "A lantern";
  figure.items = text("5", {inter}, 120, 200);
  const Page page(svg(a4({figure}), fonts).front());
  const auto groups = page.all("g");
  REQUIRE(groups.size() == 2);
  CHECK(value(*groups[0], "role") == "img");
  CHECK(value(*groups[0], "aria-label") == "A lantern");
  CHECK(value(*groups[1], "data-text") == "5");
  CHECK(value(*groups[1], "role") == "(none)");
  CHECK(page.all("text").empty());
}

TEST_CASE_METHOD(Sample,
                 "A link holds its words, and one in a foot says its address, so that it is not hidden with the foot") {
  sheet::Group link;
  link.tag = sheet::Tag::link;
  link.items = text("the shed", {inter}, 62, 100);
  link.items.emplace_back(sheet::Link{{62, 90, 102, 103}, "https://shed.example/"});
  sheet::Group paragraph;
  paragraph.tag = sheet::Tag::paragraph;
  paragraph.items = text("see ", {inter}, 40, 100);
  paragraph.items.emplace_back(link);
  sheet::Group foot;
  foot.tag = sheet::Tag::artifact;
  foot.items = text("shed.example", {inter}, 62, 800);
  foot.items.emplace_back(sheet::Link{{62, 790, 102, 803}, "https://shed.example/"});
  const Page page(svg(a4({paragraph, foot}), fonts).front());
  const auto links = page.all("a");
  REQUIRE(links.size() == 2);
  CHECK(std::string(links[0]->FirstChildElement("text")->FirstChildElement("tspan")->GetText()) == "the shed");
  CHECK(links[0]->FirstChildElement("rect") != nullptr);
  CHECK(value(*links[0], "aria-label") == "(none)");
  CHECK(value(*links[1], "aria-label") == "https://shed.example/");
  CHECK(value(*dynamic_cast<const XMLElement*>(links[1]->Parent()), "aria-hidden") == "(none)");
  CHECK(page.all("text").size() == 2);  // the foot's words are not told
}

TEST_CASE_METHOD(Sample, "A header names its row where cells follow it, else its column") {
  const auto cell = [](sheet::Tag tag) {
    sheet::Group group;
    group.tag = tag;
    return group;
  };
  sheet::Group head = cell(sheet::Tag::table_row);
  head.items = {cell(sheet::Tag::table_header)};
  sheet::Group row = cell(sheet::Tag::table_row);
  row.items = {cell(sheet::Tag::table_header), cell(sheet::Tag::table_cell)};
  sheet::Group table = cell(sheet::Tag::table);
  table.items = {head, row};
  const Page page(svg(a4({table}), fonts).front());
  std::vector<std::string> roles;
  for (const XMLElement* group : page.all("g")) roles.push_back(value(*group, "role"));
  CHECK(roles == std::vector<std::string>{"table", "row", "columnheader", "row", "rowheader", "cell"});
}

TEST_CASE("The same sheet gives the same SVG, and a page for each page") {
  std::string first;
  for (int time = 0; time < 2; ++time) {
    Sample sample;
    sheet::Sheet sheet = a4(sample.text("B\u266D7", {sample.inter, sample.music}, 62, 100));
    sheet.pages.push_back({612, 792, {}});
    const std::vector<std::string> pages = svg(sheet, sample.fonts);
    REQUIRE(pages.size() == 2);
    if (time == 0) first = pages[0];
    CHECK(pages[0] == first);
    CHECK(pages[1].find("width=\"215.9mm\" height=\"279.4mm\"") != std::string::npos);  // ANSI letter
  }
}
