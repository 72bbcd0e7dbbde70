#include <algorithm>

#include "layout/music_columns.h"
#include "layout/music_notes.h"

namespace fretsheaf::layout {

using sheet::Part;

namespace {

// In staff spaces, chosen by eye.
constexpr double size = 0.66;
constexpr double head_half = 0.594 * size;
constexpr double stem_width = 0.09;
constexpr double stem_length = 2.5;
constexpr double gap = 0.5;  // before the note, and between grace notes

// The grace notes that are played together: those as far from their notes.
std::vector<StaffHead> heads_at(const Context& context, const StaffChord& chord, std::size_t from_end,
                                std::vector<const score::GraceNote*>& graces) {
  std::vector<StaffHead> heads;
  for (const StaffHead& head : chord.heads) {
    if (head.note->graces.size() <= from_end) continue;
    const score::GraceNote& grace = head.note->graces[head.note->graces.size() - 1 - from_end];
    heads.push_back({nullptr, staff_step(grace.written, context.score.clef), false});
    graces.push_back(&grace);
  }
  return heads;
}

double left_of(const Layer& layer) {
  const std::optional<Reach> reach = reach_of(layer);
  return reach ? -reach->left : 0;
}

struct Stem {
  double x = 0;
  double foot = 0;
  double tip = 0;
};

// Draws one with its right edge at `right`; gives its stem.
Stem add_grace(Layer& layer, const Context& context, const std::vector<StaffHead>& heads,
               const std::vector<const score::GraceNote*>& graces, double right) {
  const double sp = context.space;
  const double x = right - head_half * sp;
  int low = heads.front().step;
  int high = low;
  for (std::size_t i = 0; i < heads.size(); ++i) {
    const int step = heads[i].step;
    low = std::min(low, step);
    high = std::max(high, step);
    add_note_head(layer, context, score::HeadKind::normal, 2, {x, step_y(context, step)}, size);
  }
  const double half = head_half * sp;
  for (int step = 6; step <= high; step += 2) add_ledger_lines(layer, context, step, x - half, x + half, size);
  for (int step = -6; step >= low; step -= 2) add_ledger_lines(layer, context, step, x - half, x + half, size);
  double edge = x - half - 0.2 * sp;
  for (std::size_t i = 0; i < heads.size(); ++i) {
    if (!graces[i]->accidental) continue;
    const bool ledgered = heads[i].step >= 6 || heads[i].step <= -6;
    edge = add_accidental(layer, context, graces[i]->accidental->alteration, edge - (ledgered ? 0.2 * sp : 0),
                          step_y(context, heads[i].step), Part::accidental, 0.72) -
           0.1 * sp;
  }
  double tip = step_y(context, high) - stem_length * sp;
  // Its flag keeps off the ledger lines between the head and the staff.
  if (high < -6) tip = std::min(tip, step_y(context, -6) - (0.3 + 3.0 * size) * sp);
  return {right - stem_width * sp / 2, step_y(context, low), tip};
}

// One alone has a flag with a stroke through it, which says that it takes no time of its own.
void add_flag(Layer& layer, const Context& context, const Stem& stem) {
  const double sp = context.space;
  const Words flag = context.type.sign(U'\U0001D16E', size * sp, Part::flag);
  layer.words(flag, stem.x - stem_width * sp / 2 - flag.ink.left, stem.tip - flag.ink.top);
  const sheet::Path stroke = stroked(
      Part::flag, {{stem.x - 0.5 * sp, stem.tip + 1.35 * sp}, {stem.x + 0.75 * sp, stem.tip + 0.45 * sp}}, 0.08 * sp);
  layer.path(stroke, bounds(stroke));
}

// Several are beamed as sixteenths are, the beams level over the highest.
void add_beams(Layer& layer, const Context& context, const std::vector<Stem>& stems, double tip) {
  const double sp = context.space;
  for (const double below : {0.15, 0.6}) {
    const double y = tip + below * sp;
    layer.rule(Part::beam, {stems.back().x - stem_width * sp / 2, y}, {stems.front().x + stem_width * sp / 2, y},
               0.3 * sp);
  }
}

}  // namespace

void add_note_graces(Layer& layer, const Context& context, const StaffChord& chord) {
  const double sp = context.space;
  std::size_t most = 0;
  for (const StaffHead& head : chord.heads) most = std::max(most, head.note->graces.size());
  std::vector<Stem> stems;
  for (std::size_t i = 0; i < most; ++i) {
    std::vector<const score::GraceNote*> graces;
    const std::vector<StaffHead> heads = heads_at(context, chord, i, graces);
    // A single one's flag stands over the gap.
    const double room = gap + (most == 1 ? 0.35 : 0);
    stems.push_back(add_grace(layer, context, heads, graces, left_of(layer) - room * sp));
  }
  if (stems.empty()) return;
  double tip = stems.front().tip;
  for (const Stem& stem : stems) tip = std::min(tip, stem.tip);
  for (const Stem& stem : stems) layer.rule(Part::stem, {stem.x, stem.foot}, {stem.x, tip}, stem_width * sp);
  if (most == 1) {
    add_flag(layer, context, stems.front());
  } else {
    add_beams(layer, context, stems, tip);
  }
}

}  // namespace fretsheaf::layout
