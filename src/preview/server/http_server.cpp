// The only file that knows the HTTP library's server. It is a part of the program by itself, loaded when a preview
// begins: the library brings others along that take longer to load than a page to draw.
#include <sys/socket.h>
#include <unistd.h>

#include <set>

#include "preview/server.h"
#include "preview/server/connection.h"
#include "preview/server/hands.h"

namespace fretsheaf::preview {
namespace {

constexpr std::size_t threads = 24;
constexpr int most_requests = 1000;  // on one connection

void copy_lines(const httplib::Request& from, const char* name, std::vector<std::string>& to) {
  const auto [first, last] = from.headers.equal_range(name);
  for (auto line = first; line != last; ++line) to.push_back(line->second);
}

Request request_of(const httplib::Request& from) {
  Request request;
  request.method = from.method;
  request.path = from.path;
  for (const auto& [name, value] : from.params) request.query.emplace(name, value);
  copy_lines(from, "Host", request.hosts);
  copy_lines(from, "Origin", request.origins);
  return request;
}

// As RFC 6266 has it: the name in UTF-8, its bytes but letters, digits and three signs as percent signs.
std::string disposition(const std::string& name) {
  constexpr const char* digits = "0123456789ABCDEF";
  std::string encoded;
  for (const char c : name) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 128 && (std::isalnum(byte) != 0 || c == '.' || c == '-' || c == '_')) {
      encoded += c;
    } else {
      encoded += '%';
      encoded += digits[byte >> 4];
      encoded += digits[byte & 15];
    }
  }
  return "attachment; filename*=UTF-8''" + encoded;
}

void fill(Response&& from, httplib::Response& to) {
  to.status = from.status;
  for (const auto& [name, value] : guarding_headers()) to.set_header(name, value);
  if (!from.save_as.empty()) to.set_header("Content-Disposition", disposition(from.save_as));
  if (from.stream) {
    to.set_chunked_content_provider(from.type, [next = std::move(from.stream)](std::size_t, httplib::DataSink& sink) {
      const std::optional<std::string> text = next();
      if (!text) {
        sink.done();
        return true;
      }
      return sink.write(text->data(), text->size());
    });
  } else {
    to.set_content(from.body ? *from.body : std::string(), from.type);
  }
}

class HttpServer final : public Server, private httplib::Server {
 public:
  // 0 is any port; `port()` is -1 where none can be had.
  explicit HttpServer(int port) {
    set_tcp_nodelay(true);
    set_keep_alive_max_count(most_requests);
    // Not the library's own choice, which lets a second program listen on the same port.
    set_socket_options([](socket_t socket) {
      const int yes = 1;
      ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    });
    constexpr const char* here = "127.0.0.1";
    port_ = port == 0 ? bind_to_any_port(here) : (bind_to_port(here, port) ? port : -1);
    new_task_queue = [this] {
      hands_ = new Hands(threads);  // the library owns it, and deletes it after `shutdown`
      return hands_;
    };
  }

  int port() const override { return port_; }

  void start(Answer answer) override {
    // Before any route: the library would look for these by regular expressions.
    set_pre_routing_handler([answer = std::move(answer)](const httplib::Request& request, httplib::Response& response) {
      fill(answer(request_of(request)), response);
      return HandlerResponse::Handled;
    });
    listener_ = std::thread([this] { listen_after_bind(); });
    while (!is_running()) std::this_thread::yield();
  }

  void stop() override {
    stopping_ = true;
    httplib::Server::stop();
    {
      const std::lock_guard lock(mutex_);
      for (const int socket : open_) ::shutdown(socket, SHUT_RDWR);
    }
    if (listener_.joinable()) listener_.join();
  }

 private:
  bool process_and_close_socket(socket_t socket) override {
    bool good = true;
    if (!Hands::turning_away() && note_open(socket)) {
      Connection connection(socket, [this] { return stopping_ || hands_->busy(); });
      good = serve(connection);
      const std::lock_guard lock(mutex_);
      open_.erase(socket);
    }
    ::shutdown(socket, SHUT_RDWR);
    ::close(socket);
    return good;
  }

  // False when all is ending.
  bool note_open(int socket) {
    const std::lock_guard lock(mutex_);
    if (stopping_) return false;
    open_.insert(socket);
    return true;
  }

  bool serve(Connection& connection) {
    for (int left = most_requests; left > 0 && !stopping_; --left) {
      if (connection.read_head() != Connection::Head::read) return false;
      bool closed = false;
      if (!process_request(connection, left == 1, closed, {})) return false;
      if (closed) return true;
    }
    return true;
  }

  int port_ = -1;
  Hands* hands_ = nullptr;
  std::thread listener_;
  std::atomic<bool> stopping_ = false;
  std::mutex mutex_;
  std::set<int> open_;
};

}  // namespace
}  // namespace fretsheaf::preview

extern "C" fretsheaf::preview::Server* fretsheaf_open_server(int port) {
  auto server = std::make_unique<fretsheaf::preview::HttpServer>(port);
  return server->port() > 0 ? server.release() : nullptr;
}
