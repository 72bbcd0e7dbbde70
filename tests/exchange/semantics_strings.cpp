#include <algorithm>
#include <cmath>
#include <set>

#include "exchange/semantics_rules.h"

namespace fretsheaf::exchange::test {

namespace {

// The lowest partial with a node under that fret, in semitones above the open string (physics; a finger covers a
// twentieth of the partial's wave).
int harmonic_semitones(int fret) {
  const double touched = 1 - std::pow(2.0, -fret / 12.0);
  for (int partial = 2; partial <= 6; ++partial) {
    const double waves = touched * partial;
    if (std::abs(waves - std::round(waves)) < 0.05) return static_cast<int>(std::lround(12 * std::log2(partial)));
  }
  return -1000;
}

class Strings {
 public:
  Strings(const Timeline& timeline, bool short_fifth, Complaints& complaints)
      : timeline_(timeline), short_fifth_(short_fifth), complaints_(complaints) {}

  void check() {
    for (std::size_t m = 0; m < timeline_.measures.size(); ++m) check_staves(static_cast<int>(m));
    for (const Item& item : timeline_.items) {
      if (item.note() && !item.rest) note(item);
    }
  }

 private:
  void complain(int measure, const std::string& text) { complaints_.push_back(timeline_.place(measure) + text); }

  void check_staves(int measure) {
    const MeasureFacts& facts = timeline_.measures[static_cast<std::size_t>(measure)];
    for (int staff = 1; staff <= facts.staves; ++staff) {
      const auto clef = facts.clefs.find(staff);
      if (clef == facts.clefs.end()) {
        complain(measure, "a staff without a clef");
      } else if (clef->second == "TAB") {
        const auto tuning = facts.tunings.find(staff);
        const bool tuned = tuning != facts.tunings.end() &&
                           tuning->second.midi.size() == static_cast<std::size_t>(tuning->second.lines);
        if (!tuned) complain(measure, "a TAB staff whose lines are not all tuned");
      }
    }
    const auto last = [&](const auto& by_staff) { return by_staff.empty() ? 0 : by_staff.rbegin()->first; };
    if (std::max({last(facts.clefs), last(facts.tunings), last(facts.transposed)}) > facts.staves) {
      complain(measure, "attributes of a staff that is not there");
    }
  }

  void note(const Item& item) {
    const MeasureFacts& facts = timeline_.facts(item);
    const XMLElement* technical = at(*item.element, {"notations", "technical"});
    if (technical != nullptr) bends(item, *technical);
    const auto clef = facts.clefs.find(item.staff);
    if (clef == facts.clefs.end() || clef->second != "TAB") return;
    const XMLElement* string = technical == nullptr ? nullptr : technical->FirstChildElement("string");
    const XMLElement* fret = technical == nullptr ? nullptr : technical->FirstChildElement("fret");
    if (string == nullptr || fret == nullptr) return complain(item.measure, "a note of a TAB staff without its place");
    const auto tuning = facts.tunings.find(item.staff);
    if (tuning == facts.tunings.end()) return;
    const int number = number_of(own_text(*string));
    // Strings count from the highest, lines from the bottom.
    const auto open = tuning->second.midi.find(tuning->second.lines + 1 - number);
    if (open == tuning->second.midi.end()) return complain(item.measure, "a string that the staff has not");
    taken(item, number);
    pitch(item, *technical, open->second + tuning->second.capo, number_of(own_text(*fret)),
          short_fifth_ && number == tuning->second.lines);
  }

  void taken(const Item& item, int string) {
    if (item.grace) return;
    if (item.measure != measure_ || item.start != start_ || item.staff != staff_) strings_.clear();
    measure_ = item.measure;
    start_ = item.start;
    staff_ = item.staff;
    if (!strings_.insert(string).second) complain(item.measure, "a string that is played twice at once");
  }

  void pitch(const Item& item, const XMLElement& technical, int open, int fret, bool is_short) {
    const auto written = written_midi(*item.element);
    if (!written) return complain(item.measure, "a note of a TAB staff without a pitch");
    int expected = open + fret - (is_short && fret > 0 ? 5 : 0);
    if (const XMLElement* harmonic = technical.FirstChildElement("harmonic")) {
      if (harmonic->FirstChildElement("sounding-pitch") != nullptr) {
        expected = open + harmonic_semitones(fret - (is_short ? 5 : 0));
      } else if (harmonic->FirstChildElement("touching-pitch") == nullptr) {
        expected = open;
      }
    }
    const auto& transposed = timeline_.facts(item).transposed;
    const auto own = transposed.find(transposed.contains(item.staff) ? item.staff : 0);
    const int sounding = *written + (own == transposed.end() ? 0 : own->second);
    if (sounding != expected) complain(item.measure, "a pitch that its string and fret do not make");
  }

