#include <array>
#include <string_view>

#include "sheet/number.h"
#include "sheet/sheet.h"

namespace fretsheaf::sheet {
namespace {

constexpr std::array<const char*, 18> tag_names = {
    "group", "heading1", "heading2",  "heading3",     "paragraph",  "list",   "list_item", "list_label", "list_body",
    "quote", "table",    "table_row", "table_header", "table_cell", "figure", "span",      "link",       "artifact"};

void append_quoted(std::string& out, std::string_view text) {
  constexpr std::string_view hex = "0123456789abcdef";
  out += '"';
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      (out += '\\') += c;
    } else if (byte < 0x20 || byte == 0x7f) {
      ((out += "\\x") += hex[byte >> 4]) += hex[byte & 15];
    } else {
      out += c;
    }
  }
  out += '"';
}

class Dump {
 public:
  explicit Dump(const std::vector<std::string>& font_names) : font_names_(font_names) {}

  std::string operator()(const Sheet& sheet) {
    quoted("sheet", sheet.title);
    quoted(" author", sheet.author);
    quoted(" language", sheet.language);
    int number = 0;
    for (const Page& page : sheet.pages) {
      line("page " + std::to_string(++number));
      numbers({page.width, page.height});
      items(page.items);
    }
    for (const Bookmark& bookmark : sheet.bookmarks) {
      line("bookmark page " + std::to_string(bookmark.page + 1));
      word("y", bookmark.y);
      quoted("", bookmark.title);
    }
    out_ += '\n';
    return std::move(out_);
  }

  void operator()(const GlyphRun& run) {
    part("glyphs", run.part);
    out_ += ' ';
    const auto font = static_cast<std::size_t>(run.font);
    out_ += font < font_names_.size() ? font_names_[font] : "font-" + std::to_string(run.font);
    numbers({run.size});
    if (!run.text.empty()) quoted("", run.text);
    if (run.glyphs.empty()) return;
    out_ += " at";
    numbers({run.glyphs.front().x, run.glyphs.front().y});
    if (run.glyphs.size() > 1) word("to", run.glyphs.back().x);
    // What has a text is known by it; a sign that has none, by its glyphs.
    for (const Glyph& glyph : run.glyphs) {
      if (run.text.empty()) out_ += " #" + std::to_string(glyph.id);
    }
    color("in", run.color);
  }

  void operator()(const Rule& rule) {
    part("rule", rule.part);
    numbers({rule.from.x, rule.from.y, rule.to.x, rule.to.y});
    word("width", rule.width);
    if (rule.dash > 0) {
      word("dash", rule.dash);
      word("gap", rule.gap);
    }
    color("in", rule.color);
  }

  void operator()(const Path& path) {
    part("path", path.part);
    if (path.fill) {
      out_ += " fill";
      color("in", *path.fill);
    }
    if (path.stroke) {
      word("stroke", path.stroke_width);
      if (path.round_ends) out_ += " round";
      color("in", *path.stroke);
    }
    for (const Segment& segment : path.segments) draw(segment);
  }

  void operator()(const Link& link) {
    line("link");
    numbers({link.area.left, link.area.top, link.area.right, link.area.bottom});
    quoted("", link.uri);
  }

  void operator()(const Image& image) {
    part(image.kind == Image::Kind::png ? "png" : "svg", image.part);
    numbers({image.area.left, image.area.top, image.area.right, image.area.bottom});
    out_ += " of " + std::to_string(image.bytes->size()) + " bytes";
  }

  void operator()(const Group& group) {
    line(tag_names.at(static_cast<std::size_t>(group.tag)));
    if (!group.alternative.empty()) quoted(" alternative", group.alternative);
    if (group.example) {
      out_ += " example " + std::to_string(group.example->number);
      quoted("", group.example->title);
    }
    if (group.event) {
      const EventInfo& event = *group.event;
      out_ += " event bar " + std::to_string(event.bar) + " at " + event.at + " " + event.staff;
      out_ += " line " + std::to_string(event.line);
      word("x", event.x);
    }
    items(group.items);
  }

 private:
  void items(const std::vector<Item>& items) {
    ++depth_;
    for (const Item& item : items) std::visit(*this, item);
    --depth_;
  }

  void line(std::string_view first) {
    out_ += '\n';
    out_.append(2 * depth_, ' ');
    out_ += first;
  }

  void part(std::string_view kind, Part part) {
    line(kind);
    (out_ += ' ') += part_name(part);
  }

  void number(double value) {
    out_ += ' ';
    append_fixed(out_, value, 2);
  }

  void numbers(std::initializer_list<double> values) {
    for (const double value : values) number(value);
  }

  void word(std::string_view word, double value) {
    (out_ += ' ') += word;
    number(value);
  }

  void quoted(std::string_view word, std::string_view text) {
    (out_ += word) += ' ';
    append_quoted(out_, text);
  }

  // Black goes without saying.
  void color(std::string_view word, Color color) {
    if (color == Color{}) return;
    ((out_ += ' ') += word) += " rgb";
    for (const int part : {color.red, color.green, color.blue}) (out_ += ' ') += std::to_string(part);
  }

  void draw(const Segment& segment) {
    switch (segment.kind) {
      case Segment::Kind::move:
        out_ += " M";
        return numbers({segment.end.x, segment.end.y});
      case Segment::Kind::line:
        out_ += " L";
        return numbers({segment.end.x, segment.end.y});
      case Segment::Kind::curve:
        out_ += " C";
        return numbers({segment.control1.x, segment.control1.y, segment.control2.x, segment.control2.y, segment.end.x,
                        segment.end.y});
      case Segment::Kind::close:
        out_ += " Z";
    }
  }

  const std::vector<std::string>& font_names_;
  std::string out_;
  std::size_t depth_ = 0;
};

}  // namespace

std::string dump(const Sheet& sheet, const std::vector<std::string>& font_names) {
  return Dump(font_names)(sheet);
}

}  // namespace fretsheaf::sheet
