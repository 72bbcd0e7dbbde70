#pragma once

#include <string>

#include "command/command.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

// Writes a job's diagnostics and refusal to the console and says how the run stands after it.
Exit report(const sheaf::Made& made, Console& console);

// The same without the diagnostics.
Exit report_refusal(const sheaf::Made& made, Console& console);

// What a status means to whoever called the program.
Exit exit_of(sheaf::Made::Status status);

// The worse of two.
Exit worse(Exit a, Exit b);

// "fretsheaf: error: …" on the console.
void complain(const std::string& what, Console& console);

}  // namespace fretsheaf::command
