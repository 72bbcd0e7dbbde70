#include "exchange/adopt_places.h"

#include <algorithm>
#include <string>
#include <utility>

#include "exchange/adopt_approaches.h"
#include "fretboard/fingering.h"

namespace fretsheaf::exchange {

using fretboard::Place;
using lesson::Approach;
using source::Code;

namespace {

// What the fingering search is asked at once.
constexpr std::size_t most_searched = 20000;

class Placer {
 public:
  Placer(const AdoptContext& context, const std::optional<theory::Tempo>& tempo, std::vector<Happening>& happenings)
      : context_(context), tempo_(tempo), happenings_(happenings) {}

  void run() {
    bool all = true;
    for (Happening& own : happenings_) {
      for (TakenTone& tone : own.tones) all = take_own(own, tone) && all;
    }
    if (context_.losses.has_errors()) return;
    if (!all && happenings_.size() > most_searched) {
      const Happening& own = happenings_[most_searched];
      context_.losses.error(Code::adopt_too_much, own.element, own.measure,
                            "up to here the section has 20000 notes and rests, and not all have a string and a fret",
                            "take the score in parts");
      return;
    }
    if (!all) search();
    if (context_.losses.has_errors()) return;
    for (Happening& own : happenings_) keep_strings_apart(own);
  }

 private:
  const fretboard::Neck& neck() const { return context_.neck; }

  // Whether the note has a place now.
  bool take_own(const Happening& own, TakenTone& tone) {
    const Head& head = tone.head;
    if (head.cross) {
      if (!head.string) return false;
      if (*head.string < 1 || *head.string > neck().strings()) return report_string(own, head);
      tone.place = Place{*head.string, 0};
      return true;
    }
    if (!head.string || !head.fret) return false;
    const Place place{*head.string, *head.fret};
    if (place.string < 1 || place.string > neck().strings()) return report_string(own, head);
    if (!neck().has(place) && !(head.harmonic && neck().harmonic_midi(place))) {
      context_.losses.error(
          Code::adopt_neck, head.element, own.measure,
          "there is no fret " + std::to_string(place.fret) + " on string " + std::to_string(place.string),
          "choose another instrument with --instrument");
      return false;
    }
    tone.place = place;
    check_pitch(own, tone);
    for (GraceTone& grace : tone.graces) grace.place = {place.string, grace.head.fret.value_or(-1)};
    return std::all_of(tone.graces.begin(), tone.graces.end(),
                       [&](const GraceTone& grace) { return grace.place.fret >= 0 && neck().has(grace.place); });
  }

  bool report_string(const Happening& own, const Head& head) {
    context_.losses.error(
        Code::adopt_neck, head.element, own.measure,
        "there is no string " + std::to_string(*head.string) + " on this neck of " + std::to_string(neck().strings()),
        "choose another instrument with --instrument");
    return false;
  }

  void check_pitch(const Happening& own, TakenTone& tone) {
    Head& head = tone.head;
    if (head.harmonic && !neck().harmonic_midi(*tone.place)) {
      head.harmonic = false;
      context_.losses.left_out(head.element, own.measure, "a harmonic's sign where no natural harmonic lies");
    }
    if (head.harmonic || !head.pitch || head.pitch->midi() == neck().midi(*tone.place)) return;
    context_.losses.lose(Code::adopt_changed, head.element, own.measure,
                         "a pitch is not what its string and fret sound, and these are kept",
                         "look at the tuning, the capo and the octave");
    head.pitch.reset();
  }

  static fretboard::Joint joint_of(Approach approach, int from, int to) {
    switch (approach) {
      case Approach::none:
        return fretboard::Joint::none;
      case Approach::hammer_on:
      case Approach::pull_off:
        return from == to  ? fretboard::Joint::none
               : to > from ? fretboard::Joint::hammer_on
                           : fretboard::Joint::pull_off;
      case Approach::slide_up:
      case Approach::slide_down:
        return from == to  ? fretboard::Joint::none
               : to > from ? fretboard::Joint::slide_up
                           : fretboard::Joint::slide_down;
    }
    return fretboard::Joint::none;
  }

  int midi_of(const Head& head, const std::optional<Place>& place) const {
    if (head.pitch) return head.pitch->midi();
    if (!place) return 0;
    return neck().sounding_midi(*place, head.harmonic);
  }

  // The tone of the event before that one goes on from.
  static int held_from(const Happening& before, const TakenTone& tone) {
    for (std::size_t i = 0; i < before.tones.size(); ++i) {
      const TakenTone& other = before.tones[i];
      const bool same = tone.head.pitch && other.head.pitch ? tone.head.pitch->midi() == other.head.pitch->midi()
                                                            : tone.place == other.place;
      const bool strings = !tone.place || !other.place || tone.place->string == other.place->string;
      if (other.head.tie_start && same && strings) return static_cast<int>(i);
    }
    return -1;
  }

