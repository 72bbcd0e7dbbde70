#include "exchange/adopt_music.h"

#include <algorithm>
#include <utility>

#include "exchange/adopt_bars.h"
#include "exchange/adopt_events.h"
#include "exchange/adopt_line.h"
#include "exchange/adopt_places.h"
#include "exchange/adopt_repeats.h"
#include "exchange/adopt_words.h"
#include "lesson/grid_text.h"

namespace fretsheaf::exchange {

using lesson::EventKind;
using source::Code;

namespace {

lesson::Note note_of(const TakenTone& tone) {
  const Head& head = tone.head;
  lesson::Note note;
  note.place = tone.place.value_or(fretboard::Place{});
  note.dead = head.cross;
  if (note.dead) note.place.fret = 0;
  note.ghost = head.parentheses && !head.cross && !head.harmonic;
  note.harmonic = head.harmonic && !head.cross;
  note.held = tone.held;
  note.staccato = head.staccato;
  note.tenuto = head.tenuto;
  if (!note.dead) {
    note.vibrato = head.vibrato;
    note.bend = head.bend;
    note.slide_off = head.slide_off;
  }
  if (tone.held) return note;
  note.accent = head.accent;
  note.approach = tone.approach;
  note.approach_from_nowhere = tone.from_nowhere;
  for (const GraceTone& grace : tone.graces) note.graces.push_back({grace.place, grace.approach, {}});
  return note;
}

// Whether all sounding of an event goes on in the next with nothing new on it.
bool only_goes_on(const lesson::Event& before, const lesson::Event& event) {
  if (event.notes.size() != before.notes.size()) return false;
  for (std::size_t i = 0; i < event.notes.size(); ++i) {
    const lesson::Note& note = event.notes[i];
    const bool signs =
        note.staccato || note.tenuto || note.vibrato || note.bend || note.slide_off != lesson::SlideOff::none;
    if (!note.held || signs || !(note.place == before.notes[i].place)) return false;
  }
  return true;
}

// What a dead note's head cannot have, nor one that is a sign already.
const char* lost_on_head(const Head& head) {
  const bool bent = head.vibrato || head.bend || head.slide_off != lesson::SlideOff::none;
  if (head.cross && bent) return "a bend, vibrato or slide on a dead note";
  if (head.parentheses && head.cross) return "the parentheses around a dead note";
  if (head.parentheses && head.harmonic) return "the parentheses around a harmonic";
  return nullptr;
}

class MusicMaker {
 public:
  MusicMaker(const AdoptContext& context, Section& section) : context_(context), section_(section) {}

  TakenMusic run(const std::optional<theory::Tempo>& tempo) {
    std::vector<Rational> lengths;
    theory::Meter meter = section_.meter;
    for (int measure = section_.first; measure < section_.last; ++measure) {
      const TakenMeasure& own = context_.part.measures[static_cast<std::size_t>(measure)];
      if (own.meter) meter = *own.meter;
      lengths.push_back(length_of(own, meter));
    }
    const auto line = line_of(context_, section_);
    if (context_.losses.has_errors()) return {};
    happenings_ = happenings_of(context_, section_, line, lengths);
    find_places(context_, section_, tempo, happenings_);
    if (context_.losses.has_errors()) return {};
    TakenMusic result;
    result.music = bars_of(context_, section_, late_starts());
    result.music.has_strings = section_.strings;
    if (context_.losses.has_errors()) return {};
    for (const Happening& own : happenings_) add_event(result, own);
    settle_hands(result.music);
    find_repeats(context_, section_, result.music);
    result.name = add_words(context_, section_, happenings_, result.music);
    unfold_repeats(result.music);
    return result;
  }

 private:
  // What is held on over a bar line can begin a late bar only where the grid can write it there.
  std::vector<bool> late_starts() const {
    std::vector<bool> may(static_cast<std::size_t>(section_.last - section_.first), true);
    for (const Happening& own : happenings_) {
      if (own.at != Rational(0) || own.kind != EventKind::held) continue;
      const bool dead =
          std::any_of(own.tones.begin(), own.tones.end(), [](const TakenTone& t) { return t.head.cross; });
      may[static_cast<std::size_t>(own.bar)] = section_.strings && !dead;
    }
    return may;
  }

