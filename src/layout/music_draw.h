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
Layer time_signature(const Context& context, const theory::Meter& meter, double left, double y);

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
// Tab that carries the rhythm: y = 0 its top line.
Layer tab_beams(const Context& context, const LinePlan& line);
Layer tab_tuplets(const Context& context, const LinePlan& line);
Layer tab_ties(const Context& context, const LinePlan& line);

// Slurs and slides on the tab (y = 0 its top line), and the letters of the technique row (y = 0 its baseline).
struct Techniques {
  Layer on_tab;
  Layer words;
};
Techniques techniques(const Context& context, const LinePlan& line);

// The part of a span that lies in a line: the stops where it begins and ends, null where that is in another line.
struct SpanPart {
  const Stop* begin = nullptr;
  const Stop* end = nullptr;
  const Stop* first = nullptr;  // the line's first column
};
std::optional<SpanPart> part_of_span(const LinePlan& line, const lesson::Span& span);

// Hairpins, y = 0 the baseline of the dynamics.
Layer hairpins(const Context& context, const LinePlan& line);
// Palm mute or let ring: the word, a dashed line, a hook at the end; y = 0 the word's baseline.
Layer dashed_spans(const Context& context, const LinePlan& line, lesson::SpanKind kind);
// Tremolo picking: strokes through the stems; y = 0 the slash line, or the top tab line where the tab has the stems.
Layer tremolo_strokes(const Context& context, const LinePlan& line);

// Ending brackets, y = 0 their line.
Layer endings(const Context& context, const LinePlan& line);
// Boxed section names, y = 0 the baseline of the chord row: those that stand at the line's start, and all others.
struct Sections {
  Layer at_start;
  Layer others;
};
Sections sections(const Context& context, const LinePlan& line);
// How often a repeat is played, at its bar line; y = 0 the baseline of the road signs.
Layer repeat_counts(const Context& context, const LinePlan& line);
// Hyphens and lines between syllables, y = 0 the first verse's baseline.
Layer lyric_lines(const Context& context, const LinePlan& line);

// The whole line, stacked: y = 0 the chord row's baseline. `number` counts the lines from 1.
Layer stack_line(const Engraving& engraving, const LinePlan& line, int number);

}  // namespace fretsheaf::layout
