#pragma once

#include <string>
#include <vector>

#include "command/help.h"

namespace fretsheaf::command {

// A word without the s of a plural.
std::string singular(std::string word);

// The entries that tell of a word in their text, in the table's order: those of a lesson ("slide" stands in the text of
// /), else those of a template. The case and the hyphens of the word do not matter, nor its plural's s; a blank in it
// is one between words. None where the word is so short, or so common, that its being there says nothing.
std::vector<const HelpEntry*> mentions_of(const std::string& word);

// Those entries for someone who asked for `word`: whole where they are few, else a line each.
std::string told_of(const std::string& word, const std::vector<const HelpEntry*>& entries);

}  // namespace fretsheaf::command
