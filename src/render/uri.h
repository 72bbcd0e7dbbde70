#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "sheet/sheet.h"

namespace fretsheaf::render {

// An address as it may stand in a finished page: http, https or mailto, in plain ASCII (RFC 3986), what is no such
// character percent-encoded byte by byte. nullopt for any other scheme: a page never runs or opens anything else.
std::optional<std::string> safe_uri(std::string_view uri);

// The address that a link's group opens, so written; nullopt where it has none that a page may lead to.
std::optional<std::string> address_of(const sheet::Group& group);

}  // namespace fretsheaf::render
