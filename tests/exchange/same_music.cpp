#include "exchange/same_music.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "score/build.h"
#include "score/harmony.h"

namespace fretsheaf::exchange::test {

namespace {

// What differs legitimately between a lesson and what is adopted from its MusicXML:
//
// | not in MusicXML                          | so here                                                       |
// | ---------------------------------------- | ------------------------------------------------------------- |
// | intros, practice notes, labels, staves,  | not compared                                                  |
// |   looks, link, logo, build-up, pictures  |                                                               |
// | examples without music (blank bars)      | left out                                                      |
// | the rungs of a ladder                    | the goal alone, as a metronome mark says it                   |
// | a tempo's unit where it is the meter's   | always said                                                   |
// | numerals                                 | chords as they are in the key                                 |
// | `{{…}}` in words and titles              | filled in; CommonMark as plain words                          |
// | a repeat that goes back to the start     | its sign there, as repeats are explicit at both ends          |
// |   without a `|:`                         |                                                               |
// | which rests make up a silence            | one silence, unless a fermata divides it                      |
// | the last dash of a hairpin's length      | the last event that begins before its end                     |
// |   inside a long note                     |                                                               |
// | tremolo from one span to the next        | which events have it                                          |
// | `%` where other notes are held into it,  | the events themselves                                         |
// |   or words stand inside it               |                                                               |
// | the neck's number of frets               | not compared                                                  |
// | tuning and capo of rhythms alone,        | the instrument's name                                         |
// |   which have no tab                      |                                                               |
// | whether an example of rests alone has    | not compared                                                  |
// |   strings                                |                                                               |
// | forced spellings                         | the names that are printed                                    |
// | a word of a verse that never ends        | ended                                                         |
// | a meter written though it is the same    | the meter in force                                            |
// | a form's chart that is not written out;  | not compared                                                  |
// |   the lines and the `%` of one that is   |                                                               |

class Lines {
 public:
  explicit Lines(const lesson::Lesson& lesson) : lesson_(lesson) {
    source::Diagnostics unused;
    score_ = score::build_score(lesson, unused, score::Copy::answer_key);
  }

  std::string write() {
    line("title " + score::plain(score_.heading.title));
    line("subtitle " + score::plain(score_.heading.subtitle));
    line("teacher " + lesson_.teacher + " copyright " + lesson_.copyright);
    line("series " + lesson_.series + " level " + lesson_.level + " number " +
         (lesson_.number ? std::to_string(*lesson_.number) : "-"));
    std::string neck(lesson_.instrument->name);
    const bool tab = std::any_of(lesson_.examples.begin(), lesson_.examples.end(),
                                 [](const lesson::Example& example) { return example.music.has_strings; });
    if (tab) neck += " capo " + std::to_string(lesson_.neck.capo);
    for (const theory::Pitch& open : lesson_.neck.tuning) neck += tab ? " " + open.to_string() : "";
    line(neck);
    for (std::size_t i = 0; i < lesson_.examples.size(); ++i) {
      if (!lesson_.examples[i].music.bars.empty()) example(i);
    }
    return text_;
  }

 private:
  void line(const std::string& text) { text_ += text + "\n"; }

  void example(std::size_t index) {
    const lesson::Example& example = lesson_.examples[index];
    line("example " + score::plain(score_.examples[index].title) + " in " + example.key.to_string() + " " +
         std::string(theory::feel_name(example.feel)) +
         (example.feel == theory::Feel::straight ? "" : " " + lesson_.swing_ratio.to_string()));
    if (example.tempo) {
      line("tempo " + std::to_string(example.tempo->to) + " of " +
           example.tempo->beat.value_or(theory::beat_unit(example.meter)).to_string());
    }
    const lesson::Music& music = example.music;
    const bool sounds = std::any_of(music.bars.begin(), music.bars.end(), [](const lesson::Bar& bar) {
      return std::any_of(bar.events.begin(), bar.events.end(),
                         [](const lesson::Event& event) { return event.kind != lesson::EventKind::rest; });
    });
    if (sounds) line(music.has_strings ? "strings" : "strums");
    before_ = example.form && example.form->write_out ? static_cast<std::size_t>(example.form->here_first) - 1 : 0;
    if (example.form && example.form->write_out) form(index);
    for (std::size_t b = 0; b < music.bars.size(); ++b) bar(index, b);
    marks(music);
  }

