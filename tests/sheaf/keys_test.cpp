// Lessons in all twelve keys, from the bytes of their handouts: what an SVG page shows, what the document sounds and
// what the labels say must be the lesson's music, moved by one interval.
#include "theory/keys.h"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <string>
#include <vector>

#include "lesson/reader.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "score/build.h"
#include "sheaf/workshop.h"
#include "support/project.h"
#include "support/random_lesson.h"

using namespace fretsheaf;

namespace {

const std::vector<std::string> demos = {"low-tide-vamp",      "boathouse-walk", "ferry-queue-strum",
                                        "fog-bell-in-twelve", "sandpiper-run",  "net-menders-riff"};

std::string path_of(const std::string& demo) {
  return test::project_folder() + "/demo-lessons/" + demo + ".lesson.toml";
}

// MIDI numbers of open strings, the top line first (common practice); not the program's own table.
const std::map<std::string, std::vector<int>> tunings = {
    {"low-tide-vamp", {43, 38, 33, 28}},     {"boathouse-walk", {43, 38, 33, 28}},
    {"ferry-queue-strum", {69, 64, 60, 67}}, {"fog-bell-in-twelve", {64, 59, 55, 50, 45, 40}},
    {"sandpiper-run", {76, 69, 62, 55}},     {"net-menders-riff", {64, 59, 55, 50, 45, 40}}};

struct Handout {
  std::string suffix;
  std::string svg;  // its pages, one after another
  std::string document;
};

// One handout in each of the twelve keys, and the lesson's own first.
std::vector<Handout> handouts(const std::string& demo) {
  platform::DiskSystem system;
  sheaf::Workshop workshop(system);
  std::vector<Handout> made;
  for (const auto& keys : {std::vector<std::string>{}, std::vector<std::string>{"all"}}) {
    sheaf::Request request;
    request.lesson = path_of(demo);
    request.keys = keys;
    request.formats = {sheaf::Format::svg, sheaf::Format::musicxml};
    const sheaf::Plan plan = workshop.plan(request);
    REQUIRE(plan.made.status == sheaf::Made::Status::done);
    for (const sheaf::Job& job : plan.jobs) {
      const sheaf::Made result = workshop.make(job);
      CAPTURE(job.suffix);
      REQUIRE(result.status == sheaf::Made::Status::done);
      Handout handout{job.suffix, "", ""};
      for (const sheaf::Output& output : result.outputs) {
        (output.suffix.ends_with(".svg") ? handout.svg : handout.document) += output.bytes;
      }
      made.push_back(handout);
    }
  }
  return made;
}

using Examples = std::vector<std::vector<int>>;  // what each example sounds

// Reads the digits of the tab from SVG pages: the line that a digit stands on is its string.
class SvgReader {
 public:
  explicit SvgReader(std::vector<int> tuning) : tuning_(std::move(tuning)) {}

  Examples read(const std::string& svg) {
    const std::regex element(
        "<g class=\"(example|event|digit)\"[^>]*>|<line class=\"tab-line\"[^>]* y1=\"([-0-9.]+)\"[^>]*>");
    for (std::sregex_iterator it(svg.begin(), svg.end(), element); it != std::sregex_iterator(); ++it) {
      const std::string text = it->str();
      if ((*it)[1] == "example") begin_example(std::stoul(attribute(text, "data-example")));
      if ((*it)[2].matched) add_line(std::stod((*it)[2]));
      if ((*it)[1] == "digit") digits_.push_back(digit_of(text));
    }
    end_system();
    return std::move(examples_);
  }

 private:
  struct Digit {
    double y = 0;
    std::string text;
  };

  static std::string attribute(const std::string& tag, const std::string& name) {
    std::smatch found;
    const bool there = std::regex_search(tag, found, std::regex(name + "=\"([^\"]*)\""));
    return there ? found[1].str() : std::string();
  }

