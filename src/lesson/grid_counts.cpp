#include "lesson/grid_counts.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "lesson/grid_count_order.h"
#include "lesson/grid_phrases.h"
#include "lesson/limits.h"
#include "lesson/lookalikes.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

bool is_digit(char32_t c) {
  return c >= U'0' && c <= U'9';
}

bool is_letter(char32_t c) {
  return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || c >= 0x80;
}

struct Syllable {
  std::u32string_view text;
  Rational fraction;
};

const std::array<Syllable, 6>& syllables() {
  static const std::array<Syllable, 6> all = {{
      {U"&", Rational(1, 2)},
      {U"+", Rational(1, 2)},
      {U"e", Rational(1, 4)},
      {U"a", Rational(3, 4)},
      {U"la", Rational(1, 3)},
      {U"li", Rational(2, 3)},
  }};
  return all;
}

// Ways of counting that are taught elsewhere, and what they are here.
struct OtherSyllable {
  std::string_view written;
  std::string_view help;
};
constexpr std::array<OtherSyllable, 13> other_syllables = {{
    {"and", "write the half of a beat as `&`"},
    {"ee", "write the quarters of a beat as `e & a`"},
    {"ah", "write the quarters of a beat as `e & a`"},
    {"uh", "write the quarters of a beat as `e & a`"},
    {"ti", "write the half of a beat as `&`"},
    {"trip", "write the thirds of a beat as `la li`"},
    {"let", "write the thirds of a beat as `la li`"},
    {"tri", "write the thirds of a beat as `la li`"},
    {"ta", "write the beats in figures and their halves as `&`"},
    {"l", "write the figure 1, not the letter l"},
    {"I", "write the figure 1, not the letter I"},
    {"O", "write a figure, not the letter O; counts begin at 1"},
    {"x", "a muted strum is written in a `play` row, a dead note in a string row"},
}};

constexpr std::string_view what_counts_are =
    "counts are figures and, after them, `&`, `e & a`, `la li` or a fraction such as `+2/5`";

class CountReader {
 public:
  CountReader(const GridInput& input, const Cell& cell, CountRowSaid& said, BarDraft& bar)
      : input_(input), row_(*cell.row), cell_(cell), said_(said), bar_(bar), order_(input, bar) {}

  void read() {
    for (at_ = cell_.begin; at_ < cell_.end && bar_.counts.size() <= limits::counts;) {
      // A `:` apart from its bar line was reported with the signs, and so was a `|` beside its place.
      if (is_blank(row_.at(at_)) || row_.at(at_) == U':' || row_.at(at_) == U'|') {
        const bool sign = !is_blank(row_.at(at_));  // it may stand for a figure
        bar_.damaged = bar_.damaged || sign;
        lost_figure_ = lost_figure_ || sign;
        ++at_;
      } else if (row_.at(at_) == U'%') {
        read_percent();
      } else if (row_.at(at_) == U'(') {
        read_rest();
      } else if (row_.at(at_) == U'[') {
        read_square_brackets();
      } else {
        read_position(at_, false);
      }
    }
    check_percent();
  }

 private:
  void error(Code code, int begin, int end, std::string message, std::string help) {
    input_.diagnostics.error(code, row_.range(begin, end), std::move(message), std::move(help));
    bar_.damaged = true;
  }

  void read_percent() {
    if (!bar_.percent) bar_.percent = row_.range(at_, at_ + 1);
    ++at_;
  }

  void check_percent() {
    if (!bar_.percent || bar_.counts.empty()) return;
    input_.diagnostics.error(Code::bar_repeat_not_alone, *bar_.percent, "`%` stands beside counts",
                             "`%` alone repeats the bar before; write `%` or the counts");
    bar_.percent.reset();
    bar_.damaged = true;
    for (Count& count : bar_.counts) count.bad = true;
  }

