#include <cmark.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lesson/checks.h"
#include "lesson/toml_string.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

struct Free {
  void operator()(cmark_node* node) const { cmark_node_free(node); }
  void operator()(cmark_iter* iter) const { cmark_iter_free(iter); }
};

// Whether a link leads to the web or to a mailbox, or is an address without a scheme (which none of those is).
bool leads_out(std::string_view url) {
  constexpr std::array<std::string_view, 3> schemes = {"http:", "https:", "mailto:"};
  return std::ranges::any_of(schemes, [&](std::string_view scheme) {
    return url.size() > scheme.size() && std::equal(scheme.begin(), scheme.end(), url.begin(), [](char a, char b) {
             return a == std::tolower(static_cast<unsigned char>(b));
           });
  });
}

// One text, read as CommonMark.
class TextReader {
 public:
  TextReader(const Prose& text, const source::Files& files, source::Diagnostics& diagnostics)
      : range_(text.range), file_(files[text.range.file]), diagnostics_(diagnostics) {}

  void check(const std::string& text, std::size_t guard) {
    text_ = text;
    guard_ = guard;
    lines_ = {0};
    for (auto at = text_.find('\n'); at != std::string_view::npos; at = text_.find('\n', at + 1))
      lines_.push_back(at + 1);
    const std::unique_ptr<cmark_node, Free> root(
        cmark_parse_document(text.data(), text.size(), CMARK_OPT_VALIDATE_UTF8));
    const std::unique_ptr<cmark_iter, Free> iter(cmark_iter_new(root.get()));
    for (auto event = cmark_iter_next(iter.get()); event != CMARK_EVENT_DONE; event = cmark_iter_next(iter.get())) {
      if (event == CMARK_EVENT_ENTER) check_node(cmark_iter_get_node(iter.get()));
    }
  }

 private:
  void check_node(cmark_node* node) {
    const cmark_node_type type = cmark_node_get_type(node);
    if (type == CMARK_NODE_HTML_BLOCK || type == CMARK_NODE_HTML_INLINE) {
      std::string_view html = cmark_node_get_literal(node);
      html = html.substr(0, html.find('\n'));
      error(node, Code::text_html, '<', html.size(), "raw HTML cannot be printed",
            "write it in CommonMark (*emphasis*, **strong**, `code`), and a plain < as \\<");
    } else if (type == CMARK_NODE_IMAGE) {
      error(node, Code::text_picture, '!', 2, "a text cannot hold a picture",
            "write a link, [a boat](https://example.org/boat.png), or take the '!' out");
    } else if (type == CMARK_NODE_LINK && !leads_out(cmark_node_get_url(node))) {
      error(node, Code::text_link, '[', 1, "this link leads neither to the web nor to a mailbox",
            "a link begins with https://, http:// or mailto:");
    }
  }

  // The first byte of a node. The parser's columns are those of the line without what lists and quotes take from it,
  // wherever a text goes on over several lines: the sign itself is looked for then.
  std::size_t begin_of(cmark_node* node, char sign) const {
    const auto number = static_cast<std::size_t>(std::max(1, cmark_node_get_start_line(node)));
    const std::size_t line = lines_[std::min(number, lines_.size()) - 1];
    const auto column = static_cast<std::size_t>(std::max(1, cmark_node_get_start_column(node)) - 1);
    if (line + column < text_.size() && text_[line + column] == sign) return line + column;
    const std::size_t found = text_.find(sign, line);
    return found == std::string_view::npos ? line : found;
  }

  void error(cmark_node* node, Code code, char sign, std::size_t length, const std::string& message,
             const std::string& help) {
    const std::size_t begin = std::max(begin_of(node, sign), guard_) - guard_;
    const std::size_t end = std::min(begin + std::max<std::size_t>(length, 1), text_.size() - guard_);
    if (!places_) places_.emplace(file_, range_);
    diagnostics_.error(code, places_->range(begin, end), message, help);
  }

  Range range_;
  const source::Text& file_;
  source::Diagnostics& diagnostics_;
  std::string_view text_;
  std::vector<std::size_t> lines_;    // where each begins
  std::optional<TextPlaces> places_;  // made for the first error
  std::size_t guard_ = 0;
};

class Texts {
 public:
  Texts(const source::Files& files, source::Diagnostics& diagnostics) : files_(files), diagnostics_(diagnostics) {}

  void prose(const Prose& text) { TextReader(text, files_, diagnostics_).check(text.value, 0); }

  // One line, in which nothing at the start is a sign: as the title is set, after a no-break space.
  void title(const Prose& text) {
    const std::string guard = "\u00A0";
    std::string line = guard + text.value;
    std::replace(line.begin(), line.end(), '\n', ' ');
    TextReader(text, files_, diagnostics_).check(line, guard.size());
  }

 private:
  const source::Files& files_;
  source::Diagnostics& diagnostics_;
};

}  // namespace

void check_commonmark(const LessonKeys& keys, const Lesson& lesson, const source::Files& files,
                      source::Diagnostics& diagnostics) {
  Texts texts(files, diagnostics);
  for (const auto* setting : {&keys.title, &keys.subtitle}) {
    if (setting->value) texts.title(*setting->value);
  }
  if (keys.intro.value) texts.prose(*keys.intro.value);
  for (const Prose& note : lesson.practice) texts.prose(note);
  for (const Example& example : lesson.examples) {
    if (example.title) texts.title(*example.title);
    if (example.intro) texts.prose(*example.intro);
    for (const Prose& note : example.practice) texts.prose(note);
  }
}

}  // namespace fretsheaf::lesson
