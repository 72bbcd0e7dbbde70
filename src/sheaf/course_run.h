#pragma once

#include <map>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "platform/machine.h"
#include "sheaf/course.h"
#include "sheaf/crew.h"
#include "sheaf/fingerprints.h"
#include "sheaf/gone.h"
#include "sheaf/lesson_plan.h"
#include "sheaf/order.h"
#include "sheaf/store.h"
#include "sheaf/task.h"

namespace fretsheaf::sheaf {

// Who is told how a run goes on.
class Listener {
 public:
  Listener() = default;
  Listener(const Listener&) = delete;
  Listener& operator=(const Listener&) = delete;
  virtual ~Listener() = default;

  // What was found in a lesson, and why something could not be made: as it comes, each once.
  virtual void say(const std::vector<Finding>& findings, const std::vector<std::string>& refusals) = 0;
  // So many handouts of those that are to be made are done. Also called now and then while nothing changes.
  virtual void progress(std::size_t done, std::size_t of) = 0;
};

// How a run went. Handouts are counted as a lesson in a key.
struct Tally {
  Made::Status status = Made::Status::done;  // the worst of all
  bool stopped = false;                      // before its end, by a signal
  std::size_t made = 0;
  std::size_t current = 0;  // up to date already
  std::size_t failed = 0;   // a lesson that cannot be read counts as one
  std::vector<std::string> made_files;
  std::vector<std::string> gone;     // files of lessons or keys that are no more
  std::vector<std::string> pruned;   // those of them that were removed
  std::vector<std::string> altered;  // those that were changed by somebody else since, and stay
};

// A handout of the course, by what `--only` calls it.
struct CourseJob {
  std::size_t lesson = 0;
  std::string suffix;
  std::string name;
};

// A whole course, in steps: what there is, what of it is to be made, the making.
class CourseRun {
 public:
  CourseRun(Course course, Order order, platform::Machine& system, Crew& crew, Listener& listener);

  // Reads every lesson that the record does not know as it is. After it `jobs` are known.
  void learn();

  // The handouts that this run answers for, by lesson and key. Fewer than all where it is a share or a single job.
  std::vector<CourseJob> jobs() const;

  // Makes what is not up to date, and writes the record. REQUIRES: learn() was called; the locks are held.
  void make();

  const Tally& tally() const { return tally_; }
  const Course& course() const { return course_; }

 private:
  struct Due {
    std::size_t lesson = 0;
    Wanted wanted;
  };

  std::vector<std::size_t> unknown_lessons();
  void work(const std::vector<Task>& tasks, const std::vector<std::size_t>& lessons, bool is_reading);
  void take_reading(std::size_t lesson, const Answer& answer);
  void take_made(std::size_t lesson, const Task& task, const Answer& answer);
  void tell(std::size_t lesson, const Answer& answer);
  void tell_refused();
  std::vector<Due> due();
  std::vector<Task> tasks_of(const std::vector<Due>& due, std::vector<std::size_t>& lessons) const;
  void look_for_gone();
  void prune(const MadeEntry& entry);
  void note(const std::string& line);
  void flush(bool synced);
  void complain(const std::string& path, const platform::FileError& error);
  void sweep();

  Course course_;
  Order order_;
  platform::Machine& system_;
  Crew& crew_;
  Listener& listener_;
  Store store_;
  Record record_;
  Fingerprints fingerprints_;
  std::map<std::size_t, std::uint64_t> weights_;  // of lessons, in bytes
  std::map<std::size_t, LessonPlan> plans_;       // by lesson; of those that could be read
  std::set<std::string> said_;
  std::map<std::string, std::set<std::size_t>> refused_;  // the lessons by why they do not fit the command line
  std::set<Print> noted_kits_;
  std::string lines_;  // for the journal
  bool may_note_ = false;
  bool forgot_ = false;  // something that the record on the disk still has
  std::size_t done_ = 0;
  std::size_t of_ = 0;
  Tally tally_;
};

}  // namespace fretsheaf::sheaf
