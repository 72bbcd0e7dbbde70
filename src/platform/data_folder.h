#pragma once

#include <functional>
#include <string>

namespace fretsheaf::platform {

// Where the program's own data may lie.
struct DataPlaces {
  std::string chosen;                            // the environment's FRETSHEAF_DATA; empty if not set
  std::string program;                           // the program's own path
  std::string checkout;                          // what it was built from
  std::string installed = "../share/fretsheaf";  // where an installed program has them, seen from its folder
};

// The first that there is: the chosen one (without asking whether it is there, so that a wrong one is not passed over
// in silence), the installed one, the checkout.
std::string data_folder(const DataPlaces& places, const std::function<bool(const std::string&)>& exists);

}  // namespace fretsheaf::platform
