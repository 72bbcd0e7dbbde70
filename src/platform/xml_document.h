#pragma once

#include <list>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace fretsheaf::platform {

struct XmlAttribute {
  std::string name;
  std::string value;
};

// An element of an XML document with all that is in it, read or to be written. Names are as they are written, with
// their prefixes; texts are UTF-8 and hold the characters that are meant, not the escapes for them.
struct XmlElement {
  std::string name;
  int line = 0;                          // in which its tag begins, from 1; 0 where it was not read
  std::vector<XmlAttribute> attributes;  // but for those that bind prefixes
  // Its own, in one, without the white space that it begins with: what its children hold is not in it.
  std::string text;
  std::list<XmlElement> children;  // a list, so that each stays where it is while others are added

  // The first child of that name; nullptr where there is none.
  const XmlElement* child(std::string_view child_name) const;
  // The children of that name, in order.
  std::vector<const XmlElement*> all(std::string_view child_name) const;
  // Null where there is none.
  const std::string* attribute(std::string_view attribute_name) const;
};

struct XmlDocument {
  XmlElement root;
  std::vector<std::string> instructions;  // whom its processing instructions are for: "xml-stylesheet"
};

// Why a document is none: it is not sound from this line on, counted from 1, or declares an entity there.
struct XmlFault {
  int line = 1;
};

enum class XmlEncoding {
  utf8,     // whatever the document says of itself
  declared  // as the document says, by its mark or its declaration
};

// Reads a document of less than 2 GiB (XML 1.0). Nothing outside of it is looked for: no document type, no entity, no
// other part. One that declares entities is a fault as soon as the first is met, so that none is ever put in for
// another; a reference to one that only an outside document type could declare stays as it is written. Elements more
// than about 250 deep are a fault, too. Throws std::runtime_error where libxml2 is not installed.
std::variant<XmlDocument, XmlFault> parse_xml(std::string_view bytes, XmlEncoding encoding);

}  // namespace fretsheaf::platform
