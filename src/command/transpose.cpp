#include "command/command.h"
#include "command/move_report.h"
#include "command/report.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

namespace {

// Whether the lesson may be written there: never over a file that is there already.
bool may_write(const TransposeOptions& options, const platform::System& system, Console& console, Exit& exit) {
  const bool to_console = options.output.empty() || options.output == "-";
  if (to_console && options.json) {
    complain("--json: the report goes to standard output, and so the lesson needs a file: name it with -o", console);
    exit = Exit::request_wrong;
    return false;
  }
  if (to_console || !system.exists(options.output)) return true;
  complain(options.output + ": is there already, and is not overwritten; choose another name", console);
  exit = Exit::unreadable;
  return false;
}

}  // namespace

Exit transpose(const TransposeOptions& options, platform::System& system, Console& console) {
  Exit exit = Exit::done;
  if (!may_write(options, system, console, exit)) return exit;
  const sheaf::Transposed result = sheaf::Workshop(system).transpose(options.lesson, options.key);
  exit = report(result.made, console);
  if (!result.moved) return exit;
  const std::string file = options.output.empty() ? "-" : options.output;
  if (const std::optional<platform::FileError> error = system.write(file, result.text)) {
    complain(file + ": " + error->what, console);
    return Exit::unreadable;
  }
  if (options.json) {
    console.out += move_document(result);
  } else {
    console.errors += move_report(result);
  }
  return exit;
}

}  // namespace fretsheaf::command
