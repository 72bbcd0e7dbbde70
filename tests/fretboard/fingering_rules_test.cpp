#include <catch2/catch.hpp>

#include "fretboard/fingering_oracle.h"
#include "fretboard/fingering_random.h"

using namespace fretsheaf::fretboard;

namespace {

std::string fingered(const Played& on, const Line& line) {
  const Fingering fingering = find_fingering(line, on.neck, on.scale_length);
  if (fingering.unplayable.empty()) CHECK(cost_of(line, fingering, on) == fingering.cost);
  return text(on.neck, fingering);
}

// A line whose second event's first note is joined to the first one's.
Line joined(const Played& on, const char* places, int up, Joint joint, int second = 1) {
  Line line = shifted_line(on.neck, places, up);
  NoteToPlace& note = line.events[static_cast<std::size_t>(second)].notes.front();
  note.joint = joint;
  note.from = {0, 0};
  return line;
}

void forget_original(Line& line) {
  for (EventToPlace& event : line.events) {
    for (NoteToPlace& note : event.notes) {
      note.original.reset();
      for (GraceToPlace& grace : note.graces) grace.original.reset();
    }
  }
}

}  // namespace

TEST_CASE("What is joined stays on one string") {
  const Played bass = instrument("bass");
  // Alone the first note would be the open D string.
  for (const Joint joint : {Joint::hammer_on, Joint::slide_up}) {
    Line line = joined(bass, "A5 A7", 0, joint);
    CHECK(fingered(bass, line) == "A5 A7");
    forget_original(line);
    CHECK(fingered(bass, line) == (joint == Joint::hammer_on ? "D0 D2" : "A5 A7"));
  }
  Line pulled = joined(bass, "D4 D2", -3, Joint::pull_off);
  CHECK(fingered(bass, pulled) == "A6 A4");
}

TEST_CASE("A note that is fixed stays, and the others go round it") {
  const Played bass = instrument("bass");
  Line line = free_line(bass.neck, "D2 E2 F2 G2");
  CHECK(text(bass.neck, find_fingering(line, bass.neck, bass.scale_length)) == "D0 D2 D3 G0");
  line.events[0].notes[0].fixed = Place{3, 5};
  line.events[2].notes[0].fixed = Place{3, 8};
  const Fingering found = find_fingering(line, bass.neck, bass.scale_length);
  REQUIRE(found.unplayable.empty());
  CHECK(text(bass.neck, found) == "A5 A7 A8 G0");
  // A dead note keeps its string.
  line.events[1].notes[0].sound = Sound::dead;
  line.events[1].notes[0].fixed = Place{1, 0};
  const Place dead = find_fingering(line, bass.neck, bass.scale_length).events[1][0].place;
  CHECK(dead.string == 1);
  CHECK(dead.fret == 0);
}

TEST_CASE("A slide keeps off the open string, unless the original's did not") {
  const Played bass = instrument("bass");
  Line line = joined(bass, "D2 D4", -2, Joint::slide_up);
  CHECK(fingered(bass, line) == "A5 A7");
  line.events[0].notes[0].original = Place{2, 0};
  CHECK(fingered(bass, line) == "D0 D2");
}

TEST_CASE("A hammer-on spans no more than a hand, or a tenth more than the original's") {
  const Played bass = instrument("bass");
  // Frets 5 to 9 are 133.5 mm apart, 4 to 8 141.4, 3 to 7 149.8: computed from L (1 - 2^(-n/12)).
  CHECK(fingered(bass, joined(bass, "E5 E9", 0, Joint::hammer_on)) == "E5 E9");
  CHECK(fingered(bass, joined(bass, "E5 E9", -1, Joint::hammer_on)) == "E4 E8");
  CHECK(fingered(bass, joined(bass, "E5 E9", -2, Joint::hammer_on)) == "1.0 joint too wide");
  const Fingering far = find_fingering(joined(bass, "E5 E9", -2, Joint::hammer_on), bass.neck, bass.scale_length);
  CHECK(far.unplayable.front().least_span == Approx(149.8).margin(0.05));
  // On another string the same notes lie higher, and nearer.
  CHECK(fingered(bass, joined(bass, "D5 D9", -2, Joint::hammer_on)) == "A8 A12");
}

