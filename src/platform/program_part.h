#pragma once

#include <string>
#include <variant>

namespace fretsheaf::platform {

// A function of a part of the program that few runs need: the part is loaded when one does, because the libraries
// behind it would keep every other run waiting. `fretsheaf-PART.so` lies beside the program, or, installed, in
// ../lib/fretsheaf. Stays loaded. Else why it cannot be had.
std::variant<void*, std::string> function_of_part(const std::string& part, const char* function);

}  // namespace fretsheaf::platform
