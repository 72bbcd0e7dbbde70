#include "lesson/grid.h"

#include <algorithm>

#include "lesson/grid_draft.h"
#include "lesson/grid_events.h"
#include "lesson/grid_form.h"
#include "lesson/grid_jumps.h"
#include "lesson/grid_rows.h"
#include "lesson/grid_times.h"

namespace fretsheaf::lesson {

Music read_grid(const source::Text& text, Range grid, const GridContext& context, source::Diagnostics& diagnostics) {
  const GridInput input{text, grid, context, diagnostics};
  const std::vector<Strip> strips = read_strips(input);
  GridDraft draft = read_draft(input, strips);
  Music music;
  music.left = draft.left;
  music.has_strings = draft.has_strings;
  set_times(input, draft, music);
  make_events(input, draft, music);
  set_words(input, draft, music);
  set_form(input, draft, music);
  set_marks(input, draft, music);
  warn_of_unwritten_beats(input, draft, music);
  warn_of_jumps(input, music);
  for (const BarDraft& bar : draft.bars) {
    music.has_finger_row =
        music.has_finger_row ||
        std::any_of(bar.counts.begin(), bar.counts.end(), [](const Count& count) { return count.finger.has_value(); });
  }
  return music;
}

}  // namespace fretsheaf::lesson
