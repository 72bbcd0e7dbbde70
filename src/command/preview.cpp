#include "preview/preview.h"

#include <charconv>

#include "command/command.h"
#include "command/report.h"
#include "platform/desktop.h"
#include "sheaf/unreadable.h"
#include "source/utf8.h"

namespace fretsheaf::command {

namespace {

// 0 where none is asked for.
std::optional<int> read_port(const std::string& text) {
  if (text.empty()) return 0;
  constexpr int highest = 65'535;
  int port = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, port);
  if (error != std::errc() || stop != end || port < 1 || port > highest) return std::nullopt;
  return port;
}

}  // namespace

Exit preview_verb(const PreviewOptions& options, platform::Machine& system, Console& console) {
  const std::optional<int> port = read_port(options.port);
  if (!port) {
    complain("--port " + options.port + ": write a number from 1 to 65535", console);
    return Exit::request_wrong;
  }
  if (options.path == "-") {
    complain("preview watches a file, and standard input is none: name the lesson's file", console);
    return Exit::request_wrong;
  }
  if (!system.status(options.path)) {
    const auto read = system.read(options.path, 0);
    const auto* error = std::get_if<platform::FileError>(&read);
    if (error != nullptr) complain(sheaf::unreadable(options.path, *error, system), console);
    return Exit::unreadable;
  }
  const auto ready = [&](const std::string& address) {
    console.out += address + "\n";
    console.errors += source::printable(options.path) + " is at this address until you press Ctrl-C\n";
    if (options.open && !platform::open_by_desktop(address)) {
      console.errors += "fretsheaf: warning: there is no xdg-open to open it with\n";
    }
    if (console.show) console.show(console);
  };
  if (const auto why = preview::preview(options.path, *port, system, ready)) {
    complain(*why, console);
    return Exit::unreadable;
  }
  return Exit::done;
}

}  // namespace fretsheaf::command
