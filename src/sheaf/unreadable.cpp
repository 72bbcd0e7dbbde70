#include "sheaf/unreadable.h"

#include <string_view>
#include <vector>

#include "source/first_few.h"
#include "source/nearest.h"

namespace fretsheaf::sheaf {

namespace {

constexpr std::size_t most_named = 5;
constexpr std::string_view ending = ".lesson.toml";

std::vector<std::string> lessons_in(const std::string& folder, const platform::System& system) {
  std::vector<std::string> lessons;
  for (std::string& name : system.list(folder)) {
    if (name.ends_with(ending)) lessons.push_back(std::move(name));
  }
  return lessons;
}

std::string way_out(const std::string& path, const platform::System& system) {
  const std::size_t slash = path.rfind('/');
  const std::string folder = slash == std::string::npos ? "" : path.substr(0, slash + 1);
  const std::string name = path.substr(folder.size());
  const std::vector<std::string> lessons = lessons_in(folder.empty() ? "." : folder, system);
  if (lessons.empty()) return "fretsheaf new FILE writes a lesson to start from";
  // Without the ending, which is left out most often: all have it, so that it says nothing of what is meant.
  std::vector<std::string_view> known(lessons.begin(), lessons.end());
  for (std::string_view& lesson : known) lesson.remove_suffix(ending.size());
  const bool whole = name.ends_with(ending) && name.size() > ending.size();
  std::string near = source::nearest(whole ? name.substr(0, name.size() - ending.size()) : name, known);
  if (near.empty()) near = source::nearest(name.substr(0, name.find('.')), known);
  if (!near.empty()) return "did you mean '" + folder + near + std::string(ending) + "'?";
  return (lessons.size() == 1 ? "there is " : "there are ") + source::first_few(lessons, most_named);
}

}  // namespace

std::string shown_name(const std::string& path) {
  return path == "-" ? "standard input" : path;
}

std::string unreadable(const std::string& path, const platform::FileError& error, const platform::System& system) {
  const std::string why = shown_name(path) + ": " + error.what;
  if (error.kind == platform::FileError::Kind::folder) {
    return why + "; name a lesson in it, or make the handouts of all of them with: fretsheaf sheaf " + path;
  }
  const bool missing = error.kind == platform::FileError::Kind::missing;
  return missing && path != "-" ? why + "; " + way_out(path, system) : why;
}

}  // namespace fretsheaf::sheaf
