#include <algorithm>
#include <functional>
#include <optional>
#include <string>

#include "lesson/checks.h"
#include "lesson/hidden.h"
#include "lesson/placeholder.h"
#include "lesson/toml_string.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

std::string count_of(int count, const std::string& noun) {
  return std::to_string(count) + " " + noun + (count == 1 ? "" : "s");
}

std::string which(int ordinal) {
  const bool teen = ordinal % 100 >= 11 && ordinal % 100 <= 13;
  const int last = teen ? 0 : ordinal % 10;
  const char* const ending = last == 1 ? "st" : last == 2 ? "nd" : last == 3 ? "rd" : "th";
  return std::to_string(ordinal) + ending;
}

std::string its_bars(const Music& music) {
  if (music.bars.empty()) return "it has none";
  const int first = music.bars.front().number;
  const int last = music.bars.back().number;
  if (first == last) return "it has bar " + std::to_string(first) + " alone";
  return "its bars are " + std::to_string(first) + " to " + std::to_string(last);
}

// Checks the placeholders of one text after the other.
class TextCheck {
 public:
  TextCheck(const Lesson& lesson, const SoundMusic& sound, const source::Files& files, source::Diagnostics& diagnostics)
      : lesson_(lesson), sound_(sound), files_(files), diagnostics_(diagnostics) {}

  // A text of the lesson (no example) or of an example, in TOML quotes.
  void prose(const Prose& text, std::optional<std::size_t> example) {
    check(text.value, example, [&](std::size_t begin, std::size_t end) {
      return place_in_text(files_[text.range.file], text.range, begin, end);
    });
  }

  // A word of a grid, whose quotes, where it has them, are in its range.
  void word(const Word& word, std::size_t example) {
    const bool quoted = files_[word.range.file].bytes()[word.range.begin] == '"';
    const std::uint32_t start = word.range.begin + (quoted ? 1 : 0);
    check(word.text, example, [&](std::size_t begin, std::size_t end) {
      return Range{start + static_cast<std::uint32_t>(begin), start + static_cast<std::uint32_t>(end), word.range.file};
    });
  }

 private:
  template <typename PlaceOf>
  void check(const std::string& text, std::optional<std::size_t> example, PlaceOf place_of) {
    if (text.find("{{") == std::string::npos) return;
    example_ = example;
    for (const TextPart& part : parse_placeholders(text)) {
      if (std::holds_alternative<std::string>(part.value)) continue;
      // Worked out for a problem alone: finding a place in a long text takes as long as the text.
      range_ = [&] { return place_of(part.begin, part.end); };
      if (const auto* problem = std::get_if<PlaceholderProblem>(&part.value)) {
        diagnostics_.error(Code::unknown_placeholder, range_(), problem->message, problem->help);
      } else {
        std::visit([&](const auto& kind) { resolve(kind); }, std::get<Placeholder>(part.value));
      }
    }
  }

  void resolve(const KeyPlaceholder&) {}
  void resolve(const DegreePlaceholder&) {}
  void resolve(const ChordPlaceholder&) {}

  void resolve(const TempoPlaceholder&) {
    const Example* example = meant({}, "put it into a text of the example whose tempo you mean");
    // A tempo with an error of its own has a range.
    const bool written = example != nullptr && (example->tempo || example->tempo_range != Range{});
    if (example != nullptr && !written)
      error(Code::no_such_tempo, "this example has no 'tempo'", "write tempo = 92 in it");
  }

  void resolve(const NotePlaceholder& placeholder) {
    const Event* event = struck(placeholder.of, "note");
    if (event == nullptr) return;
    const Note* note = naming_note(*event, lesson_.neck);
    if (note != nullptr && note->dead)
      error(Code::no_such_note, "this is a dead note, which has no name", "{{place …}} says where it is played");
  }

  void resolve(const PlacePlaceholder& placeholder) { struck(placeholder.of, "place"); }

