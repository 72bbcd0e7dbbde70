#include "sheaf/course_run.h"
#include "sheaf/gone.h"

namespace fretsheaf::sheaf {

namespace {

enum class Lying { nothing, as_made, altered };

// What lies where a handout's file was made.
Lying lying(const FileMark& file, const std::string& path, const platform::Machine& system) {
  if (!system.status(path)) return Lying::nothing;
  const auto read = system.read(path, file.size);
  const auto* bytes = std::get_if<std::string>(&read);
  return bytes != nullptr && print_of(*bytes) == file.print ? Lying::as_made : Lying::altered;
}

}  // namespace

void CourseRun::look_for_gone() {
  for (const MadeEntry& entry : gone(record_, course_, plans_, order_)) prune(entry);
  std::set<std::string> here;
  for (const CourseLesson& lesson : course_.lessons) here.insert(lesson.name);
  std::erase_if(record_.lessons, [&](const auto& one) {
    const bool forget = course_.places.is_in_folder(one.first) && !here.contains(one.first);
    forgot_ = forgot_ || forget;
    return forget;
  });
}

void CourseRun::prune(const MadeEntry& entry) {
  bool is_left = false;
  for (const FileMark& file : entry.files) {
    const std::string path = course_.places.working(entry.handout + file.tail);
    const Lying now = lying(file, path, system_);
    if (now == Lying::nothing) continue;
    if (!order_.prune) {
      tally_.gone.push_back(path);
      is_left = true;
    } else if (now == Lying::altered) {
      tally_.altered.push_back(path);
    } else if (const auto error = system_.remove(path)) {
      complain(path, *error);
      is_left = true;
    } else {
      tally_.pruned.push_back(path);
    }
  }
  if (is_left) return;
  record_.made.erase({entry.handout, entry.format});
  forgot_ = true;
}

}  // namespace fretsheaf::sheaf