  fretboard::NoteToPlace to_place(int event, const TakenTone& tone) const {
    fretboard::NoteToPlace out;
    out.sound = tone.head.cross      ? fretboard::Sound::dead
                : tone.head.harmonic ? fretboard::Sound::harmonic
                                     : fretboard::Sound::pitched;
    out.midi = midi_of(tone.head, tone.place);
    out.fixed = tone.place;
    out.original = tone.place;
    out.stopped =
        !tone.place && (tone.head.bend || tone.head.vibrato || tone.head.slide_off != lesson::SlideOff::none ||
                        tone.head.from_nowhere != Approach::none);
    if (tone.held) {
      const int from = event == 0 ? -1 : held_from(happenings_[static_cast<std::size_t>(event) - 1], tone);
      if (from >= 0) {
        out.joint = fretboard::Joint::held;
        out.from = fretboard::NoteIndex{event - 1, from};
      }
      return out;
    }
    if (tone.head.cross) return out;
    int before = out.midi;
    if (tone.from_event >= 0) {
      const TakenTone& from =
          happenings_[static_cast<std::size_t>(tone.from_event)].tones[static_cast<std::size_t>(tone.from_tone)];
      if (!from.head.cross) before = midi_of(from.head, from.place);
    }
    for (const GraceTone& grace : tone.graces) {
      const int midi = grace.head.pitch ? grace.head.pitch->midi() : neck().midi(grace.place);
      out.graces.push_back({midi, joint_of(grace.approach, before, midi), {}});
      before = midi;
    }
    out.joint = joint_of(tone.approach, before, out.midi);
    const bool first_joint = (out.graces.empty() ? out.joint : out.graces.front().joint) != fretboard::Joint::none;
    if (first_joint && tone.from_event >= 0 && tone.from_event < event) {
      out.from = fretboard::NoteIndex{tone.from_event, tone.from_tone};
    } else if (out.graces.empty()) {
      out.joint = fretboard::Joint::none;
    } else {
      out.graces.front().joint = fretboard::Joint::none;
    }
    return out;
  }

  void search() {
    fretboard::Line line;
    if (tempo_)
      line.quarters_per_minute = theory::quarters_per_minute(tempo_->to, tempo_->beat.value_or(Rational(1, 4)));
    for (int event = 0; event < static_cast<int>(happenings_.size()); ++event) {
      fretboard::EventToPlace out;
      out.length = happenings_[static_cast<std::size_t>(event)].length;
      for (const TakenTone& tone : happenings_[static_cast<std::size_t>(event)].tones) {
        out.notes.push_back(to_place(event, tone));
      }
      line.events.push_back(std::move(out));
    }
    const auto found = fretboard::find_fingering(line, neck(), context_.instrument.scale_length);
    for (const fretboard::UnplayableNote& one : found.unplayable) report(one);
    if (!found.unplayable.empty()) return;
    for (std::size_t event = 0; event < happenings_.size(); ++event) {
      for (std::size_t i = 0; i < happenings_[event].tones.size(); ++i) {
        TakenTone& tone = happenings_[event].tones[i];
        const fretboard::PlacedNote& placed = found.events[event][i];
        tone.place = placed.place;
        for (std::size_t g = 0; g < tone.graces.size(); ++g) tone.graces[g].place = placed.graces[g];
      }
    }
  }

  void report(const fretboard::UnplayableNote& one) {
    using fretboard::Unplayable;
    const Happening& own = happenings_[static_cast<std::size_t>(one.note.event)];
    const Head& head = own.tones[static_cast<std::size_t>(one.note.note)].head;
    const std::string name = head.pitch ? head.pitch->to_string() : "a dead note";
    const std::string instrument(context_.instrument.name);
    const auto why = [&]() -> std::string {
      switch (one.why) {
        case Unplayable::too_low:
          return name + " lies below the lowest note of the " + instrument;
        case Unplayable::too_high:
          return name + " lies above the highest note of the " + instrument;
        case Unplayable::nowhere:
          return name + " is nowhere on the " + instrument;
        case Unplayable::no_harmonic:
          return "no natural harmonic sounds " + name;
        case Unplayable::no_free_string:
          return "no string is free for " + name + " beside the other notes of its chord";
        case Unplayable::out_of_reach:
          return "no hand reaches " + name + " and the other notes of its chord";
        case Unplayable::joint_too_wide:
          return "no hand spans the hammer-on or pull-off to " + name;
        case Unplayable::not_on_one_string:
          return name + " is on no string with the note that it is joined to";
      }
      return {};
    };
    context_.losses.error(Code::adopt_unplayable, head.element, own.measure, why(),
                          "choose another instrument with --instrument, or move the music to another octave");
  }

  // The line of the tab that comes first, and no two notes on one.
  void keep_strings_apart(Happening& own) {
    std::stable_sort(own.tones.begin(), own.tones.end(), [](const TakenTone& a, const TakenTone& b) {
      return a.place && b.place && a.place->string < b.place->string;
    });
    for (std::size_t i = 1; i < own.tones.size();) {
      if (own.tones[i].place->string != own.tones[i - 1].place->string) {
        ++i;
        continue;
      }
      context_.losses.left_out(own.tones[i].head.element, own.measure, "the second of two notes on one string");
      own.tones.erase(own.tones.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }

  const AdoptContext& context_;
  const std::optional<theory::Tempo>& tempo_;
  std::vector<Happening>& happenings_;
};

}  // namespace

void find_places(const AdoptContext& context, const Section& section, const std::optional<theory::Tempo>& tempo,
                 std::vector<Happening>& happenings) {
  if (!section.strings) return;
  Placer(context, tempo, happenings).run();
  if (!context.losses.has_errors()) settle_approaches(context, happenings);
}

}  // namespace fretsheaf::exchange
