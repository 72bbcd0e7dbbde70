#pragma once

#include <httplib.h>

#include <atomic>
#include <chrono>
#include <functional>
#include <string>

namespace fretsheaf::preview {

// One connection, which trusts the other end with nothing: a request's head is read whole before the library sees any
// of it, up to 16 KiB and a hundred lines, in a bounded time; and of its lines only those are handed on that are asked
// for here. That leaves out ranges and compression, by which a small request makes a large answer. There are no bodies.
class Connection final : public httplib::Stream {
 public:
  // `hurry`: others are waiting for the thread that this one keeps.
  Connection(int socket, std::function<bool()> hurry) : socket_(socket), hurry_(std::move(hurry)) {}

  enum class Head { read, ended, refused };
  // Waits for the next request. Where it is refused, the answer has been sent and the connection is to be closed.
  Head read_head();

  bool is_readable() const override { return given_ < head_.size(); }
  bool is_writable() const override;
  ssize_t read(char* bytes, std::size_t size) override;  // of the head that was read
  ssize_t write(const char* bytes, std::size_t size) override;
  void get_remote_ip_and_port(std::string& ip, int& port) const override;
  void get_local_ip_and_port(std::string& ip, int& port) const override;
  socket_t socket() const override { return socket_; }

 private:
  using Clock = std::chrono::steady_clock;

  bool receive();  // more bytes into what has come; false at the end, or where it takes too long
  Head refuse(const char* status);
  Head take(std::string_view head);

  int socket_;
  std::function<bool()> hurry_;
  Clock::time_point since_ = Clock::now();
  std::string come_;  // and not looked at yet
  std::string head_;  // for the library
  std::size_t given_ = 0;
};

}  // namespace fretsheaf::preview
