#include "exchange/adopt_events.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <utility>

namespace fretsheaf::exchange {

using lesson::EventKind;
using source::Code;

namespace {

// A note on its way: which happening, which of its tones, which of that one's grace notes (-1: itself).
struct ToneRef {
  int event = -1;
  int tone = -1;
  int grace = -1;
};

class EventMaker {
 public:
  EventMaker(const AdoptContext& context, const Section& section, const std::vector<std::vector<Symbol>>& line,
             const std::vector<Rational>& lengths)
      : context_(context), section_(section), line_(line), lengths_(lengths) {}

  std::vector<Happening> run() {
    for (bar_ = 0; bar_ < static_cast<int>(line_.size()); ++bar_) {
      Rational at;
      for (const Symbol& symbol : line_[static_cast<std::size_t>(bar_)]) {
        if (symbol.at > at) rest(at, symbol.at);
        add(symbol);
        at = symbol.at + symbol.length;
      }
      const Rational end = lengths_[static_cast<std::size_t>(bar_)];
      if (at < end) rest(at, end);
    }
    report_open_ties();
    for (std::size_t event = 0; event < happenings_.size(); ++event) join(static_cast<int>(event));
    report_open_joins();
    return std::move(happenings_);
  }

 private:
  int measure() const { return section_.first + bar_; }

  void rest(Rational from, Rational to) {
    Happening silence;
    silence.bar = bar_;
    silence.measure = measure();
    silence.at = from;
    silence.length = to - from;
    happenings_.push_back(std::move(silence));
  }

  void add(const Symbol& symbol) {
    Happening own;
    own.bar = bar_;
    own.measure = measure();
    own.at = symbol.at;
    own.length = symbol.length;
    own.fermata = symbol.fermata;
    own.tremolo = symbol.tremolo;
    own.stroke = symbol.stroke;
    own.element = symbol.element;
    for (const Syllable& syllable : symbol.lyrics) own.lyrics.emplace_back(symbol.at, syllable);
    if (symbol.heads.empty() || !section_.strings) lose_graces(symbol);
    if (!symbol.heads.empty()) add_tones(symbol, own);
    if (merges(own)) return;
    happenings_.push_back(std::move(own));
  }

  void lose_graces(const Symbol& symbol) {
    for (const Head& grace : symbol.graces) {
      context_.losses.left_out(grace.element, measure(), "a grace note before a rest or a strum");
    }
  }

  void add_tones(const Symbol& symbol, Happening& own) {
    own.kind = EventKind::struck;
    if (!section_.strings) return add_strum(symbol, own);
    for (const Head& head : symbol.heads) {
      TakenTone tone;
      tone.head = head;
      tone.held = head.tie_stop && partner_of(head) != nullptr;
      if (head.tie_stop && !tone.held) report_tie(head);
      if (tone.held) lose_start(head);
      own.tones.push_back(std::move(tone));
    }
    if (std::all_of(own.tones.begin(), own.tones.end(), [](const TakenTone& tone) { return tone.held; })) {
      own.kind = EventKind::held;
    }
    add_graces(symbol, own);
  }

  void add_strum(const Symbol& symbol, Happening& own) {
    const Head& head = symbol.heads.front();
    const Happening* before = happenings_.empty() ? nullptr : &happenings_.back();
    const bool goes_on = before != nullptr && before->strum && strum_tie_;
    if (head.tie_stop && goes_on) own.kind = EventKind::held;
    if (head.tie_stop && !goes_on) report_tie(head);
    own.strum = own.kind == EventKind::held ? *before->strum
                : head.cross                ? lesson::Strum::muted
                : head.parentheses          ? lesson::Strum::ghost
                : head.accent               ? lesson::Strum::accented
                                            : lesson::Strum::plain;
    if (own.kind == EventKind::held) {
      lose_start(head);
    } else if (head.accent && own.strum != lesson::Strum::accented) {
      context_.losses.left_out(head.element, measure(), "an accent on a muted or ghost strum");
    }
    lose_note_signs(head);
    strum_tie_ = head.tie_start;
    // Heads are kept for the lines over them.
    TakenTone tone;
    tone.head = head;
    own.tones.push_back(std::move(tone));
  }

  // What says how a note begins.
  void lose_start(const Head& head) {
    if (head.accent) context_.losses.left_out(head.element, measure(), "an accent on a note that is held on");
    if (head.from_nowhere != lesson::Approach::none) {
      context_.losses.left_out(head.element, measure(), "a slide to a note that is held on");
    }
  }

