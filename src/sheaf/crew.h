#pragma once

#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "platform/machine.h"
#include "sheaf/task.h"

namespace fretsheaf::sheaf {

// Those who do the tasks that a planner gives out.
class Crew {
 public:
  struct Done {
    std::size_t number = 0;  // of the task, as it was given
    Answer answer;
  };

  Crew() = default;
  Crew(const Crew&) = delete;
  Crew& operator=(const Crew&) = delete;
  virtual ~Crew() = default;

  // False where nobody is free.
  virtual bool give(std::size_t number, const Task& task) = 0;

  // What was done, after waiting for it for so long at the most; empty where nothing is going on.
  virtual std::vector<Done> take(int milliseconds) = 0;

  virtual bool is_idle() const = 0;

  // Whether somebody asked the run to stop (Ctrl-C).
  virtual bool is_stopped() = 0;

  // Ends at once what is going on. Outputs stay whole; temporary files may be left.
  virtual void end() = 0;
};

// `hands` worker processes, each with fonts of its own, started when there is something to do; on a system that does
// not span processes one worker in this process.
std::unique_ptr<Crew> make_crew(int hands, platform::Machine& system);

}  // namespace fretsheaf::sheaf
