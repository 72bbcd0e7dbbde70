#include "exchange/adopt.h"

#include "command/command.h"
#include "command/report.h"
#include "exchange/score_file.h"
#include "fretboard/instrument.h"
#include "sheaf/jobs.h"
#include "sheaf/unreadable.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

namespace {

bool may_write(const AdoptOptions& options, const platform::System& system, Console& console, Exit& exit) {
  if (!options.instrument.empty() && fretboard::find_instrument(options.instrument) == nullptr) {
    complain("--instrument " + options.instrument + ": " + sheaf::no_such_instrument(options.instrument), console);
    exit = Exit::request_wrong;
    return false;
  }
  if (options.output.empty() || options.output == "-" || !system.exists(options.output)) return true;
  complain(options.output + ": is there already, and is not overwritten; choose another name", console);
  exit = Exit::unreadable;
  return false;
}

}  // namespace

Exit adopt(const AdoptOptions& options, platform::System& system, Console& console) {
  Exit exit = Exit::done;
  if (!may_write(options, system, console, exit)) return exit;
  const std::string name = sheaf::shown_name(options.file);
  platform::FileResult<std::string> bytes = system.read(options.file, exchange::max_score_bytes);
  if (const auto* error = std::get_if<platform::FileError>(&bytes)) {
    complain(name + ": " + error->what, console);
    return Exit::unreadable;
  }
  const exchange::AdoptWish wish{options.part, options.instrument, sheaf::stem(options.file)};
  const exchange::Adopted adopted = exchange::adopt(name, std::get<std::string>(std::move(bytes)), wish);
  for (const source::Diagnostic& one : adopted.diagnostics.sorted()) {
    console.errors += source::render(one, adopted.files);
  }
  if (!adopted.lesson) return Exit::lesson_wrong;
  const std::string file = options.output.empty() ? "-" : options.output;
  if (const std::optional<platform::FileError> error = system.write(file, *adopted.lesson)) {
    complain(file + ": " + error->what, console);
    return Exit::unreadable;
  }
  return Exit::done;
}

}  // namespace fretsheaf::command
