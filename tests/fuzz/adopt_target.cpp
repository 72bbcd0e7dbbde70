// A score from anywhere, plain or compressed. What is made of it is a lesson without errors.
#include "exchange/adopt.h"
#include "fuzz/target.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"

using namespace fretsheaf;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string bytes(reinterpret_cast<const char*>(data), size);
  const exchange::Adopted adopted = exchange::adopt("a.musicxml", std::move(bytes), {});
  if (adopted.lesson.has_value() == adopted.diagnostics.has_errors()) __builtin_trap();
  for (const source::Diagnostic& one : adopted.diagnostics.sorted()) {
    if (source::render(one, adopted.files).empty()) __builtin_trap();
  }
  if (!adopted.lesson) return 0;
  const platform::MemorySystem system;
  if (!lesson::read_lesson("a.lesson.toml", *adopted.lesson, system).lesson) __builtin_trap();
  return 0;
}
