#include <algorithm>
#include <charconv>
#include <map>
#include <optional>

#include "command/command.h"
#include "command/depfile.h"
#include "command/formats.h"
#include "command/report.h"
#include "sheaf/documents.h"
#include "sheaf/later_pages.h"
#include "sheaf/put_in_place.h"
#include "sheaf/unreadable.h"
#include "sheaf/workshop.h"
#include "source/utf8.h"

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

// Writes a job's outputs and adds their names to `written`.
Exit write_outputs(const sheaf::Made& made, const std::string& path, platform::System& system, Console& console,
                   std::vector<std::string>& written) {
  for (const sheaf::Output& output : made.outputs) {
    const std::string file = path == "-" ? path : path + output.suffix;
    if (const std::optional<platform::FileError> error = sheaf::put_in_place(system, file, output.bytes)) {
      complain(file + ": " + error->what, console);
      return Exit::unreadable;
    }
    written.push_back(file);
  }
  sheaf::remove_later_pages(path, made, system);
  return Exit::done;
}

// A lesson of exercises or blank bars alone: warnings may tell of each, this of the file that one would look for.
void tell_of_no_document(const sheaf::Made& made, const sheaf::Job& job, Console& console) {
  const auto is_document = [](const sheaf::Output& output) {
    return output.suffix.ends_with(".musicxml") || output.suffix.ends_with(".mxl");
  };
  if (made.no_document.empty() || std::any_of(made.outputs.begin(), made.outputs.end(), is_document)) return;
  console.errors +=
      source::printable(sheaf::shown_name(job.lesson)) + ": no MusicXML is made, " + made.no_document + '\n';
}

// Where the capo is; false, with a complaint, where the text is no number of frets.
bool read_capo(const std::string& text, std::optional<int>& capo, Console& console) {
  if (text.empty()) return true;
  int frets = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, frets);
  if (error != std::errc() || stop != end || frets < 0) {
    complain("--capo " + text + ": write the fret where the capo is, as in --capo 2", console);
    return false;
  }
  capo = frets;
  return true;
}

// A command line that is wrong for one lesson is wrong: nothing is written.
bool is_refused(const sheaf::Plan& plan) {
  return plan.made.status == sheaf::Made::Status::request_wrong;
}

// Every lesson read and its jobs worked out, before anything is written.
std::vector<sheaf::Plan> plans_of(const sheaf::Request& request, const std::vector<std::string>& lessons,
                                  sheaf::Workshop& workshop, Exit& exit, Console& console) {
  std::vector<sheaf::Plan> plans;
  plans.reserve(lessons.size());
  for (const std::string& lesson : lessons) {
    sheaf::Request own = request;
    own.lesson = lesson;
    plans.push_back(workshop.plan(own));
    exit = worse(exit, report(plans.back().made, console));
  }
  return plans;
}

// Standard output takes one file.
bool too_many(std::size_t files, const TypesetOptions& options, Console& console) {
  if (options.to != "-" || files < 2) return false;
  complain("--to -: standard output takes one file, and this makes " + std::to_string(files), console);
  return true;
}

// After a run without mistakes: a build that failed runs again whatever this says.
Exit write_depfile(const std::string& file, const std::vector<std::string>& written, const sheaf::Inputs& inputs,
                   platform::System& system, Console& console) {
  const auto breaks = [](const std::string& path) { return path.find_first_of("\r\n") != std::string::npos; };
  if (std::any_of(written.begin(), written.end(), breaks) ||
      std::any_of(inputs.begin(), inputs.end(), [&](const auto& input) { return breaks(input.first); })) {
    complain("--depfile: a name with a line end in it cannot be told to a build; rename the file", console);
    return Exit::request_wrong;
  }
  const std::optional<platform::FileError> error = system.write(file, depfile(written, inputs));
  if (!error) return Exit::done;
  complain(file + ": " + error->what, console);
  return Exit::unreadable;
}

}  // namespace

Exit typeset(const TypesetOptions& options, platform::System& system, Console& console) {
  const auto formats = read_formats(options.formats, console);
  if (!formats || collide(options, console)) return Exit::request_wrong;
  sheaf::Request request;
  request.keys = options.keys;
  request.formats = *formats;
  request.split = options.split;
  request.answers = options.answers;
  if (!options.template_name.empty()) request.template_name = options.template_name;
  if (!options.instrument.empty()) request.instrument = options.instrument;
  if (!read_capo(options.capo, request.capo, console)) return Exit::request_wrong;

  const bool traces = !options.depfile.empty();
  if (traces && options.to == "-") {
    complain("--depfile: standard output has no name that a build could know; name a folder with --to", console);
    return Exit::request_wrong;
  }

  sheaf::Workshop workshop(system, traces ? sheaf::Trace::on : sheaf::Trace::off);
  Exit exit = Exit::done;
  const std::vector<sheaf::Plan> plans = plans_of(request, options.lessons, workshop, exit, console);
  std::size_t jobs = 0;
  for (const sheaf::Plan& plan : plans) jobs += plan.jobs.size();
  if (std::any_of(plans.begin(), plans.end(), is_refused)) return exit;
  if (too_many(jobs, options, console)) return Exit::request_wrong;
  std::vector<std::string> written;
  sheaf::Inputs inputs;
  for (const sheaf::Plan& plan : plans) {
    for (const sheaf::Job& job : plan.jobs) {
      const sheaf::Made made = workshop.make(job);
      exit = worse(exit, report(made, console));
      if (&job == &plan.jobs.front()) tell_of_no_document(made, job, console);
      if (too_many(made.outputs.size(), options, console)) return Exit::request_wrong;
      const std::string path = options.to == "-" ? "-" : path_stem(job.lesson, options.to);
      exit = worse(exit, write_outputs(made, path, system, console, written));
      if (traces) inputs.merge(workshop.inputs(job.lesson));
    }
  }
  if (traces && exit == Exit::done) exit = write_depfile(options.depfile, written, inputs, system, console);
  return exit;
}

}  // namespace fretsheaf::command
