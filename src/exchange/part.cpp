#include "exchange/part.h"

#include <algorithm>
#include <numeric>
#include <string_view>

namespace fretsheaf::exchange {

namespace {

// The latest note on each string, while the example is walked from left to right.
class StringWalk {
 public:
  explicit StringWalk(std::map<Tone, Joins>& joins) : joins_(joins) {}

  void reach(int string, Tone tone, lesson::Approach approach, bool from_nowhere) {
    const auto before = latest_.find(string);
    if (approach != lesson::Approach::none && !from_nowhere && before != latest_.end()) {
      joins_[before->second].to = Join{approach, string};
      joins_[tone].from = Join{approach, string};
    }
    latest_[string] = tone;
  }

 private:
  std::map<Tone, Joins>& joins_;
  std::map<int, Tone> latest_;
};

// A word that its row leaves open ends with its last syllable.
void close_words(const score::Example& example, Syllables& syllables) {
  std::map<int, const char**> last;
  for (std::size_t bar = 0; bar < example.bars.size(); ++bar) {
    for (std::size_t word = 0; word < example.bars[bar].lyrics.size(); ++word) {
      last[example.bars[bar].lyrics[word].row] = &syllables[bar][word];
    }
  }
  for (const auto& [row, syllable] : last) {
    const std::string_view own = *syllable;
    if (own == "begin") *syllable = "single";
    if (own == "middle") *syllable = "end";
  }
}

}  // namespace

std::map<Tone, Joins> joins_of(const score::Example& example) {
  std::map<Tone, Joins> joins;
  StringWalk walk(joins);
  for (int bar = 0; bar < static_cast<int>(example.bars.size()); ++bar) {
    const std::vector<score::Event>& events = example.bars[bar].events;
    for (int event = 0; event < static_cast<int>(events.size()); ++event) {
      const std::vector<score::Note>& notes = events[event].notes;
      for (int note = 0; note < static_cast<int>(notes.size()); ++note) {
        for (int grace = 0; grace < static_cast<int>(notes[note].graces.size()); ++grace) {
          const score::GraceNote& early = notes[note].graces[grace];
          walk.reach(early.place.string, {bar, event, note, grace}, early.approach, false);
        }
        walk.reach(notes[note].place.string, {bar, event, note, -1}, notes[note].approach,
                   notes[note].approach_from_nowhere);
      }
    }
  }
  return joins;
}

std::vector<StaffKind> staves_of(const score::Score& score) {
  const bool strings = std::any_of(score.examples.begin(), score.examples.end(),
                                   [](const score::Example& example) { return example.has_strings; });
  if (strings) return {StaffKind::notes, StaffKind::tab};
  return {StaffKind::strums};
}

std::vector<StaffKind> staves_of(const score::Score& score, const score::Example& example) {
  std::vector<StaffKind> staves = staves_of(score);
  if (!example.has_strings && staves.size() == 2) return {StaffKind::strums, StaffKind::silent};
  return staves;
}

Syllables syllables_of(const score::Example& example) {
  Syllables syllables;
  std::map<int, bool> inside;  // by verse: the syllable before goes on
  for (const score::Bar& bar : example.bars) {
    syllables.emplace_back();
    for (const lesson::Word& word : bar.lyrics) {
      bool& goes_on = inside[word.row];
      syllables.back().push_back(goes_on ? (word.goes_on ? "middle" : "end") : (word.goes_on ? "begin" : "single"));
      goes_on = word.goes_on;
    }
  }
  close_words(example, syllables);
  return syllables;
}

namespace {

void take_in(const score::Example& example, const lesson::Span& span, SpanCover& cover) {
  std::set<std::pair<int, int>>* covered = span.kind == lesson::SpanKind::palm_mute  ? &cover.palm_mute
                                           : span.kind == lesson::SpanKind::let_ring ? &cover.let_ring
                                           : span.kind == lesson::SpanKind::tremolo  ? &cover.tremolo
                                                                                     : nullptr;
  if (covered == nullptr) return;
  for (int bar = span.first.bar; bar <= span.last.bar; ++bar) {
    const std::vector<score::Event>& events = example.bars[static_cast<std::size_t>(bar)].events;
    for (int event = 0; event < static_cast<int>(events.size()); ++event) {
      const score::Event& own = events[static_cast<std::size_t>(event)];
      const bool begun = bar > span.first.bar || own.at + own.length > span.first.at;
      const bool ended = bar == span.last.bar && own.at > span.last.at;
      if (begun && !ended) covered->insert({bar, event});
    }
  }
}

}  // namespace

SpanCover cover_of(const score::Example& example) {
  SpanCover cover;
  for (const auto* spans : {&example.spans, &example.repeated_spans}) {
    for (const lesson::Span& span : *spans) take_in(example, span, cover);
  }
  return cover;
}

namespace {

// What a reader of a document takes each line's notes for: as the key has them, or as the last accidental of the bar.
class BarReading {
 public:
  explicit BarReading(const theory::Key& key) : key_(key) {}