  // A release has the negative steps of its bend, and stands after it.
  void bends(const Item& item, const XMLElement& technical) {
    double bent = 0;
    for (const XMLElement* bend : all(technical, "bend")) {
      const double alter = std::stod("0" + text_of(*bend, "bend-alter").substr(text_of(*bend, "bend-alter")[0] == '-'));
      const bool negative = text_of(*bend, "bend-alter").starts_with("-");
      const bool release = bend->FirstChildElement("release") != nullptr;
      if (negative != release || alter == 0) complain(item.measure, "a bend whose direction is wrong");
      if (release && alter != bent) complain(item.measure, "a release that does not undo its bend");
      bent = release ? 0 : alter;
    }
  }

  const Timeline& timeline_;
  bool short_fifth_;
  Complaints& complaints_;
  std::set<int> strings_;
  int measure_ = -1;
  int staff_ = 0;
  Rational start_;
};

int accidental_alter(const std::string& name) {
  const std::map<std::string, int> known = {{"flat-flat", -2}, {"flat", -1},        {"natural", 0},
                                            {"sharp", 1},      {"double-sharp", 2}, {"sharp-sharp", 2}};
  const auto found = known.find(name);
  return found == known.end() ? 99 : found->second;
}

void check_accidentals(const Timeline& timeline, Complaints& complaints) {
  for (const Item& item : timeline.items) {
    const XMLElement* pitch = item.element->FirstChildElement("pitch");
    if (!item.note() || pitch == nullptr) continue;
    const std::string accidental = text_of(*item.element, "accidental");
    if (!accidental.empty() && accidental_alter(accidental) != number_of(text_of(*pitch, "alter"))) {
      complaints.push_back(timeline.place(item.measure) + "an accidental that is not the note's");
    }
  }
}

// Sharps and flats that a signature puts on a step: F C G D A E B, or the other way round.
int key_alter(int fifths, const std::string& step) {
  const std::string order = "FCGDAEB";
  const auto at = static_cast<int>(order.find(step));
  if (fifths > 0) return at < fifths ? 1 : 0;
  return 6 - at < -fifths ? -1 : 0;
}

// An accidental holds to the end of its measure, on its line or space alone, and over a tie (common practice). Without
// one a note is what the signature, or the accidental before it, says.
void check_missing_accidentals(const Timeline& timeline, Complaints& complaints) {
  std::map<std::pair<int, std::string>, int> written;  // by staff and "F4", in this measure
  int measure = -1;
  for (const Item& item : timeline.items) {
    const XMLElement* pitch = item.element->FirstChildElement("pitch");
    if (!item.note() || pitch == nullptr) continue;
    if (item.measure != measure) written.clear();
    measure = item.measure;
    const MeasureFacts& facts = timeline.facts(item);
    const auto clef = facts.clefs.find(item.staff);
    const bool harmonic = at(*item.element, {"notations", "technical", "harmonic"}) != nullptr;
    if (clef == facts.clefs.end() || clef->second == "TAB" || harmonic) continue;
    if (text_of(*item.element, "notehead") == "x") continue;  // a dead note has no name
    const std::string step = text_of(*pitch, "step");
    const int alter = number_of(text_of(*pitch, "alter"));
    const auto before = written.find({item.staff, step + text_of(*pitch, "octave")});
    const int said = before == written.end() ? key_alter(facts.fifths, step) : before->second;
    bool tied = false;
    for (const XMLElement* tie : all(*item.element, "tie")) tied = tied || attribute(*tie, "type") == std::string("stop");
    const bool shown = item.element->FirstChildElement("accidental") != nullptr;
    if (alter != said && !shown && !tied) {
      complaints.push_back(timeline.place(item.measure) + "an accidental is missing");
    }
    if (shown) written[{item.staff, step + text_of(*pitch, "octave")}] = alter;
  }
}

// The pitches that begin at each moment on each staff, as they sound; tied ones go on.
void check_staves_agree(const Timeline& timeline, Complaints& complaints) {
  for (std::size_t m = 0; m < timeline.measures.size(); ++m) {
    const MeasureFacts& facts = timeline.measures[m];
    if (facts.staves < 2) continue;
    std::map<int, std::multiset<std::pair<Rational, int>>> sounds;
    for (const Item& item : timeline.in_measure(static_cast<int>(m))) {
      if (!item.note() || item.rest) continue;
      const auto written = written_midi(*item.element);
      if (!written) continue;
      const auto own = facts.transposed.find(facts.transposed.contains(item.staff) ? item.staff : 0);
      sounds[item.staff].insert({item.start, *written + (own == facts.transposed.end() ? 0 : own->second)});
    }
    for (int staff = 2; staff <= facts.staves; ++staff) {
      if (sounds[staff] != sounds[1]) {
        complaints.push_back(timeline.place(static_cast<int>(m)) + "two staves of the part sound different");
      }
    }
  }
}

}  // namespace

void check_strings(const Timeline& timeline, bool short_fifth_string, Complaints& complaints) {
  Strings(timeline, short_fifth_string, complaints).check();
  check_accidentals(timeline, complaints);
  check_missing_accidentals(timeline, complaints);
  check_staves_agree(timeline, complaints);
}

}  // namespace fretsheaf::exchange::test
