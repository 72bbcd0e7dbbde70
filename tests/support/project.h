#pragma once

#include <string>

namespace fretsheaf::test {

// The project's own folder, without a slash at the end; and the program that this build made. In one place, so that no
// other file is compiled anew for being in another folder.
const std::string& project_folder();
const std::string& program();

}  // namespace fretsheaf::test