TEST_CASE("A joint against its direction, or of notes that share no string, is none") {
  const Played bass = instrument("bass");
  CHECK(fingered(bass, joined(bass, "D4 D2", 0, Joint::hammer_on)) == "1.0 not on one string");
  CHECK(fingered(bass, joined(bass, "E1 G20", 0, Joint::slide_up)) == "1.0 not on one string");
}

TEST_CASE("A note that a later one is joined to keeps its string free until then") {
  const Played bass = instrument("bass");
  const auto middle = [&](const char* pitch) {
    Line line = joined(bass, "A0 E5 A3", 0, Joint::hammer_on, 2);
    forget_original(line);
    line.events[1].notes[0].midi = fretsheaf::theory::parse_pitch(pitch).value().midi();
    return fingered(bass, line);
  };
  CHECK(middle("D2") == "A0 D0 A3");
  // Alone this would be the second fret of the A string, between the two.
  CHECK(middle("B1") == "A0 E7 A3");
}

TEST_CASE("A held note is held where it was, while others move") {
  const Played guitar = instrument("guitar");
  Line line = shifted_line(guitar.neck, "A3+e3 A3+e5 A3+e6", 0);
  for (std::size_t event = 1; event < 3; ++event) {
    line.events[event].notes[0].joint = Joint::held;
    line.events[event].notes[0].from = NoteIndex{static_cast<int>(event) - 1, 0};
  }
  CHECK(fingered(guitar, line) == "A3+e3 A3+e5 A3+e6");
  forget_original(line);
  CHECK(fingered(guitar, line) == "A3+e3 A3+e5 A3+e6");
  // Too far for one hand on every string that has it.
  line.events[2].notes[1].midi += 11;
  CHECK(fingered(guitar, line) == "2.1 out of reach");
}

TEST_CASE("A held note takes its string from all others") {
  const Played ukulele = instrument("ukulele");
  Line line = free_line(ukulele.neck, "C4 C4+C#4");
  line.events[1].notes[0].joint = Joint::held;
  line.events[1].notes[0].from = NoteIndex{0, 0};
  CHECK(fingered(ukulele, line) == "1.1 no free string");
}

TEST_CASE("A grace note is on its note's string") {
  const Played guitar = instrument("guitar");
  Line line = shifted_line(guitar.neck, "G2 B3", -3);
  NoteToPlace& note = line.events[1].notes[0];
  note.graces.push_back({guitar.neck.midi({2, 1}) - 3, Joint::none, Place{2, 1}});
  note.joint = Joint::hammer_on;
  // The B string has the note, open, and not the grace note under it.
  CHECK(fingered(guitar, line) == "D4 (G2)G4");
  note.graces[0].midi = guitar.neck.midi({6, 0});
  note.midi = guitar.neck.midi({1, 20});
  CHECK(fingered(guitar, line) == "1.0 not on one string");
}

TEST_CASE("A note keeps off the strings that it may not lie on") {
  const Played bass = instrument("bass");
  Line line = shifted_line(bass.neck, "A3 A5", 2);
  line.events[1].notes[0].not_on = {3};
  CHECK(fingered(bass, line) == "A5 D2");
  line.events[1].notes[0].not_on = {2, 3};
  CHECK(fingered(bass, line) == "A5 E12");
  line.events[1].notes[0].not_on = {1, 2, 3, 4};
  CHECK(fingered(bass, line) == "1.0 nowhere");
}

