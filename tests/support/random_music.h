#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "fretboard/neck.h"
#include "lesson/music.h"
#include "support/dice.h"
#include "theory/chord.h"
#include "theory/meter.h"
#include "theory/pitch.h"

namespace fretsheaf::test {

// What random music is to be made of.
struct MusicWish {
  fretboard::Neck neck;
  theory::Meter meter;
  int bars = 4;
  bool strings = true;  // else a rhythm of strums
  bool play = false;    // a rhythm that needs a play row
  bool rests = true;
};

// Music as a grid could have said it, in every detail that the model has but source ranges.
class RandomMusic {
 public:
  RandomMusic(Dice& dice, MusicWish wish)
      : dice_(dice), wish_(std::move(wish)), last_fret_(static_cast<std::size_t>(wish_.neck.strings())) {}

  lesson::Music make() {
    music_.has_strings = wish_.strings;
    plan_ = {dice_.chance(30), dice_.chance(25), dice_.chance(25),
             dice_.chance(10), dice_.chance(25), dice_.chance(25)};
    theory::Meter meter = wish_.meter;
    while (static_cast<int>(music_.bars.size()) < wish_.bars) {
      lesson::Bar bar;
      if (!music_.bars.empty() && dice_.chance(5)) {
        meter = *theory::parse_meter(dice_.pick<std::string>({"3/4", "2/4", "4/4", "6/8"}));
        bar.meter_written = lesson::Range{};
      }
      bar.meter = meter;
      bar.end = meter.bar();
      add_bar(std::move(bar));
    }
    see_fingers();
    finish();
    return std::move(music_);
  }

 private:
  // Which rows the example has.
  struct Plan {
    bool fingers, hands, strokes, spellings, texts, lyrics;
  };

  void add_bar(lesson::Bar bar) {
    const bool first = music_.bars.empty();
    lesson::Bar* before = first ? nullptr : &music_.bars.back();
    const bool same_length = !first && before->end - before->begin == bar.meter.bar() && !bar.meter_written;
    if (first && dice_.chance(20) && bar.meter.upper() > 2) {
      bar.begin = bar.meter.count() * theory::Rational(bar.meter.upper() - 1);
      if ((wish_.strings || wish_.play) && dice_.chance(40)) bar.begin += bar.meter.count() * theory::Rational(1, 2);
    } else if (same_length && can_repeat(*before) && dice_.chance(15)) {
      return repeat_bar(std::move(bar));
    }
    bar.number = first ? (bar.begin > theory::Rational(0) ? 0 : 1) : before->number + 1;
    make_events(bar, first);
    add_words(bar, first);
    music_.bars.push_back(std::move(bar));
    if (dice_.chance(60)) add_dynamic();
    if (dice_.chance(30)) add_span();
  }

  // Whether the bar means the same wherever it stands: nothing in it comes from before it.
  static bool can_repeat(const lesson::Bar& bar) {
    if (bar.same_as_previous || bar.events.front().kind == lesson::EventKind::held) return false;
    std::vector<int> seen;
    for (const lesson::Event& event : bar.events) {
      for (const lesson::Note& note : event.notes) {
        const bool here = std::find(seen.begin(), seen.end(), note.place.string) != seen.end();
        if (!here && (note.held || note.approach != lesson::Approach::none || !note.graces.empty())) return false;
        seen.push_back(note.place.string);
      }
    }
    return true;
  }

  void repeat_bar(lesson::Bar bar) {
    const lesson::Bar& before = music_.bars.back();
    bar.number = before.number + 1;
    bar.same_as_previous = true;
    bar.events = before.events;
    for (lesson::Event& event : bar.events) event.written_out = false;
    if (dice_.chance(30)) bar.chords.push_back({theory::Rational(0), random_chord(), {}});
    music_.bars.push_back(std::move(bar));
  }

  // Where something may start inside a count.
  std::vector<theory::Rational> parts_of_count() {
    using theory::Rational;
    switch (dice_.below(12)) {
      case 0:
      case 1:
        return {Rational(0), Rational(1, 2)};
      case 2:
        return {Rational(0), Rational(1, 3), Rational(2, 3)};
      case 3:
        return {Rational(0), Rational(1, 4), Rational(1, 2), Rational(3, 4)};
      case 4:
        return {Rational(1, 2)};
      case 5:
        return {Rational(0), Rational(3, 4)};
      case 6:
        return {};
      case 7:
        if (!dice_.chance(15)) return {Rational(0)};
        return {Rational(0), Rational(1, 5), Rational(2, 5), Rational(3, 5), Rational(4, 5)};
      default:
        return {Rational(0)};
    }
  }

