#pragma once

#include <string>

namespace fretsheaf::platform {

// `DiskSystem::identity`: a line for the program and for each library that it was started with, of its name and the
// build id that the linker gave it (a hash of all that it holds). One without an id is told by its size and time, and so
// is one that would be loaded later (`late_libraries`), where it lies beside the C library. To be asked before one is.
std::string program_identity();

}  // namespace fretsheaf::platform
