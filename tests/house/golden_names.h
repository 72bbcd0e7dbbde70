#pragma once

#include <set>
#include <string>
#include <string_view>

// The golden files that a test's source claims: the literals given to `check_golden` or to a `GoldenName`.
std::set<std::string> golden_names(std::string_view source);
