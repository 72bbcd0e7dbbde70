#include "layout/music_plan.h"

#include <algorithm>
#include <array>

#include "layout/music_draw.h"
#include "layout/music_notes.h"

namespace fretsheaf::layout {
namespace {

using lesson::BarSign;
namespace p = proportion;

// Distances along the staff, in spaces: the house's measures, here divided by the space of 5.5 points that they were
// taken at.
constexpr double clef_right = 0.727 + 1.08;  // the clef begins 4 points in
constexpr double clef_to_meter = 1.1;
constexpr double tab_sign_to_meter = 1.5;  // from the same place
constexpr double meter_to_bar = 1.2;
constexpr double clef_to_bar = 1.37;
constexpr double bar_to_head = 13 / 5.5;
constexpr double repeat_to_head = 15.2 / 5.5;  // from its thin line
constexpr double before_repeat = 7 / 5.5;
constexpr double before_final = 3 / 5.5;
constexpr double bar_to_meter = 1.1;
constexpr double tie_room = 1.0;       // between the inks of two tied symbols
constexpr double grace_room = 0.7;     // tab gaps, from a digit to a grace note's after it (chosen by eye)
constexpr double least_hairpin = 3.1;  // from letter to letter, with the gaps beside them

// The least gap between the inks of two columns in one row, in points at a space of 5.5 (chosen by eye): what is read
// as one word from note to note keeps wide apart.
constexpr std::array<double, row_count> row_gaps = {2, 2, 2, 9, 7, 3, 3, 3, 3, 3, 4, 4.5, 4.5, 4.5, 4.5, 5, 4, 5};
// Bar lines keep from what stands on the staves and between them, not from the rows around them.
constexpr std::array<Row, 7> staff_rows = {Row::slash, Row::notes,   Row::tab,    Row::word,
                                           Row::hand,  Row::vibrato, Row::dynamic};

// The sign at a line's end, where the half of a double repeat that opens goes to the next line.
BarSign at_line_end(BarSign sign) {
  if (sign == BarSign::repeat_begin) return BarSign::plain;
  if (sign == BarSign::repeat_both) return BarSign::repeat_end;
  return sign;
}

double before(const Context& context, BarSign sign) {
  const double extra = bar_line_width(context, sign) - p::thin_bar * context.space;
  if (lesson::ends_repeat(sign)) return before_repeat * context.space;
  if (sign == BarSign::final) return std::max(before_final * context.space, extra);
  return extra;
}

double after(const Context& context, BarSign sign) {
  return (lesson::begins_repeat(sign) ? repeat_to_head : bar_to_head) * context.space;
}

class Planner {
 public:
  Planner(const Engraving& engraving, int first, int last)
      : engraving_(engraving), context_(engraving.context), sp_(context_.space) {
    line_.first = first;
    line_.last = last;
    line_.first_line = first == 0;
    line_.last_line = last + 1 == static_cast<int>(engraving.pieces.size());
  }

  LinePlan plan() {
    start();
    for (int i = line_.first; i <= line_.last; ++i) {
      const BarPiece& piece = engraving_.pieces[static_cast<std::size_t>(i)];
      for (const Column& column : piece.columns) add_column(column);
      if (piece.closes_bar) bar_line(piece.bar, i == line_.last);
    }
    if (line_.stops.back().kind == StopKind::column) push({StopKind::end, nullptr, BarSign::plain, bar(), {}, 0, 0});
    add_rods();
    return std::move(line_);
  }

 private:
  int bar() const { return line_.stops.back().bar; }

  void push(Stop stop) {
    if (!line_.stops.empty()) line_.springs.push_back(pending_);
    pending_ = {};
    line_.stops.push_back(stop);
  }

  void start() {
    const BarPiece& piece = engraving_.pieces[static_cast<std::size_t>(line_.first)];
    const score::Bar& bar = context_.bar(piece.bar);
    push({StopKind::start, nullptr, BarSign::plain, piece.bar, nullptr, 0, 0});
    const double signs = signs_right();
    line_.prefix = signs + clef_to_bar * sp_;
    if (piece.opens_bar && bar.show_meter) {
      line_.meter = &bar.meter;
      line_.meter_x = signs + (context_.staves.tab_rhythm() ? tab_sign_to_meter : clef_to_meter) * sp_;
      line_.prefix = line_.meter_x + meter_width(context_, bar.meter) + meter_to_bar * sp_;
    }
    const BarSign left = piece.bar == 0 ? context_.example.left : context_.bar(piece.bar - 1).right;
    line_.opens_repeat = piece.opens_bar && lesson::begins_repeat(left);
    pending_.fixed = line_.prefix + after(context_, BarSign::plain);
    if (line_.opens_repeat) {
      const double strokes = bar_line_width(context_, BarSign::repeat_begin);
      pending_.fixed = line_.prefix + strokes + after(context_, BarSign::repeat_begin);
    }
  }

