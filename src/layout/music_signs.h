#pragma once

#include "layout/music_columns.h"

// The signs of one event or mark, each drawn around x = 0.
namespace fretsheaf::layout {

// Slash staff, y = 0 its line: head, dots, stem, flag, articulations; or the rest.
Layer slash_event(const Context& context, const score::Event& event, std::vector<LineGap>& gaps);
score::HeadKind head_of(const score::Event& event);
// Where a slash's stem stands (its centre line) and ends (its tip; negative, above the line).
double stem_x(const Context& context, const score::Event& event);
double stem_tip(const Context& context, const score::Event& event);
bool has_stem(const Context& context, const score::Event& event);
// Half the width of the head as it is drawn.
double head_reach(const Context& context, const score::Event& event);

// A rest centred on (0, y).
Layer rest_sign(const Context& context, const score::Event& event, double y);

// One articulation about (0, y).
void add_staccato(Layer& layer, double sp, double y);
void add_tenuto(Layer& layer, double sp, double y);
void add_accent(Layer& layer, double sp, double y);
// Accent, staccato and tenuto, stacked away from `y` by `direction` (+1 downward).
Layer articulations(const Context& context, const score::Event& event, double y, int direction);

// Tremolo picking: strokes through a stem at x, about y. Beams and flags count as strokes, three in all; one at least.
Layer tremolo_sign(const Context& context, const score::Event& event, sheet::Point centre);
// Half the height of that sign.
double tremolo_reach(const Context& context, const score::Event& event);

// Tab, y = 0 the top line: digits and their marks. A tied note has its digit, smaller, where something leads away from
// it: a slide, a hammer-on or a pull-off. `at_line_start` draws those that all other tied notes get at a new line
// instead: parentheses mean ghost notes alone.
Layer tab_digits(const Context& context, int bar, int event, bool at_line_start, std::vector<LineGap>& gaps);

// Below a tab that carries the rhythm itself, y = 0 its top line: stem, flag and dots; rests stand in the tab.
Layer tab_rhythm(const Context& context, const score::Event& event);
// Where its stems begin and end.
double tab_stem_foot(const Context& context);
double tab_stem_tip(const Context& context);

// A chord symbol, its left edge where a slash's is, y = 0 the baseline.
Layer chord_mark(const Context& context, const score::ChordMark& mark);
// The same from x = 0, for charts.
Layer chord_symbol(Type& type, const theory::Chord& chord, const score::Naming& naming, double size_factor = 1);
Layer chord_symbol(Type& type, const score::ChordMark& mark, const score::Naming& naming);

// Label texts, y = 0 the baseline; accidentals in the music font, hung beside a centred figure or letter.
Layer degree_label(const Context& context, const std::string& degrees);
Layer note_label(const Context& context, const score::Event& event);
Layer finger_label(const Context& context, const score::Event& event);
Layer count_label(const Context& context, const score::Event& event);
// A line to write a label on.
Layer answer_line(const Context& context);
Layer hand_label(const Context& context, const score::Event& event);

// A dynamic ("mf"), begun left of the head's centre, y = 0 the baseline.
Layer dynamic_sign(const Context& context, const std::string& text);

// Down or up, y = 0 its foot.
Layer stroke_sign(const Context& context, const score::Event& event);

// What else a note does on the tab, y = 0 the top line: bends, slides off it and onto it, grace notes.
Layer tab_ornaments(const Context& context, int bar, int index, std::vector<LineGap>& gaps);
// The words over it: "harm." where a harmonic begins, the letters of grace notes; y = 0 the baseline.
Layer technique_word(const Context& context, const score::Event& event, const score::Event* before);
// A small slash with a flag for each grace note, left of the head; y = 0 the slash line.
Layer slash_graces(const Context& context, const score::Event& event);
// Whether the next note on the string is joined to this one by a sign on the tab; by a slide, whose line says it all.
bool leads_on(const Context& context, int bar, int event, int string);
bool slides_on(const Context& context, int bar, int event, int string);
// A wave of that length, y = 0 its axis.
Layer vibrato_sign(const Context& context, const score::Event& event);
// y = 0 its lower edge.
Layer fermata_sign(const Context& context);
// A way through the form, y = 0 the baseline: segno, coda, or its words.
Layer road_sign(const Context& context, const std::string& text);
// What a text under the music keeps free of the row's other texts (its words are set for the whole line), and a
// lyric's syllable; rows of one kind below each other, y = 0 the first one's baseline.
Layer text_room(const Context& context, const lesson::Word& word);
Layer lyric_syllable(const Context& context, const lesson::Word& word);
double text_leading(const Context& context);
double lyric_leading(const Context& context);

// The bar-repeat sign on (0, y).
Layer bar_repeat_sign(const Context& context, double y);

}  // namespace fretsheaf::layout
