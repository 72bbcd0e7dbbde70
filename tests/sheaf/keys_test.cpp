// Lessons in all twelve keys, from the bytes of their handouts: what an SVG page shows, what the document sounds and
// what the labels say must be the lesson's music, moved by one interval.
#include "theory/keys.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include "lesson/reader.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "score/build.h"
#include "sheaf/handout_reader.h"
#include "sheaf/workshop.h"
#include "support/project.h"
#include "support/random_lesson.h"

using namespace fretsheaf;

namespace {

const std::vector<std::string> demos = {
    "low-tide-vamp", "boathouse-walk", "ferry-queue-strum", "fog-bell-in-twelve", "sandpiper-run",   "net-menders-riff",
    "shoreline-map", "five-lanterns",  "left-hand-lantern", "harbour-rounds",     "reading-the-tide"};

std::string text_of(const std::string& demo) {
  const platform::DiskSystem disk;
  const auto bytes =
      disk.read(test::project_folder() + "/demo-lessons/" + demo + ".lesson.toml", lesson::limits::bytes);
  REQUIRE(std::holds_alternative<std::string>(bytes));
  return std::get<std::string>(bytes);
}

// What a line of a lesson says of a key written without quotes, "guitar" for `instrument = "guitar"`; "" where it has
// none.
std::string said_of(const std::string& text, const std::string& key) {
  const auto line = ("\n" + text).find("\n" + key + " ");
  if (line == std::string::npos) return {};
  const auto from = text.find_first_not_of(" =\"", line + key.size());
  return text.substr(from, text.find_first_of("\"\n", from) - from);
}

// The lesson with these labels and no others.
std::string labelled(const std::string& text, const std::string& labels) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size() - 1) + 1;
    const std::string line = text.substr(at, end - at);
    if (!line.starts_with("labels")) out += line;
    if (line.starts_with("instrument")) out += "labels = " + labels + "\n";
    at = end;
  }
  return out;
}

// One handout.
struct Handout {
  std::string key;
  std::vector<std::vector<test::Digit>> digits;  // by example
  std::vector<std::vector<test::Heard>> notes;
  std::vector<int> note_labels;
  std::vector<std::string> degree_labels;
};

// The lesson in its own key and then in those. What cannot be reached is left out.
std::vector<Handout> handouts(const std::string& text, const std::vector<std::string>& wanted) {
  platform::DiskSystem disk;
  platform::MemorySystem system(disk);
  system.files["a.lesson.toml"] = text;
  sheaf::Workshop workshop(system);
  const int strings = static_cast<int>(test::strings_of(said_of(text, "instrument")).open.size());
  std::vector<Handout> made;
  for (const auto& keys : {std::vector<std::string>{}, wanted}) {
    sheaf::Request request;
    request.lesson = "a.lesson.toml";
    request.keys = keys;
    request.formats = {sheaf::Format::svg, sheaf::Format::musicxml};
    request.split = true;
    const sheaf::Plan plan = workshop.plan(request);
    REQUIRE(plan.made.status == sheaf::Made::Status::done);
    for (const sheaf::Job& job : plan.jobs) {
      const sheaf::Made result = workshop.make(job);
      if (result.status == sheaf::Made::Status::lesson_wrong) continue;
      REQUIRE(result.status == sheaf::Made::Status::done);
      Handout handout{job.suffix, {}, {}, {}, {}};
      std::string svg;
      for (const sheaf::Output& output : result.outputs) {
        if (output.suffix.ends_with(".svg")) {
          svg += output.bytes;
        } else {
          handout.notes.push_back(test::notes_of(output.bytes));
        }
      }
      handout.digits = test::digits_of(svg, strings);
      handout.note_labels = test::named_in(test::labels_of(svg, "note-label"));
      handout.degree_labels = test::labels_of(svg, "degree-label");
      made.push_back(std::move(handout));
    }
  }
  return made;
}

// Places of what is struck, sorted: chords stand from the tab's top line down, and may come to lie on other strings.
std::vector<test::StringAndFret> places_heard(const std::vector<test::Heard>& notes, bool held) {
  std::vector<test::StringAndFret> places;
  for (const test::Heard& note : notes) {
    if (!note.dead && !note.repeated && note.held == held) places.push_back(note.place);
  }
  std::sort(places.begin(), places.end());
  return places;
}

// The figures that the page has and the document has not.
std::vector<test::StringAndFret> more_on_page(const std::vector<test::Digit>& digits,
                                              const std::vector<test::StringAndFret>& heard) {
  std::vector<test::StringAndFret> shown;
  for (const test::Digit& digit : digits) shown.push_back(digit.place);
  std::sort(shown.begin(), shown.end());
  CHECK(std::includes(shown.begin(), shown.end(), heard.begin(), heard.end()));
  std::vector<test::StringAndFret> more;
  std::set_difference(shown.begin(), shown.end(), heard.begin(), heard.end(), std::back_inserter(more));
  return more;
}