  std::vector<theory::Rational> starts_of(const lesson::Bar& bar) {
    std::vector<theory::Rational> starts = {bar.begin};
    const bool dense = bar.meter.lower <= 4;
    for (int count = 0; count < bar.meter.upper(); ++count) {
      const auto parts = dense || dice_.chance(20) ? parts_of_count()
                         : dice_.chance(60)        ? std::vector<theory::Rational>{theory::Rational(0)}
                                                   : std::vector<theory::Rational>{};
      // In a rhythm without a play row a bare figure would be a strum.
      if (!wish_.strings && !wish_.play && !parts.empty() && parts[0] > theory::Rational(0)) continue;
      for (const theory::Rational part : parts) {
        const theory::Rational at = (theory::Rational(count) + part) * bar.meter.count();
        if (at > bar.begin) starts.push_back(at);
      }
    }
    return starts;
  }

  void make_events(lesson::Bar& bar, bool first) {
    base_ = dice_.below(std::max(1, wish_.neck.last_fret() - 6));
    for (const theory::Rational at : starts_of(bar)) {
      lesson::Event event;
      event.at = at;
      const bool bar_start = at == bar.begin;
      const lesson::Event* before = !bar.events.empty() ? &bar.events.back()
                                    : first             ? nullptr
                                                        : &music_.bars.back().events.back();
      if (bar_start && before != nullptr && (wish_.strings || wish_.play) && dice_.chance(15) && can_hold(*before)) {
        hold(event, *before);
      } else if (wish_.rests && dice_.chance(12) && !(bar_start && bar.begin > theory::Rational(0))) {
        event.kind = lesson::EventKind::rest;
      } else {
        strike(event, before);
      }
      if (event.kind == lesson::EventKind::struck && dice_.chance(2)) event.fermata = true;
      bar.events.push_back(std::move(event));
    }
    for (std::size_t i = 0; i < bar.events.size(); ++i) {
      const theory::Rational next = i + 1 < bar.events.size() ? bar.events[i + 1].at : bar.end;
      bar.events[i].length = next - bar.events[i].at;
    }
  }

  static bool can_hold(const lesson::Event& event) {
    return std::none_of(event.notes.begin(), event.notes.end(), [](const lesson::Note& note) { return note.dead; });
  }

  static void hold(lesson::Event& event, const lesson::Event& before) {
    event.kind = before.kind == lesson::EventKind::rest ? lesson::EventKind::rest : lesson::EventKind::held;
    event.written_out = false;
    event.strum = before.strum;
    for (const lesson::Note& note : before.notes) event.notes.push_back(held(note));
  }

  static lesson::Note held(const lesson::Note& note) {
    lesson::Note result;
    result.place = note.place;
    result.ghost = note.ghost;
    result.harmonic = note.harmonic;
    result.held = true;
    return result;
  }

  void strike(lesson::Event& event, const lesson::Event* before) {
    if (plan_.strokes) {
      event.stroke = lesson::Located<lesson::Stroke>{dice_.chance(60) ? lesson::Stroke::down : lesson::Stroke::up, {}};
    }
    if (!wish_.strings) {
      event.strum = wish_.play ? static_cast<lesson::Strum>(dice_.below(8) % 5 % 4) : lesson::Strum::plain;
      return;
    }
    const int strings = wish_.neck.strings();
    int notes = dice_.chance(80) ? 1 : dice_.between(2, std::min(4, strings));
    for (int string = dice_.between(1, strings - notes + 1); notes > 0; ++string, --notes) {
      event.notes.push_back(random_note(string));
    }
    if (before != nullptr && dice_.chance(15)) hold_under(event, *before);
    if (std::all_of(event.notes.begin(), event.notes.end(), [](const auto& note) { return note.held; })) {
      event.kind = lesson::EventKind::held;
    }
    add_hands(event);
  }

  // A note of before that sounds on under what is struck.
  void hold_under(lesson::Event& event, const lesson::Event& before) {
    for (const lesson::Note& note : before.notes) {
      const auto taken = [&](const lesson::Note& other) { return other.place.string == note.place.string; };
      if (note.dead || std::any_of(event.notes.begin(), event.notes.end(), taken)) continue;
      event.notes.push_back(held(note));
      std::sort(event.notes.begin(), event.notes.end(),
                [](const auto& a, const auto& b) { return a.place.string < b.place.string; });
      return;
    }
  }

  int random_fret(int string) {
    fretboard::Place place{string, dice_.chance(15) ? 0 : base_ + dice_.between(1, 4)};
    if (wish_.neck.is_short(string) && place.fret != 0) place.fret += 6;
    return wish_.neck.has(place) ? place.fret : 0;
  }

