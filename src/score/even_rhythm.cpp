#include "score/even_rhythm.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace fretsheaf::score {
namespace {

// One bar: its places are numbered from 0, and every `at` is the number of its place until their count is known.
class EvenBar {
 public:
  EvenBar(Example& example, int index) : example_(example), index_(index), bar_(example.bars[at(index)]) {}

  void write() {
    keep_struck();
    place_chords();
    for (auto* words : {&bar_.texts, &bar_.lyrics, &bar_.sections, &bar_.roads}) place_words(*words);
    place_marks();
    fill();
    spread();
  }

 private:
  static std::size_t at(int index) { return static_cast<std::size_t>(index); }

  void keep_struck() {
    std::vector<Event> struck;
    for (Event& event : bar_.events) {
      if (!event.struck || bar_.same_as_previous) continue;
      starts_.push_back(event.at);
      struck.push_back(bare(std::move(event)));
    }
    bar_.events = std::move(struck);
    bar_.tuplets.clear();
    places_ = notes();
  }

  // An event without what says how long it lasts.
  static Event bare(Event event) {
    std::erase_if(event.notes, [](const Note& note) { return note.tie_from; });
    for (Note& note : event.notes) note.tie_to = false;
    event.value = NoteValue{};
    event.tie_from = event.tie_to = false;
    event.tuplet.reset();
    event.beams_left = event.beams_right = 0;
    event.count.reset();
    return event;
  }

  int notes() const { return static_cast<int>(starts_.size()); }

  // The note struck there, or the next; the last where none follows.
  int at_or_after(Rational time) const {
    const auto found = std::lower_bound(starts_.begin(), starts_.end(), time);
    return std::max(0, std::min(static_cast<int>(found - starts_.begin()), notes() - 1));
  }
  int at_or_before(Rational time) const {
    const auto found = std::upper_bound(starts_.begin(), starts_.end(), time);
    return std::max(0, static_cast<int>(found - starts_.begin()) - 1);
  }

  // The place, or the first free one after it.
  Rational take(std::set<int>& taken, int place) {
    while (!taken.insert(place).second) ++place;
    places_ = std::max(places_, place + 1);
    return Rational(place);
  }

  void place_chords() {
    const auto chords = static_cast<int>(bar_.chords.size());
    for (int i = 0; i < chords; ++i) {
      const int place = chords <= notes() ? i * notes() / chords : i;
      places_ = std::max(places_, place + 1);
      bar_.chords[at(i)].at = Rational(place);
    }
  }

  void place_words(std::vector<lesson::Word>& words) {
    std::map<int, std::set<int>> taken;  // by row
    for (lesson::Word& word : words) word.at = take(taken[word.row], at_or_after(word.at));
  }

  void place_marks() {
    std::set<int> taken;
    for (lesson::Dynamic& dynamic : example_.dynamics) {
      if (dynamic.moment.bar == index_) dynamic.moment.at = take(taken, at_or_after(dynamic.moment.at));
    }
    for (lesson::Span& span : example_.spans) {
      if (span.first.bar == index_) span.first.at = Rational(at_or_after(span.first.at));
      if (span.last.bar == index_) span.last.at = Rational(at_or_before(span.last.at));
      if (span.first.bar == span.last.bar && span.first.bar == index_) {
        span.last.at = std::max(span.first.at, span.last.at);
      }
    }
  }

  void fill() {
    places_ = std::max(places_, 1);
    while (static_cast<int>(bar_.events.size()) < places_) {
      Event blank;
      blank.blank = true;
      bar_.events.push_back(blank);
    }
  }

  // How much a pickup has, or a bar that ends early, is rhythm too: it is always half.
  void spread() {
    const Rational half = bar_.meter.bar() / Rational(2);
    const bool begins_late = bar_.begin != Rational(0);
    const bool ends_early = bar_.end != bar_.meter.bar();
    bar_.begin = begins_late ? half : Rational(0);
    bar_.end = ends_early && !begins_late ? half : bar_.meter.bar();
    step_ = (bar_.end - bar_.begin) / Rational(places_);
    for (int i = 0; i < places_; ++i) {
      bar_.events[at(i)].at = time(Rational(i));
      bar_.events[at(i)].length = step_;
    }
    for (ChordMark& mark : bar_.chords) mark.at = time(mark.at);
    for (auto* words : {&bar_.texts, &bar_.lyrics, &bar_.sections, &bar_.roads}) {
      for (lesson::Word& word : *words) word.at = time(word.at);
    }
    for (lesson::Dynamic& dynamic : example_.dynamics) settle(dynamic.moment);
    for (lesson::Span& span : example_.spans) {
      settle(span.first);
      settle(span.last);
    }
  }

  Rational time(Rational place) const { return bar_.begin + step_ * place; }
  void settle(lesson::Moment& moment) const {
    if (moment.bar == index_) moment.at = time(moment.at);
  }

  Example& example_;
  int index_;
  Bar& bar_;
  std::vector<Rational> starts_;  // of what is struck, as it was
  int places_ = 0;
  Rational step_;
};

}  // namespace

void even_rhythm(Example& example) {
  for (int i = 0; i < static_cast<int>(example.bars.size()); ++i) EvenBar(example, i).write();
}

}  // namespace fretsheaf::score
