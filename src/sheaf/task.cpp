#include "sheaf/task.h"

#include <cstring>
#include <type_traits>

namespace fretsheaf::sheaf {

namespace {

// Writes and reads have one shape: `pass` goes over a thing's parts, and each way does its half.
class Packer {
 public:
  static constexpr bool reads = false;
  std::string bytes;

  void raw(const void* from, std::size_t size) { bytes.append(static_cast<const char*>(from), size); }
};

class Unpacker {
 public:
  static constexpr bool reads = true;
  explicit Unpacker(std::string_view bytes) : rest_(bytes) {}

  void raw(void* into, std::size_t size) {
    std::memcpy(into, rest_.data(), size);
    rest_.remove_prefix(size);
  }

 private:
  std::string_view rest_;
};

template <typename Way, typename Number>
requires std::is_arithmetic_v<Number> || std::is_enum_v<Number>
void pass(Way& way, Number& number) {
  way.raw(&number, sizeof number);
}

template <typename Way>
std::size_t pass_size(Way& way, std::size_t size) {
  pass(way, size);
  return size;
}

template <typename Way>
void pass(Way& way, std::string& text) {
  text.resize(pass_size(way, text.size()));
  way.raw(text.data(), text.size());
}

template <typename Way>
void pass(Way& way, Print& print) {
  pass(way, print.high);
  pass(way, print.low);
}

template <typename Way>
void pass(Way& way, source::Position& at) {
  pass(way, at.line);
  pass(way, at.column);
  pass(way, at.utf16);
}

template <typename Way>
void pass(Way& way, Inputs& inputs) {
  std::size_t left = pass_size(way, inputs.size());
  if constexpr (Way::reads) {
    for (; left > 0; --left) {
      std::string path;
      pass(way, path);
      pass(way, inputs[path]);
    }
  } else {
    for (auto& [path, print] : inputs) {
      std::string copy = path;
      pass(way, copy);
      pass(way, print);
    }
  }
}

template <typename Way>
void pass(Way& way, Wanted& wanted);
template <typename Way>
void pass(Way& way, Finding& finding);
template <typename Way>
void pass(Way& way, FileMark& file);
template <typename Way>
void pass(Way& way, MadeHandout& made);
template <typename Way>
void pass(Way& way, Reading& reading);

template <typename Way, typename T>
void pass(Way& way, std::vector<T>& list) {
  list.resize(pass_size(way, list.size()));
  for (T& one : list) pass(way, one);
}

template <typename Way, typename T>
void pass(Way& way, std::optional<T>& maybe) {
  bool is_there = maybe.has_value();
  pass(way, is_there);
  if (!is_there) return;
  if (!maybe) maybe.emplace();
  pass(way, *maybe);
}

template <typename Way, typename... Fields>
void pass_each(Way& way, Fields&... fields) {
  (pass(way, fields), ...);
}

template <typename Way>
void pass(Way& way, Wanted& wanted) {
  pass_each(way, wanted.suffix, wanted.formats);
}

template <typename Way>
void pass(Way& way, Finding& finding) {
  pass_each(way, finding.is_error, finding.code, finding.message, finding.help, finding.file, finding.begin,
            finding.end, finding.text);
}

template <typename Way>
void pass(Way& way, FileMark& file) {
  pass_each(way, file.tail, file.size, file.changed, file.print);
}

template <typename Way>
void pass(Way& way, MadeHandout& made) {
  pass_each(way, made.suffix, made.format, made.files);
}

template <typename Way>
void pass(Way& way, Reading& reading) {
  pass_each(way, reading.key, reading.suffixes, reading.formats, reading.asked, reading.inputs);
}

template <typename Way>
void pass_task(Way& way, Task& task) {
  pass_each(way, task.lesson, task.handouts, task.keys, task.formats, task.is_reading, task.wanted);
}

template <typename Way>
void pass_answer(Way& way, Answer& answer) {
  pass_each(way, answer.status, answer.findings, answer.refusals, answer.reading, answer.made, answer.failed);
}

}  // namespace

std::string packed(const Task& task) {
  Packer way;
  Task copy = task;
  pass_task(way, copy);
  return std::move(way.bytes);
}

std::string packed(const Answer& answer) {
  Packer way;
  Answer copy = answer;
  pass_answer(way, copy);
  return std::move(way.bytes);
}

Task unpacked_task(std::string_view bytes) {
  Unpacker way(bytes);
  Task task;
  pass_task(way, task);
  return task;
}

Answer unpacked_answer(std::string_view bytes) {
  Unpacker way(bytes);
  Answer answer;
  pass_answer(way, answer);
  return answer;
}

}  // namespace fretsheaf::sheaf
