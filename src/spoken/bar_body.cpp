#include "spoken/bar_body.h"

#include <algorithm>
#include <optional>

#include "spoken/event_words.h"
#include "spoken/note_words.h"

namespace fretsheaf::spoken {
namespace {

using theory::Rational;

bool has_length(const Onset& onset) {
  return onset.kind == SoundKind::rest || onset.kind == SoundKind::strum || onset.kind == SoundKind::to_find;
}

bool starts(const Onset& onset) {
  return has_length(onset) ||
         std::any_of(onset.sounds.begin(), onset.sounds.end(), [](const Sound& sound) { return !sound.held; });
}

// The one length of all that has one in a bar; nullopt where they differ.
class CommonLength {
 public:
  void see(Rational beats) {
    differs_ = differs_ || (count_ > 0 && beats != beats_);
    beats_ = beats;
    ++count_;
  }
  void see(const Onset& onset) {
    if (has_length(onset)) see(onset.beats);
    for (const Sound& sound : onset.sounds) {
      if (!sound.held) see(sound.beats);
    }
  }
  std::optional<Rational> of_all() const { return count_ > 0 && !differs_ ? std::optional(beats_) : std::nullopt; }

 private:
  Rational beats_;
  int count_ = 0;
  bool differs_ = false;
};

class Speaker {
 public:
  Speaker(const score::Example& example, std::size_t bar, const std::vector<Mark>& marks, const Places& places,
          const Phrases& phrases)
      : example_(example),
        index_(bar),
        bar_(example.bars[bar]),
        places_(places),
        phrases_(phrases),
        onsets_(onsets_of(example, bar)),
        sentences_(body_, phrases) {
    for (const Mark& mark : marks) {
      if (!head_tells(mark, bar_)) marks_.push_back(&mark);
    }
  }

  BarBody say() {
    if (const Onset* alone = fills_bar()) {
      sentences_.begin(phrases_[alone->kind == SoundKind::rest ? Sentence::rest_of_bar : Sentence::freely]);
      say_labels(*alone, example_, sentences_, phrases_);
      sentences_.end();
      return std::move(body_);
    }
    say_common_length();
    std::size_t mark = 0;
    for (const Onset& onset : onsets_) {
      while (mark < marks_.size() && marks_[mark]->at < onset.event->at) mark = say_marks(mark);
      const std::size_t first = mark;
      while (mark < marks_.size() && marks_[mark]->at == onset.event->at) ++mark;
      say_onset(onset, first, mark);
    }
    while (mark < marks_.size()) mark = say_marks(mark);
    return std::move(body_);
  }

 private:
  // A rest, or a chord to play freely on, in a whole bar in which nothing else is told.
  const Onset* fills_bar() const {
    if (onsets_.size() != 1 || !marks_.empty() || places_.in_order()) return nullptr;
    const bool whole = bar_.begin == Rational(0) && bar_.end == bar_.meter.bar();
    const SoundKind kind = onsets_.front().kind;
    return whole && (kind == SoundKind::rest || kind == SoundKind::freely) ? &onsets_.front() : nullptr;
  }

  // Where two things or more start and all last as long, that is told once.
  void say_common_length() {
    int count = 0;
    CommonLength common;
    bool held = false;  // its length is another
    for (const Onset& onset : onsets_) {
      common.see(onset);
      count += starts(onset) ? 1 : 0;
      held = held || std::any_of(onset.sounds.begin(), onset.sounds.end(), [](const Sound& one) { return one.held; });
    }
    if (held) return;
    common_ = common.of_all();
    if (!common_ || places_.in_order()) return;
    if (count < 2) {
      common_.reset();
      return;
    }
    sentences_.begin(phrases_(Sentence::each_lasts, {{"length", phrases_.beats(*common_)}}));
    sentences_.end();
  }

  // Marks where nothing starts.
  std::size_t say_marks(std::size_t first) {
    const Rational at = marks_[first]->at;
    sentences_.begin(places_.in_bar(index_, at));
    for (; first < marks_.size() && marks_[first]->at == at; ++first) sentences_.item(marks_[first]->said);
    sentences_.end();
    return first;
  }

  void say_onset(const Onset& onset, std::size_t first, std::size_t last) {
    sentences_.begin(places_.in_bar(index_, onset.event->at));
    for (std::size_t i = first; i < last; ++i) {
      if (marks_[i]->before_notes()) sentences_.item(marks_[i]->said);
    }
    if (onset.sounds.size() > 1) sentences_.item(phrases_[Sentence::together]);
    sentences_.next(Sentence::colon);
    say_sound(onset);
    say_labels(onset, example_, sentences_, phrases_);
    for (std::size_t i = first; i < last; ++i) {
      if (!marks_[i]->before_notes()) sentences_.item(marks_[i]->said);
    }
    sentences_.end();
  }

  void say_sound(const Onset& onset) {
    switch (onset.kind) {
      case SoundKind::notes:
        return say_notes(onset);
      case SoundKind::rest:
        sentences_.item(phrases_[Sentence::rest]);
        break;
      case SoundKind::strum:
        sentences_.item(strum_said(*onset.event->strum, phrases_));
        break;
      case SoundKind::held:
        return sentences_.item(phrases_[Sentence::still_held]);
      case SoundKind::freely:
        return sentences_.item(phrases_[Sentence::freely]);
      case SoundKind::to_find:
        sentences_.item(phrases_[Sentence::to_find]);
        say_touch(*onset.event, sentences_, phrases_);
        break;
    }
    say_length(onset.beats);
  }

  void say_length(Rational beats) {
    if (!common_ && !places_.in_order()) sentences_.item(phrases_.beats(beats));
  }

  // Of notes at once that last as long, the length is told after them.
  void say_notes(const Onset& onset) {
    CommonLength common;
    common.see(onset);
    const bool several = onset.sounds.size() > 1;
    const bool at_end = several && common.of_all().has_value();
    for (std::size_t i = 0; i < onset.sounds.size(); ++i) {
      const Sound& sound = onset.sounds[i];
      if (i > 0) sentences_.next(Sentence::semicolon);
      if (sound.held) {
        sentences_.item(phrases_.string(sound.note->place.string));
        if (!starts(onset)) sentences_.fret(sound.note->place.fret);
        sentences_.item(phrases_[Sentence::still_held]);
        continue;
      }
      say_note(*sound.note, example_.show_fingers, sentences_, phrases_);
      if (!at_end) say_length(sound.beats);
    }
    if (several) sentences_.set_apart();
    if (at_end) say_length(*common.of_all());
  }

  const score::Example& example_;
  std::size_t index_;
  const score::Bar& bar_;
  const Places& places_;
  const Phrases& phrases_;
  std::vector<Onset> onsets_;
  std::vector<const Mark*> marks_;
  std::optional<Rational> common_;
  BarBody body_;
  Sentences sentences_;
};

}  // namespace

BarBody body_of(const score::Example& example, std::size_t bar, const std::vector<Mark>& marks, const Places& places,
                const Phrases& phrases) {
  return Speaker(example, bar, marks, places, phrases).say();
}

bool head_tells(const Mark& mark, const score::Bar& bar) {
  return mark.at == bar.begin && mark.before_notes();
}

}  // namespace fretsheaf::spoken
