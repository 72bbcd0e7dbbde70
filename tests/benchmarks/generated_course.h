#pragma once

#include <string>

namespace fretsheaf::benchmarks {

// The text of a lesson of one to two pages for bass, in twelve keys, like no other number's.
std::string generated_lesson(int number);

// Writes so many lessons into a folder, fifty to a unit.
void generate_course(const std::string& folder, int lessons);

// The path of one of them.
std::string generated_path(const std::string& folder, int number);

}  // namespace fretsheaf::benchmarks
