#pragma once

#include <string>

#include "exchange/adopt.h"

// What is said of a score that is taken in.
namespace fretsheaf::exchange::test {

// The messages, each on a line with its place, without the source lines.
inline std::string said_of(const Adopted& adopted) {
  std::string text;
  for (const source::Diagnostic& one : adopted.diagnostics.sorted()) {
    const std::string whole = source::render(one, adopted.files);
    text += whole.substr(0, whole.find('\n')) + "\n";
    if (!one.help.empty()) text += "help: " + one.help + "\n";
  }
  return text;
}

// "a.musicxml:LINE:COLUMN: " of a text in the score: the first such, or with "TEXT#2" the third.
inline std::string place_of(const std::string& score, const std::string& tag) {
  const std::size_t mark = tag.find('#');
  const std::string text = tag.substr(0, mark);
  int which = mark == std::string::npos ? 0 : std::stoi(tag.substr(mark + 1));
  std::size_t at = score.find(text);
  for (; which > 0 && at != std::string::npos; --which) at = score.find(text, at + 1);
  if (at == std::string::npos) return "no " + tag;
  int line = 1;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < at; ++i) {
    if (score[i] != '\n') continue;
    ++line;
    begin = i + 1;
  }
  return "a.musicxml:" + std::to_string(line) + ":" + std::to_string(at - begin + 1) + ": ";
}

}  // namespace fretsheaf::exchange::test