  void lose_note_signs(const Head& head) {
    const bool signs = head.staccato || head.tenuto || head.vibrato || head.bend || !head.finger.empty() ||
                       !head.hand.empty() || !head.joins.empty() || head.slide_off != lesson::SlideOff::none ||
                       head.from_nowhere != lesson::Approach::none;
    if (signs) context_.losses.left_out(head.element, measure(), "a note's sign on a strum");
  }

  // The head just before that a tie comes from.
  const TakenTone* partner_of(const Head& head) const {
    if (happenings_.empty()) return nullptr;
    const Happening& before = happenings_.back();
    for (const TakenTone& tone : before.tones) {
      const bool same_string = !head.string || !tone.head.string || *head.string == *tone.head.string;
      const bool same_pitch =
          head.pitch && tone.head.pitch ? head.pitch->midi() == tone.head.pitch->midi() : head.fret == tone.head.fret;
      if (tone.head.tie_start && same_string && same_pitch) return &tone;
    }
    return nullptr;
  }

  void report_tie(const Head& head) {
    context_.losses.lose(Code::adopt_changed, head.element, measure(), "a tie comes from no note, and is left out",
                         "the note is struck");
  }

  void report_open_ties() {
    for (std::size_t i = 0; i < happenings_.size(); ++i) {
      for (const TakenTone& tone : happenings_[i].tones) {
        if (!tone.head.tie_start || !section_.strings) continue;
        const bool closed =
            i + 1 < happenings_.size() &&
            std::any_of(happenings_[i + 1].tones.begin(), happenings_[i + 1].tones.end(), [&](const TakenTone& next) {
              return next.held &&
                     (!next.head.pitch || !tone.head.pitch || next.head.pitch->midi() == tone.head.pitch->midi());
            });
        if (!closed) {
          context_.losses.lose(Code::adopt_changed, tone.head.element, happenings_[i].measure,
                               "a tie leads to no note, and is left out", "write `=` where the note is held on");
        }
      }
    }
  }

  // A symbol in which all goes on, with nothing new on it, only makes the one before longer. A bar line is no place for
  // that.
  bool merges(const Happening& own) {
    if (own.kind != EventKind::held || happenings_.empty()) return false;
    Happening& before = happenings_.back();
    if (before.bar != own.bar || before.kind == EventKind::rest || before.tones.size() != own.tones.size())
      return false;
    for (const TakenTone& tone : own.tones) {
      const Head& head = tone.head;
      const bool signs = head.staccato || head.tenuto || head.vibrato || head.bend ||
                         head.slide_off != lesson::SlideOff::none || !head.finger.empty() || !head.hand.empty();
      if (!tone.graces.empty() || signs) return false;
    }
    if (own.stroke) context_.losses.left_out(own.element, own.measure, "a bow's sign on a note that is held on");
    before.length += own.length;
    before.fermata = before.fermata || own.fermata;
    before.tremolo = before.tremolo || own.tremolo;
    before.lyrics.insert(before.lyrics.end(), own.lyrics.begin(), own.lyrics.end());
    for (const TakenTone& tone : own.tones) {
      TakenTone* origin = origin_of(before, tone.head);
      if (origin != nullptr) unite(*origin, tone.head);
    }
    return true;
  }

  static TakenTone* origin_of(Happening& before, const Head& head) {
    for (TakenTone& tone : before.tones) {
      const bool same_string = !head.string || !tone.head.string || *head.string == *tone.head.string;
      const bool same = !head.pitch || !tone.head.pitch || head.pitch->midi() == tone.head.pitch->midi();
      if (same_string && same) return &tone;
    }
    return nullptr;
  }

  // What stands on a later symbol of a note.
  static void unite(TakenTone& tone, const Head& later) {
    Head& head = tone.head;
    head.tie_start = later.tie_start;
    head.let_ring = head.let_ring || later.let_ring;
    head.palm_mute = head.palm_mute || later.palm_mute;
    head.joins.insert(head.joins.end(), later.joins.begin(), later.joins.end());
    head.slurs.insert(head.slurs.end(), later.slurs.begin(), later.slurs.end());
  }