  // The right edge of the clefs and the key signature.
  double signs_right() const {
    const double clef = clef_right * sp_;
    return context_.staves.notes ? std::max(clef, notes_prefix(context_)) : clef;
  }

  void add_column(const Column& column) {
    push({StopKind::column, &column, BarSign::plain, column.bar, nullptr, 0, 0});
    pending_.stretch = column.stretch;
  }

  void bar_line(int bar, bool at_end) {
    BarSign sign = context_.bar(bar).right;
    if (at_end) sign = at_line_end(sign);
    pending_.fixed += before(context_, sign);
    const bool has_next = bar + 1 < static_cast<int>(context_.example.bars.size());
    const theory::Meter* meter = has_next && context_.bar(bar + 1).show_meter ? &context_.bar(bar + 1).meter : nullptr;
    push({StopKind::bar_line, nullptr, sign, bar, meter, 0, 0});
    const double meter_room = meter ? bar_to_meter * sp_ + meter_width(context_, *meter) : 0;
    if (!at_end) {
      pending_.fixed = meter_room + after(context_, sign);
    } else if (meter) {
      // The change is announced where the line ends.
      pending_.fixed = meter_room + 0.5 * sp_;
      push({StopKind::end, nullptr, BarSign::plain, bar, nullptr, 0, 0});
    }
  }

  std::optional<Reach> reach(std::size_t stop, Row row) const {
    const Stop& at = line_.stops[stop];
    if (at.kind == StopKind::column) {
      std::optional<Reach> reach = at.column->reach(row);
      if (row == Row::tab && stop == 1 && !at.column->tied_digits.empty()) {
        const Reach tied = *reach_of(at.column->tied_digits);
        if (!reach) return tied;
        return Reach{std::max(reach->left, tied.left), std::max(reach->right, tied.right)};
      }
      return reach;
    }
    if (at.kind == StopKind::bar_line && std::find(staff_rows.begin(), staff_rows.end(), row) != staff_rows.end()) {
      double dots = lesson::begins_repeat(at.sign) ? 0.75 * sp_ : 0;
      if (at.meter != nullptr && (row == Row::slash || row == Row::notes || row == Row::tab)) {
        dots = bar_to_meter * sp_ + meter_width(context_, *at.meter);
      }
      const double left_dots = lesson::ends_repeat(at.sign) ? 0.75 * sp_ : 0;
      return Reach{bar_line_width(context_, at.sign) + left_dots, dots};
    }
    if (at.kind == StopKind::start) return start_reach(row);
    return {};
  }

  std::optional<Reach> start_reach(Row row) const {
    for (const RowName& name : engraving_.names) {
      if (name.row == row && begins_in(name, line_)) return Reach{0, name.words.ink.right};
    }
    if (row == Row::slash || row == Row::notes || row == Row::tab) return Reach{0, staff_begin(row)};
    if (row == Row::chord && !line_.first_line) {
      return Reach{0, context_.number_figure * static_cast<double>(std::to_string(number()).size())};
    }
    return {};
  }

  // The right edge of what stands at the staff's beginning.
  double staff_begin(Row row) const {
    if (line_.opens_repeat) {
      return line_.prefix + bar_line_width(context_, BarSign::repeat_begin) + 0.75 * sp_;
    }
    if (line_.meter != nullptr && (row != Row::tab || context_.staves.tab_rhythm())) {
      return line_.meter_x + meter_width(context_, *line_.meter);
    }
    if (row == Row::notes) return signs_right();
    return row == Row::slash ? clef_right * sp_ : tab_sign_box(context_).right;
  }

  int number() const { return context_.bar(engraving_.pieces[static_cast<std::size_t>(line_.first)].bar).number; }

