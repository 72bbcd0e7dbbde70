#include <algorithm>
#include <cstddef>

#include "source/diagnostic.h"
#include "source/text.h"
#include "source/utf8.h"

namespace fretsheaf::source {
namespace {

// A longer source line is shown in part, so that a file of one enormous line stays readable.
constexpr std::size_t most_shown = 160;
constexpr std::size_t shown_before = 60;
constexpr std::string_view indent = "  ";
constexpr std::string_view ellipsis = "…";

// What is under the carets, in code points of the line: [begin, end) with at least one.
struct Carets {
  std::size_t begin = 0;
  std::size_t end = 1;
};

std::u32string code_points(std::string_view bytes) {
  std::u32string result;
  while (!bytes.empty()) {
    const auto next = decode_utf8(bytes);
    result += next.code_point;
    bytes.remove_prefix(next.length);
  }
  return result;
}

bool is_control(char32_t c) {
  return (c < 0x20 && c != U'\t') || (c >= 0x7F && c < 0xA0);
}

void append_shown(std::string& out, const std::u32string& line, std::size_t begin, std::size_t end) {
  // A control character could change the terminal, or the columns.
  for (std::size_t i = begin; i < end; ++i) append_utf8(out, is_control(line[i]) ? U'\uFFFD' : line[i]);
}

// The source line and the caret line. Tabs are copied, so that both lines widen alike.
std::string underlined(const std::u32string& line, Carets carets) {
  std::size_t begin = 0;
  std::size_t end = line.size();
  if (line.size() > most_shown) {
    begin = carets.begin > shown_before ? carets.begin - shown_before : 0;
    end = std::min(line.size(), begin + most_shown);
    carets.end = std::clamp(carets.end, carets.begin + 1, std::max(end, carets.begin + 1));
  }
  std::string out;
  if (begin < end) out += indent;
  if (begin > 0) out += ellipsis;
  append_shown(out, line, begin, end);
  if (end < line.size()) out += ellipsis;
  out += '\n';
  out += indent;
  if (begin > 0) out += ' ';
  for (std::size_t i = begin; i < carets.begin; ++i) out += line[i] == U'\t' ? '\t' : ' ';
  out.append(carets.end - carets.begin, '^');
  out += '\n';
  return out;
}

Carets carets_of(const Text& text, Range range, const Position& start, std::size_t line_length) {
  const auto begin = static_cast<std::size_t>(start.column) - 1;
  const Position stop = text.position(range.end);
  std::size_t end = stop.line == start.line ? static_cast<std::size_t>(stop.column) - 1 : line_length;
  if (stop.line < start.line) end = begin;
  return {begin, std::max(end, begin + 1)};
}

}  // namespace

std::string render(const Diagnostic& diagnostic, const Files& files) {
  const std::string_view kind = diagnostic.severity == Severity::error ? "error: " : "warning: ";
  std::string out;
  std::string shown;
  if (diagnostic.range.file < files.size()) {
    const Text& text = files[diagnostic.range.file];
    const Position start = text.position(diagnostic.range.begin);
    const std::u32string line = code_points(text.line(start.line));
    out = text.name() + ":" + std::to_string(start.line) + ":" + std::to_string(start.column) + ": ";
    shown = underlined(line, carets_of(text, diagnostic.range, start, line.size()));
  }
  out += kind;
  out += diagnostic.message;
  out += '\n';
  out += shown;
  if (!diagnostic.help.empty()) out += "help: " + diagnostic.help + "\n";
  return out;
}

}  // namespace fretsheaf::source
