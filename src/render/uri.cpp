#include "render/uri.h"

#include <array>

namespace fretsheaf::render {
namespace {

constexpr std::array<std::string_view, 3> schemes = {"http://", "https://", "mailto:"};

bool begins_with(std::string_view uri, std::string_view scheme) {
  if (uri.size() <= scheme.size()) return false;
  for (std::size_t i = 0; i < scheme.size(); ++i) {
    const char lower = uri[i] >= 'A' && uri[i] <= 'Z' ? static_cast<char>(uri[i] - 'A' + 'a') : uri[i];
    if (lower != scheme[i]) return false;
  }
  return true;
}

// Unreserved and reserved characters and `%` (RFC 3986, sections 2.1 to 2.3), but the apostrophe, which ends a string
// where links are written as attributes.
bool may_stand(char c) {
  constexpr std::string_view marks = "-._~:/?#[]@!$&()*+,;=%";
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
         marks.find(c) != std::string_view::npos;
}

}  // namespace

std::optional<std::string> safe_uri(std::string_view uri) {
  bool known = false;
  for (const std::string_view scheme : schemes) known = known || begins_with(uri, scheme);
  if (!known) return std::nullopt;
  constexpr std::string_view hex = "0123456789ABCDEF";
  std::string safe;
  for (const char c : uri) {
    const auto byte = static_cast<unsigned char>(c);
    if (may_stand(c)) {
      safe += c;
    } else {
      ((safe += '%') += hex[byte >> 4]) += hex[byte & 15];
    }
  }
  return safe;
}

std::optional<std::string> address_of(const sheet::Group& group) {
  for (const sheet::Item& item : group.items) {
    if (const auto* link = std::get_if<sheet::Link>(&item)) return safe_uri(link->uri);
  }
  return std::nullopt;
}

}  // namespace fretsheaf::render
