#include "template/template.h"

namespace fretsheaf::templates {

TypeStyles music_stand_type() {
  return {{
#define FRETSHEAF_ROLE(name, size, tracking, tabular, ...) TypeStyle{{__VA_ARGS__}, size, tracking, tabular},
#include "template/roles.def"
#undef FRETSHEAF_ROLE
  }};
}

}  // namespace fretsheaf::templates
