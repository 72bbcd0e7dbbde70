#pragma once

#include <string>
#include <vector>

#include "preview/showing.h"

// What the page's script is told, as JSON.
namespace fretsheaf::preview {

// How a lesson stands in a list.
struct ListEntry {
  std::string name;
  std::string title;
  int errors = 0;
  int warnings = 0;
};

// `folder` is "" where the preview is of one lesson alone.
std::string list_document(const std::string& folder, const std::vector<ListEntry>& entries);

// A lesson now: `picture` may be an earlier one, where the lesson has errors, and nullptr where there never was one.
// `file` is its file's name.
std::string lesson_document(const std::string& name, const std::string& file, bool in_folder, const Choice& wanted,
                            const std::vector<Problem>& problems, const Picture* picture, bool is_fresh);

}  // namespace fretsheaf::preview
