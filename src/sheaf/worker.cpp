#include "sheaf/worker.h"

#include <algorithm>

#include "sheaf/later_pages.h"

namespace fretsheaf::sheaf {

namespace {

void add(const Made& made, Answer& answer) {
  answer.status = std::max(answer.status, made.status);
  for (Finding& finding : findings_of(made)) answer.findings.push_back(std::move(finding));
  if (!made.refusal.empty()) answer.refusals.push_back(made.refusal);
}

// What of a job is to be made; nothing where it is not wanted.
std::vector<Format> wanted_formats(const Task& task, const Job& job) {
  if (!task.wanted) return job.formats;
  const auto found = std::find_if(task.wanted->begin(), task.wanted->end(),
                                  [&](const Wanted& wanted) { return wanted.suffix == job.suffix; });
  return found == task.wanted->end() ? std::vector<Format>{} : found->formats;
}

}  // namespace

Answer Worker::work(const Task& task) {
  Answer answer;
  Request request;
  request.lesson = task.lesson;
  request.keys = task.keys;
  request.formats = task.formats;
  request.also_in = true;
  const Plan plan = workshop_.plan(request);
  add(plan.made, answer);
  if (plan.made.status == Made::Status::done) {
    Reading reading{plan.key, plan.suffixes, plan.own_formats, {}, {}};
    for (Job job : plan.jobs) {
      reading.asked.push_back(job.suffix);
      job.formats = wanted_formats(task, job);
      if (!task.is_reading && !job.formats.empty()) make(task, job, answer);
    }
    reading.inputs = workshop_.inputs(task.lesson);
    answer.reading = std::move(reading);
  }
  workshop_.forget(task.lesson);
  return answer;
}

void Worker::make(const Task& task, const Job& job, Answer& answer) {
  const Made made = workshop_.make(job);
  add(made, answer);
  bool whole = made.status == Made::Status::done;
  for (const Format format : job.formats) {
    if (!whole) break;
    MadeHandout handout{job.suffix, format, {}};
    whole = write(task, made, format, handout, answer);
    if (whole) answer.made.push_back(std::move(handout));
  }
  if (!whole) return answer.failed.push_back(job.suffix);
  remove_later_pages(task.handouts, made, system_);
}

bool Worker::write(const Task& task, const Made& made, Format format, MadeHandout& handout, Answer& answer) {
  const std::string ending = "." + std::string(format_name(format));
  for (const Output& output : made.outputs) {
    if (!output.suffix.ends_with(ending)) continue;
    const std::string path = task.handouts + output.suffix;
    if (const std::optional<platform::FileError> error = system_.write(path, output.bytes)) {
      answer.status = std::max(answer.status, Made::Status::unreadable);
      answer.refusals.push_back(path + ": " + error->what);
      return false;
    }
    FileMark file{output.suffix.substr(handout.suffix.size()), output.bytes.size(), 0, print_of(output.bytes)};
    if (const auto status = system_.status(path)) file.changed = status->changed;
    handout.files.push_back(std::move(file));
  }
  return true;
}

}  // namespace fretsheaf::sheaf