std::vector<int> pitches_heard(const std::vector<test::Heard>& notes) {
  std::vector<int> pitches;
  for (const test::Heard& note : notes) {
    if (!note.dead && !note.held) pitches.push_back(note.midi);
  }
  std::sort(pitches.begin(), pitches.end());
  return pitches;
}

// What the page shows is what the document says, and each of its pitches is where its figure stands.
void check_page(const Handout& handout, const test::Strings& strings, int capo) {
  REQUIRE(handout.digits.size() == handout.notes.size());
  for (std::size_t i = 0; i < handout.notes.size(); ++i) {
    CAPTURE(i);
    for (const test::StringAndFret& extra : more_on_page(handout.digits[i], places_heard(handout.notes[i], false))) {
      // A held note is shown again where a new line begins.
      const auto held = places_heard(handout.notes[i], true);
      CHECK(std::binary_search(held.begin(), held.end(), extra));
    }
    for (const test::Heard& note : handout.notes[i]) {
      if (!note.dead) CHECK(note.midi == test::sounding(strings, capo, note.place, note.harmonic));
    }
  }
}

// All labels name what sounds.
void check_note_labels(const Handout& handout) {
  std::vector<int> sounds;
  for (const auto& example : handout.notes) {
    for (const test::Heard& note : example) {
      if (!note.dead && !note.held && !note.grace && !note.repeated) sounds.push_back(note.midi % 12);
    }
  }
  std::vector<int> named = handout.note_labels;
  std::sort(sounds.begin(), sounds.end());
  std::sort(named.begin(), named.end());
  CHECK(named == sounds);
}

// Each example's pitches are the original's, moved by one interval; the greatest of them.
int check_interval(const Handout& own, const Handout& here) {
  REQUIRE(here.notes.size() == own.notes.size());
  int most = 0;
  for (std::size_t i = 0; i < own.notes.size(); ++i) {
    std::vector<int> moved = pitches_heard(own.notes[i]);
    const std::vector<int> there = pitches_heard(here.notes[i]);
    REQUIRE(there.size() == moved.size());
    if (moved.empty()) continue;  // strums
    const int by = there.front() - moved.front();
    for (int& midi : moved) midi += by;
    CHECK(there == moved);
    most = std::max(most, std::abs(by));
  }
  return most;
}

// The widest that a hand spans between the figures that stand together, in mm.
double widest(const std::vector<test::Digit>& digits, const test::Strings& strings) {
  std::map<std::string, std::pair<int, int>> frets;  // by event: the lowest stopped and the highest
  for (const test::Digit& digit : digits) {
    if (digit.place.fret == 0 || digit.small) continue;
    const auto [it, fresh] = frets.emplace(digit.event, std::pair(digit.place.fret, digit.place.fret));
    it->second = {std::min(it->second.first, digit.place.fret), std::max(it->second.second, digit.place.fret)};
  }
  double most = 0;
  for (const auto& [event, outer] : frets) most = std::max(most, test::span(strings, 0, outer.first, outer.second));
  return most;
}

}  // namespace

TEST_CASE(
    "every demo lesson in twelve keys: its page, its document and its labels say the music moved by one interval") {
  for (const std::string& demo : demos) {
    const std::string text = labelled(text_of(demo), "[\"notes\", \"chord-degrees\"]");
    const test::Strings& strings = test::strings_of(said_of(text, "instrument"));
    const std::vector<Handout> made = handouts(text, {"all"});
    REQUIRE(made.size() == 13);
    for (const Handout& here : made) {
      CAPTURE(demo, here.key);
      check_page(here, strings, 0);
      check_note_labels(here);
      CHECK(check_interval(made.front(), here) <= 12);
      CHECK(here.degree_labels == made.front().degree_labels);
      // Common practice: a hand spans 130 mm at most.
      for (const auto& example : here.digits) CHECK(widest(example, strings) <= 130);
    }
  }
}

