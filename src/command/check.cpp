#include "command/command.h"
#include "command/json_report.h"
#include "command/report.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

Exit check(const CheckOptions& options, platform::System& system, Console& console) {
  sheaf::Workshop workshop(system);
  Exit exit = Exit::done;
  std::vector<Checked> checked;
  checked.reserve(options.lessons.size());
  for (const std::string& lesson : options.lessons) {
    checked.push_back({lesson, workshop.check(lesson)});
    const sheaf::Made& made = checked.back().made;
    exit = worse(exit, options.json ? report_refusal(made, console) : report(made, console));
  }
  if (options.json) console.out += json_report(checked);
  return exit;
}

}  // namespace fretsheaf::command
