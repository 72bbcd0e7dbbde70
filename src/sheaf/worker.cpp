#include "sheaf/worker.h"

#include <algorithm>
#include <utility>

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
    take_written(task, answer);
    reading.inputs = workshop_.inputs(task.lesson);
    answer.reading = std::move(reading);
  }
  workshop_.forget(task.lesson);
  return answer;
}

void Worker::make(const Task& task, const Job& job, Answer& answer) {
  Begun begun{job.suffix, workshop_.make(job), {}, {}};
  add(begun.made, answer);
  if (begun.made.status != Made::Status::done) {
    answer.failed.push_back(job.suffix);
    return;
  }
  for (const Format format : job.formats) {
    MadeHandout handout{job.suffix, format, {}};
    const std::string ending = "." + std::string(format_name(format));
    for (Output& output : begun.made.outputs) {
      if (!output.suffix.ends_with(ending)) continue;
      handout.files.push_back({output.suffix.substr(job.suffix.size()), 0, 0, {}});
      begun.paths.push_back(task.handouts + output.suffix);
      writer_.write(begun.paths.back(), std::exchange(output.bytes, {}));
    }
    begun.handouts.push_back(std::move(handout));
  }
  begun_.push_back(std::move(begun));
}

void Worker::take_written(const Task& task, Answer& answer) {
  const std::vector<Writer::Written> written = writer_.finish();
  auto next = written.begin();
  for (Begun& begun : begun_) {
    auto path = begun.paths.begin();
    bool is_whole = true;
    for (MadeHandout& handout : begun.handouts) {
      bool is_written = true;
      for (FileMark& file : handout.files) {
        const std::string tail = std::exchange(file.tail, {});
        file = next->mark;
        file.tail = tail;
        if (next->error) {
          is_written = false;
          answer.status = std::max(answer.status, Made::Status::unreadable);
          answer.refusals.push_back(*path + ": " + next->error->what);
        }
        ++next;
        ++path;
      }
      is_whole = is_whole && is_written;
      if (is_written) answer.made.push_back(std::move(handout));
    }
    if (is_whole) {
      remove_later_pages(task.handouts, begun.made, system_);
    } else {
      answer.failed.push_back(begun.suffix);
    }
  }
  begun_.clear();
}

}  // namespace fretsheaf::sheaf
