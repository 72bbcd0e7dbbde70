#pragma once

#include <cstddef>

#include "platform/system.h"

namespace fretsheaf::platform {

// What went wrong, from the number that the system call left, in the words that follow a file's name.
FileError read_error(int error_number);
FileError write_error(int error_number);

FileError missing_error();
FileError folder_error();
FileError not_ordinary_error();

// "is larger than 4 MiB"
FileError too_large_error(std::size_t limit);

}  // namespace fretsheaf::platform
