#pragma once

#include "platform/xml_document.h"

namespace fretsheaf::sheaf {

// Whether an SVG has its parts drawn so often, by references to them, that drawing takes seconds: ten parts that each
// refer ten times to the next are a file of a kilobyte and a picture without end. A style sheet's references are
// taken to hold for every part, because nothing here knows its selectors.
bool repeats_too_much(const platform::XmlElement& root);

}  // namespace fretsheaf::sheaf
