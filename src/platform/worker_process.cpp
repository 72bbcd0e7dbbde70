#include "platform/worker_process.h"

#include <poll.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdint>
#include <cstring>

namespace fretsheaf::platform {
namespace {

constexpr int worker_socket = 3;

bool send_all(int socket, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t sent = ::send(socket, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    if (sent < 0 && errno == EINTR) continue;
    if (sent < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(sent));
  }
  return true;
}

bool receive_all(int socket, char* into, std::size_t size) {
  while (size > 0) {
    const ssize_t got = ::recv(socket, into, size, 0);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return false;
    into += got;
    size -= static_cast<std::size_t>(got);
  }
  return true;
}

// A message is its length in eight bytes, then itself.
bool send_message(int socket, std::string_view message) {
  const std::uint64_t size = message.size();
  std::array<char, sizeof size> head{};
  std::memcpy(head.data(), &size, sizeof size);
  return send_all(socket, {head.data(), head.size()}) && send_all(socket, message);
}

std::optional<std::string> receive_message(int socket) {
  std::uint64_t size = 0;
  std::array<char, sizeof size> head{};
  if (!receive_all(socket, head.data(), head.size())) return std::nullopt;
  std::memcpy(&size, head.data(), sizeof size);
  std::string message(size, '\0');
  if (!receive_all(socket, message.data(), message.size())) return std::nullopt;
  return message;
}

// Signals from the keyboard go to the whole group: the parent answers them, and ends its workers itself.
void set_signals() {
  std::signal(SIGINT, SIG_IGN);
  std::signal(SIGHUP, SIG_IGN);
  std::signal(SIGTERM, SIG_DFL);
  sigset_t none;
  sigemptyset(&none);
  ::sigprocmask(SIG_SETMASK, &none, nullptr);
}

// What is thrown in here must not go on through the parent's frames, which this process has too: their ends would put
// back and write what is the parent's.
[[noreturn]] void serve(int socket, pid_t parent, const WorkerProcess::Answer& answer) noexcept {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);
  if (::getppid() != parent) ::_exit(0);
  set_signals();
  // The parent's other files, its locks above all, are none of the worker's: a lock is free when its holder is gone.
  ::dup2(socket, worker_socket);
  ::close_range(worker_socket + 1, ~0U, 0);
  while (const std::optional<std::string> message = receive_message(worker_socket)) {
    if (!send_message(worker_socket, answer(*message))) break;
  }
  ::_exit(0);
}

}  // namespace

std::optional<WorkerProcess> WorkerProcess::start(const Answer& answer) {
  std::array<int, 2> ends{};
  if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends.data()) != 0) return std::nullopt;
  Descriptor ours(ends[0]);
  const Descriptor theirs(ends[1]);
  const pid_t parent = ::getpid();
  const pid_t process = ::fork();
  if (process < 0) return std::nullopt;
  if (process == 0) serve(theirs.number(), parent, answer);
  return WorkerProcess(process, std::move(ours));
}

WorkerProcess::WorkerProcess(WorkerProcess&& other) noexcept
    : process_(std::exchange(other.process_, -1)), socket_(std::move(other.socket_)) {}

WorkerProcess::~WorkerProcess() {
  end();
}

bool WorkerProcess::send(std::string_view message) {
  return send_message(socket_.number(), message);
}

std::optional<std::string> WorkerProcess::receive() {
  return receive_message(socket_.number());
}

std::string WorkerProcess::end() {
  if (process_ < 0) return {};
  // A worker whose end of the socket is closed is about to be gone by itself, and how it went is worth knowing.
  char byte = 0;
  const bool closing = ::recv(socket_.number(), &byte, 1, MSG_PEEK | MSG_DONTWAIT) == 0;
  if (!closing) ::kill(process_, SIGKILL);
  int status = 0;
  while (::waitpid(process_, &status, 0) < 0 && errno == EINTR) continue;
  process_ = -1;
  if (!closing && WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) return "was stopped";
  if (WIFSIGNALED(status)) return "ended by signal " + std::to_string(WTERMSIG(status));
  return "ended with status " + std::to_string(WEXITSTATUS(status));
}

std::vector<int> readable(std::span<const int> descriptors, int milliseconds) {
  std::vector<pollfd> asked;
  asked.reserve(descriptors.size());
  for (const int descriptor : descriptors) asked.push_back({descriptor, POLLIN, 0});
  std::vector<int> ready;
  if (::poll(asked.data(), asked.size(), milliseconds) <= 0) return ready;
  for (const pollfd& one : asked) {
    if (one.revents != 0) ready.push_back(one.fd);
  }
  return ready;
}

}  // namespace fretsheaf::platform
