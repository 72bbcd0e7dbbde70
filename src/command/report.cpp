#include "command/report.h"

#include <algorithm>

#include "source/utf8.h"

namespace fretsheaf::command {

Exit worse(Exit a, Exit b) {
  return std::max(a, b);
}

void complain(const std::string& what, Console& console) {
  console.errors += "fretsheaf: error: " + source::printable(what) + "\n";
}

Exit report(const sheaf::Made& made, Console& console) {
  for (const sheaf::Report& part : made.reports) {
    for (const source::Diagnostic& diagnostic : part.diagnostics.sorted()) {
      console.errors += source::render(diagnostic, part.files);
    }
  }
  return report_refusal(made, console);
}

Exit report_refusal(const sheaf::Made& made, Console& console) {
  if (!made.refusal.empty()) complain(made.refusal, console);
  return exit_of(made.status);
}

Exit exit_of(sheaf::Made::Status status) {
  switch (status) {
    case sheaf::Made::Status::done:
      return Exit::done;
    case sheaf::Made::Status::lesson_wrong:
      return Exit::lesson_wrong;
    case sheaf::Made::Status::request_wrong:
      return Exit::request_wrong;
    case sheaf::Made::Status::unreadable:
      return Exit::unreadable;
  }
  return Exit::done;
}

}  // namespace fretsheaf::command
