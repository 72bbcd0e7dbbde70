#include <algorithm>
#include <cmath>
#include <string>

#include "layout/line_breaking.h"
#include "layout/music_plan.h"

namespace fretsheaf::layout {
namespace {

// How a line is judged: weights chosen by eye, over many lessons. Tightness is the logarithm of stretch to natural
// stretch; the cost of a line is its square for each of its bars, so that the lines of an example are weighed by what
// they hold.
constexpr double tight_weight = 1.7;      // a crowded line reads worse than a loose one
constexpr double uneven_stretch = 1.5;    // between neighbouring lines
constexpr double uneven_bars = 0.3;       // between the last lines, where the very last is not full
constexpr double odd_count = 0.3;         // three, five … bars to a line
constexpr double too_many = 0.5;          // each bar beyond four
constexpr double short_last = 0.05;       // a last line that is not full
constexpr double scant_last = 1.6;        // more, the less of the line it is, times the square of what it lacks
constexpr double lone_bar = 0.9;          // one of a single bar
constexpr double wrong_count = 50;        // a line that has not the bars asked for
constexpr double over_count = 1000;       // or has more of them
constexpr double full_share = 2.0 / 3.0;  // a last line under it is not stretched
constexpr int most_pieces = 24;           // in a line: the window of the search
constexpr double least_tightness = -1.6;

// Natural stretch falls as the notes get longer: long notes need less room than the spacing ratio alone would give
// them, so that simple rhythms run four bars to a line and dense ones two.
constexpr double density_ratio = 0.8;

double shortest_log2(const score::Bar& bar) {
  double shortest = 2;  // a whole note, in quarters
  for (const score::Event& event : bar.events) {
    if (event.whole_bar_rest || bar.same_as_previous) continue;
    shortest = std::min(shortest, std::log2(4 * event.length.to_double()));
  }
  return std::max(shortest, -2.0);
}

double natural_stretch(const Context& context) {
  double sum = 0;
  for (const score::Bar& bar : context.example.bars) sum += shortest_log2(bar);
  const double mean = sum / std::max<double>(1, static_cast<double>(context.example.bars.size()));
  const double ratio = context.measures().spacing_ratio;
  return context.measures().natural_quarter / (ratio * ratio) * std::pow(density_ratio, mean + 2);
}

class Breaker {
 public:
  explicit Breaker(const Engraving& engraving)
      : engraving_(engraving), context_(engraving.context), natural_(natural_stretch(engraving.context)) {}

  std::vector<LinePlan> lines() {
    const std::vector<LineChoice> chosen = cheapest(choices(), {uneven_stretch, uneven_bars});
    std::vector<LinePlan> lines;
    std::optional<double> before;
    for (const LineChoice& choice : chosen) {
      LinePlan line = plan_line(engraving_, choice.first, choice.last);
      const double k = before.value_or(natural_);
      // Bars to write in have all the room there is.
      const bool to_write = context_.example.blank || context_.leaves_out(&lesson::Hidden::rhythm);
      const bool ends_early = choice.follows && !to_write && width_at(line.springs, k) < full_share * context_.width;
      stretch(line, context_.width, ends_early ? std::optional(k) : std::nullopt);
      before = line.k;
      lines.push_back(std::move(line));
    }
    warn(lines);
    return lines;
  }

 private:
  int pieces() const { return static_cast<int>(engraving_.pieces.size()); }
  const BarPiece& piece(int index) const { return engraving_.pieces[static_cast<std::size_t>(index)]; }

  Choices choices() const {
    Choices choices(static_cast<std::size_t>(pieces()));
    for (int first = 0; first < pieces(); ++first) {
      auto& here = choices[static_cast<std::size_t>(first)];
      for (int last = first; last < std::min(pieces(), first + most_pieces); ++last) {
        const LinePlan line = plan_line(engraving_, first, last);
        // What cannot fit, fits no better with another bar; one piece must do as it is.
        if (line.least() > context_.width && last > first) break;
        add_choices(line, here);
      }
    }
    return choices;
  }

  void add_choices(const LinePlan& line, std::vector<LineChoice>& choices) const {
    const double k = stretch_to_fill(line.springs, context_.width);
    const double tightness = std::max(least_tightness, std::log(std::max(k, 1e-6) / natural_));
    const int bars = full_bars(line);
    LineChoice choice{line.first, line.last, tightness, 0, false, std::max(1, bars)};
    const double weighed = tightness < 0 ? tight_weight * tightness * tightness : tightness * tightness;
    choice.cost = std::max(1, bars) * weighed + count_cost(line, bars);
    if (!line.last_line) {
      choices.push_back(choice);
      return;
    }
    // A last line that would be short at its natural stretch keeps it and ends early.
    const double share = width_at(line.springs, natural_) / context_.width;
    if (share >= full_share) {
      choices.push_back(choice);
      return;
    }
    choice.follows = true;
    choice.tightness = 0;
    const double lacking = 1 - share / full_share;
    choice.cost = short_last + scant_last * lacking * lacking + (bars <= 1 && line.first > 0 ? lone_bar : 0) +
                  count_cost(line, bars);
    choices.push_back(choice);
  }