  lesson::Note random_note(int string) {
    std::optional<int>& last = last_fret_[static_cast<std::size_t>(string) - 1];
    lesson::Note note;
    note.place = {string, random_fret(string)};
    if (dice_.chance(5)) {
      note.dead = true;
      note.place.fret = 0;
      last = -1;
      return note;
    }
    note.ghost = dice_.chance(5);
    if (!note.ghost && dice_.chance(3) && !wish_.neck.is_short(string)) {
      note.harmonic = true;
      note.place.fret = dice_.pick<int>({5, 7, 12});
    }
    if (dice_.chance(4) && note.place.fret > 1 && !wish_.neck.is_short(string)) {
      const lesson::Approach into = dice_.chance(50) ? lesson::Approach::hammer_on : lesson::Approach::slide_up;
      note.graces.push_back({{string, note.place.fret - dice_.between(1, 2)}, lesson::Approach::none, {}});
      note.approach = into;
    } else if (dice_.chance(15)) {
      approach(note, last);
    }
    add_signs(note);
    last = note.place.fret;
    return note;
  }

  void approach(lesson::Note& note, const std::optional<int>& last) {
    const bool slide = dice_.chance(50);
    if (!last) {
      if (!slide) return;
      note.approach = dice_.chance(50) ? lesson::Approach::slide_up : lesson::Approach::slide_down;
      note.approach_from_nowhere = true;
    } else if (*last >= 0 && *last < note.place.fret) {
      note.approach = slide ? lesson::Approach::slide_up : lesson::Approach::hammer_on;
    } else if (*last > note.place.fret) {
      note.approach = slide ? lesson::Approach::slide_down : lesson::Approach::pull_off;
    }
  }

  void add_signs(lesson::Note& note) {
    note.accent = dice_.chance(8);
    note.staccato = dice_.chance(6);
    note.tenuto = !note.staccato && dice_.chance(4);
    note.vibrato = dice_.chance(3);
    if (note.place.fret > 0 && dice_.chance(3)) {
      note.bend = lesson::Bend{dice_.pick<theory::Rational>({{1}, {1, 2}, {3, 2}, {1, 4}}), dice_.chance(30)};
    } else if (note.place.fret > 0 && dice_.chance(3)) {
      note.slide_off = dice_.chance(50) ? lesson::SlideOff::up : lesson::SlideOff::down;
    }
  }

  void add_hands(lesson::Event& event) {
    if (event.kind != lesson::EventKind::struck) {
      event.stroke.reset();
      return;
    }
    const bool finger = plan_.fingers && dice_.chance(80);
    const bool hand = plan_.hands && dice_.chance(60);
    const bool dead =
        std::any_of(event.notes.begin(), event.notes.end(), [](const lesson::Note& note) { return note.dead; });
    const bool spell = plan_.spellings && !dead && dice_.chance(40);
    for (lesson::Note& note : event.notes) {
      if (note.held) continue;
      if (finger)
        note.finger = word(note.place.fret == 0 ? "0" : std::to_string(std::clamp(note.place.fret - base_, 1, 4)));
      if (hand) note.hand = word(dice_.pick<std::string>({"p", "i", "m", "a", "T", "P"}));
      if (spell) note.spell = lesson::Located<theory::NoteName>{spelling(note), {}};
    }
  }

  static lesson::Located<std::string> word(std::string text) { return {std::move(text), {}}; }

  theory::NoteName spelling(const lesson::Note& note) {
    const int midi = note.harmonic ? *wish_.neck.harmonic_midi(note.place) : wish_.neck.midi(note.place);
    for (int fifths = dice_.chance(50) ? -5 : 0;; ++fifths) {
      const theory::NoteName name = theory::note_name_from_fifths(fifths);
      if (name.pitch_class() == midi % 12) return name;
    }
  }

  theory::ChordToken random_chord() {
    const std::vector<std::string> chords = {
        "Am7",  "Bb/D",    "N.C.", "F#m7b5", "Dsus4", "C6/9", "G13", "Ebmaj7", "C",  "Em", "Baug7", "A7b9",
        "Gdim", "Fmaj7/A", "i7",   "IV7",    "bVII",  "V7",   "ii",  "V7/ii",  "iv", "VI", "N.C.",  "D7sus4",
    };
    return *theory::parse_chord(dice_.pick(chords));
  }

