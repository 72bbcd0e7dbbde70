#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "preview/choice.h"
#include "preview/places.h"
#include "preview/problems.h"
#include "sheaf/workshop.h"

namespace fretsheaf::preview {

// A page of a handout by the print of its bytes.
struct ShownPage {
  std::string name;
  std::shared_ptr<const std::string> svg;
};

// A key to choose: as the command line calls it, and as it is printed.
struct KeyChoice {
  enum class Group { own, also_in, other };
  std::string key;
  std::string printed;
  Group group = Group::own;
};

// A handout that can be shown.
struct Picture {
  Choice choice;  // every part filled in
  std::string title;
  bool exercise = false;  // so that there is an answer key
  std::vector<KeyChoice> keys;
  std::vector<std::string> looks;  // the lesson's own first
  std::vector<ShownPage> pages;
  std::vector<MusicPlace> places;
};

// What comes of showing a lesson: a picture, unless it has errors.
struct Showing {
  std::vector<Problem> problems;
  std::optional<Picture> picture;
};

// Reads the lesson as it is now, and sets it. A key or template that it cannot have (any more) gives way to its own.
Showing show(sheaf::Workshop& workshop, const platform::System& system, const std::string& lesson,
             const Choice& wanted);

// One file to take away.
struct Download {
  std::string name;
  std::string bytes;    // empty where there is none to have
  std::string refusal;  // then: why
};
Download download(sheaf::Workshop& workshop, const platform::System& system, const std::string& lesson,
                  const Choice& wanted, sheaf::Format format);

}  // namespace fretsheaf::preview
