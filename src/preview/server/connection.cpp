#include "preview/server/connection.h"

#include <poll.h>
#include <sys/socket.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <string_view>

namespace fretsheaf::preview {
namespace {

using namespace std::chrono_literals;

constexpr std::size_t most_head = 16'384;
constexpr std::size_t most_lines = 100;
constexpr std::size_t most_first_line = 4096;
constexpr auto patience = 5s;           // for a whole head, or its first byte
constexpr auto short_patience = 200ms;  // where others wait
constexpr int write_patience = 5000;    // milliseconds, for some bytes to go

bool same_name(std::string_view a, std::string_view b) {
  const auto lower = [](char c) { return std::tolower(static_cast<unsigned char>(c)); };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [&](char x, char y) { return lower(x) == lower(y); });
}

bool handed_on(std::string_view name) {
  constexpr std::array<std::string_view, 3> names = {"Host", "Origin", "Connection"};
  return std::any_of(names.begin(), names.end(), [&](std::string_view known) { return same_name(name, known); });
}

// A line that says that a body follows.
bool announces_body(std::string_view name, std::string_view line) {
  return same_name(name, "Transfer-Encoding") ||
         (same_name(name, "Content-Length") && line.find_first_of("123456789", name.size()) != std::string_view::npos);
}

}  // namespace

bool Connection::receive() {
  while (true) {
    const auto waited = Clock::now() - since_;
    if (waited > patience || (waited > short_patience && hurry_())) return false;
    pollfd asked{socket_, POLLIN, 0};
    if (::poll(&asked, 1, 50) > 0) break;
  }
  std::array<char, 4096> bytes;
  const ssize_t got = ::recv(socket_, bytes.data(), bytes.size(), 0);
  if (got <= 0) return false;
  come_.append(bytes.data(), static_cast<std::size_t>(got));
  return true;
}

Connection::Head Connection::read_head() {
  since_ = Clock::now();
  std::size_t looked_at = 0;
  while (true) {
    const std::size_t end = come_.find("\r\n\r\n", looked_at);
    if (end != std::string::npos && end <= most_head) {
      const std::string head = come_.substr(0, end + 2);
      come_.erase(0, end + 4);
      return take(head);
    }
    if (come_.size() > most_head) return refuse("431 Request Header Fields Too Large");
    looked_at = come_.size() < 3 ? 0 : come_.size() - 3;
    if (!receive()) return Head::ended;
  }
}

Connection::Head Connection::take(std::string_view head) {
  head_.clear();
  given_ = 0;
  for (std::size_t lines = 0; !head.empty(); ++lines) {
    const std::string_view line = head.substr(0, head.find("\r\n"));
    head.remove_prefix(line.size() + 2);
    if (lines > most_lines || line.size() > most_first_line) return refuse("431 Request Header Fields Too Large");
    if (line.find_first_of(std::string_view("\r\n\0", 3)) != std::string_view::npos) return refuse("400 Bad Request");
    const std::string_view name = line.substr(0, line.find(':'));
    if (lines > 0 && announces_body(name, line)) return refuse("413 Content Too Large");
    if (lines == 0 || handed_on(name)) head_.append(line).append("\r\n");
  }
  head_ += "\r\n";
  return Head::read;
}

Connection::Head Connection::refuse(const char* status) {
  const std::string answer = "HTTP/1.1 " + std::string(status) + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n";
  write(answer.data(), answer.size());
  return Head::refused;
}

bool Connection::is_writable() const {
  pollfd asked{socket_, POLLOUT, 0};
  return ::poll(&asked, 1, write_patience) > 0 && (asked.revents & (POLLERR | POLLHUP)) == 0;
}

ssize_t Connection::read(char* bytes, std::size_t size) {
  const std::size_t count = std::min(size, head_.size() - given_);
  std::copy_n(head_.data() + given_, count, bytes);
  given_ += count;
  return static_cast<ssize_t>(count);
}

ssize_t Connection::write(const char* bytes, std::size_t size) {
  if (!is_writable()) return -1;
  return ::send(socket_, bytes, size, MSG_NOSIGNAL | MSG_DONTWAIT);
}

void Connection::get_remote_ip_and_port(std::string& ip, int& port) const {
  ip = "127.0.0.1";
  port = 0;
}

void Connection::get_local_ip_and_port(std::string& ip, int& port) const {
  get_remote_ip_and_port(ip, port);
}

}  // namespace fretsheaf::preview
