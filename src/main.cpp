#include <cstdio>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/disk_system.h"

int main(int argc, char** argv) {
  fretsheaf::platform::DiskSystem system;
  fretsheaf::command::Console console;
  const fretsheaf::command::Exit exit =
      fretsheaf::command::run(std::vector<std::string>(argv + 1, argv + argc), system, console);
  std::fwrite(console.out.data(), 1, console.out.size(), stdout);
  std::fwrite(console.errors.data(), 1, console.errors.size(), stderr);
  return static_cast<int>(exit);
}