  void add_event(TakenMusic& result, const Happening& own) {
    lesson::Bar& bar = result.music.bars[static_cast<std::size_t>(own.bar)];
    lesson::Event event;
    event.kind = own.kind;
    event.at = bar.begin + own.at;
    event.length = own.length;
    if (!lesson::can_count(event.at, bar.meter)) {
      context_.losses.error(Code::adopt_tuplet, own.element, own.measure,
                            "something begins at " + event.at.to_string() + " of the bar, which no count says",
                            "a lesson counts in parts of a beat up to the 64th");
      return;
    }
    if (own.strum) event.strum = own.strum;
    event.fermata = own.fermata;
    if (section_.strings) {
      for (const TakenTone& tone : own.tones) {
        event.notes.push_back(note_of(tone));
        if (const char* what = lost_on_head(tone.head)) context_.losses.left_out(tone.head.element, own.measure, what);
      }
      hold_in_part(event, own);
    }
    if (own.stroke && event.kind == EventKind::struck) {
      event.stroke = lesson::Located<lesson::Stroke>{*own.stroke, {}};
    } else if (own.stroke) {
      context_.losses.left_out(own.element, own.measure, "a bow's sign on a note that is held on");
    }
    const bool first = bar.events.empty() && own.bar > 0;
    const auto& before = result.music.bars[static_cast<std::size_t>(std::max(own.bar - 1, 0))].events;
    const bool bare = first && event.kind == EventKind::held && bar.begin == Rational(0) && !before.empty() &&
                      (event.strum || only_goes_on(before.back(), event));
    event.written_out = !bare;
    add_words_of(event, own, result);
    bar.events.push_back(std::move(event));
  }

  // What the document calls the event's notes, and its words for the hands.
  static void add_words_of(lesson::Event& event, const Happening& own, TakenMusic& result) {
    const auto index = static_cast<int>(result.music.bars[static_cast<std::size_t>(own.bar)].events.size());
    for (std::size_t i = 0; i < event.notes.size(); ++i) {
      const Head& head = own.tones[i].head;
      lesson::Note& note = event.notes[i];
      if (head.pitch && !note.dead && !note.held) {
        result.names[{own.bar, index, note.place.string}] = head.pitch->name;
      }
      if (!head.finger.empty()) note.finger = lesson::Located<std::string>{head.finger, {}};
      if (!head.hand.empty()) note.hand = lesson::Located<std::string>{head.hand, {}};
    }
  }

  // A dead note goes on over a bar line with all that sounds, and not alone.
  void hold_in_part(lesson::Event& event, const Happening& own) {
    const bool dead = std::any_of(event.notes.begin(), event.notes.end(),
                                  [](const lesson::Note& note) { return note.dead && note.held; });
    if (!dead || (event.kind == EventKind::held && own.at == Rational(0))) return;
    for (lesson::Note& note : event.notes) note.held = note.held && !note.dead;
    event.kind = EventKind::struck;
    context_.losses.lose(Code::adopt_changed, own.element, own.measure, "a dead note that is tied is struck again",
                         "a dead note does not sound on");
  }

  // The hands' words: one for every note that is struck, or none.
  void settle_hands(lesson::Music& music) {
    for (std::size_t bar = 0; bar < music.bars.size(); ++bar) {
      for (lesson::Event& event : music.bars[bar].events) {
        for (lesson::Note& note : event.notes) {
          // An open string is fingered 0.
          const bool others = std::any_of(event.notes.begin(), event.notes.end(),
                                          [](const lesson::Note& other) { return other.finger.has_value(); });
          if (others && !note.finger && !note.held && note.place.fret == 0 && !note.dead) {
            note.finger = lesson::Located<std::string>{"0", {}};
          }
        }
        settle_words(event, &lesson::Note::finger, bar, "a finger");
        settle_words(event, &lesson::Note::hand, bar, "a plucking finger");
        for (const lesson::Note& note : event.notes) music.has_finger_row = music.has_finger_row || note.finger;
      }
    }
  }

  void settle_words(lesson::Event& event, std::optional<lesson::Located<std::string>> lesson::Note::*word,
                    std::size_t bar, const std::string& what) {
    std::size_t words = 0;
    std::size_t fresh = 0;
    std::size_t fresh_words = 0;
    for (const lesson::Note& note : event.notes) {
      words += (note.*word).has_value() ? 1 : 0;
      fresh += note.held ? 0 : 1;
      fresh_words += !note.held && (note.*word).has_value() ? 1 : 0;
    }
    const bool struck = event.kind == EventKind::struck;
    if (words == 0 || (struck && words == event.notes.size())) return;
    for (lesson::Note& note : event.notes) {
      if (note.held || fresh_words != fresh || !struck) (note.*word).reset();
    }
    if (struck && fresh_words == fresh) return;
    const int measure = section_.first + static_cast<int>(bar);
    context_.losses.left_out(context_.part.measures[static_cast<std::size_t>(measure)].element, measure,
                             what + " of one note among several, or of a note held on,");
  }

  const AdoptContext& context_;
  Section& section_;
  std::vector<Happening> happenings_;
};

}  // namespace

TakenMusic music_of(const AdoptContext& context, Section& section, const std::optional<theory::Tempo>& tempo) {
  return MusicMaker(context, section).run(tempo);
}

}  // namespace fretsheaf::exchange