  void add_rods() {
    std::vector<Rod> rods;
    for (std::size_t r = 0; r < row_count; ++r) row_rods(static_cast<Row>(r), rods);
    event_rods(rods);
    tie_rods(rods);
    grace_rods(rods);
    for (const Joint& joint : context_.joints_into(line_.first_bar(), line_.stops.back().bar)) joint_rod(joint, rods);
    span_rods(rods);
    take_in(line_.springs, rods);
  }

  void row_rods(Row row, std::vector<Rod>& rods) const {
    const double gap = row_gaps[static_cast<std::size_t>(row)] / 2 * context_.measures().clearance;
    int last = -1;
    double right = 0;
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      const std::optional<Reach> here = reach(i, row);
      if (!here) continue;
      if (last >= 0) rods.push_back({last, static_cast<int>(i), right + gap + here->left});
      last = static_cast<int>(i);
      right = here->right;
    }
    // Nothing leaves the staff's right end; texts move left or break into lines there.
    const int end = static_cast<int>(line_.stops.size()) - 1;
    if (row != Row::text && last >= 0 && last < end) rods.push_back({last, end, right});
  }

  // Any two neighbouring events leave room for two figures and the clearance.
  void event_rods(std::vector<Rod>& rods) const {
    const double figures = context_.staves.tab ? context_.two_figures : 2 * p::head * sp_;
    const double least = figures + context_.measures().clearance;
    int last = -1;
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      if (line_.stops[i].kind != StopKind::column || line_.stops[i].column->event < 0) continue;
      if (last >= 0) rods.push_back({last, static_cast<int>(i), least});
      last = static_cast<int>(i);
    }
  }

  // A tie on the notes staff has room between the two symbols.
  void tie_rods(std::vector<Rod>& rods) const {
    if (!context_.staves.notes) return;
    int last = -1;
    for (int i = 0; i < static_cast<int>(line_.stops.size()); ++i) {
      const auto stop = static_cast<std::size_t>(i);
      if (!line_.is_event(stop)) continue;
      const score::Event& event = context_.event(line_.stops[stop].column->bar, line_.stops[stop].column->event);
      const bool tied = std::any_of(event.notes.begin(), event.notes.end(), [](const auto& n) { return n.tie_from; });
      const std::optional<Reach> right = reach(stop, Row::notes);
      const std::optional<Reach> left = last < 0 ? std::nullopt : reach(static_cast<std::size_t>(last), Row::notes);
      if (tied && left && right) rods.push_back({last, i, left->right + right->left + tie_room * sp_});
      last = i;
    }
  }

