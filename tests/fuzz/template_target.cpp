// A template that a teacher copied and changed.
#include "fuzz/target.h"
#include "platform/memory_system.h"
#include "template/reader.h"

using namespace fretsheaf;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  platform::MemorySystem system;
  system.files["a.toml"].assign(reinterpret_cast<const char*>(data), size);
  const templates::ReadTemplate read = templates::read_template("a.toml", system);
  if (read.look.has_value() == read.diagnostics.has_errors()) __builtin_trap();
  return 0;
}
