#include "platform/xml_document.h"

#include <algorithm>
#include <cstddef>
#include <memory>
#include <new>
#include <optional>
#include <utility>

#include "platform/xml_library.h"

namespace fretsheaf::platform {
namespace {

std::string_view view(const xmlChar* name) {
  return reinterpret_cast<const char*>(name);
}

// Where no NUL ends it but the document's own.
std::string_view view(const xmlChar* text, std::ptrdiff_t size) {
  return {reinterpret_cast<const char*>(text), static_cast<std::size_t>(size)};
}

std::string qualified(const xmlChar* prefix, const xmlChar* local) {
  std::string name;
  if (prefix != nullptr) name.append(view(prefix)) += ':';
  return name.append(view(local));
}

// The parser leaves an ampersand in a value as the reference to its number, for trees whose values are parsed again
// (SAX2.c, xmlSAX2AttributeNs); no other reference is left there.
std::string settled(std::string_view value) {
  constexpr std::string_view left = "&#38;";
  std::string out;
  for (std::size_t at = value.find(left); at != std::string_view::npos; at = value.find(left)) {
    out.append(value.substr(0, at)) += '&';
    value.remove_prefix(at + left.size());
  }
  return out.append(value);
}

// Builds a document's elements of what the parser tells, tag by tag: the library's own tree knows no line beyond 65,535
// and, of a tag that has several, only the last.
class Reader {
 public:
  explicit Reader(const XmlLibrary& xml) : xml_(xml), parser_(xml.new_parser(), xml.free_parser) {
    if (parser_ == nullptr) throw std::bad_alloc();
    *parser_->sax = told();
    parser_->userData = this;
  }

  std::variant<XmlDocument, XmlFault> read(std::string_view bytes, XmlEncoding encoding) {
    // What is said outside of any document, as of an encoding, would go to the standard error output.
    xml_.set_structured_error(nullptr, [](void*, auto*) {});
    const int options = XML_PARSE_NONET | (encoding == XmlEncoding::utf8 ? XML_PARSE_IGNORE_ENC : 0);
    const char* const data = bytes.empty() ? "" : bytes.data();
    // Empty in any case, as nothing that was told went into it.
    const std::unique_ptr<xmlDoc, decltype(xml_.free_document)> tree(
        xml_.read_memory(parser_.get(), data, static_cast<int>(bytes.size()), nullptr, nullptr, options),
        xml_.free_document);
    if (fault_ || !rooted_ || parser_->wellFormed == 0) return fault_.value_or(XmlFault{});
    return std::move(document_);
  }

 private:
  static xmlSAXHandler told() {
    xmlSAXHandler sax{};
    sax.initialized = XML_SAX2_MAGIC;
    sax.startElementNs = [](void* self, const xmlChar* local, const xmlChar* prefix, const xmlChar*, int,
                            const xmlChar**, int count, int, const xmlChar** attributes) {
      of(self).begin(qualified(prefix, local), count, attributes);
    };
    sax.endElementNs = [](void* self, const xmlChar*, const xmlChar*, const xmlChar*) { of(self).end(); };
    sax.characters = [](void* self, const xmlChar* text, int size) { of(self).add_text(view(text, size)); };
    sax.ignorableWhitespace = sax.characters;
    sax.cdataBlock = sax.characters;
    sax.reference = [](void* self, const xmlChar* name) { of(self).add_text("&" + std::string(view(name)) + ";"); };
    sax.processingInstruction = [](void* self, const xmlChar* target, const xmlChar*) {
      of(self).document_.instructions.emplace_back(view(target));
    };
    sax.entityDecl = [](void* self, const xmlChar*, int, const xmlChar*, const xmlChar*, xmlChar*) {
      of(self).refuse();
    };
    sax.unparsedEntityDecl = [](void* self, const xmlChar*, const xmlChar*, const xmlChar*, const xmlChar*) {
      of(self).refuse();
    };
    // `auto`, as releases of the library differ by a const.
    sax.serror = [](void* self, auto* error) {
      if (error->level == XML_ERR_FATAL && !of(self).fault_) of(self).fault_ = XmlFault{std::max(error->line, 1)};
    };
    return sax;
  }

  static Reader& of(void* self) { return *static_cast<Reader*>(self); }

  // `attributes` has five pointers each: name, prefix, what the prefix is bound to, the value's begin and end.
  void begin(std::string name, int count, const xmlChar** attributes) {
    XmlElement& element = open_.empty() ? document_.root : open_.back()->children.emplace_back();
    rooted_ = true;
    open_.push_back(&element);
    element.name = std::move(name);
    element.line = line_of_tag();
    element.attributes.reserve(static_cast<std::size_t>(count));
    for (const xmlChar** own = attributes; own != attributes + std::ptrdiff_t{5} * count; own += 5) {
      element.attributes.push_back({qualified(own[1], own[0]), settled(view(own[3], own[4] - own[3]))});
    }
  }

  // In a document that is not sound the parser may go on telling where no element is open.
  void end() {
    if (!open_.empty()) open_.pop_back();
  }

  // The parser stands behind the tag's last attribute, and throws nothing away within a tag, in which no other `<` can
  // stand.
  int line_of_tag() const {
    const xmlParserInput& input = *parser_->input;
    int line = input.line;
    for (const xmlChar* at = input.cur; at != input.base && *at != '<'; --at) {
      if (*at == '\n') --line;
    }
    return line;
  }

  void add_text(std::string_view text) {
    if (open_.empty()) return;
    std::string& own = open_.back()->text;
    if (own.empty()) text.remove_prefix(std::min(text.find_first_not_of(" \t\r\n"), text.size()));
    own.append(text);
  }

  void refuse() {
    if (!fault_) fault_ = XmlFault{parser_->input == nullptr ? 1 : std::max(parser_->input->line, 1)};
    xml_.stop_parser(parser_.get());
  }

  const XmlLibrary& xml_;
  std::unique_ptr<xmlParserCtxt, decltype(XmlLibrary::free_parser)> parser_;
  XmlDocument document_;
  std::vector<XmlElement*> open_;  // from the root to where the parser is
  bool rooted_ = false;
  std::optional<XmlFault> fault_;
};

}  // namespace

const XmlElement* XmlElement::child(std::string_view child_name) const {
  const auto named = [&](const XmlElement& element) { return element.name == child_name; };
  const auto found = std::find_if(children.begin(), children.end(), named);
  return found == children.end() ? nullptr : &*found;
}

std::vector<const XmlElement*> XmlElement::all(std::string_view child_name) const {
  std::vector<const XmlElement*> found;
  for (const XmlElement& element : children) {
    if (element.name == child_name) found.push_back(&element);
  }
  return found;
}

const std::string* XmlElement::attribute(std::string_view attribute_name) const {
  for (const XmlAttribute& own : attributes) {
    if (own.name == attribute_name) return &own.value;
  }
  return nullptr;
}

std::variant<XmlDocument, XmlFault> parse_xml(std::string_view bytes, XmlEncoding encoding) {
  return Reader(xml_library()).read(bytes, encoding);
}

}  // namespace fretsheaf::platform
