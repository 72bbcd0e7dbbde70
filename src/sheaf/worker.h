#pragma once

#include <string>
#include <vector>

#include "platform/machine.h"
#include "sheaf/task.h"
#include "sheaf/workshop.h"
#include "sheaf/writer.h"

namespace fretsheaf::sheaf {

// Does one task after another with one set of fonts, and writes the outputs.
class Worker {
 public:
  explicit Worker(platform::Machine& system) : system_(system), workshop_(system, Trace::on), writer_(system) {}

  Answer work(const Task& task);

 private:
  // A job of which outputs are being written.
  struct Begun {
    std::string suffix;
    Made made;  // its outputs without their bytes
    std::vector<MadeHandout> handouts;
    std::vector<std::string> paths;  // of their files, in order
  };

  void make(const Task& task, const Job& job, Answer& answer);
  void take_written(const Task& task, Answer& answer);

  platform::Machine& system_;
  Workshop workshop_;
  Writer writer_;
  std::vector<Begun> begun_;
};

}  // namespace fretsheaf::sheaf
