#include "command/command.h"
#include "command/report.h"
#include "fretboard/instrument.h"
#include "sheaf/jobs.h"

namespace fretsheaf::command {

Exit new_lesson(const NewOptions& options, platform::System& system, Console& console) {
  if (fretboard::find_instrument(options.instrument) == nullptr) {
    complain("--instrument " + options.instrument + ": " + sheaf::no_such_instrument(options.instrument), console);
    return Exit::request_wrong;
  }
  if (options.file != "-" && system.exists(options.file)) {
    complain(options.file + ": is there already, and is not overwritten; choose another name", console);
    return Exit::unreadable;
  }
  if (const std::optional<platform::FileError> error = system.write(options.file, starter_lesson(options.instrument))) {
    complain(options.file + ": " + error->what, console);
    return Exit::unreadable;
  }
  return Exit::done;
}

}  // namespace fretsheaf::command
