#pragma once

#include <catch2/catch.hpp>
#include <string>
#include <string_view>

#include "lesson/reader.h"
#include "platform/memory_system.h"

// For the tests of the reader: what it reports, as one text that a test can compare.
namespace fretsheaf::lesson::test {

// "4:11-15: error: …" where the range begins and where it ends (in code points, as an editor counts), in the lesson; a
// place in its sheaf.toml is named so. "help: …" on a line of its own.
inline std::string said(const ReadLesson& read) {
  std::string result;
  for (const auto& one : read.diagnostics.sorted()) {
    const source::Text& text = read.files[one.range.file];
    const auto begin = text.position(one.range.begin);
    const auto end = text.position(one.range.end);
    if (one.range.file != 0) result += text.name() + ":";
    result += std::to_string(begin.line) + ":" + std::to_string(begin.column) + "-";
    if (end.line != begin.line) result += std::to_string(end.line) + ":";
    result += std::to_string(end.column);
    result += one.severity == source::Severity::error ? ": error: " : ": warning: ";
    result += one.message + "\n";
    if (!one.help.empty()) result += "help: " + one.help + "\n";
  }
  return result;
}

inline std::string with_crlf(std::string_view text) {
  std::string result;
  for (const char c : text) result += c == '\n' ? std::string("\r\n") : std::string(1, c);
  return result;
}

inline ReadLesson read(std::string text, const platform::System& system = platform::MemorySystem()) {
  return read_lesson("tide.lesson.toml", std::move(text), system);
}

// The keys that a lesson must have, in three lines.
inline const std::string base = "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";

// A sound lesson and something more: in its fourth line, or from its seventh line on, under `[[example]]`.
inline std::string lesson_with(const std::string& top, const std::string& in_example = "blank-bars = 2") {
  return base + top + "\n\n[[example]]\n" + in_example + "\n";
}

// A lesson and all that the reader says of it.
struct Case {
  std::string name;
  std::string text;
  std::string said;
};

inline void check(const Case& one) {
  INFO(one.name << "\n" << one.text);
  CHECK(said(read(one.text)) == one.said);
  CHECK(said(read(with_crlf(one.text))) == one.said);
  CHECK(said(read("\xEF\xBB\xBF" + with_crlf(one.text))) == one.said);
}

}  // namespace fretsheaf::lesson::test
