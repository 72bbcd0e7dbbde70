#include "preview/server.h"

#include "platform/program_part.h"

namespace fretsheaf::preview {

std::variant<std::unique_ptr<Server>, std::string> open_server(int port) {
  const auto found = platform::function_of_part("preview", "fretsheaf_open_server");
  if (const auto* why = std::get_if<std::string>(&found)) {
    return "the part of the program that serves pages cannot be loaded: " + *why;
  }
  const auto open = reinterpret_cast<OpenServer>(std::get<void*>(found));
  std::unique_ptr<Server> server(open(port));
  if (server) return server;
  if (port == 0) return std::string("no port of this machine can be had");
  return "port " + std::to_string(port) + " cannot be had: something else has it, or it is kept for the system";
}

}  // namespace fretsheaf::preview
