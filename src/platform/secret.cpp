#include "platform/secret.h"

#include <sys/random.h>

#include <array>

namespace fretsheaf::platform {

std::optional<std::string> new_secret() {
  std::array<unsigned char, 16> bytes{};
  // Requests of up to 256 bytes are not cut short (getrandom(2)).
  if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size())) return std::nullopt;
  constexpr const char* digits = "0123456789abcdef";
  std::string secret;
  for (const unsigned char byte : bytes) {
    secret += digits[byte >> 4];
    secret += digits[byte & 15];
  }
  return secret;
}

}  // namespace fretsheaf::platform
