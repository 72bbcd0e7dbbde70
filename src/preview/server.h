#pragma once

#include <functional>
#include <memory>
#include <string>
#include <variant>

#include "preview/request.h"

namespace fretsheaf::preview {

// Answers a request; called by many threads at once.
using Answer = std::function<Response(const Request&)>;

// Listens on 127.0.0.1, and nowhere else. What it takes in is bounded: the lines and bytes of a request, the time to
// send it, how many are answered at once.
class Server {
 public:
  Server() = default;
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;
  virtual ~Server() = default;  // REQUIRES: stopped, if it was started

  virtual int port() const = 0;
  virtual void start(Answer answer) = 0;
  // Within a moment, whatever the other ends do. Streams must have been ended.
  virtual void stop() = 0;
};

// On a port, or on any free one for 0; else why not.
std::variant<std::unique_ptr<Server>, std::string> open_server(int port);

// What the part of the program that holds the HTTP library gives (server/http_server.cpp): nullptr where the port
// cannot be had.
using OpenServer = Server* (*)(int port);

}  // namespace fretsheaf::preview
