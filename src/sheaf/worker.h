#pragma once

#include "platform/machine.h"
#include "sheaf/task.h"
#include "sheaf/workshop.h"

namespace fretsheaf::sheaf {

// Does one task after another with one set of fonts, and writes the outputs.
class Worker {
 public:
  explicit Worker(platform::Machine& system) : system_(system), workshop_(system, Trace::on) {}

  Answer work(const Task& task);

 private:
  void make(const Task& task, const Job& job, Answer& answer);
  // Writes the outputs of one format; false, with a refusal, where one cannot be written.
  bool write(const Task& task, const Made& made, Format format, MadeHandout& handout, Answer& answer);

  platform::Machine& system_;
  Workshop workshop_;
};

}  // namespace fretsheaf::sheaf
