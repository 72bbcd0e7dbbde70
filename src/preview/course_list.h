#pragma once

#include <map>
#include <string>
#include <vector>

#include "platform/machine.h"

namespace fretsheaf::preview {

// A lesson by its name on the page, and its file's path.
struct ListedLesson {
  std::string name;
  std::string path;
};

// The lessons that a preview is of: a file's one, or those in a folder and below it, by name.
class CourseList {
 public:
  // `path` is of a lesson file or a folder.
  CourseList(const std::string& path, const platform::Machine& machine);

  bool is_folder() const { return is_folder_; }
  std::string title() const;  // the folder's own name
  const std::vector<ListedLesson>& lessons() const { return lessons_; }
  const ListedLesson* find(const std::string& name) const;  // nullptr where there is none

  void look_again();
  // The folders where lessons may come up: this one and those below, their paths without links.
  const std::vector<std::string>& folders() const { return folders_; }

 private:
  void find_folders(const std::string& folder, int depth);

  std::string path_;
  bool is_folder_;
  const platform::Machine& machine_;
  std::vector<ListedLesson> lessons_;
  std::vector<std::string> folders_;
};

}  // namespace fretsheaf::preview
