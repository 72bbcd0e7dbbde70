#pragma once

#include <string>
#include <vector>

#include "layout/music_fixture.h"

// The lessons that stand in a Markdown document, and the pictures beside it that show them engraved.
namespace fretsheaf::test {

struct Snippet {
  std::string text;     // what stands between the fences
  std::string picture;  // the file that the line after it shows; "" where none does
  int line = 0;         // of the opening fence, from 1
};

// All that are fenced as ```toml.
std::vector<Snippet> snippets(const std::string& markdown);

// A snippet as a whole lesson: one that begins with an example, or with the keys of one, stands under the three lines
// that the manual names at its top.
std::string whole_lesson(const Snippet& snippet);

// The snippet engraved, cut to its ink: of a grid alone the music, of an example all that stands under the page's head,
// of a whole lesson the first page without its foot. An SVG document.
std::string picture_of(const Snippet& snippet, Music& music);

}  // namespace fretsheaf::test
