#include "preview/gate.h"

#include <algorithm>
#include <utility>

namespace fretsheaf::preview {

Gate::Gate(std::string secret, int port) : secret_(std::move(secret)), port_(std::to_string(port)) {}

std::string Gate::address() const {
  return "http://127.0.0.1:" + port_ + "/" + secret_ + "/";
}

bool Gate::is_here(std::string_view host) const {
  return host == "127.0.0.1:" + port_ || host == "localhost:" + port_;
}

// Every byte is looked at, so that the time it takes tells nothing of how much was right.
bool Gate::has_secret(std::string_view path) const {
  if (path.size() < secret_.size() + 2 || path.front() != '/' || path[secret_.size() + 1] != '/') return false;
  unsigned different = 0;
  for (std::size_t i = 0; i < secret_.size(); ++i) {
    different |= static_cast<unsigned char>(path[i + 1]) ^ static_cast<unsigned char>(secret_[i]);
  }
  return different == 0;
}

Gate::Pass Gate::pass(const Request& request) const {
  const auto refuse = [](int status, const char* why) { return Pass{"", plain(status, why)}; };
  if (request.hosts.size() != 1 || !is_here(request.hosts.front())) {
    return refuse(421, "This address answers by the name 127.0.0.1 alone.\n");
  }
  const bool from_here = std::all_of(request.origins.begin(), request.origins.end(), [&](std::string_view origin) {
    constexpr std::string_view scheme = "http://";
    return origin.starts_with(scheme) && is_here(origin.substr(scheme.size()));
  });
  if (!from_here) return refuse(403, "Only the preview's own page may ask here.\n");
  if (!has_secret(request.path)) return refuse(404, "There is nothing here.\n");
  if (request.method != "GET" && request.method != "HEAD") return refuse(405, "There is only reading here.\n");
  return Pass{request.path.substr(secret_.size() + 2), std::nullopt};
}

}  // namespace fretsheaf::preview
