#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

// The display list: everything that a page shows, placed. Points (1/72 in), x to the right, y downward, from the page's
// top left corner. Renderers only draw it; tests read it.
namespace fretsheaf::sheet {

struct Point {
  double x = 0;
  double y = 0;
};

struct Box {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;
};

struct Color {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;

  bool operator==(const Color&) const = default;
};

// What an item is in the music or on the page. Collision tests and dumps go by it; it draws nothing.
enum class Part {
#define FRETSHEAF_PART(name) name,
#include "sheet/parts.def"
#undef FRETSHEAF_PART
};
const char* part_name(Part part);

struct Glyph {
  std::uint32_t id = 0;  // in its font
  double x = 0;          // origin, on the page
  double y = 0;
};

// A stretch of the run's text and of its glyphs that belong together (a ligature has several bytes and one glyph).
struct Cluster {
  std::uint16_t bytes = 0;
  std::uint16_t glyphs = 0;
};

// Glyphs of one font, one size and one colour, with the text that they spell (what a reader selects and searches).
struct GlyphRun {
  Part part{};
  int font = 0;  // index into the typeface room's font set
  double size = 0;
  Color color;
  std::vector<Glyph> glyphs;
  std::string text;               // UTF-8; may be empty for a sign that says nothing as text
  std::vector<Cluster> clusters;  // in order; their sums are the text's bytes and the glyphs
};

// A straight line with butt ends.
struct Rule {
  Part part{};
  Point from;
  Point to;
  double width = 0;
  Color color;
  double dash = 0;  // 0: solid; else the dash's length,
  double gap = 0;   // and the gap's
};

struct Segment {
  enum class Kind { move, line, curve, close };
  Kind kind = Kind::move;
  Point end;       // of move, line and curve
  Point control1;  // of a curve (cubic)
  Point control2;
};

// An outline, filled (non-zero winding), stroked, or both.
struct Path {
  Part part{};
  std::vector<Segment> segments;
  std::optional<Color> fill;
  std::optional<Color> stroke;
  double stroke_width = 0;
  bool round_ends = false;
};

// An area that opens an address.
struct Link {
  Box area;
  std::string uri;
};

// A picture from a file, drawn to fill its area. Its words are the alternative of the group that holds it.
struct Image {
  enum class Kind { png, svg };
  Part part{};
  Kind kind = Kind::png;
  Box area;
  std::shared_ptr<const std::string> bytes;  // the file's; never null
};

// What a group is for readers that do not see: a PDF tag, an SVG group.
enum class Tag {
  none,
  heading1,
  heading2,
  heading3,
  paragraph,
  list,
  list_item,
  list_label,
  list_body,
  quote,
  table,
  table_row,
  table_header,
  table_cell,
  figure,
  span,
  link,
  artifact
};

// The music that a group holds, for the SVG page's `data-` attributes (see the design).
struct ExampleInfo {
  int number = 1;
  std::string title;
};
struct EventInfo {
  int bar = 1;
  std::string at;     // "1/4"
  std::string staff;  // "slash", "notes", "tab"
  int line = 1;       // of music, within the example
  double x = 0;       // the event's centre, on the page
};

struct Group;
using Item = std::variant<GlyphRun, Rule, Path, Link, Image, Group>;

struct Group {
  Tag tag = Tag::none;
  std::string alternative;  // the text in place of a figure
  int flow = 0;             // not 0: groups of this number are one, which the ends of pages part
  std::optional<ExampleInfo> example;
  std::optional<EventInfo> event;
  std::vector<Item> items;
};

struct Page {
  double width = 0;
  double height = 0;
  std::vector<Item> items;
  std::string description{};  // for readers that do not see: "page 1 of 2"
};

struct Bookmark {
  std::string title;
  int page = 0;  // from 0
  double y = 0;
};

struct Sheet {
  std::string title;
  std::string author;
  std::string language;  // "en"
  std::vector<Page> pages;
  std::vector<Bookmark> bookmarks;
};

// Moves an item (and all in it).
void translate(Item& item, double dx, double dy);
void translate(std::vector<Item>& items, double dx, double dy);

// The display list as text, a line an item, indented by group: numbers with two decimals. What golden tests compare.
// `font_name` gives a font's name for its index.
std::string dump(const Sheet& sheet, const std::vector<std::string>& font_names);

}  // namespace fretsheaf::sheet
