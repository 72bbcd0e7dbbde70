#include "score/build.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <string>
#include <utility>

#include "lesson/hidden.h"
#include "score/beams.h"
#include "score/build_up.h"
#include "score/chord_boxes.h"
#include "score/commonmark.h"
#include "score/exercise.h"
#include "score/filler.h"
#include "score/form_chart.h"
#include "score/harmony.h"
#include "score/heading.h"
#include "score/labels.h"
#include "score/metric_tree.h"
#include "score/neck_picture.h"
#include "score/notes_staff.h"
#include "score/spelled_notes.h"
#include "score/symbols.h"
#include "score/written_bar.h"
#include "score/written_form.h"

namespace fretsheaf::score {
namespace {

class ExampleBuilder {
 public:
  ExampleBuilder(const lesson::Example& example, const Harmony& harmony, const SpelledNotes& notes,
                 const Naming& naming, source::Diagnostics& diagnostics)
      : example_(example), harmony_(harmony), symbols_(example, harmony, notes, naming), diagnostics_(diagnostics) {}

  std::vector<Bar> bars() {
    const std::vector<lesson::Bar>& bars = example_.music.bars;
    std::vector<Bar> out;
    out.reserve(bars.size());
    for (std::size_t i = 0; i < bars.size(); ++i) {
      if (i == 0 || bars[i].meter != bars[i - 1].meter) tree_ = metric_tree(bars[i].meter);
      out.push_back(frame(i));
      const WrittenBar written = write_bar(bars[i], tree_);
      report(bars[i], written);
      out.back().tuplets = written.tuplets;
      symbols_.write(i, written, out);
      beam(tree_, out.back());
    }
    return out;
  }

 private:
  // All of a bar but its symbols and words.
  Bar frame(std::size_t index) const {
    const lesson::Bar& bar = example_.music.bars[index];
    Bar out;
    out.number = bar.number;
    out.meter = bar.meter;
    out.show_meter = index == 0 || bar.meter_written || bar.meter != example_.music.bars[index - 1].meter;
    out.begin = bar.begin;
    out.end = bar.end;
    out.right = bar.right;
    out.plays = bar.plays ? bar.plays->value : 0;
    out.same_as_previous = bar.same_as_previous;
    out.chords = harmony_.marks(index);
    return out;
  }

  void report(const lesson::Bar& bar, const WrittenBar& written) {
    for (const std::size_t index : written.unwritable) {
      const lesson::Event& event = bar.events[index];
      diagnostics_.error(
          source::Code::unwritable_value, event.range,
          "no note values can be written for what lasts " + event.length.to_string() + " of a whole note here",
          "count it in parts of the beat that a 256th note can still show");
    }
  }

  const lesson::Example& example_;
  const Harmony& harmony_;
  SymbolWriter symbols_;
  MetricSpan tree_;
  source::Diagnostics& diagnostics_;
};

class ScoreBuilder {
 public:
  ScoreBuilder(const lesson::Lesson& lesson, Copy copy, source::Diagnostics& diagnostics)
      : lesson_(lesson),
        copy_(copy),
        diagnostics_(diagnostics),
        naming_{lesson.note_names, words::parse_language(lesson.language).value_or(words::Language::en)},
        filler_(lesson, naming_, notes_) {
    harmony_.reserve(lesson.examples.size());
    for (const lesson::Example& example : lesson.examples) {
      harmony_.emplace_back(example, lesson.neck.capo);
      notes_.emplace_back(example, lesson.neck, harmony_.back());
    }
  }

  Score build() {
    Score score;
    score.language = naming_.language;
    score.naming = naming_;
    score.answer_key = copy_ == Copy::answer_key;
    score.heading = heading_of(lesson_, naming_, filler_);
    if (score.answer_key) score.heading.answer_key = words::word(naming_.language, words::Word::answer_key);
    score.title = plain(score.heading.title);
    if (lesson_.intro) score.intro = blocks(*lesson_.intro, std::nullopt);
    for (std::size_t i = 0; i < lesson_.examples.size(); ++i) score.examples.push_back(example(i));
    report_idle_spellings();
    score.practice = notes(lesson_.practice, std::nullopt);
    score.practice_log = lesson_.practice_log;
    score.teacher = lesson_.teacher;
    score.copyright = lesson_.copyright;
    score.paper = lesson_.paper;
    score.neck = lesson_.neck;
    for (const std::string& label : fretboard::string_labels(lesson_.neck)) {
      score.string_letters.push_back(string_letter(label, naming_));
    }
    score.swing_ratio = lesson_.swing_ratio;
    score.left_handed = lesson_.left_handed;
    if (lesson_.instrument != nullptr) {
      score.clef = lesson_.instrument->clef;
      score.sounds_octave_lower = lesson_.instrument->sounds_octave_lower;
      score.instrument = lesson_.instrument->name;
    }
    return score;
  }

 private:
  using Of = std::optional<std::size_t>;

  Fill fill(Of example) const {
    return [this, example](std::string_view text) { return filler_.fill(text, example); };
  }

  Blocks blocks(const lesson::Prose& prose, Of example) const { return read_blocks(prose.value, fill(example)); }

  std::vector<Blocks> notes(const std::vector<lesson::Prose>& practice, Of example) const {
    std::vector<Blocks> out;
    out.reserve(practice.size());
    for (const lesson::Prose& prose : practice) out.push_back(blocks(prose, example));
    return out;
  }

