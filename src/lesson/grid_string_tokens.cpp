#include "lesson/grid_string_tokens.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>

#include "lesson/grid_phrases.h"
#include "lesson/lookalikes.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

// More figures than any fret, bend or number of a grid has; longer numbers are cut here.
constexpr int largest_number = 99999;

bool is_digit(char32_t c) {
  return c >= U'0' && c <= U'9';
}

bool is_filler(char32_t c) {
  return is_blank(c) || c == U'-';
}

constexpr std::string_view how_hands_are =
    "the hand is written in a `hand` row: `T` for the thumb, `P` for a pop; a tapped note is its fret, with a word "
    "about it in a `text` row";

// What other tabs write, or a key beside the right one, and what is written here.
struct OtherSign {
  char32_t written;
  std::string_view help;
};
constexpr std::array<OtherSign, 18> other_signs = {{
    {U'O', "write the figure 0 for an open string, not the letter O"},
    {U'o', "write the figure 0 for an open string, not the letter o"},
    {U'l', "write the figure 1, not the letter l"},
    {U'I', "write the figure 1, not the letter I"},
    {U'b', "a bend is written `7^1`: up by so many whole tones"},
    {U'r', "a bend and its release are written `7^1v`; a rest is a count in parentheses, `(2)`"},
    {U's', "a slide is written `5/7` up, `7\\5` down"},
    {U'S', "a slide is written `5/7` up, `7\\5` down"},
    {U'v', "vibrato is written `~`"},
    {U'X', "a dead note is written `x`"},
    {U'H', "a hammer-on is written `h`"},
    {U'P', "a pull-off is written `p`"},
    {U'[', "a ghost note is written `(5)`, a natural harmonic `<12>`"},
    {U'*', "a natural harmonic is written `<12>`, a struck strum in a `play` row"},
    {U'&', "counts stand in the count row"},
    {U'%', "a repeated bar is written in the count row"},
    {U't', how_hands_are},
    {U'T', how_hands_are},
}};

constexpr std::string_view what_tokens_are =
    "write a fret, `x`, `(5)`, `=` or `<12>`; before it `h`, `p`, `/` or `\\`; after it `>`, `.`, `_`, `~`, `^1/2`, "
    "`/` "
    "or `\\`";

class RunReader {
 public:
  RunReader(const GridInput& input, const Cell& cell, int begin) : input_(input), row_(*cell.row), at_(begin) {
    run_.begin = begin;
    run_.end = begin;
    while (run_.end < cell.end && !is_filler(row_.at(run_.end)) && !is_long_dash(row_.at(run_.end))) ++run_.end;
  }

  Run read() {
    while (at_ < run_.end && !run_.damaged) read_note();
    return std::move(run_);
  }

 private:
  bool more() const { return at_ < run_.end; }
  char32_t here() const { return more() ? row_.at(at_) : U' '; }
  char32_t after() const { return at_ + 1 < run_.end ? row_.at(at_ + 1) : U' '; }

  void fail(int begin, int end, Code code, std::string message, std::string_view help) {
    input_.diagnostics.error(code, row_.range(begin, end), std::move(message), std::string(help));
    run_.damaged = true;
  }

  int read_number() {
    int value = 0;
    for (; is_digit(here()); ++at_) value = std::min(value * 10 + static_cast<int>(here() - U'0'), largest_number);
    return value;
  }

  static bool begins_head(char32_t c) { return is_digit(c) || c == U'(' || c == U'<' || c == U'x' || c == U'='; }

  static Approach approach_of(char32_t c) {
    switch (c) {
      case U'h':
        return Approach::hammer_on;
      case U'p':
        return Approach::pull_off;
      case U'/':
        return Approach::slide_up;
      case U'\\':
        return Approach::slide_down;
      default:
        return Approach::none;
    }
  }

  void read_note() {
    draft_ = {};
    draft_.begin = at_;
    draft_.note.place.string = row_.string;
    const Approach approach = approach_of(here());
    if (approach != Approach::none) {
      draft_.note.approach = approach;
      ++at_;
      if (!begins_head(here())) {
        return fail(draft_.begin, draft_.begin + 1, Code::token_approach,
                    tick(row_.text(draft_.begin, draft_.begin + 1)) + " stands alone",
                    "write it before its number with nothing between: `h7`");
      }
    }
    read_head();
    while (!run_.damaged && more() && read_suffix()) {
    }
    if (run_.damaged) return;
    draft_.end = at_;
    draft_.note.range = row_.range(draft_.begin, draft_.end);
    check_fret();
    run_.notes.push_back(std::move(draft_));
  }

