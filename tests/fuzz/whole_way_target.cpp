// A lesson's bytes to its handouts in every format. What could be made must look like what it is.
#include "fuzz/target.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "sheaf/workshop.h"

using namespace fretsheaf;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const platform::DiskSystem disk;  // for the templates and fonts
  static platform::MemorySystem system(disk);
  static sheaf::Workshop workshop(system);
  system.files["a.lesson.toml"].assign(reinterpret_cast<const char*>(data), size);
  sheaf::Request request;
  request.lesson = "a.lesson.toml";
  request.formats = {sheaf::Format::pdf, sheaf::Format::svg, sheaf::Format::musicxml};
  const sheaf::Plan plan = workshop.plan(request);
  if ((plan.made.status == sheaf::Made::Status::done) == plan.jobs.empty()) __builtin_trap();
  for (const sheaf::Job& job : plan.jobs) {
    const sheaf::Made made = workshop.make(job);
    if ((made.status == sheaf::Made::Status::done) == made.outputs.empty()) __builtin_trap();
    for (const sheaf::Output& output : made.outputs) {
      if (output.suffix.ends_with(".pdf") && !output.bytes.starts_with("%PDF-")) __builtin_trap();
    }
  }
  return 0;
}
