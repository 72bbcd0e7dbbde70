#include "spoken/sample.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>
#include <vector>

#include "lesson/reader.h"
#include "platform/memory_system.h"

namespace fretsheaf::spoken::test {

score::Score score_of(const std::string& text, score::Copy copy) {
  const platform::MemorySystem system;
  lesson::ReadLesson read = lesson::read_lesson("tide.lesson.toml", text, system);
  for (const auto& one : read.diagnostics.list()) {
    if (one.severity == source::Severity::error) FAIL(one.message + " in\n" + text);
  }
  source::Diagnostics diagnostics;
  return score::build_score(*read.lesson, diagnostics, copy);
}

namespace {

// In code points.
std::size_t width(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

}  // namespace

std::string aligned(const std::string& rows) {
  std::vector<std::vector<std::string>> cells;
  std::vector<std::size_t> widths;
  std::istringstream lines(rows);
  for (std::string line; std::getline(lines, line);) {
    std::vector<std::string>& own = cells.emplace_back();
    std::istringstream parts(line);
    for (std::string cell; std::getline(parts, cell, '|');) own.push_back(cell);
    widths.resize(std::max(widths.size(), own.size()));
    for (std::size_t i = 0; i < own.size(); ++i) widths[i] = std::max(widths[i], width(own[i]));
  }
  std::string out;
  for (const auto& own : cells) {
    for (std::size_t i = 0; i < own.size(); ++i) out += own[i] + std::string(widths[i] - width(own[i]), ' ') + "|";
    out += "\n";
  }
  return out;
}

score::Score example(const std::string& rows, const std::string& keys, const std::string& own) {
  const std::string key = keys.find("key = ") == std::string::npos ? "key = \"D minor\"\n" : "";
  return score_of("title = \"Tide\"\n" + key + "instrument = \"bass\"\n" + keys + "[[example]]\n" + own +
                  "tab = '''\n" + aligned(rows) + "'''\n");
}

}  // namespace fretsheaf::spoken::test
