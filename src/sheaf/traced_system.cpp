#include "sheaf/traced_system.h"

namespace fretsheaf::sheaf {

Inputs TracedSystem::take() {
  for (const auto& [path, bytes] : viewed_) read_[path] = print_of(bytes.bytes);
  viewed_.clear();
  return std::exchange(read_, {});
}

platform::FileResult<std::string> TracedSystem::read(const std::string& path, std::size_t limit) const {
  platform::FileResult<std::string> result = machine().read(path, limit);
  if (const auto* bytes = std::get_if<std::string>(&result)) read_[path] = print_of(*bytes);
  return result;
}

platform::FileResult<platform::SharedBytes> TracedSystem::view(const std::string& path, std::size_t limit) const {
  platform::FileResult<platform::SharedBytes> result = machine().view(path, limit);
  if (const auto* bytes = std::get_if<platform::SharedBytes>(&result)) viewed_.emplace_back(path, *bytes);
  return result;
}

}  // namespace fretsheaf::sheaf
