#include "score/form_chart.h"

#include <optional>
#include <utility>
#include <variant>

#include "theory/chord.h"

namespace fretsheaf::score {
namespace {

std::optional<theory::Chord> chord_of(const theory::ChordToken& token, const theory::Key& key) {
  if (const auto* chord = std::get_if<theory::Chord>(&token)) return *chord;
  if (const auto* numeral = std::get_if<theory::RomanNumeral>(&token)) return theory::resolve(*numeral, key);
  return std::nullopt;
}

}  // namespace

FormChart form_chart(const lesson::Form& form, const theory::Key& key) {
  FormChart chart;
  for (const lesson::FormBar& bar : form.chart) {
    FormCell cell;
    for (const theory::ChordToken& chord : bar.chords) cell.chords.push_back(chord_of(chord, key));
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
