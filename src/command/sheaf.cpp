#include <algorithm>
#include <charconv>
#include <optional>
#include <thread>

#include "command/command.h"
#include "command/formats.h"
#include "command/progress.h"
#include "command/report.h"
#include "command/sheaf_list.h"
#include "command/sheaf_report.h"
#include "sheaf/course_run.h"
#include "sheaf/locks.h"
#include "source/nearest.h"

namespace fretsheaf::command {

namespace {

constexpr int most_hands = 1000;
constexpr int most_shares = 100'000;

std::optional<int> number_in(std::string_view text, int most) {
  int number = 0;
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool whole = error == std::errc() && stop == text.data() + text.size();
  return whole && number >= 1 && number <= most ? std::optional(number) : std::nullopt;
}

std::optional<sheaf::Share> read_share(const std::string& text) {
  const auto slash = text.find('/');
  if (slash == std::string::npos) return std::nullopt;
  const auto of = number_in(std::string_view(text).substr(slash + 1), most_shares);
  if (!of) return std::nullopt;
  const auto number = number_in(std::string_view(text).substr(0, slash), *of);
  if (!number) return std::nullopt;
  return sheaf::Share{*number, *of};
}

// Two options that cannot be had together; empty where there are none.
std::string at_odds(const SheafOptions& options) {
  if (options.quiet && options.json) return "--quiet and --json: choose one of them";
  if (!options.share.empty() && !options.only.empty()) return "--share and --only: choose one of them";
  if (options.list && options.json) return "--list and --json: choose one of them";
  if (!options.prune) return {};
  if (!options.share.empty()) return "--prune and --share: a share does not know what is gone; prune in a whole run";
  if (!options.only.empty()) return "--prune and --only: a single job does not know what is gone; prune in a whole run";
  return {};
}

std::optional<sheaf::Order> read_order(const SheafOptions& options, Console& console) {
  const auto refuse = [&](const std::string& what) {
    complain(what, console);
    return std::nullopt;
  };
  if (const std::string what = at_odds(options); !what.empty()) return refuse(what);
  sheaf::Order order;
  if (!options.folder.empty()) order.folder = options.folder;
  order.to = options.to;
  order.keys = options.keys;
  const auto formats = read_formats(options.formats, console);
  if (!formats) return std::nullopt;
  order.formats = *formats;
  order.hands = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  if (!options.jobs.empty()) {
    const auto hands = number_in(options.jobs, most_hands);
    if (!hands) return refuse("--jobs " + options.jobs + ": write how many at a time, 1 to 1000");
    order.hands = *hands;
  }
  if (!options.only.empty()) order.only = options.only;
  if (!options.share.empty()) {
    order.share = read_share(options.share);
    if (!order.share) return refuse("--share " + options.share + ": write which share of how many, as in --share 2/8");
  }
  order.prune = options.prune;
  order.verify = options.verify;
  return order;
}

Exit exit_of(const sheaf::Tally& tally) {
  if (tally.stopped) return Exit::stopped;
  return command::exit_of(tally.status);
}

// --only names no job of the course.
std::string no_such_job(const std::string& only, const sheaf::CourseRun& run) {
  std::vector<std::string_view> names;
  for (const sheaf::CourseLesson& lesson : run.course().lessons) names.push_back(lesson.job);
  const std::string lesson = only.substr(0, only.rfind('.'));
  const std::string near = source::nearest(lesson, names);
  return "--only " + only + ": there is no such job" +
         (near.empty() || near == lesson ? "; fretsheaf sheaf --list prints them all"
                                         : "; did you mean one of '" + near + "'?");
}

Progress::Manner manner_of(const SheafOptions& options) {
  if (options.json) return Progress::Manner::nothing;
  return options.quiet || options.list ? Progress::Manner::messages_alone : Progress::Manner::shown;
}

void tell_the_end(const SheafOptions& options, const sheaf::Tally& tally, const Progress& progress, Console& console) {
  if (options.json) {
    console.out += sheaf_document(tally, progress.findings(), progress.seconds());
  } else if (!options.quiet) {
    console.errors += sheaf_report(tally, progress.seconds());
  }
}

// From the course on. The locks, if any, are held.
Exit run_course(const SheafOptions& options, const sheaf::Order& order, sheaf::Course course, platform::Machine& system,
                Console& console) {
  Progress progress(manner_of(options), console);
  const std::unique_ptr<sheaf::Crew> crew = sheaf::make_crew(order.hands, system);
  sheaf::CourseRun run(std::move(course), order, system, *crew, progress);
  run.learn();
  const sheaf::Tally& tally = run.tally();
  if (tally.status == sheaf::Made::Status::request_wrong) return Exit::request_wrong;
  if (order.only && !tally.stopped && tally.status == sheaf::Made::Status::done && run.jobs().empty()) {
    complain(no_such_job(*order.only, run), console);
    return Exit::request_wrong;
  }
  if (options.list) {
    console.out += sheaf_list(options, run.jobs());
    return exit_of(tally);
  }
  if (!tally.stopped) run.make();
  progress.end();
  tell_the_end(options, tally, progress, console);
  return exit_of(tally);
}

}  // namespace

Exit sheaf_verb(const SheafOptions& options, platform::Machine& system, Console& console) {
  const std::optional<sheaf::Order> order = read_order(options, console);
  if (!order) return Exit::request_wrong;
  auto found = sheaf::find_course(order->folder, order->to, system);
  if (const auto* none = std::get_if<sheaf::NoCourse>(&found)) {
    complain(none->why, console);
    return none->is_request_wrong ? Exit::request_wrong : Exit::unreadable;
  }
  auto& course = std::get<sheaf::Course>(found);
  if (options.list) return run_course(options, *order, std::move(course), system, console);
  const std::string root = course.places.root();
  const auto locks = sheaf::take_locks(sheaf::record_folder(root), root, *order, system);
  if (const auto* why = std::get_if<std::string>(&locks)) {
    complain(*why, console);
    return Exit::unreadable;
  }
  return run_course(options, *order, std::move(course), system, console);
}

}  // namespace fretsheaf::command
