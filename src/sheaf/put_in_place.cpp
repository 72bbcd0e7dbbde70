#include "sheaf/put_in_place.h"

namespace fretsheaf::sheaf {
namespace {

bool is_link(const platform::System& system, const std::string& given) {
  const std::string path = given.find('/') == std::string::npos ? "./" + given : given;
  const auto name = path.rfind('/') + 1;
  const std::string folder = system.real_path(path.substr(0, name));
  return system.exists(path) &&
         system.real_path(path) != folder + (folder.ends_with('/') ? "" : "/") + path.substr(name);
}

}  // namespace

std::optional<platform::FileError> put_in_place(platform::System& system, const std::string& path,
                                                std::string_view bytes) {
  if (path != "-" && is_link(system, path)) {
    if (auto error = system.remove(path)) return error;
  }
  return system.write(path, bytes);
}

}  // namespace fretsheaf::sheaf
