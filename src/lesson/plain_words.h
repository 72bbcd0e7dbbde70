#pragma once

#include <string>

// Words that come from elsewhere, as a lesson can hold them.
namespace fretsheaf::lesson {

// A text as one line without control characters, and without `{{`, which would ask for a filling. As long as a line may
// be (limits::line); of more, the beginning.
std::string plain_line(const std::string& text);
bool fits_line(const std::string& text);  // whether nothing of it is cut off

// The same as a grid can hold it: double quotes as single ones, and never three single quotes side by side, which would
// end the TOML string. As long as a word may be.
std::string grid_words(const std::string& text);
bool fits_words(const std::string& text);

}  // namespace fretsheaf::lesson
