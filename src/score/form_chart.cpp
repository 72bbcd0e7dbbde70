#include "score/form_chart.h"

#include <utility>

#include "theory/chord.h"

namespace fretsheaf::score {

FormChart form_chart(const lesson::Form& form, const theory::Key& key) {
  FormChart chart;
  for (const lesson::FormBar& bar : form.chart) {
    FormCell cell;
    for (const theory::ChordToken& chord : bar.chords) cell.chords.push_back(theory::resolve(chord, key));
    const int number = static_cast<int>(chart.bars.size()) + 1;
    cell.here = form.here_first > 0 && number >= form.here_first && number <= form.here_last;
    cell.begins_line = bar.begins_line;
    cell.repeat_begin = bar.repeat_begin;
    cell.repeat_end = bar.repeat_end;
    cell.same_as_previous = bar.same_as_previous;
    chart.bars.push_back(std::move(cell));
  }
  return chart;
}

}  // namespace fretsheaf::score