  void read_rest() {
    const int begin = at_++;
    int close = begin;
    while (close < cell_.end && row_.at(close) != U')') ++close;
    skip_blanks();
    if (close == cell_.end) {
      error(Code::count_parentheses, begin, begin + 1, "this parenthesis is never closed",
            "a rest is a count in parentheses: `(2)`");
      if (at_ == cell_.end || row_.at(at_) == U'(') return;
      read_position(begin, true);
      bar_.counts.back().bad = true;
      return;
    }
    if (at_ == close) {
      error(Code::count_parentheses, begin, close + 1, "these parentheses hold no count",
            "a rest is a count in parentheses: `(2)`");
      at_ = close + 1;
      return add({}, begin, at_, true, true);
    }
    rest_end_ = close + 1;
    read_position(begin, true);
    rest_end_ = -1;
    skip_blanks();
    Count& read = bar_.counts.back();
    if (at_ < close && !read.bad) {
      error(Code::count_parentheses, begin, close + 1, "parentheses hold one count",
            "write each rest in its own: `(2) (3)`");
      read.bad = true;
      order_.confuse();
    }
    at_ = close + 1;
  }

  void read_square_brackets() {
    const int begin = at_;
    while (at_ < cell_.end && row_.at(at_) != U']' && !is_blank(row_.at(at_))) ++at_;
    if (at_ < cell_.end && row_.at(at_) == U']') ++at_;
    error(Code::count_parentheses, begin, at_, tick(row_.text(begin, at_)) + " is no count",
          "a rest is a count in parentheses: `(2)`");
    add({}, begin, at_, true, true);
  }

  void skip_blanks() {
    while (at_ < cell_.end && is_blank(row_.at(at_))) ++at_;
  }

  // Reads a position at at_, which becomes a count from `begin` on.
  void read_position(int begin, bool rest) {
    if (is_digit(row_.at(at_))) return read_figure(begin, rest);
    if (row_.at(at_) == U'+' && is_digit(row_.at(at_ + 1)) && read_fraction(begin, rest)) return;
    // The longest first: `la` before `a` would be found by its own letter anyway.
    for (const Syllable& syllable : syllables()) {
      const auto length = static_cast<int>(syllable.text.size());
      if (at_ + length > cell_.end ||
          row_.characters.compare(static_cast<std::size_t>(at_), syllable.text.size(), syllable.text) != 0)
        continue;
      if (is_word_of_its_own(at_ + length) || syllable.text.size() > 1 || !is_other_syllable()) {
        at_ += length;
        return add_syllable(syllable.fraction, begin, rest);
      }
    }
    read_unknown(begin, rest);
  }

  bool is_word_of_its_own(int end) const { return end >= cell_.end || !is_letter(row_.at(end)); }

  int word_end() const {
    int end = at_;
    while (end < cell_.end && is_letter(row_.at(end))) ++end;
    return std::max(end, at_ + 1);
  }

  bool is_other_syllable() const {
    const std::string word = row_.text(at_, word_end());
    return std::any_of(other_syllables.begin(), other_syllables.end(),
                       [&](const auto& o) { return o.written == word; });
  }

  void read_unknown(int begin, bool rest) {
    int end = word_end();
    const char32_t first = row_.at(at_);
    if (first == U'-' || is_long_dash(first)) {
      while (end < cell_.end && row_.at(end) == first) ++end;
      if (!std::exchange(said_.dash, true)) {
        error(Code::count_unknown, at_, end, "a dash stands in the count row",
              "leave spaces between counts: dashes are filler in string rows only");
      }
      at_ = end;
      return add({}, begin, end, rest, true);
    }
    const std::string word = row_.text(at_, end);
    if (first == U',' || first == U';' || first == U'.') {
      if (!std::exchange(said_.comma, true)) {
        error(Code::count_unknown, at_, end, tick(word) + " is no count",
              "leave spaces between counts, without commas or points: `1 2 3`");
      }
      at_ = end;
      return add({}, begin, end, rest, true);
    }
    const auto other =
        std::find_if(other_syllables.begin(), other_syllables.end(), [&](const auto& o) { return o.written == word; });
    const auto help = other == other_syllables.end() ? what_counts_are : other->help;
    error(Code::count_unknown, at_, end, tick(word) + " is no count", std::string(help));
    lost_figure_ = true;
    at_ = end;
    add({}, begin, end, rest, true);
  }

  int number(int begin, int end) const {
    int value = 0;
    for (int i = begin; i < end && value < 100000; ++i) value = value * 10 + static_cast<int>(row_.at(i) - U'0');
    return value;
  }

  int digits_end(int from) const {
    while (from < cell_.end && is_digit(row_.at(from))) ++from;
    return from;
  }

