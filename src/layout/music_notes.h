#pragma once

#include <optional>
#include <vector>

#include "layout/music_plan.h"

// Drawing on the notes staff. y = 0 is its top line; x = 0 the column's centre, where the heads' centre is, or in what
// reaches over a line of music the staff's left end.
namespace fretsheaf::layout {

inline constexpr double staff_height = 4;  // spaces

// The height of a place on the staff.
double step_y(const Context& context, int step);

// Half the width of a head, in points.
double note_head_half(const Context& context, const score::Event& event, score::HeadKind kind);
// A head's centre.
double head_x(const Context& context, const score::Event& event, const StaffChord& chord, const StaffHead& head);
// Draws one; `size` 1 is full size. Parentheses of a ghost note are part of it.
void add_note_head(Layer& layer, const Context& context, score::HeadKind kind, int value_log2, sheet::Point centre,
                   double size = 1);
void add_ledger_lines(Layer& layer, const Context& context, int step, double left, double right, double size = 1);

// All that a symbol has on the staff but what its beams decide: heads, accidentals, dots, ledger lines, grace notes;
// unbeamed its stem and flag; or its rest.
Layer notes_event(const Context& context, int bar, int event);

// An accidental whose right edge is at `right`, on the line or in the space at y. Returns its left edge.
double add_accidental(Layer& layer, const Context& context, int alteration, double right, double y, sheet::Part part,
                      double size = 1);
// Those of a chord, left of everything that is in `layer`.
void add_accidentals(Layer& layer, const Context& context, const StaffChord& chord);
// A small note for each grace note, left of everything that is in `layer`; the letters of h and p stand on the tab.
void add_note_graces(Layer& layer, const Context& context, const StaffChord& chord);

// Accents, dots and dashes by the head, where no slash staff has them.
void add_note_articulations(Layer& layer, const Context& context, const score::Event& event, const StaffChord& chord);

// A stem: its centre line, where it leaves the head and where it ends.
struct NoteStem {
  double x = 0;
  double foot = 0;
  double tip = 0;
  bool up = false;
};
// Of a symbol without beams, in its column; nullopt where it has none.
std::optional<NoteStem> single_stem(const Context& context, const score::Event& event, const StaffChord& chord);
// The stem's centre line, from the column's centre.
double note_stem_x(const Context& context, const StaffChord& chord);
double note_stem_foot(const Context& context, const StaffChord& chord);
// How long a stem must be for tremolo strokes, in spaces; 0 where there are none.
double tremolo_room(const Context& context, const score::Event& event, const StaffChord& chord);
// Tremolo strokes on a stem, or by the head where there is none.
void add_note_tremolo(Layer& layer, const Context& context, const score::Event& event, const StaffChord& chord,
                      const std::optional<NoteStem>& stem);
// The flags of a stem that points up.
Words upward_flag(const Context& context, int flags);
// A flag for a stem that points down, its foot at (x, tip): the music font has none.
sheet::Path downward_flag(double x, double tip, double sp);

// The stems of a line's symbols, by its stops (x along the staff), and the beams over them.
struct NoteStems {
  std::vector<std::optional<NoteStem>> of;
  Layer beams;
};
NoteStems note_stems(const Context& context, const LinePlan& line);
// The part of that which belongs to a beamed symbol alone; nothing where it has no beams.
Layer beamed_stem(const Context& context, const Stop& stop, const NoteStem& stem);

// The staff itself: lines, clef, key signature, time signatures.
Layer notes_staff(const Context& context, const LinePlan& line);
// Where the clef and the key signature end, in points from the staff's left end.
double notes_prefix(const Context& context);

Layer notes_tuplets(const Context& context, const LinePlan& line, const NoteStems& stems);
// Where the last bar of a line ends: a change of meter may be announced after it.
double line_end(const LinePlan& line);

// Ties, then the lines of slides and the slurs of hammer-ons and pull-offs; all in the room that is left.
class NotesRoom;
void add_notes_ties(const Context& context, const LinePlan& line, NotesRoom& room);
void add_notes_joints(const Context& context, const LinePlan& line, const NoteStems& stems, NotesRoom& room);

}  // namespace fretsheaf::layout
