#include "lesson/tidy.h"

#include "command/command.h"
#include "command/report.h"
#include "lesson/sheaf_of.h"
#include "sheaf/unreadable.h"
#include "source/utf8.h"

namespace fretsheaf::command {

namespace {

// What stays wrong; a lesson's warnings are for `check`.
Exit report_errors(const lesson::ReadLesson& read, Console& console) {
  if (!read.diagnostics.has_errors()) return Exit::done;
  for (const source::Diagnostic& diagnostic : read.diagnostics.sorted()) {
    if (diagnostic.severity == source::Severity::error) console.errors += source::render(diagnostic, read.files);
  }
  return Exit::lesson_wrong;
}

Exit put(const std::string& file, const std::string& bytes, platform::System& system, Console& console) {
  const std::optional<platform::FileError> error = system.write(file, bytes);
  if (!error) return Exit::done;
  complain(file + ": " + error->what, console);
  return Exit::unreadable;
}

Exit tidy_file(const std::string& file, bool only_check, platform::System& system, Console& console) {
  // It stands beside the lessons, so that `*.toml` names it too.
  if (lesson::is_sheaf_file(file)) {
    console.errors += source::printable(file) +
                      ": says what the lessons of a course have in common; it has no grid, and stays as it is\n";
    return Exit::done;
  }
  const std::string name = sheaf::shown_name(file);
  const platform::FileResult<std::string> bytes = system.read(file, lesson::limits::bytes);
  if (const auto* error = std::get_if<platform::FileError>(&bytes)) {
    complain(sheaf::unreadable(file, *error, system), console);
    return Exit::unreadable;
  }
  const auto& before = std::get<std::string>(bytes);
  const lesson::Tidied tidied = lesson::tidy(name, before, system);
  const bool changed = tidied.bytes != before;
  Exit exit = report_errors(tidied.read, console);
  for (const lesson::TidyNote& note : tidied.notes) {
    console.errors +=
        name + ":" + std::to_string(note.line) + (only_check ? ": not tidy: " : ": mended: ") + note.what + "\n";
  }
  if (only_check && changed) exit = worse(exit, Exit::lesson_wrong);
  if (only_check || (!changed && file != "-")) return exit;
  return worse(exit, put(file, tidied.bytes, system, console));
}

}  // namespace

Exit tidy(const TidyOptions& options, platform::System& system, Console& console) {
  Exit exit = Exit::done;
  for (const std::string& file : options.lessons) {
    exit = worse(exit, tidy_file(file, options.check, system, console));
  }
  return exit;
}

}  // namespace fretsheaf::command
