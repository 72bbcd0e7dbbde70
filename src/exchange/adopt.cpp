#include "exchange/adopt.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "exchange/adopt_form.h"
#include "exchange/adopt_music.h"
#include "exchange/adopt_neck.h"
#include "exchange/adopt_spellings.h"
#include "exchange/score_file.h"
#include "exchange/take_heading.h"
#include "exchange/take_part.h"
#include "exchange/xml_text.h"
#include "lesson/lesson_text.h"
#include "lesson/limits.h"
#include "lesson/plain_words.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "score/build.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

namespace limits = lesson::limits;

class Adopter {
 public:
  Adopter(const ScoreFile& file, const AdoptWish& wish, source::Diagnostics& diagnostics)
      : file_(file), wish_(wish), losses_(file.text, diagnostics) {}

  std::optional<std::string> run() {
    auto text = made();
    losses_.tell();
    if (losses_.has_errors()) return std::nullopt;
    return text;
  }

 private:
  std::optional<std::string> made() {
    part_ = take_part(file_.document->root, wish_.part, losses_);
    if (!part_ || losses_.has_errors()) return std::nullopt;
    const auto neck = choose_neck(*part_, wish_.instrument, losses_);
    if (!neck) return std::nullopt;
    lesson_.instrument = neck->instrument;
    lesson_.neck = neck->neck;
    find_sections();
    if (losses_.has_errors()) return std::nullopt;
    for (Section& section : sections_) add_example(section);
    if (losses_.has_errors()) return std::nullopt;
    add_heading();
    for (std::size_t i = 0; i < lesson_.examples.size(); ++i) {
      force_spellings(names_[i], lesson_.neck, lesson_.examples[i]);
    }
    std::string text = lesson::lesson_text(lesson_);
    check(text);
    return text;
  }

  const TakenMeasure& measure(int index) const { return part_->measures[static_cast<std::size_t>(index)]; }
  int measures() const { return static_cast<int>(part_->measures.size()); }

  // A section begins with a new system whose measures count from the start again, as this program's own scores have it,
  // and with a new key.
  void find_sections() {
    theory::Key key;
    theory::Meter meter;
    if (!measure(0).key) {
      losses_.lose(Code::adopt_assumed, measure(0).element, 0, "no key is written; it is taken as C major",
                   "write another key into the lesson");
    }
    if (!measure(0).meter) {
      losses_.lose(Code::adopt_assumed, measure(0).element, 0, "no meter is written; it is taken as 4/4",
                   "write another meter into the lesson");
    }
    int open_repeats = 0;
    for (int i = 0; i < measures(); ++i) {
      const TakenMeasure& own = measure(i);
      const bool new_count = own.new_system && whole(own.number).value_or(2) <= 1;
      const bool new_key = own.key && !(*own.key == key);
      const bool inside = open_repeats > 0 && !own.left.repeat && !new_count;
      if (own.left.repeat) open_repeats = 1;
      if (own.meter) meter = *own.meter;
      if (i > 0 && new_key && inside) {
        losses_.left_out(own.element, i, "a key that changes inside a repeat");
      } else if (i == 0 || new_count || new_key) {
        if (new_key) key = *own.key;
        if (i > 0) sections_.back().last = i;
        sections_.push_back({i, measures(), key, meter, true, 0});
        if (!own.left.repeat) open_repeats = 0;
      }
      if (own.right.repeat) open_repeats = 0;
    }
    check_limits();
  }

  void check_limits() {
    if (sections_.size() > limits::examples) {
      losses_.error(Code::adopt_too_much, measure(sections_[limits::examples].first).element,
                    sections_[limits::examples].first, "here begins section " + std::to_string(limits::examples + 1),
                    "a lesson has up to " + std::to_string(limits::examples) + " examples");
    }
    for (const Section& section : sections_) {
      if (section.last - section.first <= static_cast<int>(limits::bars)) continue;
      losses_.error(Code::adopt_too_much, measure(section.first).element, section.first,
                    "this section has " + std::to_string(section.last - section.first) + " measures",
                    "an example of a lesson has up to " + std::to_string(limits::bars) + " bars");
    }
  }

  // The first tempo of the section; later ones are losses.
  std::optional<theory::Tempo> tempo_of(const Section& section) {
    std::optional<theory::Tempo> tempo;
    for (int i = section.first; i < section.last; ++i) {
      const auto& own = measure(i).tempo;
      if (!own) continue;
      const bool again = tempo && (tempo->to != own->to || tempo->beat != own->beat);
      // A pickup's own bar may follow it with the tempo.
      const bool opening = i == section.first || (i == section.first + 1 && measure(section.first).number == "0");
      if (again || (!tempo && !opening)) {
        losses_.left_out(measure(i).element, i, "a change of tempo");
      } else if (!tempo) {
        tempo = own;
      }
    }
    return tempo;
  }

