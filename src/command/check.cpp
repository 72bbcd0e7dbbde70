#include "command/command.h"
#include "command/report.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

Exit check(const CheckOptions& options, platform::System& system, Console& console) {
  sheaf::Workshop workshop(system);
  Exit exit = Exit::done;
  for (const std::string& lesson : options.lessons) {
    exit = worse(exit, report(workshop.check(lesson), console));
  }
  return exit;
}

}  // namespace fretsheaf::command
