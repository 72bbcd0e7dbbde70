#include "sheaf/course_run.h"

#include <algorithm>
#include <chrono>
#include <utility>

#include "sheaf/shares.h"
#include "sheaf/up_to_date.h"
#include "source/first_few.h"

namespace fretsheaf::sheaf {

namespace {

constexpr int patience_milliseconds = 100;  // between two looks at the clock and at Ctrl-C
constexpr std::size_t most_named = 3;       // lessons that the command line is wrong for

bool has(const auto& list, const auto& one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

// Whether all that was wanted of a handout was made.
bool is_made(const Wanted& wanted, const Answer& answer) {
  return !has(answer.failed, wanted.suffix) &&
         std::all_of(wanted.formats.begin(), wanted.formats.end(), [&](Format format) {
           return std::any_of(answer.made.begin(), answer.made.end(), [&](const MadeHandout& made) {
             return made.suffix == wanted.suffix && made.format == format;
           });
         });
}

}  // namespace

CourseRun::CourseRun(Course course, Order order, platform::Machine& system, Crew& crew, Listener& listener)
    : course_(std::move(course)),
      order_(std::move(order)),
      system_(system),
      crew_(crew),
      listener_(listener),
      store_(course_.places.root(), order_, system),
      record_(store_.load()),
      fingerprints_(course_.places, system) {}

void CourseRun::learn() {
  const std::vector<std::size_t> lessons = unknown_lessons();
  std::vector<Task> tasks;
  tasks.reserve(lessons.size());
  for (const std::size_t lesson : lessons) {
    const CourseLesson& one = course_.lessons[lesson];
    tasks.push_back({one.path, one.handouts, order_.keys, order_.formats, true, {}});
  }
  work(tasks, lessons, true);
}

std::vector<std::size_t> CourseRun::unknown_lessons() {
  std::vector<std::size_t> unknown;
  for (std::size_t i = 0; i < course_.lessons.size(); ++i) {
    const CourseLesson& lesson = course_.lessons[i];
    if (order_.only && !order_.only->starts_with(lesson.job + ".")) continue;
    const auto file = fingerprints_.lesson(lesson.path);
    if (file) weights_[i] = file->bytes;
    auto plan = file ? recalled(lesson, file->print, record_, fingerprints_, order_) : std::nullopt;
    if (plan) {
      plans_[i] = std::move(*plan);
    } else {
      unknown.push_back(i);
    }
  }
  return unknown;
}

std::vector<CourseJob> CourseRun::jobs() const {
  std::vector<CourseJob> jobs;
  std::vector<Load> loads;
  for (const auto& [lesson, plan] : plans_) {
    const std::string& name = course_.lessons[lesson].job;
    for (const std::string& suffix : plan.suffixes) {
      if (order_.only && *order_.only != name + suffix) continue;
      jobs.push_back({lesson, suffix, name + suffix});
      loads.push_back({name + suffix, weights_.at(lesson)});
    }
  }
  if (!order_.share) return jobs;
  const std::vector<int> shares = shares_of(loads, order_.share->of);
  std::vector<CourseJob> own;
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    if (shares[i] == order_.share->number) own.push_back(std::move(jobs[i]));
  }
  return own;
}

void CourseRun::make() {
  may_note_ = true;
  if (!order_.only) sweep();
  const std::vector<Due> to_make = due();
  of_ = to_make.size();
  listener_.progress(0, of_);
  std::vector<std::size_t> lessons;
  const std::vector<Task> tasks = tasks_of(to_make, lessons);
  work(tasks, lessons, false);
  if (tally_.stopped) sweep();
  if (order_.is_whole() && !tally_.stopped) look_for_gone();
  flush(true);
  if (const auto error = store_.finish(record_, forgot_)) complain(store_.folder(), *error);
}

std::vector<CourseRun::Due> CourseRun::due() {
  std::vector<Due> all;
  for (const CourseJob& job : jobs()) {
    const LessonPlan& plan = plans_.at(job.lesson);
    Wanted wanted{job.suffix, {}};
    for (const Format format : plan.formats) {
      const auto made = record_.made.find({course_.lessons[job.lesson].recorded_handouts + job.suffix, format});
      const bool known = made != record_.made.end() && made->second.fingerprint == plan.fingerprint;
      const Standing now = known ? standing(made->second, course_.places, order_.verify, system_) : Standing::different;
      if (now == Standing::different) wanted.formats.push_back(format);
      if (now == Standing::current_with_new_times) note(line_of(made->second));
    }
    if (wanted.formats.empty()) {
      ++tally_.current;
    } else {
      all.push_back({job.lesson, std::move(wanted)});
    }
  }
  return all;
}

std::vector<Task> CourseRun::tasks_of(const std::vector<Due>& due, std::vector<std::size_t>& lessons) const {
  // Handouts of one lesson share its reading; but at the end of a run nobody should wait for another's long task.
  constexpr std::size_t most = 32;
  const std::size_t tasks_a_hand = 8;
  const std::size_t hands = static_cast<std::size_t>(std::max(1, order_.hands)) * tasks_a_hand;
  const std::size_t together = std::clamp<std::size_t>(due.size() / hands, 1, most);
  std::vector<Task> tasks;
  for (const Due& one : due) {
    if (lessons.empty() || lessons.back() != one.lesson || tasks.back().wanted->size() == together) {
      const CourseLesson& lesson = course_.lessons[one.lesson];
      tasks.push_back({lesson.path, lesson.handouts, order_.keys, order_.formats, false, std::vector<Wanted>{}});
      lessons.push_back(one.lesson);
    }
    tasks.back().wanted->push_back(one.wanted);
  }
  return tasks;
}

void CourseRun::work(const std::vector<Task>& tasks, const std::vector<std::size_t>& lessons, bool is_reading) {
  using Clock = std::chrono::steady_clock;
  Clock::time_point synced = Clock::now();
  std::size_t next = 0;
  while (!tally_.stopped && (next < tasks.size() || !crew_.is_idle())) {
    while (next < tasks.size() && crew_.give(next, tasks[next])) ++next;
    for (const Crew::Done& done : crew_.take(patience_milliseconds)) {
      tell(lessons[done.number], done.answer);
      if (is_reading) {
        take_reading(lessons[done.number], done.answer);
      } else {
        take_made(lessons[done.number], tasks[done.number], done.answer);
      }
    }
    if (!is_reading) listener_.progress(done_, of_);
    const bool is_time = Clock::now() - synced > std::chrono::seconds(1);
    flush(is_time);
    if (is_time) synced = Clock::now();
    if (crew_.is_stopped()) {
      tally_.stopped = true;
      crew_.end();
    }
  }
  tell_refused();
}

// What is wrong with the command line is kept until all lessons are known that it is wrong for.
void CourseRun::tell(std::size_t lesson, const Answer& answer) {
  tally_.status = std::max(tally_.status, answer.status);
  std::vector<Finding> fresh;
  for (const Finding& finding : answer.findings) {
    if (said_.insert(finding.text).second) fresh.push_back(finding);
  }
  std::vector<std::string> refusals;
  for (const std::string& refusal : answer.refusals) {
    if (answer.status == Made::Status::request_wrong) {
      refused_[refusal].insert(lesson);
    } else if (said_.insert(refusal).second) {
      refusals.push_back(refusal);
    }
  }
  if (!fresh.empty() || !refusals.empty()) listener_.say(fresh, refusals);
}

// One line for each reason, with the first lessons that it holds for, in the order of the course.
void CourseRun::tell_refused() {
  std::multimap<std::size_t, std::string> lines;
  for (const auto& [why, lessons] : refused_) {
    std::vector<std::string> names;
    for (const std::size_t lesson : lessons) names.push_back(course_.lessons[lesson].path);
    lines.emplace(*lessons.begin(), source::first_few(names, most_named) + ": " + why);
  }
  refused_.clear();
  std::vector<std::string> refusals;
  for (auto& [first, line] : lines) refusals.push_back(std::move(line));
  if (!refusals.empty()) listener_.say({}, refusals);
}

void CourseRun::take_reading(std::size_t lesson, const Answer& answer) {
  if (!answer.reading) {
    ++tally_.failed;
    return;
  }
  const CourseLesson& one = course_.lessons[lesson];
  LessonPlan plan = learned(one, *answer.reading, course_.places, fingerprints_, order_, record_);
  weights_.emplace(lesson, 0);
  plans_[lesson] = std::move(plan);
  const LessonEntry& entry = record_.lessons.at(one.name);
  if (noted_kits_.insert(entry.kit).second) note(line_of(entry.kit, record_.kits.at(entry.kit)));
  note(line_of(entry));
}

void CourseRun::take_made(std::size_t lesson, const Task& task, const Answer& answer) {
  done_ += task.wanted->size();
  for (const Wanted& wanted : *task.wanted) ++(is_made(wanted, answer) ? tally_.made : tally_.failed);
  if (!answer.reading) return;
  // The lesson may have changed since it was read first: what was made tells from what.
  const Print before = plans_.at(lesson).fingerprint;
  const CourseLesson& one = course_.lessons[lesson];
  LessonPlan plan = learned(one, *answer.reading, course_.places, fingerprints_, order_, record_);
  if (plan.fingerprint != before) take_reading(lesson, answer);
  for (const MadeHandout& made : answer.made) {
    MadeEntry entry{one.recorded_handouts + made.suffix, made.format, one.name, plan.fingerprint, made.files};
    for (const FileMark& file : made.files) {
      tally_.made_files.push_back(one.handouts + made.suffix + file.tail);
    }
    note(line_of(entry));
    record_.add(std::move(entry));
  }
}

void CourseRun::note(const std::string& line) {
  lines_ += line;
}

void CourseRun::flush(bool synced) {
  if (!may_note_ || lines_.empty()) return;
  const std::string lines = std::exchange(lines_, {});
  if (const auto error = store_.append(lines, synced)) complain(store_.folder(), *error);
}

void CourseRun::complain(const std::string& path, const platform::FileError& error) {
  tally_.status = std::max(tally_.status, Made::Status::unreadable);
  const std::string why = path + ": " + error.what;
  if (said_.insert(why).second) listener_.say({}, {why});
}

void CourseRun::sweep() {
  std::set<std::string> folders = {store_.folder()};
  for (const auto& [lesson, plan] : plans_) {
    const std::string folder = folder_part(course_.lessons[lesson].handouts);
    folders.insert(folder.empty() ? "." : folder);
  }
  for (const std::string& folder : folders) system_.sweep(folder);
}

}  // namespace fretsheaf::sheaf