  void read_head() {
    const int begin = at_;
    Note& note = draft_.note;
    if (is_digit(here())) return read_fret();
    if (here() == U'(') {
      note.ghost = true;
      return read_enclosed(U')', "a ghost note is a fret in parentheses: `(5)`");
    }
    if (here() == U'<') {
      note.harmonic = true;
      return read_enclosed(U'>', "a natural harmonic is a fret in angle brackets: `<12>`");
    }
    if (here() != U'x' && here() != U'=') return report_unknown();
    (here() == U'x' ? note.dead : note.held) = true;
    ++at_;
    if (note.approach == Approach::none) return;
    fail(draft_.begin, at_, Code::token_approach,
         tick(row_.text(draft_.begin, begin)) + " leads to " + (note.dead ? "a dead note" : "a note that is held on"),
         "`h`, `p`, `/` and `\\` lead to a fret");
  }

  void read_fret() {
    draft_.fret = true;
    draft_.digit = at_;
    draft_.note.place.fret = read_number();
  }

  void read_enclosed(char32_t close, std::string_view help) {
    const int begin = at_++;
    if (is_digit(here())) read_fret();
    if (draft_.fret && here() == close) {
      ++at_;
      return;
    }
    fail(begin, std::min(at_ + 1, run_.end), Code::token_brackets,
         draft_.fret ? tick(row_.text(begin, begin + 1)) + " is not closed after its fret"
                     : tick(row_.text(begin, begin + 1)) + " has no fret after it",
         help);
  }

  // The run with figures where it has the letters that look like them; empty where something else is in it.
  std::string meant_figures() const {
    std::string figures;
    for (int column = run_.begin; column < run_.end; ++column) {
      const char32_t c = row_.at(column);
      if (is_digit(c)) {
        figures += static_cast<char>(c);
      } else if (const char figure = figure_like(c)) {
        figures += figure;
      } else {
        return {};
      }
    }
    return figures;
  }

  void report_unknown() {
    const char32_t c = here();
    const std::string written = row_.text(at_, at_ + 1);
    if (c == U'>' || c == U'.' || c == U'_' || c == U'~' || c == U'^') {
      return fail(at_, at_ + 1, Code::token_suffix, tick(written) + " has no note before it",
                  "write it after its fret with nothing between: `5" + written + (c == U'^' ? "1`" : "`") +
                      (c == U'~' ? "; a note that is held on is `=`" : ""));
    }
    if (const std::string figures = meant_figures(); figures.size() > 1) {
      return fail(run_.begin, run_.end, Code::token_unknown,
                  tick(row_.text(run_.begin, run_.end)) + " has the letter " + written + " in its fret",
                  "write it in figures: " + tick(figures));
    }
    const auto other =
        std::find_if(other_signs.begin(), other_signs.end(), [&](const OtherSign& sign) { return sign.written == c; });
    fail(at_, at_ + 1, Code::token_unknown, tick(written) + " is no sign of a string row",
         other == other_signs.end() ? what_tokens_are : other->help);
  }

  // One suffix; false where something else follows.
  bool read_suffix() {
    Note& note = draft_.note;
    switch (here()) {
      case U'>':
        if (note.held) {
          fail(at_, at_ + 1, Code::token_suffix, "a note that is held on takes no accent",
               "accents belong to its start");
          return false;
        }
        return set(note.accent);
      case U'.':
        return set(note.staccato);
      case U'_':
        return set(note.tenuto);
      case U'~':
        return needs_pitch("vibrato") && set(note.vibrato);
      case U'^':
        return needs_pitch("bend") && read_bend();
      case U'/':
      case U'\\':
        // Before a head it is that note's approach.
        if (begins_head(after())) return false;
        return needs_pitch("slide") && read_slide_off();
      default:
        return false;
    }
  }

