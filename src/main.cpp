#include <unistd.h>

#include <cstdio>
#include <exception>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/disk_system.h"

namespace {

void show(fretsheaf::command::Console& console) {
  std::fwrite(console.out.data(), 1, console.out.size(), stdout);
  std::fwrite(console.errors.data(), 1, console.errors.size(), stderr);
  std::fflush(stdout);  // whoever reads a pipe is not to wait for what has been said
  console.out.clear();
  console.errors.clear();
}

}  // namespace

int main(int argc, char** argv) {
  fretsheaf::platform::DiskSystem system;
  fretsheaf::command::Console console;
  console.errors_are_terminal = ::isatty(STDERR_FILENO) == 1;
  console.show = show;
  auto exit = fretsheaf::command::Exit::unreadable;
  try {
    exit = fretsheaf::command::run(std::vector<std::string>(argv + 1, argv + argc), system, console);
  } catch (const std::exception& lack) {
    // Of memory, or of a library that is loaded where it is needed.
    console.errors += std::string("error: ") + lack.what() + "\n";
  }
  show(console);
  return static_cast<int>(exit);
}