  // Bars that begin here at their first beat: a pickup or late part is not counted.
  int full_bars(const LinePlan& line) const {
    int bars = 0;
    for (int i = line.first; i <= line.last; ++i) {
      if (piece(i).opens_bar && context_.bar(piece(i).bar).begin == theory::Rational()) ++bars;
    }
    return bars;
  }

  double count_cost(const LinePlan& line, int bars) const {
    if (const std::optional<int> wanted = context_.example.bars_per_line) {
      if (bars == *wanted || (line.last_line && bars < *wanted)) return 0;
      return bars > *wanted ? over_count : wrong_count;
    }
    const double length = context_.bar(piece(line.first).bar).meter.bar().to_double();
    const int most = length >= 0.75 ? 4 : std::min(8, static_cast<int>(std::lround(4 / std::max(length, 0.25))));
    double cost = bars > most ? too_many * (bars - most) : 0;
    const bool even = bars == 1 || bars % 2 == 0;
    if (!even && pieces() > bars) cost += odd_count;
    return cost;
  }

  void warn(const std::vector<LinePlan>& lines) const {
    const std::optional<int> wanted = context_.example.bars_per_line;
    if (!wanted) return;
    const auto amiss = [&](const LinePlan& line) {
      return full_bars(line) != *wanted && !(line.last_line && full_bars(line) < *wanted);
    };
    if (std::none_of(lines.begin(), lines.end(), amiss)) return;
    const std::string number = std::to_string(*wanted);
    context_.diagnostics.warning(source::Code::layout_bars_per_line, context_.example.bars_per_line_range,
                                 "not every line of example " + std::to_string(context_.example.number) +
                                     " has room for " + number + (*wanted == 1 ? " bar" : " bars"),
                                 "write a smaller number, or \"auto\"");
  }

  const Engraving& engraving_;
  const Context& context_;
  double natural_;
};

// Where a bar may be cut before a column: at a beat, outside beams and tuplets where there is such a place.
bool may_cut(const Context& context, const Column& column, bool at_beat) {
  if (column.event <= 0) return false;
  const score::Bar& bar = context.bar(column.bar);
  for (const score::Tuplet& tuplet : bar.tuplets) {
    if (tuplet.first < column.event && column.event <= tuplet.last) return false;
  }
  if (!at_beat) return true;
  const std::vector<theory::Rational> beats = bar.meter.beats();
  const bool beat = std::find(beats.begin(), beats.end(), column.at) != beats.end();
  return beat && bar.events[static_cast<std::size_t>(column.event)].beams_left == 0;
}

bool fits(const Engraving& engraving, const BarPiece& piece) {
  const Engraving alone{engraving.context, {piece}, engraving.names};
  return plan_line(alone, 0, 0).least() <= engraving.context.width;
}

// The column before which the piece is best cut so that its first part fits; 0 where there is none.
std::size_t cut_of(const Engraving& engraving, const BarPiece& piece) {
  for (const bool at_beat : {true, false}) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < piece.columns.size(); ++i) {
      if (!may_cut(engraving.context, piece.columns[i], at_beat)) continue;
      BarPiece head{piece.bar,
                    {piece.columns.begin(), piece.columns.begin() + static_cast<std::ptrdiff_t>(i)},
                    piece.opens_bar,
                    false};
      if (!fits(engraving, head)) break;
      best = i;
    }
    if (best > 0) return best;
  }
  return 0;
}

// A bar in as many parts as it has beats to cut it at: the search for line ends chooses among them.
std::vector<BarPiece> cut_at_beats(const Context& context, BarPiece piece) {
  std::vector<BarPiece> parts;
  for (Column& column : piece.columns) {
    if (parts.empty() || may_cut(context, column, true)) parts.push_back({piece.bar, {}, false, false});
    parts.back().columns.push_back(std::move(column));
  }
  parts.front().opens_bar = piece.opens_bar;
  parts.back().closes_bar = piece.closes_bar;
  return parts;
}

// Cuts a part that is still too wide wherever it can be.
void cut_to_fit(const Engraving& engraving, BarPiece rest, std::vector<BarPiece>& pieces) {
  while (!fits(engraving, rest)) {
    const std::size_t cut = cut_of(engraving, rest);
    if (cut == 0) break;
    const auto middle = rest.columns.begin() + static_cast<std::ptrdiff_t>(cut);
    BarPiece head{rest.bar, {rest.columns.begin(), middle}, rest.opens_bar, false};
    rest = BarPiece{rest.bar, {middle, rest.columns.end()}, false, rest.closes_bar};
    pieces.push_back(std::move(head));
  }
  pieces.push_back(std::move(rest));
}

}  // namespace

void split_wide_bars(Engraving& engraving) {
  std::vector<BarPiece> pieces;
  for (int i = 0; i < static_cast<int>(engraving.pieces.size()); ++i) {
    const bool wide = plan_line(engraving, i, i).least() > engraving.context.width;
    BarPiece& piece = engraving.pieces[static_cast<std::size_t>(i)];
    if (!wide) {
      pieces.push_back(std::move(piece));
      continue;
    }
    for (BarPiece& part : cut_at_beats(engraving.context, std::move(piece))) {
      cut_to_fit(engraving, std::move(part), pieces);
    }
  }
  engraving.pieces = std::move(pieces);
}

std::vector<LinePlan> break_lines(const Engraving& engraving) {
  return Breaker(engraving).lines();
}

}  // namespace fretsheaf::layout