  static Digit digit_of(const std::string& tag) {
    std::smatch found;
    REQUIRE(std::regex_search(tag, found, std::regex("translate\\(([-0-9.]+) ([-0-9.]+)\\)")));
    return {std::stod(found[2]), attribute(tag, "aria-label")};
  }

  void begin_example(std::size_t number) {
    end_system();
    current_ = number - 1;
    examples_.resize(std::max(examples_.size(), number));
  }

  // A tab's lines stand above its digits in the file: a line far from the others begins another system.
  void add_line(double y) {
    if (!digits_.empty()) end_system();
    if (std::find(lines_.begin(), lines_.end(), y) == lines_.end()) lines_.push_back(y);
  }

  void end_system() {
    std::sort(lines_.begin(), lines_.end());
    for (const Digit& digit : digits_) {
      REQUIRE(lines_.size() == tuning_.size());
      if (digit.text.find_first_not_of("0123456789") != std::string::npos) continue;  // a dead note
      const double space = lines_[1] - lines_[0];
      // A figure stands on its line, with half its height of about half a space under it.
      const auto string = static_cast<std::size_t>(std::lround((digit.y - 0.45 * space - lines_[0]) / space));
      REQUIRE(string < tuning_.size());
      examples_[current_].push_back(tuning_[string] + std::stoi(digit.text));
    }
    if (!digits_.empty()) lines_.clear();
    digits_.clear();
  }

  std::vector<int> tuning_;
  Examples examples_;
  std::size_t current_ = 0;
  std::vector<double> lines_;
  std::vector<Digit> digits_;
};

// The elements of a document whose tags begin so.
std::vector<std::string> elements(const std::string& document, const std::string& tag) {
  std::vector<std::string> all;
  const std::string close = "</" + tag.substr(0, tag.find(' ')) + ">";
  for (std::size_t at = document.find("<" + tag); at != std::string::npos; at = document.find("<" + tag, at)) {
    const char after = document[at + tag.size() + 1];
    const std::size_t end = document.find(close, at);
    if (after == '>' || after == ' ' || after == '=') all.push_back(document.substr(at, end - at));
    at = after == '>' || after == ' ' || after == '=' ? end : at + 1;
  }
  return all;
}

// What the document sounds, struck notes only, on the tab's staff: by part.
Examples sounding_in(const std::string& document) {
  static const std::map<char, int> letters = {{'C', 0}, {'D', 2}, {'E', 4}, {'F', 5}, {'G', 7}, {'A', 9}, {'B', 11}};
  const auto value = [](const std::string& text, const std::string& name) {
    std::smatch found;
    const bool there = std::regex_search(text, found, std::regex("<" + name + ">([^<]*)</"));
    return there ? found[1].str() : std::string();
  };
  Examples examples;
  for (const std::string& part : elements(document, "part id")) {
    std::vector<int>& pitches = examples.emplace_back();
    for (const std::string& text : elements(part, "note")) {
      const bool on_tab = text.find("<fret>") != std::string::npos;
      const bool dead = text.find("<notehead>x</notehead>") != std::string::npos;
      if (!on_tab || dead || text.find("<tie type=\"stop\"") != std::string::npos) continue;
      const std::string alter = value(text, "alter");
      pitches.push_back(letters.at(value(text, "step")[0]) + (alter.empty() ? 0 : std::stoi(alter)) +
                        12 * (std::stoi(value(text, "octave")) + 1));
    }
  }
  return examples;
}

std::vector<int> joined(const Examples& examples) {
  std::vector<int> all;
  for (const std::vector<int>& example : examples) all.insert(all.end(), example.begin(), example.end());
  return all;
}

std::vector<int> sorted(std::vector<int> values) {
  std::sort(values.begin(), values.end());
  return values;
}

// The words of a row of labels, in order: glyphs that stand side by side are one name.
std::vector<std::string> labels(const std::string& svg, const std::string& kind) {
  std::vector<std::string> all;
  const std::regex label("class=\"" + kind + "\"[^>]*aria-label=\"([^\"]*)\"");
  for (std::sregex_iterator it(svg.begin(), svg.end(), label); it != std::sregex_iterator(); ++it) {
    all.push_back((*it)[1]);
  }
  return all;
}

// The pitch classes of note labels ("E", "♭", "F" …).
std::vector<int> labelled(const std::string& svg) {
  static const std::map<char, int> letters = {{'C', 0}, {'D', 2}, {'E', 4}, {'F', 5}, {'G', 7}, {'A', 9}, {'B', 11}};
  std::vector<int> classes;
  for (const std::string& text : labels(svg, "note-label")) {
    if (text == "♭" || text == "♯") {
      classes.back() = (classes.back() + (text == "♯" ? 1 : 11)) % 12;
    } else {
      classes.push_back(letters.at(text[0]));
    }
  }
  return classes;
}

}  // namespace

