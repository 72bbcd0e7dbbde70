#include "lesson/grid_form.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "lesson/grid_phrases.h"
#include "source/nearest.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

constexpr std::array<std::string_view, 10> roads = {
    "segno", "coda", "fine", "To Coda", "D.C.", "D.S.", "D.C. al Fine", "D.C. al Coda", "D.S. al Fine", "D.S. al Coda",
};

// The figures at a word's front; -1 where there are none or too many.
int leading_number(std::string_view text, std::size_t length) {
  int number = -1;
  const auto [end, error] = std::from_chars(text.data(), text.data() + length, number);
  return error == std::errc{} && end == text.data() + length ? number : -1;
}

// "dc al fine" -> "D.C. al Fine": the same letters, whatever their case, dots and spaces.
std::string letters_of(std::string_view text) {
  std::string letters;
  for (const char c : text) {
    if (c >= 'A' && c <= 'Z') letters += static_cast<char>(c + ('a' - 'A'));
    if (c >= 'a' && c <= 'z') letters += c;
  }
  return letters;
}

std::string likely_road(std::string_view text) {
  for (const std::string_view road : roads) {
    if (letters_of(road) == letters_of(text)) return std::string(road);
  }
  return source::nearest(text, roads);
}

// More than any bar's; a stranger's may have a number as large as can be written.
constexpr int most_endings = 9999;

class FormSetter {
 public:
  FormSetter(const GridInput& input, const GridDraft& draft, Music& music)
      : input_(input), draft_(draft), music_(music) {}

  void run() {
    for (std::size_t i = 0; i < draft_.bars.size(); ++i) {
      for (const PlacedWord& word : draft_.bars[i].words) {
        if (word.kind == RowKind::ending) read_ending(i, word);
        if (word.kind == RowKind::road) read_road(i, word);
      }
    }
    if (music_.bars.empty()) return;  // no strip could be read
    close_endings();
    if (!draft_.lost_road) check_ways();
    warn_of_open_repeats();
    warn_of_endings_passed();
  }

 private:
  void error(Code code, Range range, std::string message, std::string help) {
    input_.diagnostics.error(code, range, std::move(message), std::move(help));
    wrong_ = true;
  }

  void read_ending(std::size_t i, const PlacedWord& word) {
    const bool form = word.text.size() > 1 && word.text.back() == '.';
    const int number = form ? leading_number(word.text, word.text.size() - 1) : -1;
    if (number < 1) return report_ending(word);
    if (word.count > 0) {
      last_ending_ = std::min(number, most_endings);
      return error(Code::ending_inside_bar, word.range, "an ending begins at a bar line",
                   "write it under the bar's first count");
    }
    const bool same_bar = !music_.endings.empty() && music_.endings.back().first_bar == static_cast<int>(i);
    if (number != last_ending_ + 1 && (number != 1 || goes_on_from_first(i))) {
      const std::string expected = tick(std::to_string(last_ending_ + 1) + ".");
      // Those after it are counted on from it, right or wrong.
      if (draft_.lost_ending || std::exchange(out_of_order_, true)) return;
      error(Code::ending_order, word.range, "ending " + tick(word.text) + " is out of order",
            last_ending_ == 0 ? "the first is `1.`"
                              : "after " + tick(std::to_string(last_ending_) + ".") + " comes " + expected);
    } else if (same_bar) {
      error(Code::word_twice, word.range, tick(word.text) + " is the second ending of this bar",
            "write one ending a bar");
      return;
    }
    last_ending_ = std::min(number, most_endings);
    music_.endings.push_back({word.text, static_cast<int>(i), static_cast<int>(i), word.range});
  }

