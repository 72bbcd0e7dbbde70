#include "exchange/adopt_words.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string_view>
#include <tuple>
#include <utility>

#include "exchange/adopt_spans.h"
#include "exchange/xml_text.h"
#include "lesson/grid_text.h"
#include "lesson/plain_words.h"
#include "words/words.h"

namespace fretsheaf::exchange {

using lesson::Moment;
using source::Code;

namespace {

// "4x"; 0 where it is none.
int times_in(const std::string& text) {
  constexpr int least = 2;
  constexpr int most = 99;
  if (text.size() < 2 || (text.back() != 'x' && text.back() != 'X')) return 0;
  const int times = whole(text.substr(0, text.size() - 1)).value_or(0);
  return times >= least && times <= most ? times : 0;
}

// What follows "Example 2: " in any of the languages that the program speaks; nullopt where the words are none of
// these.
std::optional<std::string> example_name(const std::string& text) {
  constexpr int sample = 7;
  for (const words::Language language : words::languages) {
    const std::string pattern = words::fill_number(language, words::Word::example, sample);
    const std::size_t figure = pattern.find('7');
    const std::string before = pattern.substr(0, figure);
    const std::string after = pattern.substr(figure + 1);
    if (!text.starts_with(before)) continue;
    std::size_t at = before.size();
    while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
    if (at == before.size() || text.compare(at, after.size(), after) != 0) continue;
    at += after.size();
    if (at == text.size()) return std::string();
    if (text.compare(at, 2, ": ") == 0) return text.substr(at + 2);
  }
  return std::nullopt;
}

class WordSetter {
 public:
  WordSetter(const AdoptContext& context, const Section& section, const std::vector<Happening>& happenings,
             lesson::Music& music)
      : context_(context), section_(section), happenings_(happenings), music_(music) {}

  std::optional<std::string> run() {
    for (std::size_t bar = 0; bar < music_.bars.size(); ++bar) {
      for (const Harmony& harmony : taken(bar).harmonies) add_chord(bar, harmony);
      for (const Mark& mark : taken(bar).marks) add_mark(bar, mark);
      const int times = taken(bar).right.times;
      if (ends_repeat(bar) && times > 2 && times < 100 && !music_.bars[bar].plays) {
        music_.bars[bar].plays = lesson::Located<int>{times, {}};
      }
    }
    add_lyrics();
    drop_ways_to_nowhere();
    add_spans({context_, section_, happenings_, music_});
    return name_;
  }

 private:
  const TakenMeasure& taken(std::size_t bar) const {
    return context_.part.measures[static_cast<std::size_t>(section_.first) + bar];
  }
  int measure(std::size_t bar) const { return section_.first + static_cast<int>(bar); }

  bool ends_repeat(std::size_t bar) const { return lesson::ends_repeat(music_.bars[bar].right); }

  // A place of a measure as a place of its bar that a count can say; what lies at its end belongs to its last event.
  Rational place(std::size_t index, Rational at) const {
    const lesson::Bar& bar = music_.bars[index];
    at += bar.begin;
    if (at < bar.end && lesson::can_count(at, bar.meter)) return at;
    const lesson::Event* before = &bar.events.front();
    for (const lesson::Event& event : bar.events) {
      if (event.at <= at) before = &event;
    }
    return before->at;
  }

