#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "preview/request.h"

namespace fretsheaf::preview {

// Who is let in: a browser on this machine that was given the address with its secret. Another site's page may send
// requests here too, and may even have a name of its own lead to this machine (DNS rebinding): its Origin or Host gives
// it away.
class Gate {
 public:
  Gate(std::string secret, int port);

  // What is asked for: the path after the secret ("page.css", "" for the page itself); or the answer that refuses it.
  struct Pass {
    std::string what;
    std::optional<Response> refusal;
  };
  Pass pass(const Request& request) const;

  std::string address() const;  // "http://127.0.0.1:PORT/SECRET/"

 private:
  bool is_here(std::string_view host) const;
  bool has_secret(std::string_view path) const;

  std::string secret_;
  std::string port_;
};

}  // namespace fretsheaf::preview