  void add_words(lesson::Bar& bar, bool first) {
    if (dice_.chance(70)) bar.chords.push_back({bar.begin, random_chord(), {}});
    if (bar.events.size() > 2 && dice_.chance(25)) {
      bar.chords.push_back({bar.events[bar.events.size() / 2].at, random_chord(), {}});
    }
    if (dice_.chance(first ? 30 : 8))
      bar.sections.push_back(moment_word(bar.begin, dice_.pick<std::string>({"A", "B", "Verse"})));
    if (plan_.texts && dice_.chance(40)) {
      bar.texts.push_back(
          moment_word(dice_.pick(bar.events).at, dice_.pick<std::string>({"slower", "let it fall", "x|y"})));
    }
    if (!plan_.lyrics) return;
    for (const lesson::Event& event : bar.events) {
      if (event.kind != lesson::EventKind::struck) continue;
      lesson::Word syllable = moment_word(event.at, dice_.pick<std::string>({"sea", "ti", "de", "grass", "o", "ver"}));
      syllable.goes_on = dice_.chance(30);
      bar.lyrics.push_back(std::move(syllable));
    }
  }

  static lesson::Word moment_word(theory::Rational at, std::string text) { return {at, std::move(text), 0, false, {}}; }

  int last_bar() const { return static_cast<int>(music_.bars.size()) - 1; }

  void add_dynamic() {
    const lesson::Bar& bar = music_.bars.back();
    const std::vector<std::string> all = {"ppp", "pp", "p", "mp", "mf", "f", "ff", "fff", "sfz"};
    music_.dynamics.push_back({{last_bar(), dice_.pick(bar.events).at}, dice_.pick(all), {}});
  }

  // From somewhere in the bar before to somewhere in this one, after the last span.
  void add_span() {
    const lesson::Bar& bar = music_.bars.back();
    const lesson::Moment last{last_bar(), dice_.pick(bar.events).at};
    lesson::Moment first{last_bar(), bar.events.front().at};
    const int free_from = music_.spans.empty() ? 0 : music_.spans.back().last.bar + 1;
    if (last_bar() - 1 >= free_from && dice_.chance(40) && !music_.bars[music_.bars.size() - 2].same_as_previous) {
      first = {last_bar() - 1, music_.bars[music_.bars.size() - 2].events.back().at};
    }
    if (last_bar() < free_from) return;
    music_.spans.push_back({static_cast<lesson::SpanKind>(dice_.below(5)), first, last, {}});
  }

  // Signs, once all bars are there.
  void finish() {
    const std::size_t count = music_.bars.size();
    const bool pickup = music_.bars[0].begin > theory::Rational(0);
    const bool repeat = !pickup && count >= 2 && dice_.chance(40);
    for (std::size_t i = 0; i + 1 < count; ++i) {
      if (dice_.chance(8)) music_.bars[i].right = lesson::BarSign::doubled;
    }
    lesson::Bar& last = music_.bars.back();
    if (repeat && count >= 3 && dice_.chance(40)) return add_endings();
    last.right = repeat ? lesson::BarSign::repeat_end : lesson::BarSign::final;
    if (repeat && dice_.chance(30)) last.plays = lesson::Located<int>{dice_.between(2, 9), {}};
    if (repeat && dice_.chance(50)) music_.left = lesson::BarSign::repeat_begin;
    if (!repeat && count >= 3 && dice_.chance(15)) add_way_back();
  }

  void add_endings() {
    const int last = last_bar();
    music_.bars[static_cast<std::size_t>(last) - 1].right = lesson::BarSign::repeat_end;
    music_.bars.back().right = lesson::BarSign::final;
    music_.endings = {{"1.", last - 1, last - 1, {}}, {"2.", last, last, {}}};
  }

  void see_fingers() {
    for (const lesson::Bar& bar : music_.bars) {
      for (const lesson::Event& event : bar.events) {
        for (const lesson::Note& note : event.notes) {
          music_.has_finger_row = music_.has_finger_row || note.finger.has_value();
        }
      }
    }
  }

  void add_way_back() {
    lesson::Bar& middle = music_.bars[music_.bars.size() / 2];
    lesson::Bar& last = music_.bars.back();
    if (middle.same_as_previous || last.same_as_previous) return;
    middle.roads.push_back(moment_word(middle.events.back().at, "fine"));
    last.roads.push_back(moment_word(last.events.back().at, "D.C. al Fine"));
  }

  Dice& dice_;
  MusicWish wish_;
  lesson::Music music_;
  std::vector<std::optional<int>> last_fret_;  // −1 after a dead note
  Plan plan_{};
  int base_ = 0;
};

inline lesson::Music random_music(Dice& dice, const MusicWish& wish) {
  return RandomMusic(dice, wish).make();
}

}  // namespace fretsheaf::test
