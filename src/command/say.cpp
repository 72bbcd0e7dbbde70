#include "command/command.h"
#include "command/report.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

Exit say(const SayOptions& options, platform::System& system, Console& console) {
  if (options.as != "text" && options.as != "html") {
    complain("--as " + options.as + ": a lesson is said as text or as html", console);
    return Exit::request_wrong;
  }
  const sheaf::Telling telling = options.as == "html" ? sheaf::Telling::html : sheaf::Telling::text;
  const sheaf::Made made = sheaf::Workshop(system).say(options.lesson, options.key, telling, options.answers);
  const Exit exit = report(made, console);
  for (const sheaf::Output& output : made.outputs) console.out += output.bytes;
  return exit;
}

}  // namespace fretsheaf::command
