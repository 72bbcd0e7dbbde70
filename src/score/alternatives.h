#pragma once

#include <string>
#include <vector>

// What the pictures of a handout say to readers who do not see them: the walk-through's words, cut to where the pages
// show what they tell. Made by the room `spoken`, set into the pages by `layout`.
namespace fretsheaf::score {

struct ExampleAlternatives {
  std::string opening;             // what holds for the whole example: its meter, feel, tempo; whole sentences
  std::vector<std::string> bars;   // of each bar of the score, in order; a line of music says those of its bars
  std::string neck;                // the picture of the neck, "" where there is none
  std::vector<std::string> boxes;  // of each chord box, in order
  std::string form;                // the form chart, "" where there is none
};

struct Alternatives {
  std::vector<ExampleAlternatives> examples;  // of each example of the score, in order; or none at all
};

}  // namespace fretsheaf::score
