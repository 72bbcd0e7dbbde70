#pragma once

#include "layout/music_plan.h"

// The parts of a planned line of music that reach over more than one column, each drawn into a layer.
namespace fretsheaf::layout {

// Where lines that run over the whole staff begin and end beside it.
struct StaffSpan {
  double top = 0;
  double bottom = 0;
};

// y = 0 the slash line: the line itself, the rhythm clef, the time signature.
Layer slash_staff(const Context& context, const LinePlan& line);
// y = 0 the top tab line: the lines with their gaps, the TAB sign, string letters, the time signature where the tab
// carries the rhythm.
Layer tab_staff(const Context& context, const LinePlan& line);
// The time signatures of a line, with their left edges.
struct PlacedMeter {
  const theory::Meter* meter = nullptr;
  double left = 0;
};
std::vector<PlacedMeter> meters_in(const Context& context, const LinePlan& line);
Layer time_signature(const Context& context, const theory::Meter& meter, double left, double y);
// All of them on a staff whose middle is at y.
void add_meters(Layer& layer, const Context& context, const LinePlan& line, double y);

// Bar lines from `span.top` to `span.bottom`, repeat dots at the given heights.
struct DotHeights {
  double space = 0;  // radius in points
  std::vector<double> y;
};
Layer bar_lines(const Context& context, const LinePlan& line, StaffSpan span, const std::vector<DotHeights>& dots);

// Slash staff: y = 0 its line.
Layer slash_beams(const Context& context, const LinePlan& line);
Layer slash_tuplets(const Context& context, const LinePlan& line);
Layer slash_ties(const Context& context, const LinePlan& line);
// Whether the outermost tie on the notes staff between two events lies above the heads; null where the tie comes from
// or goes to another line.
bool notes_tie_above(const Context& context, const Stop* from, const Stop* to);
// Tab that carries the rhythm: y = 0 its top line.
Layer tab_beams(const Context& context, const LinePlan& line);
Layer tab_tuplets(const Context& context, const LinePlan& line);
Layer tab_ties(const Context& context, const LinePlan& line);

// What stands on the tab in this line: digits and their marks, bends, the TAB sign, repeat dots, and where the tab
// carries the rhythm, rests and time signatures. y = 0 the top line.
std::vector<sheet::Box> tab_obstacles(const Context& context, const LinePlan& line);
// The box that the TAB sign's letters fill.
sheet::Box tab_sign_box(const Context& context);
// The heights of a repeat sign's dots.
std::vector<double> tab_dots(const Context& context);
// Slurs and slides on the tab (y = 0 its top line), and the letters of the technique row (y = 0 its baseline).
struct Techniques {
  Layer on_tab;
  std::vector<Layer> letters;
};
Techniques techniques(const Context& context, const LinePlan& line);

// The part of a span that lies in a line: the stops where it begins and ends, null where that is in another line. It
// ends at a column, or at the bar line of a bar that repeats the one before.
struct SpanPart {
  const Stop* begin = nullptr;
  const Stop* end = nullptr;
  const Stop* first = nullptr;  // the line's first column
};
std::optional<SpanPart> part_of_span(const LinePlan& line, const lesson::Span& span);

// Hairpins, y = 0 the baseline of the dynamics.
Layer hairpins(const Context& context, const LinePlan& line);
// Palm mutes and let rings, each one a layer: the word, a dashed line, a hook at the end; y = 0 the word's baseline.
// Where one goes on from the line before, its word stands again in parentheses.
bool is_dashed(const lesson::Span& span);
// How far the word reaches from its note's centre; `again` where it goes on from the line before.
double span_word_reach(const Context& context, const lesson::Span& span, bool again);
std::vector<Layer> dashed_spans(const Context& context, const LinePlan& line);

// Ending brackets, y = 0 their line.
Layer endings(const Context& context, const LinePlan& line);
// Boxed section names, y = 0 the baseline of the chord row: those that stand at the line's start, and all others.
struct Sections {
  Layer at_start;
  std::vector<Layer> others;
};
Sections sections(const Context& context, const LinePlan& line);
// How often a repeat is played, at its bar line; y = 0 the baseline of the road signs.
Layer repeat_counts(const Context& context, const LinePlan& line);
// What an answer key sets apart lies on a ground a little higher than its ink.
sheet::Path answer_ground(const sheet::Box& band);
// Where bars lie on a line whose chords a student is to write.
struct BarSpan {
  double left = 0;
  double right = 0;
};
std::vector<BarSpan> bars_to_write(const Context& context, const LinePlan& line);
// Lines to write chords on, one a bar; y = 0 the baseline of the chord row.
Layer chord_lines(const Context& context, const std::vector<BarSpan>& bars);
// The texts under the music, within the staff; y = 0 the first row's baseline.
Layer text_rows(const Context& context, const LinePlan& line);
// Hyphens and lines between syllables, y = 0 the first verse's baseline.
Layer lyric_lines(const Context& context, const LinePlan& line);

// The whole line, stacked: y = 0 the chord row's baseline. `number` counts the lines from 1.
Layer stack_line(const Engraving& engraving, const LinePlan& line, int number);

}  // namespace fretsheaf::layout
