#include "platform/desktop.h"

#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <unistd.h>

#include <array>

namespace fretsheaf::platform {

bool open_by_desktop(const std::string& address) {
  std::string program = "xdg-open";
  std::string argument = address;
  const std::array<char*, 3> arguments = {program.data(), argument.data(), nullptr};
  posix_spawn_file_actions_t files;
  posix_spawnattr_t manner;
  ::posix_spawn_file_actions_init(&files);
  ::posix_spawnattr_init(&manner);
  // What it has to say is nothing to the terminal, and it does not inherit the signals that are held back here.
  for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    ::posix_spawn_file_actions_addopen(&files, stream, "/dev/null", O_RDWR, 0);
  }
  sigset_t none;
  sigemptyset(&none);
  ::posix_spawnattr_setsigmask(&manner, &none);
  ::posix_spawnattr_setflags(&manner, POSIX_SPAWN_SETSIGMASK);
  pid_t process = 0;
  const int failed = ::posix_spawnp(&process, program.c_str(), &files, &manner, arguments.data(), environ);
  ::posix_spawnattr_destroy(&manner);
  ::posix_spawn_file_actions_destroy(&files);
  return failed == 0;
}

}  // namespace fretsheaf::platform