  // A written-out form's slashes and chords, and where the music stands in it.
  void form(std::size_t index) {
    const lesson::Form& form = *lesson_.examples[index].form;
    const std::vector<score::Bar>& bars = score_.examples[index].bars;
    const std::size_t after = before_ + lesson_.examples[index].music.bars.size();
    if (bars.size() == lesson_.examples[index].music.bars.size()) return;  // it is all of the form
    line("form " + std::to_string(form.here_first) + " to " + std::to_string(form.here_last));
    for (std::size_t b = 0; b < bars.size(); ++b) {
      if (b >= before_ && b < after) continue;
      line("form bar " + std::to_string(bars[b].number) + " " + bars[b].meter.to_string() + " " + sign(bars[b].right) +
           " " + std::to_string(bars[b].events.size()) + " slashes");
      chords(bars[b]);
    }
    line("form ends");
  }

  void chords(const score::Bar& bar) {
    for (const score::ChordMark& mark : bar.chords) {
      line("  chord " + mark.at.to_string() + " " + (mark.chord ? theory::to_string(*mark.chord) : "N.C."));
    }
  }

  static std::string sign(lesson::BarSign sign) {
    const char* signs[] = {"|", "||", "|:", ":|", ":|:", "|."};
    return signs[static_cast<int>(sign)];
  }

  // Whether a repeat goes back to that bar.
  static bool is_target(const lesson::Music& music, std::size_t bar) {
    using lesson::BarSign;
    std::size_t target = 0;
    for (std::size_t i = 0; i < music.bars.size(); ++i) {
      const BarSign sign = music.bars[i].right;
      if ((sign == BarSign::repeat_end || sign == BarSign::repeat_both) && target == bar) return true;
      if (sign == BarSign::repeat_begin || sign == BarSign::repeat_both) target = i + 1;
    }
    return false;
  }

  void bar(std::size_t index, std::size_t b) {
    const lesson::Example& example = lesson_.examples[index];
    const lesson::Music& music = example.music;
    const lesson::Bar& bar = music.bars[b];
    using lesson::BarSign;
    const bool begins = score_.examples[index].left == BarSign::repeat_begin || is_target(music, 0);
    const bool opens = b == 0 && before_ == 0 && begins;
    // Written out, its signs are joined with the form's.
    const score::Bar& written = score_.examples[index].bars[before_ + b];
    line((opens ? "|: " : "") + std::string("bar ") + std::to_string(bar.number) + " " + bar.meter.to_string() + " " +
         bar.begin.to_string() + " to " + bar.end.to_string() + " " + sign(written.right) +
         (bar.plays ? " " + std::to_string(bar.plays->value) + "x" : ""));
    chords(written);
    words("text", written.texts);
    words("section", bar.sections);
    words("road", bar.roads);
    lyrics(music, b);
    events(index, b);
    names(index, b);
  }

  // What the notes that are struck are called.
  void names(std::size_t index, std::size_t b) {
    for (const score::Event& event : score_.examples[index].bars[before_ + b].events) {
      std::string names;
      for (const score::Note& note : event.notes) {
        if (!note.tie_from && note.head != score::HeadKind::dead) names += " " + note.sounding.to_string();
      }
      if (!names.empty()) line("  names " + event.at.to_string() + names);
    }
  }

  void words(const std::string& kind, const std::vector<lesson::Word>& words) {
    std::multiset<std::string> lines;
    for (const lesson::Word& word : words) lines.insert("  " + kind + " " + word.at.to_string() + " " + word.text);
    for (const std::string& one : lines) line(one);
  }

  void lyrics(const lesson::Music& music, std::size_t b) {
    for (const lesson::Word& word : music.bars[b].lyrics) {
      bool last = true;
      for (std::size_t later = b; later < music.bars.size(); ++later) {
        for (const lesson::Word& other : music.bars[later].lyrics) {
          if (other.row == word.row && (later > b || other.at > word.at)) last = false;
        }
      }
      line("  lyric " + word.at.to_string() + " " + std::to_string(word.row) + " " + word.text +
           (word.goes_on && !last ? "-" : ""));
    }
  }

  void events(std::size_t index, std::size_t b) {
    const lesson::Bar& bar = lesson_.examples[index].music.bars[b];
    theory::Rational silent_from;
    bool silent = false;
    for (const lesson::Event& event : bar.events) {
      if (event.kind == lesson::EventKind::rest) {
        if (!silent || event.fermata) {
          line("  " + event.at.to_string() + " rest" + (event.fermata ? " fermata" : ""));
        }
        silent = !event.fermata;
        continue;
      }
      silent = false;
      sounding(event);
    }
  }

