#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace fretsheaf::platform {

struct XmlElement;

// A text's `&`, `<` and `>` as escapes (XML 1.0, section 2.4).
std::string xml_escaped(std::string_view text);

// Writes an XML 1.0 document in UTF-8, piece after piece: no tree is held. Each element stands on a line of its own but
// inside one that has text. Texts and values are escaped. REQUIRES: they are UTF-8 of characters that XML may hold
// (section 2.2), and names are sound.
class XmlWriter {
 public:
  // `indent`: the blanks before a line, a level.
  explicit XmlWriter(std::size_t indent);

  void open(std::string_view name);
  // REQUIRES: nothing was written into the element yet.
  void attribute(std::string_view name, std::string_view value);
  // Also where it is empty.
  void text(std::string_view text);
  void close();

  // Hands over the document. REQUIRES: every element is closed.
  std::string take() { return std::move(out_); }

 private:
  struct Open {
    std::string name;
    bool has_text = false;  // it, or what it stands in
  };

  void end_tag();
  void begin_line();

  std::size_t indent_;
  std::string out_;
  std::vector<Open> open_;
  bool in_tag_ = false;  // the innermost element's tag can take attributes
};

// An element as a document of its own, each level four blanks to the right.
std::string xml_written(const XmlElement& root);

}  // namespace fretsheaf::platform
