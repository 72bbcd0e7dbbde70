#include "exchange/musicxml.h"

#include <optional>
#include <utility>
#include <vector>

#include "exchange/element.h"
#include "exchange/measure.h"
#include "exchange/part.h"
#include "lesson/hidden.h"
#include "platform/xml_writer.h"

namespace fretsheaf::exchange {

namespace {

// "7" of "No. 7".
std::string figures_of(std::string text) {
  std::erase_if(text, [](char c) { return c < '0' || c > '9'; });
  return text;
}

// What the standard has no element for goes where it keeps such things (MusicXML 4.0, miscellaneous).
void write_facts(Element identification, const score::Score& score) {
  const std::pair<const char*, std::string> facts[] = {
      {"subtitle", score::plain(score.heading.subtitle)},
      {"series", score.heading.series},
      {"level", score.heading.level},
  };
  std::optional<Element> group;
  for (const auto& [name, text] : facts) {
    if (text.empty()) continue;
    if (!group) group = identification.add("miscellaneous");
    group->add("miscellaneous-field", text).set("name", name);
  }
}

void write_identification(Element root, const score::Score& score) {
  Element work = root.add("work");
  if (const std::string number = figures_of(score.heading.number); !number.empty()) work.add("work-number", number);
  work.add("work-title", score.title);
  Element identification = root.add("identification");
  if (!score.teacher.empty()) identification.add("creator", score.teacher).set("type", "composer");
  if (!score.copyright.empty()) identification.add("rights", score.copyright);
  identification.add("encoding").add("software", "fretsheaf");
  write_facts(identification, score);
}

std::string part_name(const score::Score& score) {
  std::string name = score.instrument;
  if (!name.empty() && name[0] >= 'a' && name[0] <= 'z') name[0] = static_cast<char>(name[0] - 'a' + 'A');
  return name;
}

void write_part_list(Element root, const score::Score& score) {
  root.add("part-list").add("score-part").set("id", "P1").add("part-name", part_name(score));
}

void write_example(Element part_element, const score::Score& score, const score::Example& example, Running& running) {
  const Part part{score,
                  example,
                  staves_of(score, example),
                  divisions_of(example),
                  joins_of(example),
                  repeat_targets(example),
                  bar_repeats(example),
                  syllables_of(example),
                  cover_of(example),
                  bare_accidentals_of(example)};
  for (int bar = 0; bar < static_cast<int>(example.bars.size()); ++bar) {
    write_measure(part_element, part, bar, running);
  }
  running.first_example = false;
}

// A part must have a measure, also in a lesson whose examples are all without music.
void write_empty_measure(Element part_element) {
  Element measure = part_element.add("measure").set("number", "1");
  measure.add("attributes").add("divisions", 1);
  Element note = measure.add("note");
  note.add("rest").set("measure", "yes");
  note.add("duration", 4);
}

std::string document_of(const score::Score& score, const std::vector<const score::Example*>& examples) {
  platform::XmlElement document;
  document.name = "score-partwise";
  Element root(document);
  root.set("version", "4.0");
  write_identification(root, score);
  write_part_list(root, score);
  Element part_element = root.add("part").set("id", "P1");
  Running running;
  for (const score::Example* example : examples) write_example(part_element, score, *example, running);
  if (examples.empty()) write_empty_measure(part_element);
  return platform::xml_written(document);
}

}  // namespace

bool has_document(const score::Score& score, const score::Example& example) {
  const bool hides = !score.answer_key && lesson::any(example.hidden);
  return !example.bars.empty() && !example.blank && !hides;
}

std::string musicxml(const score::Score& score) {
  std::vector<const score::Example*> examples;
  for (const score::Example& example : score.examples) {
    if (has_document(score, example)) examples.push_back(&example);
  }
  return document_of(score, examples);
}

std::string musicxml(const score::Score& score, std::size_t example) {
  return document_of(score, {&score.examples[example]});
}

}  // namespace fretsheaf::exchange