TEST_CASE("A bend or vibrato needs a finger") {
  const Played guitar = instrument("guitar");
  Line line = shifted_line(guitar.neck, "B3 B5", -5);
  CHECK(fingered(guitar, line) == "G2 B0");
  line.events[1].notes[0].stopped = true;
  CHECK(fingered(guitar, line) == "G2 G4");
  line.events[1].notes[0].original = Place{2, 0};
  CHECK(fingered(guitar, line) == "G2 B0");
  const Played bass = instrument("bass");
  Line lowest = shifted_line(bass.neck, "E5", -5);
  lowest.events[0].notes[0].stopped = true;
  CHECK(fingered(bass, lowest) == "0.0 nowhere");
}

TEST_CASE("A natural harmonic is found again at its sounding pitch, or is none") {
  const Played guitar = instrument("guitar");
  Line line = shifted_line(guitar.neck, "e12", 0);
  NoteToPlace& note = line.events[0].notes[0];
  note.sound = Sound::harmonic;
  CHECK(fingered(guitar, line) == "e12");
  note.midi = guitar.neck.midi({2, 12});  // the octave of the B string
  CHECK(fingered(guitar, line) == "B12");
  note.midi = guitar.neck.midi({1, 12}) + 1;
  CHECK(fingered(guitar, line) == "0.0 no harmonic");
}

TEST_CASE("A dead note goes with its neighbour") {
  const Played bass = instrument("bass");
  const auto dead = [&](const char* places, int up, std::initializer_list<std::size_t> which) {
    Line line = shifted_line(bass.neck, places, up);
    for (const std::size_t event : which) line.events[event].notes.front().sound = Sound::dead;
    return fingered(bass, line);
  };
  CHECK(dead("A5 A0 A7", 2, {1}) == "A7 A0 A9");
  CHECK(dead("A0 A0 A0 A2", -2, {1, 2}) == "E3 E0 E0 A0");
  CHECK(dead("A0 A0 A1", -2, {0, 1}) == "E0 E0 E4");
  CHECK(dead("D2 A0 D0", -3, {1}) == "A4 E0 A2");
  CHECK(dead("G0 E0 G0", -1, {1}) == "D4 E0 D4");  // below the lowest string there is none
  CHECK(dead("G0 D0", 0, {0, 1}) == "G0 D0");
}

TEST_CASE("Dead notes alone move together, and stay on the neck") {
  const Played guitar = instrument("guitar");
  const auto muted = [&](const char* places, int up) {
    Line line = shifted_line(guitar.neck, places, up);
    for (NoteToPlace& note : line.events[1].notes) note.sound = Sound::dead;
    return fingered(guitar, line);
  };
  CHECK(muted("A3 A0+D0 A3", 2) == "A5 A0+D0 A5");
  CHECK(muted("A0 A0+D0 A0", -2) == "E3 E0+A0 E3");
  CHECK(muted("A0 E0+A0 A0", -2) == "E3 E0+A0 E3");
}

TEST_CASE("Dead notes of a chord keep to the strings that the others leave") {
  const Played guitar = instrument("guitar");
  Line line = shifted_line(guitar.neck, "E0+A3+D2+G0+B1", 2);
  line.events[0].notes[0].sound = Sound::dead;
  CHECK(fingered(guitar, line) == "E0+A5+D4+G2+B3");
  Line free = free_line(guitar.neck, "E2+A2+E4");
  free.events[0].notes[1].sound = Sound::dead;
  CHECK(fingered(guitar, free) == "E0+A0+e0");
}

TEST_CASE("Two notes that one string alone has are no chord") {
  const Played bass = instrument("bass");
  CHECK(fingered(bass, shifted_line(bass.neck, "A1+D5", -3)) == "E3+D2");
  CHECK(fingered(bass, free_line(bass.neck, "F1+G1")) == "0.1 no free string");
  CHECK(fingered(bass, free_line(bass.neck, "F1+G3")) == "0.1 out of reach");
}

