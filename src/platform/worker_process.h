#pragma once

#include <sys/types.h>

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "platform/descriptor.h"

namespace fretsheaf::platform {

// A process of the program's own that answers messages, one after another. It has a copy of everything that its parent
// had when it was started but the open files, and ends with its parent, however that ends.
class WorkerProcess {
 public:
  using Answer = std::function<std::string(std::string_view message)>;

  // nullopt where the machine gives no more processes.
  static std::optional<WorkerProcess> start(const Answer& answer);
  WorkerProcess(WorkerProcess&& other) noexcept;
  WorkerProcess& operator=(WorkerProcess&&) = delete;
  ~WorkerProcess();  // ends it at once

  // False where it has ended.
  bool send(std::string_view message);

  // Its answer, waited for; nullopt where it has ended instead.
  std::optional<std::string> receive();

  // Ready to be read when there is something to receive.
  int descriptor() const { return socket_.number(); }

  // Ends it at once and says how it had ended before, if it had: "ended by signal 11", "ended with status 3", else
  // "was stopped".
  std::string end();

 private:
  WorkerProcess(pid_t process, Descriptor socket) : process_(process), socket_(std::move(socket)) {}

  pid_t process_;
  Descriptor socket_;
};

// Those of the descriptors that can be read, after waiting for so long at the most.
std::vector<int> readable(std::span<const int> descriptors, int milliseconds);

}  // namespace fretsheaf::platform
