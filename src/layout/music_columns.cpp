#include "layout/music_columns.h"

#include <algorithm>
#include <set>
#include <utility>

#include "layout/music_notes.h"
#include "layout/music_signs.h"
#include "layout/spacing.h"

namespace fretsheaf::layout {
namespace {

Layer& row(Column& column, Row which) {
  return column.rows[static_cast<std::size_t>(which)];
}

// The strokes stand over the stem of the slash, else over the note; a fermata over the stroke where there is one.
double stroke_centre(const Context& context, const score::Event& event) {
  return context.staves.slash && event.stroke && has_stem(context, event) ? stem_x(context, event) : 0;
}

void add_labels(const Context& context, const score::Event& event, Column& column) {
  if (context.example.show_degrees) {
    row(column, Row::degree) = degree_label(context, event.degree);
    row(column, Row::second_degree) = degree_label(context, event.second_degree);
  }
  if (context.example.show_notes) row(column, Row::note) = note_label(context, event);
  if (context.example.show_fingers) row(column, Row::finger) = finger_label(context, event);
  if (context.example.show_counts) row(column, Row::count) = count_label(context, event);
}

// A row of lines for every row of labels that is hidden; rests are counted too.
void add_answer_lines(const Context& context, const score::Event& event, Column& column) {
  const score::Example& example = context.example;
  const Layer line = answer_line(context);
  if (event.struck) {
    if (!example.degree_kinds.empty()) row(column, Row::degree) = line;
    if (example.degree_kinds.size() > 1) row(column, Row::second_degree) = line;
    if (example.show_notes) row(column, Row::note) = line;
    if (example.show_fingers) row(column, Row::finger) = line;
  }
  if (example.show_counts && (event.struck || event.rest)) row(column, Row::count) = line;
}

void add_event_signs(const Context& context, const score::Event* before, Column& column) {
  const score::Event& event = context.event(column.bar, column.event);
  row(column, Row::stroke) = stroke_sign(context, event);
  row(column, Row::stroke).move(stroke_centre(context, event), 0);
  if (context.staves.slash) {
    row(column, Row::slash) = slash_event(context, event, column.gaps);
    row(column, Row::slash).add(slash_graces(context, event));
  }
  if (context.staves.notes) row(column, Row::notes) = notes_event(context, column.bar, column.event);
  if (context.staves.tab || context.staves.notes) {
    row(column, Row::word) = technique_word(context, event, before);
    row(column, Row::vibrato) = vibrato_sign(context, event);
  }
  if (context.staves.tab) {
    row(column, Row::tab) = tab_digits(context, column.bar, column.event, false, column.gaps);
    row(column, Row::tab).add(tab_ornaments(context, column.bar, column.event, column.gaps));
    column.tied_digits = tab_digits(context, column.bar, column.event, true, column.tied_gaps);
  }
  if (context.staves.tab_rhythm()) row(column, Row::tab).add(tab_rhythm(context, event));
  if (event.fermata) {
    row(column, Row::fermata) = fermata_sign(context);
    row(column, Row::fermata).move(stroke_centre(context, event), 0);
  }
  row(column, Row::hand) = hand_label(context, event);
  context.leaves_out(&lesson::Hidden::labels) ? add_answer_lines(context, event, column)
                                              : add_labels(context, event, column);
}

// Signs that stand at a time rather than on an event.
void add_marks(const Context& context, const score::Bar& bar, Column& column) {
  for (const score::ChordMark& mark : bar.chords) {
    if (mark.at == column.at) row(column, Row::chord).add(chord_mark(context, mark));
  }
  for (const lesson::Dynamic& dynamic : context.example.dynamics) {
    if (dynamic.moment.bar == column.bar && dynamic.moment.at == column.at) {
      row(column, Row::dynamic).add(dynamic_sign(context, dynamic.text));
    }
  }
  for (const lesson::Word& word : bar.roads) {
    if (word.at == column.at) row(column, Row::road).add(road_sign(context, word.text));
  }
  for (const lesson::Word& word : bar.texts) {
    if (word.at == column.at) row(column, Row::text).add(text_room(context, word));
  }
  for (const lesson::Word& word : bar.lyrics) {
    if (word.at == column.at) row(column, Row::lyric).add(lyric_syllable(context, word));
  }
}

void measure(Column& column) {
  for (std::size_t i = 0; i < row_count; ++i) column.ink[i] = reach_of(column.rows[i]);
}

// The times in a bar at which a mark stands.
std::set<theory::Rational> mark_times(const Context& context, const score::Bar& bar, int index) {
  std::set<theory::Rational> times;
  for (const score::ChordMark& mark : bar.chords) times.insert(mark.at);
  for (const auto* words : {&bar.roads, &bar.texts, &bar.lyrics, &bar.sections}) {
    for (const lesson::Word& word : *words) times.insert(word.at);
  }
  for (const lesson::Dynamic& dynamic : context.example.dynamics) {
    if (dynamic.moment.bar == index) times.insert(dynamic.moment.at);
  }
  for (const lesson::Span& span : context.example.spans) {
    if (span.first.bar == index) times.insert(span.first.at);
    if (span.last.bar == index) times.insert(span.last.at);
  }
  return times;
}

double quarters(theory::Rational length) {
  return 4 * length.to_double();
}

// The event's column, and those of the marks that stand while it sounds: they share its stretch by time.
void add_event_columns(const Context& context, const std::set<theory::Rational>& times, int bar_index, int index,
                       std::vector<Column>& columns) {
  const score::Bar& bar = context.bar(bar_index);
  const score::Event& event = bar.events[static_cast<std::size_t>(index)];
  const theory::Rational end = event.at + event.length;
  const double stretch = stretch_of(quarters(event.length), context.measures().spacing_ratio);
  std::vector<theory::Rational> stops{event.at};
  for (auto time = times.upper_bound(event.at); time != times.end() && *time < end; ++time) stops.push_back(*time);
  for (std::size_t i = 0; i < stops.size(); ++i) {
    const theory::Rational until = i + 1 < stops.size() ? stops[i + 1] : end;
    Column column;
    column.bar = bar_index;
    column.at = stops[i];
    column.stretch = stretch * (until - stops[i]).to_double() / event.length.to_double();
    column.kind = i == 0 ? ColumnKind::event : ColumnKind::mark;
    if (i == 0) {
      column.event = index;
      column.centred = event.whole_bar_rest;
      add_event_signs(context, index > 0 ? &event - 1 : nullptr, column);
    }
    add_marks(context, bar, column);
    measure(column);
    columns.push_back(std::move(column));
  }
}

Column bar_repeat_column(const Context& context, int bar_index) {
  const score::Bar& bar = context.bar(bar_index);
  Column column;
  column.kind = ColumnKind::bar_repeat;
  column.bar = bar_index;
  column.at = bar.begin;
  column.centred = true;
  column.stretch = stretch_of(quarters(bar.end - bar.begin), context.measures().spacing_ratio);
  if (context.staves.slash) row(column, Row::slash) = bar_repeat_sign(context, 0);
  if (context.staves.notes) row(column, Row::notes) = bar_repeat_sign(context, staff_height / 2 * context.space);
  if (context.staves.tab_rhythm()) row(column, Row::tab) = bar_repeat_sign(context, context.tab_height() / 2);
  add_marks(context, bar, column);
  measure(column);
  return column;
}

}  // namespace

std::optional<Reach> reach_of(const Layer& layer) {
  const std::optional<sheet::Box> box = extent(layer);
  if (!box) return {};
  return Reach{-box->left, box->right};
}

std::vector<BarPiece> make_pieces(const Context& context) {
  std::vector<BarPiece> pieces;
  for (int b = 0; b < static_cast<int>(context.example.bars.size()); ++b) {
    const score::Bar& bar = context.bar(b);
    BarPiece piece;
    piece.bar = b;
    if (bar.same_as_previous) {
      piece.columns.push_back(bar_repeat_column(context, b));
    } else {
      const std::set<theory::Rational> times = mark_times(context, bar, b);
      for (int e = 0; e < static_cast<int>(bar.events.size()); ++e) {
        add_event_columns(context, times, b, e, piece.columns);
      }
    }
    pieces.push_back(std::move(piece));
  }
  return pieces;
}

}  // namespace fretsheaf::layout
