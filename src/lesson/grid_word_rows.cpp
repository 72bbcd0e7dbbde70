#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "lesson/grid_phrases.h"
#include "lesson/grid_words.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

// Of the road row; a `4x` is told by its figures.
constexpr std::array<std::string_view, 5> quoted_roads = {
    "To Coda", "D.C. al Fine", "D.C. al Coda", "D.S. al Fine", "D.S. al Coda",
};

class WordCellReader {
 public:
  WordCellReader(const GridInput& input, const Cell& cell, int bar_index, GridDraft& draft)
      : input_(input),
        cell_(cell),
        row_(*cell.row),
        draft_(draft),
        index_(bar_index),
        bar_(draft.bars[static_cast<std::size_t>(bar_index)]) {}

  void read() {
    const std::vector<CellWord> words = read_words(input_, cell_);
    // A phrase in curly quotes falls apart at its spaces: one mistake, said once.
    for (const CellWord& word : words) {
      if (report_curly_quotes(input_, cell_, word)) return lose_word(draft_, bar_, row_.kind);
    }
    if (row_.kind == RowKind::lyric) return read_lyric(words);
    const std::vector<bool> said = report_unquoted_roads(words);
    for (std::size_t i = 0; i < words.size(); ++i) {
      if (said[i]) continue;
      if (row_.kind == RowKind::road && is_plays(words[i])) {
        add(words[i], CountRef::bar_start);
      } else {
        place(words[i]);
      }
    }
  }

 private:
  static bool is_plays(const CellWord& word) {
    return word.text.size() > 1 && word.text.back() == 'x' &&
           word.text.find_first_not_of("0123456789") == word.text.size() - 1;
  }

  PlacedWord* place(const CellWord& word) {
    const auto count = place_word(bar_, cell_, word.begin, word.end);
    if (!count) lose_word(draft_, bar_, row_.kind);
    return count ? add(word, *count) : nullptr;
  }

  PlacedWord* add(const CellWord& word, int count) {
    const auto same = std::find_if(bar_.words.begin(), bar_.words.end(), [&](const PlacedWord& other) {
      return other.kind == row_.kind && other.row == row_.ordinal && other.count == count;
    });
    if (same != bar_.words.end() && row_.kind != RowKind::road) {
      const bool first_beat = count == CountRef::bar_start;
      input_.diagnostics.error(
          Code::word_twice, row_.range(word.begin, word.end),
          tick(word.text) + " is the second " + std::string(row_.kind == RowKind::chord ? "chord" : "word") +
              (first_beat ? " of a repeated bar" : " at " + tick(bar_.counts[static_cast<std::size_t>(count)].text)),
          first_beat ? "what stands in a `%` bar belongs to its first beat; write counts instead of `%`"
                     : "quote words that belong together, or write a count for each");
      return nullptr;
    }
    bar_.words.push_back({row_.kind, row_.ordinal, count, word.text, word.quoted, false, word.range});
    return &bar_.words.back();
  }

  // "To Coda" without its quotes, in several words, which is then read as if it had them. Which words are part of one.
  std::vector<bool> report_unquoted_roads(const std::vector<CellWord>& words) {
    std::vector<bool> said(words.size(), false);
    for (std::size_t i = 0; i < words.size() && row_.kind == RowKind::road; ++i) {
      std::string joined = words[i].text;
      for (std::size_t j = i + 1; j < words.size() && j < i + 3 && !words[i].quoted; ++j) {
        joined += " " + words[j].text;
        if (std::find(quoted_roads.begin(), quoted_roads.end(), joined) == quoted_roads.end()) continue;
        input_.diagnostics.error(Code::road_unknown, row_.range(words[i].begin, words[j].end),
                                 tick(joined) + " stands without quotes", "write `\"" + joined + "\"`");
        place({joined, false, words[i].begin, words[j].end, row_.range(words[i].begin, words[j].end)});
        std::fill(said.begin() + static_cast<std::ptrdiff_t>(i), said.begin() + static_cast<std::ptrdiff_t>(j) + 1,
                  true);
      }
    }
    return said;
  }

  // The syllable that a hyphen at the row's start belongs to: the row's last, in this bar or one before.
  PlacedWord* last_syllable() {
    for (int bar = index_; bar >= 0; --bar) {
      auto& words = draft_.bars[static_cast<std::size_t>(bar)].words;
      const auto last = std::find_if(words.rbegin(), words.rend(), [&](const PlacedWord& word) {
        return word.kind == RowKind::lyric && word.row == row_.ordinal;
      });
      if (last != words.rend()) return &*last;
    }
    return nullptr;
  }

  void read_lyric(const std::vector<CellWord>& words) {
    bool lost = false;  // the last syllable was reported: its hyphens go with it
    for (const CellWord& word : words) {
      if (word.quoted) {
        lost = place(word) == nullptr;
        continue;
      }
      if (word.text.find_first_not_of('_') == std::string::npos) {
        input_.diagnostics.error(Code::lyric_line, row_.range(word.begin, word.end),
                                 tick(word.text) + " is no syllable", "lines under held notes are drawn by themselves");
        continue;
      }
      read_syllables(word, lost);
    }
  }

  void read_syllables(const CellWord& word, bool& lost) {
    for (int at = word.begin; at < word.end;) {
      int end = at;
      if (row_.at(at) == U'-') {
        while (end < word.end && row_.at(end) == U'-') ++end;
        if (!lost) hyphenate(at, end);
      } else {
        while (end < word.end && row_.at(end) != U'-') ++end;
        CellWord syllable;
        syllable.begin = at;
        syllable.end = end;
        syllable.text = row_.text(at, end);
        syllable.range = row_.range(at, end);
        lost = place(syllable) == nullptr;
      }
      at = end;
    }
  }

  void hyphenate(int begin, int end) {
    if (PlacedWord* last = last_syllable()) {
      last->goes_on = true;
    } else if (!bar_.damaged) {
      input_.diagnostics.error(Code::lyric_hyphen, row_.range(begin, end), "this hyphen has no syllable before it",
                               "write `-` after a syllable whose word goes on");
    }
  }

  const GridInput& input_;
  const Cell& cell_;
  const GridRow& row_;
  GridDraft& draft_;
  int index_;
  BarDraft& bar_;
};

}  // namespace

void read_word_cell(const GridInput& input, const Cell& cell, int bar_index, GridDraft& draft) {
  WordCellReader(input, cell, bar_index, draft).read();
}

}  // namespace fretsheaf::lesson
