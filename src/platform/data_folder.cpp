#include "platform/data_folder.h"

namespace fretsheaf::platform {

std::string data_folder(const DataPlaces& places, const std::function<bool(const std::string&)>& exists) {
  if (!places.chosen.empty()) return places.chosen;
  const auto slash = places.program.rfind('/');
  if (slash != std::string::npos) {
    std::string installed = places.program.substr(0, slash) + "/" + places.installed;
    if (exists(installed)) return installed;
  }
  return places.checkout;
}

}  // namespace fretsheaf::platform
