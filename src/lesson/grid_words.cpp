#include "lesson/grid_words.h"

#include <algorithm>

#include "lesson/grid_phrases.h"
#include "lesson/limits.h"
#include "lesson/lookalikes.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

CellWord word_of(const Cell& cell, int begin, int end, bool quoted) {
  CellWord word;
  word.quoted = quoted;
  word.begin = begin;
  word.end = end;
  const int inner = quoted ? 1 : 0;
  word.text = cell.row->text(begin + inner, end - inner);
  word.range = cell.row->range(begin + inner, end - inner);
  return word;
}

int closing_quote(const Cell& cell, int open) {
  int close = open + 1;
  while (close < cell.end && cell.row->at(close) != U'"') ++close;
  return close;
}

int bare_end(const Cell& cell, int begin) {
  int end = begin;
  while (end < cell.end && !is_blank(cell.row->at(end)) && cell.row->at(end) != U'"') ++end;
  return end;
}

}  // namespace

std::vector<CellWord> read_words(const GridInput& input, const Cell& cell) {
  const GridRow& row = *cell.row;
  std::vector<CellWord> words;
  for (int at = cell.begin; at < cell.end;) {
    if (is_blank(row.at(at))) {
      ++at;
      continue;
    }
    const bool quoted = row.at(at) == U'"';
    const int end = quoted ? std::min(closing_quote(cell, at) + 1, cell.end) : bare_end(cell, at);
    words.push_back(word_of(cell, at, end, quoted));
    if (end - at > static_cast<int>(limits::word)) {
      input.diagnostics.error(Code::out_of_range, row.range(at, end),
                              "this word has more than " + std::to_string(limits::word) + " characters", "shorten it");
      words.pop_back();
    }
    if (quoted && !words.empty() && words.back().text.find_first_not_of(' ') == std::string::npos) {
      input.diagnostics.error(Code::quote_empty, row.range(at, end), "there is nothing between these quotes",
                              "write words there, or take the quotes out");
      words.pop_back();
    }
    at = end;
    if (at < cell.end && !is_blank(row.at(at))) {
      const char32_t next = row.at(at);
      // A hyphen after a quoted syllable is the lyric row's own.
      if (row.kind == RowKind::lyric && quoted && next == U'-') continue;
      input.diagnostics.error(Code::quote_inside_word, row.range(at, at + 1),
                              quoted ? "a word goes on after its quotes" : "a quote stands inside a word",
                              "quote whole words, and leave a space between two of them");
      at = next == U'"' ? std::min(closing_quote(cell, at) + 1, cell.end) : bare_end(cell, at);
      if (!words.empty()) words.pop_back();
    }
  }
  return words;
}

bool report_curly_quotes(const GridInput& input, const Cell& cell, const CellWord& word) {
  if (word.quoted) return false;
  const char32_t first = cell.row->at(word.begin);
  const char32_t last = cell.row->at(word.end - 1);
  if (!is_curly_quote(first) && !is_curly_quote(last)) return false;
  const int at = is_curly_quote(first) ? word.begin : word.end - 1;
  input.diagnostics.error(Code::quote_curly, cell.row->range(at, at + 1),
                          tick(cell.row->text(at, at + 1)) + " is no quote here",
                          "write the keyboard's straight quotes, `\"`");
  return true;
}

}  // namespace fretsheaf::lesson