  void begin_bar() { said_.clear(); }

  // Whether a note that shows this accidental, or none, is read as another.
  bool misread(const theory::Pitch& pitch, const std::optional<score::Accidental>& accidental) {
    const auto before = said_.find(pitch.diatonic());
    const int read = before == said_.end() ? key_.alteration_of(pitch.name.letter) : before->second;
    const bool bare = !accidental && read != pitch.name.alteration;
    if (accidental || bare) said_[pitch.diatonic()] = pitch.name.alteration;
    return bare;
  }

 private:
  const theory::Key& key_;
  std::map<int, int> said_;  // by line or space
};

}  // namespace

std::set<Tone> bare_accidentals_of(const score::Example& example) {
  std::set<Tone> bare;
  BarReading reading(example.key);
  for (int bar = 0; bar < static_cast<int>(example.bars.size()); ++bar) {
    reading.begin_bar();
    const std::vector<score::Event>& events = example.bars[bar].events;
    for (int event = 0; event < static_cast<int>(events.size()); ++event) {
      // In the order in which they are written: grace notes first, and each from the lowest string up.
      const std::vector<score::Note>& notes = events[event].notes;
      for (int note = static_cast<int>(notes.size()) - 1; note >= 0; --note) {
        for (int grace = 0; grace < static_cast<int>(notes[note].graces.size()); ++grace) {
          const score::GraceNote& own = notes[note].graces[grace];
          if (reading.misread(own.sounding, own.accidental)) bare.insert({bar, event, note, grace});
        }
      }
      for (int note = static_cast<int>(notes.size()) - 1; note >= 0; --note) {
        const score::Note& own = notes[note];
        if (own.head == score::HeadKind::dead || own.head == score::HeadKind::harmonic || own.tie_from) continue;
        if (reading.misread(own.sounding, own.accidental)) bare.insert({bar, event, note, -1});
      }
    }
  }
  return bare;
}

std::int64_t divisions_of(const score::Example& example) {
  std::int64_t divisions = 1;
  const auto take_in = [&](theory::Rational length) {
    divisions = std::lcm(divisions, (length * theory::Rational(4)).denominator());
  };
  for (const score::Bar& bar : example.bars) {
    take_in(bar.end - bar.begin);
    for (const score::Event& event : bar.events) take_in(event.length);
    for (const score::ChordMark& chord : bar.chords) take_in(chord.at);
    for (const auto* words : {&bar.texts, &bar.sections, &bar.roads}) {
      for (const lesson::Word& word : *words) take_in(word.at);
    }
  }
  for (const lesson::Dynamic& dynamic : example.dynamics) take_in(dynamic.moment.at);
  for (const lesson::Span& span : example.spans) take_in(span.first.at);
  return divisions;
}

std::vector<bool> repeat_targets(const score::Example& example) {
  std::vector<bool> targets(example.bars.size(), false);
  std::size_t latest = 0;
  for (std::size_t i = 0; i < example.bars.size(); ++i) {
    const lesson::BarSign right = example.bars[i].right;
    if (lesson::ends_repeat(right)) targets[latest] = true;
    if (lesson::begins_repeat(right)) latest = i + 1;
  }
  return targets;
}

namespace {

bool same_symbols(const score::Event& a, const score::Event& b) {
  return a.at == b.at && a.length == b.length && a.rest == b.rest && a.slash == b.slash &&
         std::equal(a.notes.begin(), a.notes.end(), b.notes.begin(), b.notes.end(),
                    [](const score::Note& x, const score::Note& y) { return x.place == y.place && x.head == y.head; });
}

}  // namespace

std::vector<bool> bar_repeats(const score::Example& example) {
  std::vector<bool> repeats(example.bars.size(), false);
  for (std::size_t i = 1; i < example.bars.size(); ++i) {
    const std::vector<score::Event>& before = example.bars[i - 1].events;
    const std::vector<score::Event>& own = example.bars[i].events;
    repeats[i] = example.bars[i].same_as_previous &&
                 std::equal(before.begin(), before.end(), own.begin(), own.end(), same_symbols);
  }
  return repeats;
}

}  // namespace fretsheaf::exchange
