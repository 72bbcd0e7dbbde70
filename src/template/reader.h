#pragma once

#include <optional>
#include <string>

#include "platform/system.h"
#include "source/diagnostic.h"
#include "source/text.h"
#include "template/template.h"

namespace fretsheaf::templates {

struct ReadTemplate {
  source::Files files;
  source::Diagnostics diagnostics;  // of the template's own file
  std::optional<Template> look;     // only where there are no errors
  bool missing = false;             // there is no such file
};

// `name` is a name in `templates/` ("music-stand") or a path (it holds a `/` or ends in ".toml").
ReadTemplate read_template(const std::string& name, const platform::System& system);

// The names in `templates/`, for suggestions.
std::vector<std::string> template_names(const platform::System& system);

}  // namespace fretsheaf::templates