TEST_CASE("generated lessons of every instrument in other keys: page, document and labels say the same music") {
  std::map<std::string, int> done;  // by instrument
  for (unsigned seed = 1; seed <= 150; ++seed) {
    const std::string text = labelled(test::random_lesson(seed), "[\"notes\"]");
    const std::string instrument = said_of(text, "instrument");
    const std::string capo = said_of(text, "capo");
    const test::Strings& strings = test::strings_of(instrument);
    const std::vector<theory::Key> all = theory::all_keys(theory::parse_key(said_of(text, "key"))->mode);
    const std::string a = all[seed % 12].to_string();
    const std::string b = all[(seed * 5 + 3) % 12].to_string();
    const std::vector<Handout> made = handouts(text, a == b ? std::vector{a} : std::vector{a, b});
    for (const Handout& here : made) {
      CAPTURE(seed, here.key);
      check_page(here, strings, capo.empty() ? 0 : std::stoi(capo));
      check_note_labels(here);
      check_interval(made.front(), here);
    }
    done[instrument] += static_cast<int>(made.size()) - 1;
  }
  // Chords thrown together by dice, and harmonics on any string, often have no other place.
  CHECK(done.size() == 10);
  for (const auto& [instrument, count] : done) {
    CAPTURE(instrument);
    CHECK(count >= 2);
  }
}

namespace {

// The lesson in each of the keys by --key, and by a file written in that key: byte for byte the same outputs.
int check_files(const std::string& text, const std::vector<std::string>& keys,
                const std::vector<sheaf::Format>& formats) {
  platform::DiskSystem disk;
  platform::MemorySystem system(disk);
  system.files["a.lesson.toml"] = text;
  sheaf::Workshop workshop(system);
  sheaf::Request request;
  request.lesson = "a.lesson.toml";
  request.keys = keys;
  request.formats = formats;
  const sheaf::Plan plan = workshop.plan(request);
  REQUIRE(plan.made.status == sheaf::Made::Status::done);
  int compared = 0;
  for (const sheaf::Job& job : plan.jobs) {
    CAPTURE(job.suffix);
    const sheaf::Made direct = workshop.make(job);
    const sheaf::Transposed file = workshop.transpose(request.lesson, job.to.key->to_string());
    CHECK(file.moved.has_value() == (direct.status == sheaf::Made::Status::done));
    if (!file.moved) continue;
    sheaf::Request again;
    again.lesson = "there" + job.suffix + ".lesson.toml";
    again.formats = formats;
    system.files[again.lesson] = file.text;
    const sheaf::Plan there = workshop.plan(again);
    REQUIRE(there.jobs.size() == 1);
    const sheaf::Made written = workshop.make(there.jobs.front());
    REQUIRE(direct.outputs.size() == written.outputs.size());
    for (std::size_t i = 0; i < direct.outputs.size(); ++i) {
      CHECK(direct.outputs[i].suffix == written.outputs[i].suffix);
      CHECK((direct.outputs[i].bytes == written.outputs[i].bytes));
    }
    ++compared;
  }
  return compared;
}

}  // namespace

TEST_CASE("a demo lesson's file in another key makes the handout that --key makes, byte for byte") {
  for (const std::string& demo : demos) {
    CAPTURE(demo);
    CHECK(check_files(text_of(demo), {"all"}, {sheaf::Format::pdf, sheaf::Format::svg, sheaf::Format::musicxml}) == 12);
  }
}

TEST_CASE("a generated lesson's file in another key makes the handout that --key makes, byte for byte") {
  int compared = 0;
  for (unsigned seed = 201; seed <= 280; ++seed) {
    CAPTURE(seed);
    const std::string text = test::random_lesson(seed);
    const std::vector<theory::Key> all = theory::all_keys(theory::parse_key(said_of(text, "key"))->mode);
    compared += check_files(text, {all[seed % 12].to_string()}, {sheaf::Format::svg, sheaf::Format::musicxml});
  }
  // Chords thrown together by dice, and harmonics on any string, often have no other place.
  CHECK(compared >= 20);
}

TEST_CASE("the texts of a demo lesson say the new notes and places") {
  // By hand: six semitones up, and the lowered fifth of Eb is a double flat.
  const platform::MemorySystem system;
  source::Diagnostics unused;
  const auto moved = [&](const std::string& demo, const char* key) {
    const auto read = lesson::read_lesson("a.lesson.toml", text_of(demo), system);
    REQUIRE(read.lesson);
    transposition::Destination to;
    to.key = theory::parse_key(key);
    const auto there = transposition::move(*read.lesson, to, unused);
    REQUIRE(there);
    return score::build_score(there->lesson, unused);
  };
  const score::Score walk = moved("boathouse-walk", "Eb dorian");
  REQUIRE(walk.examples[0].practice.size() == 2);
  CHECK(plain(walk.examples[0].practice[0].front().runs) ==
        "Bar 1 ends on B♭♭ (D string, 7th fret), a half step over the A♭ that it leads to.");
  CHECK(plain(walk.examples[0].practice[1].front().runs) ==
        "Bar 2 comes from below: D, E string, 10th fret, a half step under E♭.");
  const score::Score vamp = moved("low-tide-vamp", "C dorian");
  CHECK(plain(vamp.intro.back().runs)
            .ends_with("It stays on C and leans on A, the note that tells C Dorian from plain minor."));
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