  bool needs_pitch(std::string_view what) {
    if (!draft_.note.dead) return true;
    fail(at_, at_ + 1, Code::token_suffix,
         "a dead note has no pitch to " + std::string(what == "vibrato" ? "shake" : what),
         "write a fret instead of `x`, or leave the sign out");
    return false;
  }

  bool twice() {
    fail(at_, at_ + 1, Code::token_suffix, tick(row_.text(at_, at_ + 1)) + " stands twice at one note",
         "write each sign once");
    return false;
  }

  bool set(bool& sign) {
    if (sign) return twice();
    sign = true;
    ++at_;
    return true;
  }

  bool read_slide_off() {
    if (draft_.note.slide_off != SlideOff::none) return twice();
    draft_.note.slide_off = here() == U'/' ? SlideOff::up : SlideOff::down;
    ++at_;
    return true;
  }

  // After `^` the longest number or fraction is the amount.
  bool read_bend() {
    if (draft_.note.bend) return twice();
    const int begin = at_++;
    constexpr std::string_view help = "write how many whole tones: `^1`, `^1/2`, `^3/2`";
    if (!is_digit(here())) {
      fail(begin, begin + 1, Code::token_bend, "this bend has no amount", help);
      return false;
    }
    const int upper = read_number();
    int lower = 1;
    if (here() == U'/' && is_digit(after())) {
      ++at_;
      lower = read_number();
    }
    if (here() == U'.' && is_digit(after())) {
      fail(begin, at_ + 2, Code::token_bend, "a bend's amount is a fraction, not a decimal", help);
      return false;
    }
    if (upper == 0 || lower == 0 || upper > most_tones * lower) {
      fail(begin, at_, Code::token_bend, tick(row_.text(begin, at_)) + " is no amount to bend by", help);
      return false;
    }
    Bend bend{Rational(upper, lower), false};
    if (here() == U'v') {
      bend.release = true;
      ++at_;
    }
    draft_.note.bend = bend;
    return true;
  }

  void check_fret() {
    if (!draft_.fret) return;
    const fretboard::Neck& neck = input_.context.neck;
    const Note& note = draft_.note;
    const int digits_end = end_of_digits();
    const std::string fret = row_.text(draft_.digit, digits_end);
    const Range range = row_.range(draft_.digit, digits_end);
    if (note.place.fret > neck.last_fret()) {
      std::string help = "the last fret is " + std::to_string(neck.last_fret());
      if (neck.capo > 0) help += ", counted from the capo";
      if (fret.size() > 1) help += "; frets of two notes stand apart";
      input_.diagnostics.error(Code::token_fret, range, "there is no fret " + fret, std::move(help));
      run_.damaged = true;  // it may be two notes
    } else if (!neck.has(note.place)) {
      input_.diagnostics.error(Code::token_fret, range, "the short string has no fret " + fret,
                               "its frets are the neck's: 0 for the open string, then 6 and up");
    } else if (note.harmonic && !neck.harmonic_midi(note.place)) {
      input_.diagnostics.error(Code::token_harmonic, range, "no natural harmonic lies at fret " + fret,
                               "natural harmonics lie at frets such as 12, 7, 5, 19 and 24");
    }
  }

  int end_of_digits() const {
    int end = draft_.digit;
    while (end < run_.end && is_digit(row_.at(end))) ++end;
    return end;
  }

  // No string is bent by more than an octave.
  static constexpr int most_tones = 6;

  const GridInput& input_;
  const GridRow& row_;
  int at_ = 0;
  Run run_;
  NoteDraft draft_;
};

}  // namespace

std::vector<Run> read_runs(const GridInput& input, const Cell& cell) {
  std::vector<Run> runs;
  bool long_dash = false;
  for (int at = cell.begin; at < cell.end; ++at) {
    const char32_t c = cell.row->at(at);
    if (is_filler(c)) continue;
    if (is_long_dash(c)) {
      if (!long_dash) {
        input.diagnostics.error(Code::token_long_dash, cell.row->range(at, at + 1),
                                tick(cell.row->text(at, at + 1)) + " is no filler",
                                "write plain dashes, `-`, or spaces; `fretsheaf tidy` puts them in");
      }
      long_dash = true;
      continue;
    }
    runs.push_back(RunReader(input, cell, at).read());
    at = runs.back().end - 1;
  }
  return runs;
}

}  // namespace fretsheaf::lesson
