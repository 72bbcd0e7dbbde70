#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "sheet/sheet.h"

// What a reader that does not see is told of a document: its elements in reading order, and which marked contents of
// its pages are theirs (ISO 32000-1, 14.7 and 14.8).
namespace fretsheaf::render {

// A stretch of a page's drawing that belongs together; numbered on each page from 0, in the order of drawing.
struct Content {
  int page = 0;
  int number = 0;
};

// The area of a page that opens a link.
struct Area {
  int page = 0;
  sheet::Box box;
};

struct Element {
  sheet::Tag tag{};  // none: the whole document
  std::string alternative;
  std::string uri;  // of a link, safe to stand in the file
  // What a figure covers, where it lies on one page.
  std::vector<std::pair<int, sheet::Box>> boxes;
  // Elements by their index, contents and areas, in reading order.
  std::vector<std::variant<std::size_t, Content, Area>> kids;
};

struct Structure {
  std::vector<Element> elements;  // the first is the document
  // Of each page, whose each content is: an element's index, or nothing where it is decoration.
  std::vector<std::vector<std::optional<std::size_t>>> owners;
};

// Whether a document of this structure may say that it keeps to PDF/UA-1, as far as a sheet can offend: a title, a
// language, words for every figure, and no level of heading left out.
bool is_universal(const sheet::Sheet& sheet, const Structure& structure);

// Whether stretches are marked at all: a benchmark asks what it costs.
enum class Marks { on, off };

// Builds the structure while a sheet is drawn. Groups that were parted by the end of a page are one element.
class StructureBuilder {
 public:
  // To what the drawing belongs at present.
  struct Owner {
    enum class Kind { content, decoration, page_furniture };
    Kind kind = Kind::decoration;
    std::size_t element = 0;  // of content

    bool operator==(const Owner&) const = default;
  };

  StructureBuilder();

  void begin_page();
  // `box` is what the group's ink covers; only figures need it.
  void open(const sheet::Group& group, const std::optional<sheet::Box>& box);
  void close();
  Owner owner() const;
  // What is drawn from here to the next call is `owner`'s.
  void begin_content(const Owner& owner);
  void link(const sheet::Link& link);

  Structure take();

 private:
  struct Open {
    std::size_t element = 0;
    bool furniture = false;
  };

  std::size_t add(std::size_t parent, const sheet::Group& group);
  std::size_t element_of(const sheet::Group& group);
  int page() const { return static_cast<int>(structure_.owners.size()) - 1; }

  Structure structure_;
  std::vector<Open> open_;
  std::map<int, std::size_t> flows_;
  std::vector<Element> loose_links_;  // outside the text: of running heads and footers
};

}  // namespace fretsheaf::render
