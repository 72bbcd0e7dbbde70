// Generated lessons of every instrument: moved to other keys, and to other keys as files.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "fretboard/reach.h"
#include "lesson/reader.h"
#include "moving.h"
#include "platform/memory_system.h"
#include "support/random_lesson.h"
#include "theory/keys.h"
#include "transposition/rewrite.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;
using namespace fretsheaf::transposition::test;

namespace {

struct File {
  lesson::ReadLesson read;
  const lesson::Lesson& lesson() const { return *read.lesson; }
};

File file_of(const std::string& text) {
  const platform::MemorySystem system;
  File file{lesson::read_lesson("slipway.lesson.toml", text, system)};
  for (const source::Diagnostic& one : file.read.diagnostics.list()) {
    if (one.severity == source::Severity::error) UNSCOPED_INFO(render(one, file.read.files));
  }
  return file;
}

// All that a lesson's music says but how it was written: for comparing two files.
std::string music_text(const lesson::Lesson& lesson, std::size_t example) {
  std::string text = lesson.examples[example].key.to_string() + ":" + places(lesson, example);
  for (const lesson::Bar& bar : lesson.examples[example].music.bars) {
    text += "\n" + std::to_string(bar.number);
    for (const lesson::ChordMark& mark : bar.chords) text += " " + mark.at.to_string() + to_string(mark.chord);
    for (const lesson::Event& event : bar.events) {
      text += " | " + event.at.to_string() + "+" + event.length.to_string();
      for (const lesson::Note& note : event.notes) {
        if (note.spell) text += " " + note.spell->value.to_string();
        if (note.finger) text += " f" + note.finger->value;
        if (note.hand) text += " h" + note.hand->value;
        text += " " + std::to_string(static_cast<int>(note.approach)) + (note.accent ? ">" : "") +
                (note.staccato ? "." : "") + (note.vibrato ? "~" : "") + (note.approach_from_nowhere ? "?" : "");
      }
    }
  }
  return text;
}

std::vector<int> raised(std::vector<int> pitches, int by) {
  for (int& midi : pitches) midi += by;
  return pitches;
}

// Pitches without their octaves.
std::vector<int> classes(std::vector<int> pitches) {
  for (int& midi : pitches) midi %= 12;
  return pitches;
}

// The widest that a hand spans in an event, in mm.
double widest(const lesson::Lesson& lesson, const lesson::Music& music) {
  double most = 0;
  const double length = lesson.instrument->scale_length;
  for (const lesson::Bar& bar : music.bars) {
    for (const lesson::Event& event : bar.events) {
      int low = 100;
      int high = 0;
      for (const lesson::Note& note : event.notes) {
        if (note.dead || note.place.fret == 0 || note.harmonic) continue;
        low = std::min(low, note.place.fret);
        high = std::max(high, note.place.fret);
      }
      if (high == 0) continue;
      most = std::max(most, fretboard::fret_position(lesson.neck, length, high) -
                                fretboard::fret_position(lesson.neck, length, low));
    }
  }
  return most;
}

std::vector<theory::Key> some_keys(const lesson::Lesson& lesson, unsigned seed) {
  const std::vector<theory::Key> all = theory::all_keys(lesson.key.mode);
  return {all[seed % 12], all[(seed * 5 + 3) % 12], all[(seed * 7 + 8) % 12]};
}

void check_music(const lesson::Lesson& before, const Moved& there) {
  for (std::size_t i = 0; i < before.examples.size(); ++i) {
    const ExampleReport& report = there.examples[i];
    CHECK(pitches(there.lesson, i) == raised(pitches(before, i), report.semitones));
    CHECK(theory::has_signature(there.lesson.examples[i].key));
    // A teacher's own stretch may be taken along, and grow as the frets do towards the nut.
    const double allowed = std::max(fretboard::most_reach, widest(before, before.examples[i].music)) * 1.1 + 0.1;
    CHECK(widest(there.lesson, there.lesson.examples[i].music) <= allowed);
    for (const lesson::Bar& bar : there.lesson.examples[i].music.bars) {
      for (const lesson::Event& event : bar.events) {
        for (std::size_t n = 0; n < event.notes.size(); ++n) {
          CHECK((event.notes[n].dead || there.lesson.neck.has(event.notes[n].place)));
          CHECK((n == 0 || event.notes[n - 1].place.string < event.notes[n].place.string));
        }
      }
    }
  }
}

}  // namespace

TEST_CASE("generated lessons move as one: each example's pitches by one interval, all places within reach") {
  std::map<std::string, int> done;  // by instrument
  for (unsigned seed = 1; seed <= 200; ++seed) {
    const File file = file_of(fretsheaf::test::random_lesson(seed));
    REQUIRE(file.read.lesson);
    for (const theory::Key& key : some_keys(file.lesson(), seed)) {
      CAPTURE(seed, key.to_string());
      Destination to;
      to.key = key;
      source::Diagnostics diagnostics;
      const auto there = move(file.lesson(), to, diagnostics);
      CHECK(there.has_value() == !diagnostics.has_errors());
      if (!there) continue;
      check_music(file.lesson(), *there);
      ++done[std::string(file.lesson().instrument->name)];
    }
  }
  // Chords thrown together by dice, and harmonics on any string, often have no other place.
  for (const std::string_view instrument : fretboard::instrument_names()) {
    CAPTURE(instrument);
    CHECK(done[std::string(instrument)] >= 8);
  }
}

TEST_CASE("a generated lesson's file in another key reads back as the lesson moved, and moves back") {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    std::string text = fretsheaf::test::random_lesson(seed);
    if (seed % 4 == 0) {
      for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos; at += 2) text.replace(at, 1, "\r\n");
    }
    const File file = file_of(text);
    REQUIRE(file.read.lesson);
    for (const theory::Key& key : some_keys(file.lesson(), seed)) {
      CAPTURE(seed, key.to_string());
      Destination to;
      to.key = key;
      source::Diagnostics unused;
      const auto there = move(file.lesson(), to, unused);
      if (!there) continue;
      const std::string written = rewritten(file.read.files[0], file.lesson(), there->lesson);
      CAPTURE(written);
      const File again = file_of(written);
      REQUIRE(again.read.lesson);
      CHECK((seed % 4 != 0) == (written.find('\r') == std::string::npos));
      for (std::size_t i = 0; i < file.lesson().examples.size(); ++i) {
        CHECK(music_text(again.lesson(), i) == music_text(there->lesson, i));
      }
      if (key == file.lesson().key) CHECK(written == text);

      to.key = file.lesson().key;
      const auto back = move(again.lesson(), to, unused);
      if (!back) continue;
      for (std::size_t i = 0; i < file.lesson().examples.size(); ++i) {
        CHECK(classes(pitches(back->lesson, i)) == classes(pitches(file.lesson(), i)));
      }
    }
  }
}