  void sounding(const lesson::Event& event) {
    std::string text = "  " + event.at.to_string() + " for " + event.length.to_string() +
                       (event.kind == lesson::EventKind::held ? " held" : "");
    if (event.strum) text += " strum " + std::to_string(static_cast<int>(*event.strum));
    if (event.stroke) text += event.stroke->value == lesson::Stroke::down ? " d" : " u";
    if (event.fermata) text += " fermata";
    for (const lesson::Note& note : event.notes) text += "\n    " + of_note(note);
    line(text);
  }

  static std::string of_note(const lesson::Note& note) {
    const char* approaches[] = {"", "h", "p", "/", "\\"};
    std::string text = std::to_string(note.place.string) + ":";
    for (const lesson::GraceNote& grace : note.graces) {
      text += std::string(approaches[static_cast<int>(grace.approach)]) + std::to_string(grace.place.fret) + " ";
    }
    text += approaches[static_cast<int>(note.approach)];
    text += note.dead ? "x" : std::to_string(note.place.fret);
    if (note.approach_from_nowhere) text += " nowhere";
    if (note.held) text += " held";
    if (note.ghost) text += " ghost";
    if (note.harmonic) text += " harmonic";
    if (note.accent) text += " accent";
    if (note.staccato) text += " staccato";
    if (note.tenuto) text += " tenuto";
    if (note.vibrato) text += " vibrato";
    if (note.bend) text += " bend " + note.bend->tones.to_string() + (note.bend->release ? " release" : "");
    if (note.slide_off != lesson::SlideOff::none)
      text += note.slide_off == lesson::SlideOff::up ? " off up" : " off down";
    if (note.finger) text += " finger " + note.finger->value;
    if (note.hand) text += " hand " + note.hand->value;
    return text;
  }

  // The event in which a moment lies.
  static std::string event_at(const lesson::Music& music, const lesson::Moment& moment) {
    const lesson::Bar& bar = music.bars[static_cast<std::size_t>(moment.bar)];
    theory::Rational at = bar.begin;
    bool silent = false;
    for (const lesson::Event& event : bar.events) {
      // One silence.
      const bool rest = event.kind == lesson::EventKind::rest && !event.fermata;
      if (event.at <= moment.at && !(rest && silent)) at = event.at;
      silent = rest;
    }
    return std::to_string(moment.bar) + "+" + at.to_string();
  }

  void marks(const lesson::Music& music) {
    std::multiset<std::string> lines;
    for (const lesson::Dynamic& dynamic : music.dynamics) {
      lines.insert("dynamic " + std::to_string(dynamic.moment.bar) + "+" + dynamic.moment.at.to_string() + " " +
                   dynamic.text);
    }
    std::set<std::string> tremolo;
    const char* kinds[] = {"<", ">", "PM", "let", "TP"};
    for (const lesson::Span& span : music.spans) {
      if (span.kind == lesson::SpanKind::tremolo) {
        cover(music, span, tremolo);
        continue;
      }
      lines.insert("span " + std::string(kinds[static_cast<int>(span.kind)]) + " " + std::to_string(span.first.bar) +
                   "+" + span.first.at.to_string() + " to " + event_at(music, span.last));
    }
    lines.insert(tremolo.begin(), tremolo.end());
    for (const lesson::Ending& ending : music.endings) {
      lines.insert("ending " + ending.label + " " + std::to_string(ending.first_bar) + " to " +
                   std::to_string(ending.last_bar));
    }
    for (const std::string& one : lines) line(one);
  }

  static void cover(const lesson::Music& music, const lesson::Span& span, std::set<std::string>& tremolo) {
    for (int b = span.first.bar; b <= span.last.bar; ++b) {
      for (const lesson::Event& event : music.bars[static_cast<std::size_t>(b)].events) {
        const bool begun = b > span.first.bar || event.at + event.length > span.first.at;
        const bool ended = b == span.last.bar && event.at > span.last.at;
        if (begun && !ended && event.kind != lesson::EventKind::rest) {
          tremolo.insert("tremolo " + std::to_string(b) + "+" + event.at.to_string());
        }
      }
    }
  }

  const lesson::Lesson& lesson_;
  std::size_t before_ = 0;  // the form's bars before the example's
  score::Score score_;
  std::string text_;
};

}  // namespace

std::string music_lines(const lesson::Lesson& lesson) {
  return Lines(lesson).write();
}

}  // namespace fretsheaf::exchange::test
