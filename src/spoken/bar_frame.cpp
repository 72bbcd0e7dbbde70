#include "spoken/bar_frame.h"

#include <algorithm>

#include "score/exercise.h"
#include "spoken/bar_body.h"

namespace fretsheaf::spoken {
namespace {

using lesson::BarSign;

bool repeat_begins(const score::Example& example, std::size_t bar) {
  return lesson::begins_repeat(bar == 0 ? example.left : example.bars[bar - 1].right);
}

std::string name_of(const score::Example& example, std::size_t bar, const Phrases& phrases) {
  const int number = example.bars[bar].number;
  if (bar > 0 && example.bars[bar - 1].number == number) return phrases(Sentence::bar_goes_on, number);
  if (number == 0) return std::string(phrases[Sentence::pickup]);
  return words::fill_number(phrases.language(), words::Word::bar, number);
}

// "1." is called by its number.
std::string ending_said(const lesson::Ending& ending, const Phrases& phrases) {
  std::string label = ending.label;
  if (label.ends_with('.')) label.pop_back();
  return phrases(Sentence::ending, {{"n", label}});
}

std::string repeat_said(const score::Example& example, std::size_t bar, const Phrases& phrases) {
  std::size_t first = bar;
  while (first > 0 && !repeat_begins(example, first)) --first;
  const int number = example.bars[first].number;
  std::string said = number == 0 ? std::string(phrases[Sentence::repeat_all]) : phrases(Sentence::repeat_from, number);
  const int plays = example.bars[bar].plays;
  if (plays > 0) add_item(said, phrases.counted(Sentence::times_one, plays));
  return said;
}

}  // namespace

std::string head_of(const score::Example& example, std::size_t bar, const std::vector<Mark>& marks,
                    const Phrases& phrases) {
  const score::Bar& own = example.bars[bar];
  std::string head = name_of(example, bar, phrases);
  for (const lesson::Ending& ending : example.endings) {
    if (ending.first_bar == static_cast<int>(bar)) add_item(head, ending_said(ending, phrases));
  }
  if (repeat_begins(example, bar)) add_item(head, phrases[Sentence::repeat_begins]);
  if (own.show_meter && bar > 0) add_item(head, phrases.meter(own.meter));
  for (const Mark& mark : marks) {
    if (head_tells(mark, own)) add_item(head, mark.said);
  }
  if (own.chords_to_write && own.chords.empty()) add_item(head, phrases[Sentence::chord_to_find]);
  if (example.blank && score::to_write_in(own)) add_item(head, phrases[Sentence::to_write_in]);
  std::string said;
  add_sentence(said, head);
  return said;
}

std::string tail_of(const score::Example& example, std::size_t bar, const Phrases& phrases) {
  const score::Bar& own = example.bars[bar];
  std::string tail;
  for (const lesson::Word& word : own.roads) {
    if (!is_goal(word.text) && word.text != "fine") add_sentence(tail, road_said(word.text));
  }
  if (lesson::ends_repeat(own.right)) add_sentence(tail, repeat_said(example, bar, phrases));
  if (own.right == BarSign::doubled) add_sentence(tail, phrases[Sentence::double_line]);
  return tail;
}

}  // namespace fretsheaf::spoken