  void add_chord(std::size_t index, const Harmony& harmony) {
    lesson::Bar& bar = music_.bars[index];
    const Rational at = place(index, harmony.at);
    const bool taken_already =
        std::any_of(bar.chords.begin(), bar.chords.end(), [&](const auto& chord) { return chord.at == at; });
    if (taken_already) {
      context_.losses.left_out(taken(index).element, measure(index), "the second of two chords at one count");
      return;
    }
    bar.chords.push_back({at, harmony.chord, {}});
    std::stable_sort(bar.chords.begin(), bar.chords.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
  }

  void report_long(const std::string& text, const Xml* at, int measure) {
    if (!lesson::fits_words(text)) context_.losses.left_out(at, measure, "the end of a long text");
  }

  void add_mark(std::size_t index, const Mark& mark) {
    lesson::Bar& bar = music_.bars[index];
    const Rational at = place(index, mark.at);
    const std::string text = lesson::grid_words(mark.text);
    report_long(mark.text, mark.element, measure(index));
    switch (mark.kind) {
      case Mark::Kind::dynamic:
      case Mark::Kind::loudness:
        return add_dynamic(index, mark);
      case Mark::Kind::rehearsal:
        if (!text.empty()) bar.sections.push_back({at, text, 0, false, {}});
        return;
      case Mark::Kind::road:
        if (ways_++ >= most_ways) return context_.losses.left_out(mark.element, measure(index), "a ninth way");
        bar.roads.push_back({at, text, 0, false, {}});
        return;
      case Mark::Kind::words:
        return add_text(index, mark, at, text);
      default:
        return;  // with the spans
    }
  }

  // At a measure's end it is the next one's.
  void add_dynamic(std::size_t index, const Mark& mark) {
    const lesson::Bar& bar = music_.bars[index];
    const bool at_end = mark.at + bar.begin >= bar.end && index + 1 < music_.bars.size();
    const std::size_t own = at_end ? index + 1 : index;
    const Rational at = at_end ? music_.bars[own].begin : place(index, mark.at);
    music_.dynamics.push_back({Moment{static_cast<int>(own), at}, mark.text, {}});
  }

  void add_text(std::size_t index, const Mark& mark, Rational at, const std::string& text) {
    if (text.empty() || span_name_of(mark.text)) return;
    if (const int times = times_in(text); times > 0 && ends_repeat(index)) {
      music_.bars[index].plays = lesson::Located<int>{times, {}};
      return;
    }
    const bool first = index == 0 && mark.at == Rational(0) && !named_;
    named_ = named_ || index == 0;
    if (first) {
      name_ = example_name(mark.text);
      if (name_) return;
    }
    music_.bars[index].texts.push_back({at, text, 0, false, {}});
  }

  // The verses by their numbers, in order.
  void add_lyrics() {
    std::map<std::pair<int, std::string>, int> rows;
    const auto key = [](const std::string& verse) {
      constexpr int unnumbered = 1000;
      return std::pair(verse.empty() ? 1 : whole(verse).value_or(unnumbered), verse);
    };
    for (const Happening& own : happenings_) {
      for (const auto& [at, syllable] : own.lyrics) rows.try_emplace(key(syllable.verse), 0);
    }
    int row_count = 0;
    for (auto& [verse, row] : rows) row = row_count++;
    std::set<std::tuple<int, Rational, int>> there_already;  // by bar, place and verse
    for (const Happening& own : happenings_) {
      const auto index = static_cast<std::size_t>(own.bar);
      for (const auto& [at, syllable] : own.lyrics) {
        const int row = rows.at(key(syllable.verse));
        const std::string text = lesson::grid_words(syllable.text);
        report_long(syllable.text, syllable.element, own.measure);
        std::vector<lesson::Word>& lyrics = music_.bars[index].lyrics;
        const Rational there = place(index, at);
        const bool twice = !there_already.insert({own.bar, there, row}).second;
        if (twice) {
          context_.losses.left_out(syllable.element, own.measure, "the second syllable of a verse at one count");
        } else if (!text.empty()) {
          lyrics.push_back(lesson::Word{there, text, row, syllable.goes_on, {}});
        }
      }
    }
  }

  struct Way {
    std::size_t bar = 0;
    lesson::Word word;
  };

  // The signs that a way needs before or after it (the lesson format).
  static bool leads(const std::vector<Way>& ways, std::size_t i) {
    const std::string& text = ways[i].word.text;
    const auto there = [&](std::string_view sign, bool before) {
      for (std::size_t other = 0; other < ways.size(); ++other) {
        if (other != i && (other < i) == before && ways[other].word.text == sign) return true;
      }
      return false;
    };
    if (text.starts_with("D.S.") && !there("segno", true)) return false;
    if (text.ends_with("al Fine") && !there("fine", true)) return false;
    if (text == "To Coda") return there("coda", false);
    if (text.ends_with("al Coda")) return there("To Coda", true) && there("coda", false);
    return true;
  }

  void drop_ways_to_nowhere() {
    std::vector<Way> ways;
    for (std::size_t bar = 0; bar < music_.bars.size(); ++bar) {
      std::vector<lesson::Word>& roads = music_.bars[bar].roads;
      std::stable_sort(roads.begin(), roads.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
      for (const lesson::Word& word : roads) ways.push_back({bar, word});
      roads.clear();
    }
    for (std::size_t i = 0; i < ways.size();) {
      if (leads(ways, i)) {
        ++i;
        continue;
      }
      context_.losses.left_out(taken(ways[i].bar).element, measure(ways[i].bar),
                               "`" + ways[i].word.text + "`, which leads nowhere,");
      ways.erase(ways.begin() + static_cast<std::ptrdiff_t>(i));
      i = 0;
    }
    for (const Way& way : ways) music_.bars[way.bar].roads.push_back(way.word);
  }

  const AdoptContext& context_;
  const Section& section_;
  const std::vector<Happening>& happenings_;
  lesson::Music& music_;
  static constexpr int most_ways = 8;
  int ways_ = 0;
  std::optional<std::string> name_;
  bool named_ = false;
};

}  // namespace

std::optional<std::string> add_words(const AdoptContext& context, const Section& section,
                                     const std::vector<Happening>& happenings, lesson::Music& music) {
  return WordSetter(context, section, happenings, music).run();
}

}  // namespace fretsheaf::exchange