  void read_figure(int begin, bool rest) {
    const int first = at_;
    at_ = digits_end(first);
    if (is_like_figure(at_)) return read_letters(first, begin, rest);
    Count count;
    count.figure = number(first, at_);
    if (count.figure == 0) {
      error(Code::count_unknown, first, at_, "there is no count 0",
            "the first count of a bar is 1; an open string's 0 goes in its string row");
      lost_figure_ = true;
      return add(count, begin, at_, rest, true);
    }
    figure_ = count.figure;
    lost_figure_ = false;
    add(count, begin, at_, rest, false);
  }

  // A letter that looks like a figure; an `l` may begin `la` and `li`.
  bool is_like_figure(int column) const {
    const char32_t c = column < cell_.end ? row_.at(column) : U' ';
    const char32_t next = row_.at(column + 1);
    return figure_like(c) != 0 && (c != U'l' || (next != U'a' && next != U'i'));
  }

  // "1O", which is read as what it was meant to be.
  void read_letters(int first, int begin, bool rest) {
    const std::string letter = row_.text(at_, at_ + 1);
    std::string figures;
    int value = 0;
    for (at_ = first; at_ < cell_.end && (is_digit(row_.at(at_)) || is_like_figure(at_)); ++at_) {
      const char32_t c = row_.at(at_);
      figures += is_digit(c) ? static_cast<char>(c) : figure_like(c);
      if (value < 100000) value = value * 10 + (figures.back() - '0');
    }
    error(Code::count_unknown, first, at_, tick(row_.text(first, at_)) + " has the letter " + letter + " in its count",
          value <= input_.context.meter.upper() ? "write it in figures: " + tick(figures)
                                                : "write figures alone: " + tick(row_.text(first, digits_end(first))));
    Count count;
    count.figure = figure_ = value;
    lost_figure_ = true;
    add(count, begin, at_, rest, true);
  }

  // `+p/q`; false where no `/` follows, so that the `+` is a half.
  bool read_fraction(int begin, bool rest) {
    const int over = digits_end(at_ + 1);
    if (row_.at(over) != U'/') return false;
    const int end = digits_end(over + 1);
    const int p = number(at_ + 1, over);
    const int q = number(over + 1, end);
    if (p < 1 || p >= q || q > 64) {
      error(Code::count_fraction, at_, end, tick(row_.text(at_, end)) + " is no part of a beat",
            "write a fraction above 0 and below 1, over 64 at most: `+2/3`");
      at_ = end;
      add({}, begin, end, rest, true);
      return true;
    }
    at_ = end;
    add_syllable(Rational(p, q), begin, rest);
    return true;
  }

  void add_syllable(Rational fraction, int begin, bool rest) {
    Count count;
    count.figure = figure_;
    count.fraction = fraction;
    const bool headless = figure_ == 0 || lost_figure_;
    if (headless && !lost_figure_ && !order_.confused()) {
      error(Code::count_order, begin, at_,
            tick(row_.text(begin, std::max(at_, rest_end_))) + " has no figure before it in this bar",
            "write the beat that it divides: `1 &`");
      order_.confuse();
    }
    add(count, begin, at_, rest, headless);
  }

  void add(Count count, int begin, int end, bool rest, bool bad) {
    count.rest = rest;
    count.begin = begin;
    count.end = rest ? std::max(end, rest_end_) : end;
    count.bad = bad;
    describe(count);
    if (!bad) order_.check(count);
    bar_.damaged = bar_.damaged || count.bad;
    if (!count.bad) order_.follow(bar_.counts.size());
    bar_.counts.push_back(std::move(count));
  }

  void describe(Count& count) const {
    count.range = row_.range(count.begin, count.end);
    count.text = row_.text(count.begin, count.end);
  }

  const GridInput& input_;
  const GridRow& row_;
  const Cell& cell_;
  CountRowSaid& said_;
  BarDraft& bar_;
  int at_ = 0;
  int figure_ = 0;
  bool lost_figure_ = false;  // what may have been one could not be read: it is not known what a syllable divides
  int rest_end_ = -1;         // past the closing parenthesis of the rest that is being read
  CountOrder order_;
};

}  // namespace

void read_counts(const GridInput& input, const Cell& cell, CountRowSaid& said, BarDraft& bar) {
  CountReader(input, cell, said, bar).read();
}

}  // namespace fretsheaf::lesson