  // The event that is asked for; nullptr after an error, here or in the music.
  const Event* struck(const StruckNote& of, const std::string& word) {
    const Example* example = meant(of.example, "write its number too: {{" + word + " 1:" + std::to_string(of.bar) +
                                                   "." + std::to_string(of.note) + "}}");
    if (example == nullptr || !is_sound(*example)) return nullptr;
    if (hidden_in(lesson_, *example).frets) {
      error(Code::hidden_note, "this would give away what 'hide' hides", "take it out, or \"frets\" out of 'hide'");
      return nullptr;
    }
    if (example->blank_bars) {
      error(Code::no_such_note, "this example has blank bars and no notes",
            "name an example that has notes, as in {{place 1:3.2}}");
      return nullptr;
    }
    const Event* event = find_struck(example->music, of.bar, of.note);
    if (event == nullptr) {
      no_such_note(*example, of);
    } else if (event->notes.empty()) {
      error(Code::no_such_note, "this example is a rhythm, which has no notes on strings",
            "name an example that has notes, as in {{place 1:3.2}}");
      return nullptr;
    }
    return event;
  }

  void no_such_note(const Example& example, const StruckNote& of) {
    const auto& bars = example.music.bars;
    const bool there = std::any_of(bars.begin(), bars.end(), [&](const Bar& bar) { return bar.number == of.bar; });
    if (!there) {
      error(Code::no_such_note, "there is no bar " + std::to_string(of.bar) + " in this example",
            its_bars(example.music));
      return;
    }
    int count = 0;
    while (find_struck(example.music, of.bar, count + 1) != nullptr) ++count;
    error(Code::no_such_note,
          "bar " + std::to_string(of.bar) + " has " + count_of(count, "struck note") + ", and this asks for the " +
              which(of.note),
          "held notes, rests and grace notes are not counted, and a chord is one");
  }

  const Example* meant(std::optional<int> named, const std::string& help) {
    const auto count = static_cast<int>(lesson_.examples.size());
    if (named && *named > count) {
      error(Code::no_such_note, "there is no example " + std::to_string(*named),
            "this lesson has " + count_of(count, "example"));
      return nullptr;
    }
    const Example* example = example_meant(lesson_, named, example_);
    if (example == nullptr) {
      error(Code::no_such_note,
            count == 0 ? "this lesson has no example"
                       : "this text belongs to no example, and the lesson has " + std::to_string(count),
            count == 0 ? "" : help);
    }
    return example;
  }

  bool is_sound(const Example& example) const {
    return sound_[static_cast<std::size_t>(&example - lesson_.examples.data())];
  }

  void error(Code code, std::string message, std::string help = {}) {
    diagnostics_.error(code, range_(), std::move(message), std::move(help));
  }

  const Lesson& lesson_;
  const SoundMusic& sound_;
  const source::Files& files_;
  source::Diagnostics& diagnostics_;
  std::optional<std::size_t> example_;
  std::function<Range()> range_;
};

}  // namespace

void check_texts(const LessonKeys& keys, const Lesson& lesson, const SoundMusic& sound, const source::Files& files,
                 source::Diagnostics& diagnostics) {
  TextCheck check(lesson, sound, files, diagnostics);
  for (const auto* setting :
       {&keys.title, &keys.subtitle, &keys.teacher, &keys.series, &keys.level, &keys.copyright, &keys.intro}) {
    if (setting->value) check.prose(*setting->value, {});
  }
  for (const Prose& note : lesson.practice) check.prose(note, {});
  for (std::size_t i = 0; i < lesson.examples.size(); ++i) {
    const Example& example = lesson.examples[i];
    if (example.title) check.prose(*example.title, i);
    if (example.intro) check.prose(*example.intro, i);
    for (const Prose& note : example.practice) check.prose(note, i);
    for (const Bar& bar : example.music.bars) {
      for (const Word& word : bar.texts) check.word(word, i);
    }
  }
}

}  // namespace fretsheaf::lesson