TEST_CASE("A teacher's stretch is taken at its word, and a little more when it moves down") {
  const Played bass = instrument("bass");
  // Frets 3 to 7: 149.8 mm; 2 to 6 158.7, 1 to 5 168.2 (computed). A tenth more than 149.8 is 164.8.
  CHECK(fingered(bass, shifted_line(bass.neck, "E3+A7", 0)) == "E3+A7");
  CHECK(fingered(bass, shifted_line(bass.neck, "E3+A7", -1)) == "E2+A6");
  CHECK(fingered(bass, shifted_line(bass.neck, "E3+A7", -2)) == "E1+D0");
  CHECK(fingered(bass, shifted_line(bass.neck, "E3+G7", -2)) == "0.1 out of reach");
}

TEST_CASE("A chord that would take a fifth finger goes to other strings where it can") {
  const Played guitar = instrument("guitar");
  // With open strings stopped, no finger is left for them: but where no other string has the note, the shape stays.
  CHECK(fingered(guitar, shifted_line(guitar.neck, "E3+A2+D0+G0+B0+e3", 1)) == "E4+A3+D1+G1+B1+e4");
  CHECK(fingered(guitar, shifted_line(guitar.neck, "A2+D1+G2+B0+e2", 1)) == "A3+D2+G3+B1+e3");
  CHECK(fingered(guitar, shifted_line(guitar.neck, "E3+A2+D1+G2+B0", 2)) == "E5+A4+D3+B0+G6");
}

TEST_CASE("A capo and a short string count their frets as the neck does") {
  const Played guitar = instrument("guitar", 2);
  CHECK(fingered(guitar, shifted_line(guitar.neck, "E3 A2 D0 G0 B3", 0)) == "E3 A2 D0 G0 B3");
  CHECK(fingered(guitar, free_line(guitar.neck, "E2 F#2")) == "0.0 too low");
  const Played banjo = instrument("banjo");
  CHECK(fingered(banjo, shifted_line(banjo.neck, "G0 B0 g0 d0", 2)) == "G2 B2 g7 d2");
  CHECK(fingered(banjo, shifted_line(banjo.neck, "G0 B0 g0 d0", 0)) == "G0 B0 g0 d0");
  // Under the short string's open pitch its part of the neck has no fret.
  CHECK(fingered(banjo, shifted_line(banjo.neck, "G3 g0", -1)) == "G2 d4");
}

TEST_CASE("All that is unplayable is named") {
  const Played bass = instrument("bass");
  CHECK(fingered(bass, free_line(bass.neck, "D1 E1 E5 F1+G1 r C2+D1")) ==
        "0.0 too low, 2.0 too high, 3.1 no free string, 5.1 too low");
}

TEST_CASE("An empty line, and one of rests, costs nothing") {
  const Played bass = instrument("bass");
  CHECK(find_fingering({}, bass.neck, bass.scale_length) == Fingering{});
  const Fingering rests = find_fingering(free_line(bass.neck, "r r"), bass.neck, bass.scale_length);
  CHECK(rests.events == std::vector<std::vector<PlacedNote>>(2));
  CHECK(rests.cost == 0);
}

TEST_CASE("The hand goes no further than it must, and waits in rests") {
  const Played bass = instrument("bass");
  const Fingering fingering =
      find_fingering(shifted_line(bass.neck, "r A5 D7 r E12 r", 0), bass.neck, bass.scale_length);
  CHECK(fingering.hands == std::vector<int>{5, 5, 5, 5, 9, 9});
}

TEST_CASE("Time decides where the hand jumps") {
  const Played guitar = instrument("guitar");
  Line line = free_line(guitar.neck, "A3 E4 A4 C#5 E5 A5 E4 A3");
  for (EventToPlace& event : line.events) event.length = {1, 16};
  CHECK(fingered(guitar, line) == "A12 e0 G14 B14 e12 e17 e0 A12");
  for (EventToPlace& event : line.events) event.length = 1;
  CHECK(fingered(guitar, line) == "G2 e0 e5 e9 e12 e17 e0 G2");
}
