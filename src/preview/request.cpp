#include "preview/request.h"

#include <utility>

namespace fretsheaf::preview {

Response plain(int status, std::string text) {
  Response response;
  response.status = status;
  response.body = std::make_shared<const std::string>(std::move(text));
  return response;
}

const std::vector<std::pair<std::string, std::string>>& guarding_headers() {
  static const std::vector<std::pair<std::string, std::string>> headers = {
      {"Content-Security-Policy",
       "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
       "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"},
      {"X-Content-Type-Options", "nosniff"},
      {"X-Frame-Options", "DENY"},
      {"Referrer-Policy", "no-referrer"},
      {"Cross-Origin-Resource-Policy", "same-origin"},
      {"Cross-Origin-Opener-Policy", "same-origin"},
      {"Cache-Control", "no-store"},
  };
  return headers;
}

}  // namespace fretsheaf::preview
