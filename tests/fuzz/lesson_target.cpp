// The lesson reader and its checks, and the rendering of what they say.
#include "fuzz/target.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"

using namespace fretsheaf;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const platform::MemorySystem system;
  std::string bytes(reinterpret_cast<const char*>(data), size);
  const lesson::ReadLesson read = lesson::read_lesson("a.lesson.toml", std::move(bytes), system);
  // A lesson stands for no errors, and only that.
  if (read.lesson.has_value() == read.diagnostics.has_errors()) __builtin_trap();
  for (const source::Diagnostic& one : read.diagnostics.sorted()) {
    if (source::render(one, read.files).empty()) __builtin_trap();
  }
  return 0;
}