  // What is no ending is counted as the one that was most probably meant: those after it are none the worse.
  void report_ending(const PlacedWord& word) {
    constexpr std::string_view figures = "0123456789";
    const std::string first = word.text.substr(0, word.text.find_first_not_of(figures));
    const std::size_t last_end = word.text.find_last_of(figures) + 1;
    const std::size_t last_begin = last_end == 0 ? 0 : word.text.find_last_not_of(figures, last_end - 1) + 1;
    const std::string last = word.text.substr(last_begin, last_end - last_begin);
    last_ending_ = std::min(std::max(last_ending_ + 1, leading_number(last, last.size())), most_endings);
    std::string help = "write " + (first.empty() ? std::string("`1.` or `2.`") : tick(first + "."));
    if (!first.empty() && last_begin > 0)
      help = "an ending has one number: " + help + " here, and its bars again under " + tick(last + ".");
    error(Code::ending_unknown, word.range, tick(word.text) + " is no ending", std::move(help));
  }

  // Whether bar `i` follows the first ending of a passage, which then goes on to its second: no other passage has begun
  // with bars between them, or with a sign.
  bool goes_on_from_first(std::size_t i) const {
    if (music_.endings.empty() || music_.endings.back().label != "1." || last_ending_ != 1) return false;
    const auto first = static_cast<std::size_t>(music_.endings.back().first_bar);
    if (first == i) return false;
    for (std::size_t bar = first; bar + 1 < i; ++bar) {
      if (music_.bars[bar].right != BarSign::plain) return false;
    }
    const BarSign before = music_.bars[i - 1].right;
    return before == BarSign::plain || before == BarSign::repeat_end;
  }

  // An ending lasts up to the next sign but `|`, ending or the end.
  void close_endings() {
    for (std::size_t k = 0; k < music_.endings.size(); ++k) {
      Ending& ending = music_.endings[k];
      const int limit = k + 1 < music_.endings.size() ? music_.endings[k + 1].first_bar - 1
                                                      : static_cast<int>(music_.bars.size()) - 1;
      while (ending.last_bar < limit && music_.bars[static_cast<std::size_t>(ending.last_bar)].right == BarSign::plain)
        ++ending.last_bar;
    }
  }

  void read_road(std::size_t i, const PlacedWord& word) {
    const bool plays = word.text.size() > 1 && word.text.back() == 'x' &&
                       word.text.find_first_not_of("0123456789") == word.text.size() - 1;
    if (plays) return read_plays(i, word);
    const bool real = std::find(roads.begin(), roads.end(), word.text) != roads.end();
    // Several words without quotes were reported where they stand.
    const bool known = real && (word.quoted || word.text.find(' ') == std::string::npos);
    ways_.push_back({real ? word.text : report_road(word), word.range, known});
    if (!known) return;
    const auto at = moment_of(draft_.bars[i], music_.bars[i], word.count);
    if (!at) return;
    Bar& bar = music_.bars[i];
    bar.roads.push_back({*at < bar.begin ? bar.begin : *at, word.text, word.row, false, word.range});
  }

  // What was most probably meant; empty where that cannot be told.
  std::string report_road(const PlacedWord& word) {
    std::string guess = likely_road(word.text);
    const std::string written = guess.find(' ') == std::string::npos ? tick(guess) : "`\"" + guess + "\"`";
    error(Code::road_unknown, word.range, "there is no way called " + tick(word.text),
          guess.empty() ? "write segno, coda, fine, \"To Coda\", D.C., D.S., \"D.C. al Fine\", \"D.S. al Coda\" … or 4x"
                        : "did you mean " + written + "?");
    return guess;
  }

  void read_plays(std::size_t i, const PlacedWord& word) {
    Bar& bar = music_.bars[i];
    const int times = leading_number(word.text, word.text.size() - 1);
    if (!ends_repeat(bar.right)) {
      return error(Code::road_plays, word.range, tick(word.text) + " stands in a bar without a `:|`",
                   "it says how often a repeated part is played: write it where the repeat ends");
    }
    if (times < 2 || times > 99) {
      return error(Code::road_plays, word.range, tick(word.text) + " is no number of times",
                   "a repeated part is played 2 to 99 times: `4x`");
    }
    if (bar.plays) {
      return error(Code::word_twice, word.range, tick(word.text) + " is the second number of times here", "write one");
    }
    bar.plays = Located<int>{times, word.range};
  }

