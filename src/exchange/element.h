#pragma once

#include <tinyxml2.h>

#include <string>
#include <string_view>

namespace fretsheaf::exchange {

// A thin handle to an element of a document, for writing: children are added at the end. Owns nothing.
class Element {
 public:
  explicit Element(tinyxml2::XMLElement* element) : element_(element) {}

  Element add(const char* name) { return Element(element_->InsertNewChildElement(name)); }
  Element add(const char* name, const std::string& text) {
    Element child = add(name);
    child.element_->SetText(text.c_str());
    return child;
  }
  Element add(const char* name, long long number) { return add(name, std::to_string(number)); }
  Element& set(const char* attribute, const std::string& value) {
    element_->SetAttribute(attribute, value.c_str());
    return *this;
  }

 private:
  tinyxml2::XMLElement* element_;
};

}  // namespace fretsheaf::exchange
