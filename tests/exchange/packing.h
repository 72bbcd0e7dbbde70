#pragma once

#include <string>
#include <utility>
#include <vector>

namespace fretsheaf::exchange::test {

// A zip archive of entries, names and bytes as they are given: no score needs to be in it.
std::string zip_of(const std::vector<std::pair<std::string, std::string>>& entries);

}  // namespace fretsheaf::exchange::test
