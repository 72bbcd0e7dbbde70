#include "sheaf/course.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>

#include "lesson/sheaf_of.h"
#include "sheaf/workshop.h"

namespace fretsheaf::sheaf {

namespace {

constexpr std::string_view lesson_ending = ".lesson.toml";

// Adds the lessons below a folder to `found`. A folder that may not be read is an error: its lessons would seem gone.
std::optional<NoCourse> find_lessons(const std::string& folder, const platform::Machine& system,
                                     std::vector<std::string>& found) {
  const std::string here = folder.empty() ? "." : folder;
  const std::vector<std::string> names = system.list(here);
  if (names.empty()) {
    const auto read = system.read(here, 0);
    const auto* error = std::get_if<platform::FileError>(&read);
    if (error != nullptr && error->kind == platform::FileError::Kind::not_allowed) {
      return NoCourse{false, here + ": " + error->what};
    }
  }
  for (const std::string& name : names) {
    if (name.starts_with('.')) continue;
    std::string path = joined(folder, name);
    const std::optional<platform::FileStatus> status = system.status(path);
    if (!status) continue;
    if (status->kind == platform::FileStatus::Kind::folder) {
      if (status->is_link) continue;
      if (auto none = find_lessons(path, system, found)) return none;
    } else if (name.size() > lesson_ending.size() && name.ends_with(lesson_ending)) {
      found.push_back(std::move(path));
    }
  }
  return std::nullopt;
}

// Where the handouts of one folder's lessons go, and what they share.
struct Target {
  std::string folder;
  std::string sheaf;
};

class Targets {
 public:
  Targets(const std::string& folder, const std::string& to, const platform::Machine& system)
      : inside_(joined(folder, "")), to_(to), system_(system) {}

  const Target& of(const std::string& lesson_folder) {
    const auto known = known_.find(lesson_folder);
    if (known != known_.end()) return known->second;
    const auto sheaf = lesson::sheaf_of(joined(lesson_folder, "a.lesson.toml"), system_);
    Target target{lesson_folder, sheaf ? sheaf->path : ""};
    if (!to_.empty()) {
      const bool is_top = lesson_folder.size() < inside_.size();
      target.folder = is_top ? to_ : joined(to_, lesson_folder.substr(inside_.size()));
    } else if (sheaf && sheaf->output.folder) {
      target.folder = under_sheaf(sheaf->path, sheaf->output.folder->value, lesson_folder);
    }
    return known_.emplace(lesson_folder, std::move(target)).first->second;
  }

 private:
  // The [output] folder, and in it the lesson's folders from the sheaf.toml on.
  std::string under_sheaf(const std::string& sheaf, const std::string& output, const std::string& lesson_folder) const {
    const std::string home = folder_part(sheaf);
    const std::filesystem::path from = system_.absolute(home.empty() ? "." : home);
    const std::filesystem::path here = system_.absolute(lesson_folder.empty() ? "." : lesson_folder);
    const std::string rest = here.lexically_relative(from).string();
    const std::string target = joined(home, output);
    return rest == "." ? target : joined(target, rest);
  }

  std::string inside_;
  const std::string& to_;
  const platform::Machine& system_;
  std::map<std::string, Target> known_;
};

// The folder of the record: that of the handouts, as far as they have one together.
Places places_of(const std::string& folder, const std::string& to, const platform::Machine& system) {
  const auto sheaf = lesson::sheaf_of(joined(folder, "a.lesson.toml"), system);
  std::string top = folder;
  std::string root = to.empty() ? folder : to;
  if (sheaf) {
    top = folder_part(sheaf->path);
    if (top.empty()) top = ".";
    if (to.empty() && sheaf->output.folder) root = joined(top, sheaf->output.folder->value);
  }
  return {folder, root, top, system};
}

std::optional<NoCourse> no_folder(const std::string& folder, const platform::Machine& system) {
  const std::optional<platform::FileStatus> status = system.status(folder);
  if (!status) return NoCourse{false, folder + ": is not there"};
  if (status->kind == platform::FileStatus::Kind::folder) return std::nullopt;
  return NoCourse{true, folder + ": is no folder; a lesson alone is typeset with: fretsheaf typeset " + folder};
}

// Two lessons of one name would overwrite each other's handouts.
std::optional<NoCourse> collision(const std::vector<CourseLesson>& lessons) {
  std::map<std::string, std::string> taken;
  for (const CourseLesson& lesson : lessons) {
    const auto [where, fresh] = taken.emplace(lesson.recorded_handouts, lesson.path);
    if (fresh) continue;
    return NoCourse{true, "'" + where->second + "' and '" + lesson.path + "' would both be written to '" +
                              lesson.handouts + ".…'; rename one of them"};
  }
  return std::nullopt;
}

}  // namespace

std::variant<Course, NoCourse> find_course(const std::string& given, const std::string& to,
                                           const platform::Machine& system) {
  std::string folder = given.empty() ? "." : given;
  while (folder.size() > 1 && folder.ends_with('/')) folder.pop_back();
  if (auto none = no_folder(folder, system)) return *none;
  std::vector<std::string> paths;
  if (auto none = find_lessons(folder == "." ? "" : folder, system, paths)) return *none;

  Course course{places_of(folder, to, system), {}};
  Targets targets(folder, to, system);
  for (std::string& path : paths) {
    const Target& target = targets.of(folder_part(path));
    CourseLesson lesson;
    lesson.name = course.places.recorded(path);
    lesson.job = path.substr(joined(folder, "").size());
    lesson.job.resize(lesson.job.size() - lesson_ending.size());
    lesson.handouts = joined(target.folder, stem(path));
    lesson.recorded_handouts = course.places.recorded(lesson.handouts);
    lesson.sheaf = target.sheaf.empty() ? "" : course.places.recorded(target.sheaf);
    lesson.path = std::move(path);
    course.lessons.push_back(std::move(lesson));
  }
  std::sort(course.lessons.begin(), course.lessons.end(),
            [](const CourseLesson& a, const CourseLesson& b) { return a.name < b.name; });
  if (auto twice = collision(course.lessons)) return *twice;
  return course;
}

}  // namespace fretsheaf::sheaf
