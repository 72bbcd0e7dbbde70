#include "lesson/grid_hand_rows.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "lesson/grid_labels.h"
#include "lesson/grid_phrases.h"
#include "lesson/grid_words.h"
#include "lesson/plain_signs.h"
#include "theory/pitch.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

std::string_view help_of(RowKind kind) {
  switch (kind) {
    case RowKind::finger:
      return "fingers are `0` to `4` and `T`; for a chord one a string, joined by commas: `1,2,3`";
    case RowKind::hand:
      return "the plucking hand is `p`, `i`, `m`, `a`, `T` (thumb slap) or `P` (pop); for a chord one a string, joined "
             "by commas: `p,i`";
    case RowKind::spell:
      return "write a note's name, `Db` or `F#`; for a chord one a string, joined by commas";
    case RowKind::stroke:
      return "strokes are `d` down and `u` up";
    default:
      return "write `*` under a struck count, `x` for a muted strum, `>` for an accent, `(*)` for a ghost";
  }
}

bool is_known(RowKind kind, std::string_view word) {
  if (kind == RowKind::spell) return theory::parse_note_name(word).has_value();
  const std::string_view letters = kind == RowKind::finger ? "01234T" : "pimaTP";
  return word.size() == 1 && letters.find(word) != std::string_view::npos;
}

std::string help_for(RowKind kind, std::string_view written) {
  const auto known = [](std::string_view name) { return is_known(RowKind::spell, name); };
  const auto help = kind == RowKind::spell ? plain_signs_help(written, known, "`", "`") : std::nullopt;
  return help.value_or(std::string(help_of(kind)));
}

// Whether words of one chord, which commas join, were parted by a space there.
bool parted_at_comma(const CellWord& left, const CellWord& right) {
  return !left.quoted && !right.quoted && left.text.ends_with(',') != right.text.starts_with(',');
}

std::optional<Strum> strum_of(std::string_view word) {
  if (word == "*") return Strum::plain;
  if (word == "x") return Strum::muted;
  if (word == ">") return Strum::accented;
  if (word == "(*)") return Strum::ghost;
  return std::nullopt;
}

class HandCellReader {
 public:
  HandCellReader(const GridInput& input, const Cell& cell, BarDraft& bar)
      : input_(input), cell_(cell), row_(*cell.row), bar_(bar) {}

  void read() {
    const std::vector<CellWord> words = read_words(input_, cell_);
    if (words.empty()) return;
    if (bar_.percent) {
      input_.diagnostics.error(
          Code::bar_repeat_not_alone, row_.range(words.front().begin, words.back().end),
          "this " + std::string(row_name(row_.kind)) + " row says something in a bar that repeats the one before",
          "write counts instead of `%`, or leave this row empty here");
      return;
    }
    const bool commas = row_.kind != RowKind::play && row_.kind != RowKind::stroke;
    for (std::size_t i = 0; i < words.size(); ++i) {
      const std::size_t first = i;
      while (commas && i + 1 < words.size() && parted_at_comma(words[i], words[i + 1])) ++i;
      if (i == first) {
        read_word(words[i]);
      } else {
        report_parted(
            {words.begin() + static_cast<std::ptrdiff_t>(first), words.begin() + static_cast<std::ptrdiff_t>(i) + 1});
      }
    }
  }

 private:
  void read_word(const CellWord& word) {
    const auto index = place_word(bar_, cell_, word.begin, word.end);
    if (!index) return;
    Count& count = bar_.counts[static_cast<std::size_t>(*index)];
    if (row_.kind == RowKind::play) return read_play(word, count);
    if (row_.kind == RowKind::stroke) return read_stroke(word, count);
    std::optional<HandWords>& slot = row_.kind == RowKind::finger ? count.finger
                                     : row_.kind == RowKind::hand ? count.hand
                                                                  : count.spell;
    if (slot) return report_twice(word, count);
    slot = split(word);
  }

  void report_parted(const std::vector<CellWord>& words) {
    std::string joined;
    for (const CellWord& word : words) joined += word.text;
    input_.diagnostics.error(Code::word_unknown, source::joined(words.front().range, words.back().range),
                             "these words have a comma and a space between them",
                             "for a chord write " + tick(joined) + ", without a space; at several counts, no comma");
  }

  void report_unknown(const CellWord& word, std::string_view written, Range range) {
    input_.diagnostics.error(Code::word_unknown, range,
                             tick(written) + " is no word of a " + std::string(row_name(row_.kind)) + " row",
                             help_for(row_.kind, written));
    if (row_.kind == RowKind::play) {
      bar_.damaged = true;
      if (const auto index = count_at(bar_, word.begin)) bar_.counts[static_cast<std::size_t>(*index)].lost = true;
    }
  }

  void report_twice(const CellWord& word, const Count& count) {
    input_.diagnostics.error(Code::word_twice, word.range,
                             tick(word.text) + " is the second word at " + tick(count.text) + " in a " +
                                 std::string(row_name(row_.kind)) + " row",
                             std::string(help_of(row_.kind)));
  }

  void read_play(const CellWord& word, Count& count) {
    const auto strum = strum_of(word.text);
    if (!strum) return report_unknown(word, word.text, word.range);
    if (count.rest) {
      bar_.damaged = true;
      input_.diagnostics.error(Code::token_under_rest, word.range,
                               tick(word.text) + " stands under a rest, " + tick(count.text),
                               "write the count without parentheses, or take the strum out");
      return;
    }
    if (count.strum) return report_twice(word, count);
    count.strum = strum;
  }

  void read_stroke(const CellWord& word, Count& count) {
    if (word.text != "d" && word.text != "u") return report_unknown(word, word.text, word.range);
    if (count.stroke) return report_twice(word, count);
    count.stroke = Located<Stroke>{word.text == "d" ? Stroke::down : Stroke::up, word.range};
  }

  // The words between the commas. Nothing is given where one is unknown.
  std::optional<HandWords> split(const CellWord& word) {
    HandWords hand;
    hand.range = word.range;
    std::size_t begin = 0;
    while (begin <= word.text.size()) {
      const std::size_t end = std::min(word.text.find(',', begin), word.text.size());
      const std::string one = word.text.substr(begin, end - begin);
      const Range range{word.range.begin + static_cast<std::uint32_t>(begin),
                        word.range.begin + static_cast<std::uint32_t>(end), word.range.file};
      if (!is_known(row_.kind, one)) {
        report_unknown(word, one.empty() ? "," : one, one.empty() ? word.range : range);
        return std::nullopt;
      }
      hand.words.push_back({one, range});
      begin = end + 1;
    }
    return hand;
  }

  const GridInput& input_;
  const Cell& cell_;
  const GridRow& row_;
  BarDraft& bar_;
};

}  // namespace

void read_hand_cell(const GridInput& input, const Cell& cell, BarDraft& bar) {
  HandCellReader(input, cell, bar).read();
}

}  // namespace fretsheaf::lesson
