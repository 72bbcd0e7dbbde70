#include "score/exercise.h"

#include <algorithm>

#include "lesson/hidden.h"
#include "score/even_rhythm.h"

namespace fretsheaf::score {
namespace {

bool any_note(const Event& event, bool Note::*flag) {
  return std::any_of(event.notes.begin(), event.notes.end(), [&](const Note& note) { return note.*flag; });
}

// What can be said of an event without its places. The words of the plucking hand stay where there is one alone:
// several would say on which strings they are.
Touch touch_of(const Event& event) {
  Touch touch{any_note(event, &Note::accent), any_note(event, &Note::staccato), any_note(event, &Note::tenuto), {}};
  if (event.notes.size() == 1) touch.hand = event.notes.front().hand;
  return touch;
}

void hide_frets(Example& example) {
  for (Bar& bar : example.bars) {
    for (Event& event : bar.events) {
      event.touch = touch_of(event);
      event.notes.clear();
      if (event.slash == HeadKind::harmonic) event.slash = HeadKind::normal;
    }
  }
  using lesson::Staff;
  const auto has = [&](Staff staff) {
    return std::find(example.staves.begin(), example.staves.end(), staff) != example.staves.end();
  };
  if (has(Staff::notes) && !has(Staff::slash)) example.staves.insert(example.staves.begin(), Staff::slash);
}

void clear_names(Example& example) {
  for (Bar& bar : example.bars) {
    for (Event& event : bar.events) {
      event.degree.clear();
      event.second_degree.clear();
      event.note_name.clear();
    }
  }
}

void drop_name_rows(Example& example) {
  example.show_degrees = example.show_notes = example.show_fingers = false;
  example.degree_kinds.clear();
}

void clear_counts(Example& example) {
  for (Bar& bar : example.bars) {
    for (Event& event : bar.events) event.count.reset();
  }
}

void clear_fingers(Example& example) {
  for (Bar& bar : example.bars) {
    for (Event& event : bar.events) {
      for (Note& note : event.notes) note.finger.clear();
    }
  }
}

// The bars where the example stands, and the chords of those after them that repeat the last.
void empty_marked_bars(lesson::Form& form) {
  for (auto index = static_cast<std::size_t>(std::max(1, form.here_first)) - 1; index < form.chart.size(); ++index) {
    lesson::FormBar& bar = form.chart[index];
    const bool marked = static_cast<int>(index) < form.here_last;
    if (!marked && !bar.same_as_previous) return;
    bar.chords.clear();
    if (marked) bar.same_as_previous = false;
  }
}

}  // namespace

std::vector<Bar> empty_bars(const theory::Meter& meter, int count) {
  std::vector<Bar> bars(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) {
    Bar& bar = bars[static_cast<std::size_t>(i)];
    bar.number = i + 1;
    bar.meter = meter;
    bar.show_meter = i == 0;
    bar.end = meter.bar();
    Event blank;
    blank.blank = true;
    blank.length = bar.end;
    blank.value = NoteValue{0, 0};
    bar.events.push_back(blank);
  }
  if (!bars.empty()) bars.back().right = lesson::BarSign::final;
  return bars;
}

bool to_write_in(const Bar& bar) {
  return !bar.events.empty() && bar.events.front().blank;
}

lesson::Lesson without_hidden_chords(const lesson::Lesson& lesson) {
  lesson::Lesson out = lesson;
  for (std::size_t i = 0; i < out.examples.size(); ++i) {
    if (!lesson::hidden_in(lesson, lesson.examples[i]).chords) continue;
    lesson::Example& example = out.examples[i];
    for (lesson::Bar& bar : example.music.bars) bar.chords.clear();
    std::erase(example.labels, lesson::Label::chord_degrees);
    if (example.form) empty_marked_bars(*example.form);
  }
  return out;
}

void hide(Example& example) {
  if (example.hidden.frets) {
    hide_frets(example);
    clear_names(example);
    if (!example.hidden.labels) drop_name_rows(example);
  }
  if (example.hidden.rhythm) {
    even_rhythm(example);
    clear_counts(example);
    if (!example.hidden.labels) example.show_counts = false;
  }
  if (example.hidden.labels) {
    clear_names(example);
    clear_counts(example);
    clear_fingers(example);
    example.labels.clear();
  }
}

}  // namespace fretsheaf::score