  int stop_of(int bar, int event) const {
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      const Stop& stop = line_.stops[i];
      if (stop.kind == StopKind::column && stop.column->bar == bar && stop.column->event == event) {
        return static_cast<int>(i);
      }
    }
    return -1;
  }

  // A slide's line needs room between its digits or heads, a slur a little more than that; where others stand between
  // the two, before its second.
  void joint_rod(const Joint& joint, std::vector<Rod>& rods) const {
    const int to = stop_of(joint.bar, joint.event);
    if (to <= 0) return;
    if (context_.staves.tab) joint_rod(to, Row::tab, 1.4 * context_.tab, rods);
    if (context_.staves.notes) joint_rod(to, Row::notes, 2 * sp_, rods);
  }

  // The string shows between a digit and the grace note after it: they are no number of two figures.
  void grace_rods(std::vector<Rod>& rods) const {
    if (!context_.staves.tab) return;
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      if (!line_.is_event(i)) continue;
      const Column& column = *line_.stops[i].column;
      const std::vector<score::Note>& notes = context_.event(column.bar, column.event).notes;
      if (std::all_of(notes.begin(), notes.end(), [](const auto& note) { return note.graces.empty(); })) continue;
      joint_rod(static_cast<int>(i), Row::tab, grace_room * context_.tab, rods);
    }
  }

  void joint_rod(int to, Row row, double room, std::vector<Rod>& rods) const {
    const std::optional<Reach> right = reach(static_cast<std::size_t>(to), row);
    if (!right) return;
    for (int from = to - 1; from >= 0; --from) {
      const std::optional<Reach> left = reach(static_cast<std::size_t>(from), row);
      if (!left) continue;
      rods.push_back({from, to, left->right + right->left + room});
      return;
    }
  }

  void span_rods(std::vector<Rod>& rods) const {
    for (const lesson::Span& span : context_.example.spans) {
      if (span.first.bar > line_.stops.back().bar || span.last.bar < line_.first_bar()) continue;
      const bool hairpin = span.kind == lesson::SpanKind::crescendo || span.kind == lesson::SpanKind::diminuendo;
      if (hairpin) hairpin_rod(span, rods);
      if (is_dashed(span)) word_rod(span, rods);
    }
  }

  // The word of a dashed line ends before the bar line.
  void word_rod(const lesson::Span& span, std::vector<Rod>& rods) const {
    std::size_t begin = 1;
    bool again = true;
    for (std::size_t i = 1; i < line_.stops.size(); ++i) {
      if (!stands_at(line_.stops[i], span.first)) continue;
      begin = i;
      again = false;
    }
    for (std::size_t i = begin + 1; i < line_.stops.size(); ++i) {
      if (line_.stops[i].kind == StopKind::column) continue;
      const double bar_line =
          line_.stops[i].kind == StopKind::bar_line ? bar_line_width(context_, line_.stops[i].sign) : 0;
      const double gap = 0.4 * sp_;
      rods.push_back(
          {static_cast<int>(begin), static_cast<int>(i), span_word_reach(context_, span, again) + gap + bar_line});
      return;
    }
  }

  // A hairpin is wide enough to be seen on either side of what stands in it.
  void hairpin_rod(const lesson::Span& span, std::vector<Rod>& rods) const {
    const std::optional<SpanPart> part = part_of_span(line_, span);
    if (!part) return;
    int last = -1;
    double right = 0;
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      const Stop& stop = line_.stops[i];
      const bool begins = &stop == part->begin;
      const bool ends = &stop == part->end;
      if (stop.kind != StopKind::column && !ends) continue;
      const std::optional<Reach> letters = reach(i, Row::dynamic);
      if (last >= 0 && (letters || ends)) {
        rods.push_back({last, static_cast<int>(i), right + least_hairpin * sp_ + (letters ? letters->left : 0)});
      }
      if (begins || (last >= 0 && letters)) {
        last = static_cast<int>(i);
        right = letters ? letters->right : 0;
      }
      if (ends) return;
    }
  }

  const Engraving& engraving_;
  const Context& context_;
  double sp_;
  LinePlan line_;
  Spring pending_;
};

}  // namespace

double bar_line_width(const Context& context, BarSign sign) {
  const double thin = p::thin_bar * context.space;
  const double thick = p::thick_bar * context.space;
  const double gap = p::bar_gap * context.space;
  switch (sign) {
    case BarSign::plain:
      return thin;
    case BarSign::doubled:
      return thin + gap + thin;
    case BarSign::repeat_begin:
    case BarSign::repeat_end:
    case BarSign::final:
      return thin + gap + thick;
    case BarSign::repeat_both:
      return thin + gap + thick + gap + thin;
  }
  return thin;
}

bool stands_at(const Stop& stop, const lesson::Moment& moment) {
  return stop.kind == StopKind::column && stop.column->bar == moment.bar && stop.column->at == moment.at;
}

bool begins_in(const RowName& name, const LinePlan& line) {
  return std::any_of(line.stops.begin(), line.stops.end(),
                     [&](const Stop& stop) { return stands_at(stop, name.first); });
}

LinePlan plan_line(const Engraving& engraving, int first, int last) {
  return Planner(engraving, first, last).plan();
}

void stretch(LinePlan& line, double width, std::optional<double> ragged) {
  // A line that cannot keep its clearances is set tighter in proportion rather than run off the page.
  const double least = line.least();
  if (least > width) {
    double fixed = 0;
    for (const Spring& s : line.springs) fixed += s.fixed;
    const double share = fixed < width ? (width - fixed) / (least - fixed) : 0;
    for (Spring& s : line.springs) s.least *= share;
    line.k = 0;
  } else {
    line.k = ragged ? *ragged : stretch_to_fill(line.springs, width);
  }
  double x = 0;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    line.stops[i].x = line.stops[i].centre = x;
    if (i < line.springs.size()) x += line.springs[i].length(line.k);
  }
  line.width = line.stops.back().x;
  double bar_begin = line.prefix;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    Stop& stop = line.stops[i];
    if (stop.kind == StopKind::bar_line) bar_begin = stop.x;
    if (stop.kind != StopKind::column || !stop.column->centred) continue;
    std::size_t end = i;
    while (line.stops[end].kind == StopKind::column && end + 1 < line.stops.size()) ++end;
    stop.centre = (bar_begin + line.stops[end].x) / 2;
  }
}

}  // namespace fretsheaf::layout