  // A sign or a way of the road row: as written, or as it was most probably meant.
  struct Way {
    std::string name;
    Range range;
    bool known = true;
  };

  // What could not be told may be any sign.
  bool has_way(std::string_view name, std::size_t begin, std::size_t end) const {
    return std::any_of(ways_.begin() + static_cast<std::ptrdiff_t>(begin),
                       ways_.begin() + static_cast<std::ptrdiff_t>(end),
                       [&](const Way& way) { return way.name == name || way.name.empty(); });
  }

  // A way to nowhere: its sign is not there.
  void check_ways() {
    std::stable_sort(ways_.begin(), ways_.end(),
                     [](const Way& a, const Way& b) { return a.range.begin < b.range.begin; });
    for (std::size_t i = 0; i < ways_.size(); ++i) {
      const std::string sign = ways_[i].known ? missing_sign(i) : std::string();
      if (!sign.empty()) report_nowhere(ways_[i], sign);
    }
  }

  // The first sign that a way needs and that is not where it must be, with where that is.
  std::string missing_sign(std::size_t i) const {
    const std::string& way = ways_[i].name;
    const std::size_t all = ways_.size();
    if (way.starts_with("D.S.") && !has_way("segno", 0, i)) return "`segno` stands before it";
    if (way.ends_with("al Fine") && !has_way("fine", 0, i)) return "`fine` stands before it";
    if (way == "To Coda" && !has_way("coda", i, all)) return "`coda` stands after it";
    if (!way.ends_with("al Coda")) return {};
    if (!has_way("To Coda", 0, i)) return "`\"To Coda\"` stands before it";
    // Where there is no coda at all, the `To Coda` has said so.
    return has_way("coda", i, all) || !has_way("coda", 0, i) ? "" : "`coda` stands after it";
  }

  void report_nowhere(const Way& way, const std::string& sign) {
    error(Code::road_nowhere, way.range, tick(way.name) + " leads nowhere: no " + sign,
          "write the sign in the road row where the way leads");
  }

  // Where a repeat begins and none ends after it.
  void warn_of_open_repeats() {
    std::optional<std::size_t> open;
    if (music_.left == BarSign::repeat_begin) open = 0;
    for (std::size_t i = 0; i < music_.bars.size(); ++i) {
      const BarSign sign = music_.bars[i].right;
      if (ends_repeat(sign)) open.reset();
      if (sign == BarSign::repeat_begin && i + 1 < music_.bars.size()) open = i + 1;
    }
    if (!open) return;
    input_.diagnostics.warning(Code::repeat_open, music_.bars[*open].range,
                               "a repeat begins before this bar and never ends", "write `:|` where it ends");
  }

  // Where an ending has another after it, but no repeat or way at its end: both would be played, one after the other.
  void warn_of_endings_passed() {
    if (wrong_ || !ways_.empty()) return;
    for (std::size_t k = 0; k + 1 < music_.endings.size(); ++k) {
      const Ending& ending = music_.endings[k];
      if (music_.endings[k + 1].label == "1." ||
          ends_repeat(music_.bars[static_cast<std::size_t>(ending.last_bar)].right))
        continue;
      input_.diagnostics.warning(
          Code::repeat_open, ending.range,
          "no repeat leads back from ending " + tick(ending.label) + " to play " + tick(music_.endings[k + 1].label),
          "write `:|` where it ends");
    }
  }

  const GridInput& input_;
  const GridDraft& draft_;
  Music& music_;
  std::vector<Way> ways_;
  int last_ending_ = 0;
  bool out_of_order_ = false;
  bool wrong_ = false;
};

}  // namespace

void set_form(const GridInput& input, const GridDraft& draft, Music& music) {
  FormSetter(input, draft, music).run();
}

}  // namespace fretsheaf::lesson
