#pragma once

#include "source/diagnostic.h"
#include "source/text.h"
#include "template/template.h"

namespace fretsheaf::templates {

// The template that a file's text gives: the music-stand, changed by what the text names. What is wrong is reported
// with its place, all of it in one run (a syntax error ends the reading); the result then is only part of the truth.
Template parse_template(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::templates
