#include "lesson/lesson_text.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "lesson/grid_text.h"
#include "lesson/plain_words.h"

namespace fretsheaf::lesson {

namespace {

class LessonText {
 public:
  explicit LessonText(const Lesson& lesson) : lesson_(lesson) {}

  std::string write() {
    text("title", title_markup(lesson_.title.value));
    if (lesson_.subtitle) text("subtitle", title_markup(lesson_.subtitle->value));
    if (!lesson_.teacher.empty()) text("teacher", lesson_.teacher);
    if (!lesson_.series.empty()) text("series", lesson_.series);
    if (lesson_.number) line("number", std::to_string(*lesson_.number));
    if (!lesson_.level.empty()) text("level", lesson_.level);
    text("key", lesson_.key.to_string());
    text("meter", lesson_.meter.to_string());
    write_feel();
    write_neck();
    if (!lesson_.copyright.empty()) text("copyright", lesson_.copyright);
    for (const Example& example : lesson_.examples) write_example(example);
    return std::move(text_);
  }

 private:
  // Keys stand in one column where they are short.
  void line(std::string_view key, const std::string& value) {
    constexpr std::size_t column = 10;
    text_ += key;
    text_ += std::string(key.size() < column ? column - key.size() : 0, ' ') + " = " + value + "\n";
  }
  void text(std::string_view key, const std::string& value) { line(key, toml_quoted(value)); }

  void write_feel() {
    if (lesson_.feel != theory::Feel::straight) text("feel", std::string(theory::feel_name(lesson_.feel)));
    if (lesson_.swing_ratio == theory::Rational(2)) return;
    text("swing-ratio",
         std::to_string(lesson_.swing_ratio.numerator()) + ":" + std::to_string(lesson_.swing_ratio.denominator()));
  }

  void write_neck() {
    const fretboard::Instrument& instrument = *lesson_.instrument;
    text("instrument", std::string(instrument.name));
    if (lesson_.neck.tuning != instrument.tuning) {
      std::string list;
      for (const theory::Pitch& open : lesson_.neck.tuning) {
        list += (list.empty() ? "" : ", ") + toml_quoted(open.to_string());
      }
      line("tuning", "[" + list + "]");
    }
    if (lesson_.neck.frets != instrument.frets) line("frets", std::to_string(lesson_.neck.frets));
    if (lesson_.neck.capo > 0) line("capo", std::to_string(lesson_.neck.capo));
  }

  void write_example(const Example& example) {
    text_ += "\n[[example]]\n";
    if (example.title) text("title", title_markup(example.title->value));
    if (!(example.key == lesson_.key)) text("key", example.key.to_string());
    if (!(example.meter == lesson_.meter)) text("meter", example.meter.to_string());
    if (example.feel != lesson_.feel) text("feel", std::string(theory::feel_name(example.feel)));
    if (example.tempo) write_tempo(*example.tempo, example.meter);
    if (example.form) write_form(*example.form);
    text_ += "tab = '''\n" + grid_text(example.music, lesson_.neck) + "'''\n";
  }

  void write_form(const Form& form) {
    std::string table = "{ bars = " + toml_quoted(form.bars.value);
    if (form.here_first > 0) {
      table += ", here = \"" + std::to_string(form.here_first) + "-" + std::to_string(form.here_last) + "\"";
    }
    line("form", table + (form.write_out ? ", write-out = true }" : " }"));
  }

  void write_tempo(const theory::Tempo& tempo, const theory::Meter& meter) {
    const std::string goal = std::to_string(tempo.to);
    if (!tempo.beat || *tempo.beat == theory::beat_unit(meter)) return line("tempo", goal);
    const std::vector<std::string> names = theory::beat_unit_names();
    const auto named = std::find_if(names.begin(), names.end(), [&](const std::string& name) {
      return theory::parse_beat_unit(name) == tempo.beat;
    });
    if (named == names.end()) return;
    line("tempo", "{ from = " + goal + ", to = " + goal + ", beat = " + toml_quoted(*named) + " }");
  }

  const Lesson& lesson_;
  std::string text_;
};

}  // namespace

std::string lesson_text(const Lesson& lesson) {
  return LessonText(lesson).write();
}

std::string toml_quoted(const std::string& text) {
  std::string quoted = "\"";
  for (const char c : plain_line(text)) {
    if (c == '"' || c == '\\') quoted += '\\';
    quoted += c;
  }
  return quoted + "\"";
}

std::string title_markup(const std::string& text) {
  constexpr std::string_view signs = "\\`*_[]<>&!#";
  std::string markup;
  for (const char c : text) {
    if (signs.find(c) != std::string_view::npos) markup += '\\';
    markup += c;
  }
  return markup;
}

}  // namespace fretsheaf::lesson
