#include "exchange/element.h"

namespace fretsheaf::exchange {

Element Element::add(const char* name) {
  platform::XmlElement& child = element_->children.emplace_back();
  child.name = name;
  return Element(child);
}

Element Element::add(const char* name, const std::string& text) {
  Element child = add(name);
  child.element_->text = text;
  return child;
}

}  // namespace fretsheaf::exchange