TEST_CASE(
    "every demo lesson in twelve keys: its page, its document and its labels say the music moved by one interval") {
  for (const std::string& demo : demos) {
    const std::vector<Handout> made = handouts(demo);
    REQUIRE(made.size() == 13);
    const Examples own = SvgReader(tunings.at(demo)).read(made.front().svg);
    for (const Handout& handout : made) {
      CAPTURE(demo, handout.suffix);
      const Examples here = SvgReader(tunings.at(demo)).read(handout.svg);
      REQUIRE(here.size() == own.size());
      for (std::size_t i = 0; i < own.size(); ++i) {
        if (own[i].empty()) continue;  // strums
        // Chords stand from the tab's top line down, and may come to lie on other strings: pitches are compared sorted.
        std::vector<int> moved = sorted(own[i]);
        const int by = sorted(here[i]).front() - moved.front();
        for (int& midi : moved) midi += by;
        CHECK(sorted(here[i]) == moved);
        CHECK(std::abs(by) <= 12);
      }
      CHECK(sorted(joined(here)) == sorted(joined(sounding_in(handout.document))));
      CHECK(labels(handout.svg, "degree-label") == labels(made.front().svg, "degree-label"));
    }
  }
}

TEST_CASE("note labels name what the document sounds, in every key") {
  for (const Handout& handout : handouts("sandpiper-run")) {
    CAPTURE(handout.suffix);
    std::vector<int> classes;
    for (const std::vector<int>& example : sounding_in(handout.document)) {
      for (const int midi : example) classes.push_back(midi % 12);
    }
    CHECK(labelled(handout.svg) == classes);
  }
}

TEST_CASE("a demo lesson's file in another key makes the handout that --key makes, byte for byte") {
  platform::DiskSystem disk;
  for (const std::string& demo : demos) {
    sheaf::Workshop workshop(disk);
    sheaf::Request request;
    request.lesson = path_of(demo);
    request.keys = {"all"};
    request.formats = {sheaf::Format::pdf, sheaf::Format::svg, sheaf::Format::musicxml};
    const sheaf::Plan plan = workshop.plan(request);
    REQUIRE(plan.jobs.size() == 12);
    for (const sheaf::Job& job : plan.jobs) {
      CAPTURE(demo, job.suffix);
      const sheaf::Transposed file = workshop.transpose(request.lesson, job.to.key->to_string());
      REQUIRE(file.moved);
      platform::MemorySystem system(disk);
      system.files["there.lesson.toml"] = file.text;
      sheaf::Workshop fresh(system);
      sheaf::Request again;
      again.lesson = "there.lesson.toml";
      again.formats = request.formats;
      const sheaf::Plan there = fresh.plan(again);
      REQUIRE(there.jobs.size() == 1);
      const sheaf::Made direct = workshop.make(job);
      const sheaf::Made written = fresh.make(there.jobs.front());
      REQUIRE(direct.outputs.size() == written.outputs.size());
      for (std::size_t i = 0; i < direct.outputs.size(); ++i) {
        CHECK(direct.outputs[i].suffix == written.outputs[i].suffix);
        CHECK((direct.outputs[i].bytes == written.outputs[i].bytes));
      }
    }
  }
}

