#pragma once

#include <optional>
#include <string_view>

namespace fretsheaf::sheaf {

// What a handout can be made as.
enum class Format { pdf, svg, musicxml, mxl };

// As it is named on the command line, in a sheaf.toml, in records and at the end of a file's name.
std::string_view format_name(Format format);
// nullopt where no format is called so.
std::optional<Format> parse_format(std::string_view name);

}  // namespace fretsheaf::sheaf
