#include <algorithm>
#include <cstddef>

#include "source/cells.h"
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

// As much of a line as is shown, and what of it is under the carets, in its code points: [begin, end) with at least
// one.
struct Excerpt {
  std::u32string characters;
  bool from_start = true;
  bool to_end = true;
  std::size_t carets_begin = 0;
  std::size_t carets_end = 1;
};

// The first code points of `bytes`, so many at the most; the rest stays in `bytes`.
std::u32string take_code_points(std::string_view& bytes, std::size_t most) {
  std::u32string result;
  while (!bytes.empty() && result.size() < most) {
    const auto next = decode_utf8(bytes);
    result += next.code_point;
    bytes.remove_prefix(next.length);
  }
  return result;
}

// Never more than a part of a long line is looked at: it may hold thousands of errors.
Excerpt excerpt(const Text& text, Range range, const Position& start) {
  const std::string_view line = text.line(start.line);
  const auto column = static_cast<std::size_t>(start.column) - 1;
  Excerpt shown;
  std::string_view rest = line;
  shown.characters = take_code_points(rest, most_shown);
  if (!rest.empty() && column > shown_before) {
    const int first = start.column - static_cast<int>(shown_before);
    rest = line.substr(text.offset(start.line, first) - text.offset(start.line, 1));
    shown.characters = take_code_points(rest, most_shown);
    shown.from_start = false;
  }
  shown.to_end = rest.empty();
  const Position stop = text.position(range.end);
  std::size_t length = stop.line == start.line ? static_cast<std::size_t>(stop.column - start.column) : most_shown;
  if (stop.line < start.line) length = 0;
  shown.carets_begin = shown.from_start ? column : shown_before;
  const std::size_t end = std::min(shown.carets_begin + length, shown.characters.size());
  shown.carets_end = std::max(end, shown.carets_begin + 1);
  return shown;
}

// The source line and the caret line. Tabs are copied, so that both lines widen alike.
std::string underlined(const Excerpt& shown) {
  std::string out;
  if (!shown.characters.empty()) out += indent;
  if (!shown.from_start) out += ellipsis;
  for (const char32_t c : shown.characters) append_utf8(out, is_control(c) ? U'\uFFFD' : c);
  if (!shown.to_end) out += ellipsis;
  out += '\n';
  out += indent;
  if (!shown.from_start) out += ' ';
  const auto cells = [&](std::size_t i) { return i < shown.characters.size() ? cells_of(shown.characters[i]) : 1; };
  for (std::size_t i = 0; i < shown.carets_begin; ++i) {
    const bool tab = i < shown.characters.size() && shown.characters[i] == U'\t';
    out.append(tab ? 1 : cells(i), tab ? '\t' : ' ');
  }
  std::size_t carets = 0;
  for (std::size_t i = shown.carets_begin; i < shown.carets_end; ++i) carets += cells(i);
  out.append(std::max<std::size_t>(carets, 1), '^');
  out += '\n';
  return out;
}

}  // namespace

std::string render(const Diagnostic& diagnostic, const Files& files) {
  const std::string_view kind = diagnostic.severity == Severity::error ? "error: " : "warning: ";
  std::string out;
  std::string shown;
  if (diagnostic.range.file < files.size()) {
    const Text& text = files[diagnostic.range.file];
    const Position start = text.position(diagnostic.range.begin);
    out = printable(text.name()) + ":" + std::to_string(start.line) + ":" + std::to_string(start.column) + ": ";
    shown = underlined(excerpt(text, diagnostic.range, start));
  }
  out += kind;
  out += printable(diagnostic.message);
  out += '\n';
  out += shown;
  if (!diagnostic.help.empty()) out += "help: " + printable(diagnostic.help) + "\n";
  return out;
}

}  // namespace fretsheaf::source
