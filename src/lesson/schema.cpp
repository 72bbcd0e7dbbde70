#include "lesson/schema.h"

#include "lesson/embedded_schema.h"

namespace fretsheaf::lesson {

std::string_view schema() {
  return embedded_schema;
}

}  // namespace fretsheaf::lesson
