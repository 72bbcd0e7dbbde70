#include "preview/course_list.h"

#include <algorithm>

#include "sheaf/course.h"
#include "sheaf/workshop.h"

namespace fretsheaf::preview {
namespace {

constexpr std::size_t most_folders = 2000;
constexpr int deepest = 32;

bool is_folder_at(const std::string& path, const platform::Machine& machine) {
  const auto status = machine.status(path);
  return status && status->kind == platform::FileStatus::Kind::folder;
}

}  // namespace

CourseList::CourseList(const std::string& path, const platform::Machine& machine)
    : path_(path), is_folder_(is_folder_at(path, machine)), machine_(machine) {
  look_again();
}

std::string CourseList::title() const {
  const std::string whole = machine_.absolute(path_);
  return whole.substr(whole.rfind('/') + 1);
}

const ListedLesson* CourseList::find(const std::string& name) const {
  const auto found = std::find_if(lessons_.begin(), lessons_.end(), [&](const auto& one) { return one.name == name; });
  return found == lessons_.end() ? nullptr : &*found;
}

void CourseList::look_again() {
  lessons_.clear();
  folders_.clear();
  if (!is_folder_) {
    lessons_.push_back({sheaf::stem(path_), path_});
    return;
  }
  find_folders(machine_.absolute(path_), 0);
  const auto found = sheaf::find_course(path_, "", machine_);
  if (const auto* course = std::get_if<sheaf::Course>(&found)) {
    for (const sheaf::CourseLesson& lesson : course->lessons) lessons_.push_back({lesson.job, lesson.path});
  }
}

void CourseList::find_folders(const std::string& folder, int depth) {
  if (folders_.size() >= most_folders || depth > deepest) return;
  folders_.push_back(folder);
  for (const std::string& name : machine_.list(folder)) {
    if (name.starts_with('.')) continue;
    std::string path = folder;
    (path += '/') += name;
    const auto status = machine_.status(path);
    const bool enters = status && status->kind == platform::FileStatus::Kind::folder && !status->is_link;
    if (enters) find_folders(path, depth + 1);
  }
}

}  // namespace fretsheaf::preview