  Example example(std::size_t index) {
    const lesson::Example& from = lesson_.examples[index];
    Example out = settings(from);
    out.number = static_cast<int>(index) + 1;
    if (from.title) out.title = read_title(from.title->value, fill(index));
    if (from.intro) out.intro = blocks(*from.intro, index);
    out.practice = notes(from.practice, index);
    out.boxes = chord_boxes(lesson_, from, diagnostics_);
    if (from.form) out.form = form_chart(*from.form, from.key);
    if (from.neck) out.neck = neck_picture(lesson_, from, notes_[index], naming_, left_out(out));
    if (out.neck && from.neck->of == lesson::NeckPicture::Of::notes) {
      out.neck->answers = copy_ == Copy::answer_key && (out.hidden.frets || out.hidden.labels);
    }
    if (from.blank_bars) {
      out.bars = empty_bars(from.meter, from.blank_bars->value);
    } else {
      write_music(from, index, out);
    }
    if (from.form && from.form->write_out) write_out(out, *from.form, lesson_.neck.capo);
    if (copy_ == Copy::student) hide(out);
    return out;
  }

  void write_music(const lesson::Example& from, std::size_t index, Example& out) {
    out.bars = ExampleBuilder(from, harmony_[index], notes_[index], naming_, diagnostics_).bars();
    write_on_staff(out, lesson_.neck, lesson_.instrument != nullptr && lesson_.instrument->sounds_octave_lower);
    for (std::size_t i = 0; i < out.bars.size(); ++i) copy_words(from.music.bars[i], index, out.bars[i]);
    for (Bar& bar : out.bars) bar.chords_to_write = out.hidden.chords;
    out.left = from.music.left;
    out.dynamics = from.music.dynamics;
    out.spans = from.music.spans;
    out.repeated_dynamics = from.music.repeated_dynamics;
    out.repeated_spans = from.music.repeated_spans;
    out.endings = from.music.endings;
  }

  lesson::Hidden left_out(const Example& example) const {
    return copy_ == Copy::student ? example.hidden : lesson::Hidden{};
  }

  // A word counts in all bars and examples that its note is repeated in: `%`, a variation. Without its hidden chords an
  // example is spelled in another way, of which nothing may be said.
  void report_idle_spellings() {
    std::map<std::pair<std::uint32_t, std::uint32_t>, SpelledNotes::Forced> words;
    for (std::size_t i = 0; i < notes_.size(); ++i) {
      const bool unsaid = copy_ == Copy::student && lesson::hidden_in(lesson_, lesson_.examples[i]).chords;
      for (const SpelledNotes::Forced& word : notes_[i].forced()) {
        auto& known = words.try_emplace({word.range.begin, word.range.end}, word).first->second;
        known.idle = known.idle && word.idle && !unsaid;
      }
    }
    for (const auto& [place, word] : words) {
      if (!word.idle) continue;
      diagnostics_.warning(source::Code::spell_unused, word.range, "this spelling changes nothing",
                           "the note is spelled so by itself: take the word out");
    }
  }

  // What the keys of an example say.
  Example settings(const lesson::Example& from) const {
    Example out;
    out.key = from.key;
    out.feel = from.feel;
    out.show_feel = from.feel != theory::Feel::straight || from.feel != lesson_.feel;
    out.tempo = tempo_mark(from);
    out.ladder = ladder_of(from);
    const std::vector<lesson::Bar>& bars = from.music.bars;
    out.build_up = build_up_of(from.build_up, bars.empty() ? 0 : bars.back().number);
    out.staves = from.staves;
    out.labels = from.labels;
    out.bars_per_line = from.bars_per_line;
    out.bars_per_line_range = from.bars_per_line_range;
    out.hidden = lesson::hidden_in(lesson_, from);
    out.blank = from.blank_bars.has_value();
    out.has_strings = from.music.has_strings || out.blank;
    out.show_counts = asks_for(from, lesson::Label::counts);
    out.degree_kinds = degree_kinds(from);
    out.show_degrees = !out.degree_kinds.empty();
    out.show_notes = asks_for(from, lesson::Label::notes);
    out.show_fingers = asks_for(from, lesson::Label::fingers) || from.music.has_finger_row;
    return out;
  }

  void copy_words(const lesson::Bar& from, std::size_t example, Bar& out) const {
    const auto filled = [&](std::vector<lesson::Word> words) {
      for (lesson::Word& word : words) word.text = filler_.fill(word.text, example);
      return words;
    };
    out.texts = filled(from.texts);
    out.lyrics = from.lyrics;
    out.sections = from.sections;
    out.roads = from.roads;
  }

  const lesson::Lesson& lesson_;
  Copy copy_;
  source::Diagnostics& diagnostics_;
  Naming naming_;
  std::vector<Harmony> harmony_;
  std::vector<SpelledNotes> notes_;
  Filler filler_;
};

}  // namespace

Score build_score(const lesson::Lesson& lesson, source::Diagnostics& diagnostics, Copy copy) {
  const bool hides = copy == Copy::student && lesson::hides_anything(lesson);
  if (!hides) return ScoreBuilder(lesson, copy, diagnostics).build();
  const lesson::Lesson copied = without_hidden_chords(lesson);
  return ScoreBuilder(copied, copy, diagnostics).build();
}

}  // namespace fretsheaf::score