  // Each goes to the note on its string, else to the one that it is joined to, else to the nearest.
  void add_graces(const Symbol& symbol, Happening& own) {
    for (const Head& grace : symbol.graces) {
      if (grace.cross || !(grace.pitch || grace.fret)) {
        context_.losses.left_out(grace.element, measure(), "a dead grace note");
        continue;
      }
      TakenTone* best = nullptr;
      int least = 0;
      for (TakenTone& tone : own.tones) {
        if (tone.held || tone.head.cross) continue;
        const bool strings = grace.string && tone.head.string;
        if (strings && *grace.string != *tone.head.string) continue;
        const int off =
            strings || !grace.pitch || !tone.head.pitch ? 0 : std::abs(grace.pitch->midi() - tone.head.pitch->midi());
        if (best == nullptr || off < least) {
          best = &tone;
          least = off;
        }
      }
      if (best == nullptr) {
        context_.losses.left_out(grace.element, measure(), "a grace note with no note on its string");
      } else {
        GraceTone tone;
        tone.head = grace;
        best->graces.push_back(std::move(tone));
      }
    }
  }

  // Hammer-ons, pull-offs and slides by their numbers; slurs likewise.
  void join(int event) {
    Happening& own = happenings_[static_cast<std::size_t>(event)];
    if (!section_.strings) return;
    for (int tone = 0; tone < static_cast<int>(own.tones.size()); ++tone) {
      TakenTone& here = own.tones[static_cast<std::size_t>(tone)];
      for (int grace = 0; grace < static_cast<int>(here.graces.size()); ++grace) {
        take_ends(here.graces[static_cast<std::size_t>(grace)].head, {event, tone, grace});
      }
      take_ends(here.head, {event, tone, -1});
    }
  }

  void take_ends(const Head& head, ToneRef here) {
    bool joined = false;
    for (const JoinEnd& end : head.joins) {
      if (end.start) continue;
      const auto open = open_.find(end.number);
      if (open == open_.end()) {
        context_.losses.left_out(head.element, measure_of(here), std::string(name_of(end.kind)) + " from no note");
        continue;
      }
      connect(open->second, here, end.kind);
      open_.erase(open);
      joined = true;
    }
    for (const SlurEnd& slur : head.slurs) {
      if (slur.start) continue;
      if (!joined) {
        context_.losses.lose(Code::adopt_left_out, head.element, measure_of(here), "a slur is left out",
                             "a lesson slurs hammer-ons and pull-offs: write `h` or `p` before the fret");
      }
    }
    for (const JoinEnd& end : head.joins) {
      if (end.start) open_[end.number] = here;
    }
  }

  static const char* name_of(JoinKind kind) {
    return kind == JoinKind::hammer_on ? "a hammer-on" : kind == JoinKind::pull_off ? "a pull-off" : "a slide";
  }

  int measure_of(ToneRef ref) const { return happenings_[static_cast<std::size_t>(ref.event)].measure; }

  TakenTone& tone_at(ToneRef ref) {
    return happenings_[static_cast<std::size_t>(ref.event)].tones[static_cast<std::size_t>(ref.tone)];
  }

  void connect(ToneRef from, ToneRef to, JoinKind kind) {
    TakenTone& tone = tone_at(to);
    const lesson::Approach approach = kind == JoinKind::hammer_on  ? lesson::Approach::hammer_on
                                      : kind == JoinKind::pull_off ? lesson::Approach::pull_off
                                                                   : lesson::Approach::slide_up;
    if (to.grace >= 0) {
      tone.graces[static_cast<std::size_t>(to.grace)].approach = approach;
    } else {
      tone.approach = approach;
      tone.join = kind;
    }
    const bool first = to.grace == 0 || (to.grace < 0 && tone.graces.empty());
    if (!first || from.grace >= 0) return;
    tone.from_event = from.event;
    tone.from_tone = from.tone;
  }

  void report_open_joins() {
    for (const auto& [number, ref] : open_) {
      context_.losses.left_out(tone_at(ref).head.element, measure_of(ref), "a hammer-on, pull-off or slide to no note");
    }
  }

  const AdoptContext& context_;
  const Section& section_;
  const std::vector<std::vector<Symbol>>& line_;
  const std::vector<Rational>& lengths_;
  std::vector<Happening> happenings_;
  std::map<std::string, ToneRef> open_;  // by kind and number
  bool strum_tie_ = false;
  int bar_ = 0;
};

}  // namespace

std::vector<Happening> happenings_of(const AdoptContext& context, const Section& section,
                                     const std::vector<std::vector<Symbol>>& line,
                                     const std::vector<Rational>& lengths) {
  return EventMaker(context, section, line, lengths).run();
}

}  // namespace fretsheaf::exchange
