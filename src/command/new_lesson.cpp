#include "command/command.h"
#include "command/report.h"
#include "fretboard/instrument.h"
#include "source/nearest.h"

namespace fretsheaf::command {

Exit new_lesson(const NewOptions& options, platform::System& system, Console& console) {
  if (fretboard::find_instrument(options.instrument) == nullptr) {
    const std::vector<std::string_view> names = fretboard::instrument_names();
    std::string message = "--instrument " + options.instrument + ": there is no such instrument";
    const std::string near = source::nearest(options.instrument, names);
    if (!near.empty()) message += "; did you mean '" + near + "'?";
    complain(message, console);
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
