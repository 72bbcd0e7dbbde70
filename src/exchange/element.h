#pragma once

#include <string>

#include "platform/xml_document.h"

namespace fretsheaf::exchange {

// A thin handle to an element of a document, for writing: children are added at the end. Owns nothing.
class Element {
 public:
  explicit Element(platform::XmlElement& element) : element_(&element) {}

  Element add(const char* name);
  Element add(const char* name, const std::string& text);
  Element add(const char* name, long long number) { return add(name, std::to_string(number)); }
  // REQUIRES: the element has no attribute of that name yet.
  Element& set(const char* attribute, const std::string& value) {
    element_->attributes.push_back({attribute, value});
    return *this;
  }

 private:
  platform::XmlElement* element_;
};

}  // namespace fretsheaf::exchange