  theory::Feel feel_of(const Section& section) {
    for (int i = section.first; i < section.last; ++i) {
      const auto& own = measure(i).feel;
      if (own && i > section.first && *own != feel_) {
        losses_.left_out(measure(i).element, i, "a change of feel inside a section");
      } else if (own) {
        feel_ = *own;
      }
    }
    return feel_;
  }

  void add_example(Section& section) {
    const AdoptContext context{*part_, lesson_.neck, *lesson_.instrument, losses_};
    lesson::Example example;
    example.key = section.key;
    example.feel = feel_of(section);
    example.tempo = tempo_of(section);
    const auto form = take_form(context, *part_, section);
    example.meter = section.meter;
    TakenMusic taken = music_of(context, section, example.tempo);
    if (losses_.has_errors()) return;
    if (taken.name && !lesson::plain_line(*taken.name).empty()) example.title = lesson::Prose{*taken.name, {}};
    example.music = std::move(taken.music);
    if (form) example.form = form_around(*form, example.music);
    names_.push_back(std::move(taken.names));
    lesson_.examples.push_back(std::move(example));
  }

  void report_long_texts(const TakenHeading& heading) {
    for (const std::string& text :
         {heading.title, heading.subtitle, heading.creator, heading.rights, heading.series, heading.level}) {
      if (lesson::fits_line(text)) continue;
      losses_.lose(Code::adopt_left_out, &file_.document->root,
                   "the end of a long text in the score's heading is left out",
                   "a title has up to " + std::to_string(limits::line) + " characters");
    }
  }

  void add_heading() {
    const TakenHeading heading = take_heading(file_.document->root, losses_);
    std::string title = lesson::plain_line(heading.title);
    if (title.empty()) title = lesson::plain_line(wish_.title);
    lesson_.title.value = title.empty() ? "Without a title" : title;
    if (!lesson::plain_line(heading.subtitle).empty()) lesson_.subtitle = lesson::Prose{heading.subtitle, {}};
    lesson_.teacher = lesson::plain_line(heading.creator);
    lesson_.copyright = lesson::plain_line(heading.rights);
    lesson_.series = lesson::plain_line(heading.series);
    lesson_.level = lesson::plain_line(heading.level);
    lesson_.number = heading.number;
    report_long_texts(heading);
    lesson_.key = lesson_.examples.front().key;
    lesson_.meter = lesson_.examples.front().meter;
    lesson_.feel = lesson_.examples.front().feel;
    if (part_->swing_ratio) lesson_.swing_ratio = *part_->swing_ratio;
  }

  // A lesson that is given must be one.
  void check(const std::string& text) {
    const platform::MemorySystem system;
    lesson::ReadLesson read = lesson::read_lesson("adopted", text, system);
    if (!read.lesson) {
      for (const source::Diagnostic& one : read.diagnostics.sorted()) {
        if (one.severity != source::Severity::error) continue;
        losses_.error(Code::adopt_too_much, nullptr, "this music cannot be written as a lesson: " + one.message,
                      one.help);
        return;
      }
      return;
    }
    source::Diagnostics problems;
    score::build_score(*read.lesson, problems);
    for (const source::Diagnostic& one : problems.list()) {
      if (one.code == Code::unwritable_value) report_value(*read.lesson, one);
    }
  }

  void report_value(const lesson::Lesson& lesson, const source::Diagnostic& one) {
    for (std::size_t i = 0; i < lesson.examples.size(); ++i) {
      const std::vector<lesson::Bar>& bars = lesson.examples[i].music.bars;
      for (std::size_t b = 0; b < bars.size(); ++b) {
        for (const lesson::Event& event : bars[b].events) {
          if (!(event.range == one.range)) continue;
          const int index = sections_[i].first + static_cast<int>(b);
          losses_.error(Code::adopt_tuplet, measure(index).element, index,
                        "a note that lasts " + event.length.to_string() + " of a whole note cannot be written",
                        "a lesson's tuplets are equal parts of one, two or four beats, its shortest note a 256th");
          return;
        }
      }
    }
  }

  const ScoreFile& file_;
  const AdoptWish& wish_;
  Losses losses_;
  std::optional<TakenPart> part_;
  std::vector<Section> sections_;
  lesson::Lesson lesson_;
  std::vector<WantedNames> names_;  // by example
  theory::Feel feel_ = theory::Feel::straight;
};

}  // namespace

Adopted adopt(const std::string& name, std::string bytes, const AdoptWish& wish) {
  Adopted adopted;
  const ScoreFile file = open_score_file(name, std::move(bytes), adopted.diagnostics);
  if (file.document) adopted.lesson = Adopter(file, wish, adopted.diagnostics).run();
  adopted.files.add(file.text);
  return adopted;
}

}  // namespace fretsheaf::exchange