namespace {

// Whether a chord's root had to be called by its practical name, against which degrees are others.
bool has_practical_chord(const lesson::Lesson& before, std::size_t example, int fifths) {
  for (const lesson::Bar& bar : before.examples[example].music.bars) {
    for (const lesson::ChordMark& mark : bar.chords) {
      const auto* chord = std::get_if<theory::Chord>(&mark.chord);
      if (chord == nullptr) continue;
      const int root = chord->root.fifths() + fifths;
      const int bass = chord->bass ? chord->bass->fifths() + fifths : 0;
      if (std::max(root, bass) > 19 || std::min(root, bass) < -15) return true;
    }
  }
  return false;
}

// The same for a forced spelling.
bool has_practical_spelling(const lesson::Lesson& before, std::size_t example, int fifths) {
  for (const lesson::Bar& bar : before.examples[example].music.bars) {
    for (const lesson::Event& event : bar.events) {
      for (const lesson::Note& note : event.notes) {
        const int there = note.spell ? note.spell->value.fifths() + fifths : 0;
        if (there > 19 || there < -15) return true;
      }
    }
  }
  return false;
}

// An event's names, from the lowest sound up; dead notes left out.
std::vector<int> names_of(const score::Event& event) {
  std::vector<std::pair<int, int>> notes;
  for (const score::Note& note : event.notes) {
    if (note.head != score::HeadKind::dead) notes.emplace_back(note.sounding.midi(), note.exact.fifths());
  }
  std::sort(notes.begin(), notes.end());
  std::vector<int> names;
  for (const auto& [midi, fifths] : notes) names.push_back(fifths);
  return names;
}

void check_names(const score::Example& own, const score::Example& there, int fifths) {
  REQUIRE(own.bars.size() == there.bars.size());
  for (std::size_t b = 0; b < own.bars.size(); ++b) {
    REQUIRE(own.bars[b].events.size() == there.bars[b].events.size());
    for (std::size_t e = 0; e < own.bars[b].events.size(); ++e) {
      const score::Event& event = there.bars[b].events[e];
      CAPTURE(b, e);
      std::vector<int> expected = names_of(own.bars[b].events[e]);
      for (int& name : expected) name += fifths;
      CHECK(names_of(event) == expected);
      CHECK(event.degree == own.bars[b].events[e].degree);
    }
  }
}

}  // namespace

TEST_CASE("names move along the line of fifths and degrees stay, in every key of generated lessons") {
  const platform::MemorySystem system;
  int checked = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    const auto read = lesson::read_lesson("slipway.lesson.toml", test::random_lesson(seed), system);
    REQUIRE(read.lesson);
    source::Diagnostics unused;
    const score::Score own = score::build_score(*read.lesson, unused);
    for (const theory::Key& key : theory::all_keys(read.lesson->key.mode)) {
      if (seed % 4 != static_cast<unsigned>(key.tonic.pitch_class()) % 4) continue;
      CAPTURE(seed, key.to_string());
      transposition::Destination to;
      to.key = key;
      const auto moved = transposition::move(*read.lesson, to, unused);
      if (!moved) continue;
      const score::Score there = score::build_score(moved->lesson, unused);
      for (std::size_t i = 0; i < own.examples.size(); ++i) {
        const int fifths = there.examples[i].key.tonic.fifths() - own.examples[i].key.tonic.fifths();
        if (has_practical_chord(*read.lesson, i, fifths) || has_practical_spelling(*read.lesson, i, fifths)) continue;
        check_names(own.examples[i], there.examples[i], fifths);
        ++checked;
      }
    }
  }
  CHECK(checked > 200);
}
