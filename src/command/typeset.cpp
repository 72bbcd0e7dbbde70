#include <algorithm>
#include <map>

#include "command/command.h"
#include "command/report.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

namespace {

// The output's path up to its suffix.
std::string path_stem(const std::string& lesson, const std::string& to) {
  if (to.empty()) {
    const auto slash = lesson.rfind('/');
    return (slash == std::string::npos ? std::string() : lesson.substr(0, slash + 1)) + sheaf::stem(lesson);
  }
  return to + (to.ends_with('/') ? "" : "/") + sheaf::stem(lesson);
}

std::optional<std::vector<sheaf::Format>> formats_of(const TypesetOptions& options, Console& console) {
  std::vector<sheaf::Format> formats;
  for (const std::string& name : options.formats) {
    const std::optional<sheaf::Format> format = sheaf::parse_format(name);
    if (!format) {
      complain("--as " + name + ": there is no such format; it takes pdf, svg and musicxml", console);
      return std::nullopt;
    }
    if (std::find(formats.begin(), formats.end(), *format) == formats.end()) formats.push_back(*format);
  }
  if (formats.empty()) formats.push_back(sheaf::Format::pdf);
  return formats;
}

// Two lessons of one name would overwrite each other's handouts.
bool collide(const TypesetOptions& options, Console& console) {
  std::map<std::string, std::string> taken;
  for (const std::string& lesson : options.lessons) {
    const auto [where, fresh] = taken.emplace(path_stem(lesson, options.to), lesson);
    if (!fresh) {
      complain("'" + where->second + "' and '" + lesson + "' would both be written to '" + where->first +
                   ".…'; typeset them into different folders with --to",
               console);
      return true;
    }
  }
  return false;
}

// Pages of an earlier handout that was longer.
void remove_later_pages(const std::string& path, const sheaf::Made& made, platform::System& system) {
  if (made.svg_page_prefix.empty()) return;
  for (int page = made.svg_pages + 1;; ++page) {
    const std::string old = path + made.svg_page_prefix + std::to_string(page) + ".svg";
    if (!system.exists(old)) return;
    system.remove(old);
  }
}

Exit write_outputs(const sheaf::Made& made, const std::string& path, platform::System& system, Console& console) {
  for (const sheaf::Output& output : made.outputs) {
    const std::string file = path == "-" ? path : path + output.suffix;
    if (const std::optional<platform::FileError> error = system.write(file, output.bytes)) {
      complain(file + ": " + error->what, console);
      return Exit::unreadable;
    }
  }
  remove_later_pages(path, made, system);
  return Exit::done;
}

}  // namespace

Exit typeset(const TypesetOptions& options, platform::System& system, Console& console) {
  const auto formats = formats_of(options, console);
  if (!formats || collide(options, console)) return Exit::request_wrong;

  sheaf::Workshop workshop(system);
  Exit exit = Exit::done;
  for (const std::string& lesson : options.lessons) {
    sheaf::Job job{lesson, {}, {}, *formats};
    if (!options.template_name.empty()) job.template_name = options.template_name;
    std::vector<std::string> keys = options.keys;
    if (keys.empty()) keys.emplace_back();
    for (const std::string& key : keys) {
      if (!key.empty()) job.key = key;
      const sheaf::Made made = workshop.make(job);
      exit = worse(exit, report(made, console));
      if (made.outputs.size() > 1 && options.to == "-") {
        complain("--to -: standard output takes one file, and this lesson makes " + std::to_string(made.outputs.size()),
                 console);
        return Exit::request_wrong;
      }
      const std::string path = options.to == "-" ? "-" : path_stem(lesson, options.to);
      exit = worse(exit, write_outputs(made, path, system, console));
    }
  }
  return exit;
}

}  // namespace fretsheaf::command
