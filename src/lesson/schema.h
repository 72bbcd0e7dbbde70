#pragma once

#include <string_view>

namespace fretsheaf::lesson {

// The JSON schema (draft 7) of a lesson file, for editors that complete and check keys. It accepts whatever the reader
// accepts; the reader knows more rules than a schema can say.
std::string_view schema();

}  // namespace fretsheaf::lesson
