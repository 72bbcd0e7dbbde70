#include "spell_out.h"

#include <catch2/catch.hpp>
#include <sstream>

#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "score/build.h"

namespace fretsheaf::score::test {
namespace {

theory::Rational rational(const std::string& text) {
  const auto slash = text.find('/');
  if (slash == std::string::npos) return {std::stoi(text)};
  return {std::stoi(text.substr(0, slash)), std::stoi(text.substr(slash + 1))};
}

lesson::Event event(std::string text) {
  lesson::Event event;
  if (text[0] == 'r') event.kind = lesson::EventKind::rest;
  if (text[0] == '=') event.kind = lesson::EventKind::held;
  if (event.kind != lesson::EventKind::struck) text.erase(0, 1);
  if (event.kind == lesson::EventKind::struck) event.strum = lesson::Strum::plain;
  event.written_out = event.kind != lesson::EventKind::held;
  event.at = rational(text);
  return event;
}

}  // namespace

std::string text(NoteValue value) {
  return std::to_string(1 << value.log2) + std::string(static_cast<std::size_t>(value.dots), '.');
}

std::string text(const Bar& bar) {
  std::string out;
  for (int i = 0; i < static_cast<int>(bar.events.size()); ++i) {
    const Event& event = bar.events[static_cast<std::size_t>(i)];
    if (!out.empty()) out += ' ';
    const Tuplet* tuplet = event.tuplet ? &bar.tuplets[static_cast<std::size_t>(*event.tuplet)] : nullptr;
    if (tuplet != nullptr && tuplet->first == i) {
      out += '[' + std::to_string(tuplet->actual) + ':' + std::to_string(tuplet->normal) + ' ';
    }
    if (event.rest) out += 'r';
    out += event.whole_bar_rest ? "R" : text(event.value);
    if (event.tie_to) out += '~';
    if (tuplet != nullptr && tuplet->last == i) out += ']';
  }
  return out;
}

std::string beams(const Bar& bar) {
  std::string out;
  for (const Event& event : bar.events) {
    if (!out.empty()) out += ' ';
    if (event.beams_left == 0 && event.beams_right > 0) out += '(';
    out += (event.rest ? "r" : "") + text(event.value);
    if (event.beams_left > 0 && event.beams_right == 0) out += ')';
  }
  return out;
}

lesson::Bar bar(std::string_view meter, std::string_view events) {
  const theory::Meter parsed = *theory::parse_meter(meter);
  return bar(meter, events, theory::Rational(0), parsed.bar());
}

lesson::Bar bar(std::string_view meter, std::string_view events, theory::Rational begin, theory::Rational end) {
  lesson::Bar bar;
  bar.meter = *theory::parse_meter(meter);
  bar.begin = begin;
  bar.end = end;
  std::istringstream words{std::string(events)};
  for (std::string word; words >> word;) bar.events.push_back(event(word));
  for (std::size_t i = 0; i < bar.events.size(); ++i) {
    const theory::Rational stop = i + 1 < bar.events.size() ? bar.events[i + 1].at : end;
    bar.events[i].length = stop - bar.events[i].at;
  }
  return bar;
}

lesson::Example rhythm(std::vector<lesson::Bar> bars) {
  lesson::Example example;
  example.meter = bars.front().meter;
  example.key = *theory::parse_key("C major");
  example.music.bars = std::move(bars);
  return example;
}

lesson::Lesson lesson_of(std::vector<lesson::Example> examples) {
  lesson::Lesson lesson;
  lesson.title.value = "Harbour wall";
  lesson.key = *theory::parse_key("C major");
  lesson.instrument = fretboard::find_instrument("bass");
  lesson.neck.tuning = lesson.instrument->tuning;
  lesson.examples = std::move(examples);
  return lesson;
}

lesson::Lesson read_whole(const std::string& text) {
  const platform::MemorySystem system;
  lesson::ReadLesson read = lesson::read_lesson("harbour.lesson.toml", text, system);
  if (!read.lesson) {
    for (const source::Diagnostic& diagnostic : read.diagnostics.list()) UNSCOPED_INFO(render(diagnostic, read.files));
    FAIL("the lesson has errors");
  }
  return std::move(*read.lesson);
}

lesson::Lesson read(const std::string& lesson_keys, const std::string& example) {
  return read_whole(lesson_keys + "\n[[example]]\n" + example);
}

std::string grid(const std::string& rows) {
  return "tab = '''\n" + rows + "'''\n";
}

Example built(const lesson::Lesson& lesson) {
  source::Diagnostics diagnostics;
  Score score = build_score(lesson, diagnostics);
  for (const source::Diagnostic& diagnostic : diagnostics.list()) FAIL(diagnostic.message);
  return score.examples.front();
}

Example built(std::vector<lesson::Bar> bars) {
  return built(lesson_of({rhythm(std::move(bars))}));
}

}  // namespace fretsheaf::score::test
