#include "command/formats.h"

#include <algorithm>

#include "command/report.h"

namespace fretsheaf::command {

std::optional<std::vector<sheaf::Format>> read_formats(const std::vector<std::string>& names, Console& console) {
  std::vector<sheaf::Format> formats;
  for (const std::string& name : names) {
    const std::optional<sheaf::Format> format = sheaf::parse_format(name);
    if (!format) {
      complain("--as " + name + ": there is no such format; it takes pdf, svg, musicxml and mxl", console);
      return std::nullopt;
    }
    if (std::find(formats.begin(), formats.end(), *format) == formats.end()) formats.push_back(*format);
  }
  return formats;
}

}  // namespace fretsheaf::command
