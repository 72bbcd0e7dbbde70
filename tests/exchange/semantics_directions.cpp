#include <cstdlib>
#include <numeric>
#include <set>

#include "exchange/semantics_rules.h"

namespace fretsheaf::exchange::test {

namespace {

// Quarters in a metronome's beat unit.
double beat_quarters(const XMLElement& metronome) {
  const std::map<std::string, double> quarters = {{"whole", 4},   {"half", 2},     {"quarter", 1},  {"eighth", 0.5},
                                                  {"16th", 0.25}, {"32nd", 0.125}, {"64th", 0.0625}};
  const auto found = quarters.find(text_of(metronome, "beat-unit"));
  double length = found == quarters.end() ? 0 : found->second;
  double more = length / 2;
  for (const XMLElement* dot = metronome.FirstChildElement("beat-unit-dot"); dot != nullptr;
       dot = dot->NextSiblingElement("beat-unit-dot")) {
    length += more;
    more /= 2;
  }
  return length;
}

void check_tempo(const Timeline& timeline, const Item& item, Complaints& complaints) {
  for (const XMLElement* metronome : all(*item.element, "metronome")) {
    const XMLElement* sound = item.element->FirstChildElement("sound");
    const std::string where = timeline.place(item.measure);
    if (sound == nullptr || sound->Attribute("tempo") == nullptr) {
      complaints.push_back(where + "a metronome mark that does not sound");
      continue;
    }
    const double quarters = beat_quarters(*metronome) * std::atof(text_of(*metronome, "per-minute").c_str());
    if (std::abs(quarters - sound->DoubleAttribute("tempo")) > 0.005) {
      complaints.push_back(where + "a tempo that its metronome mark does not say");
    }
  }
}

void check_swing(const Timeline& timeline, const Item& item, Complaints& complaints) {
  for (const XMLElement* swing : all(*item.element, "swing")) {
    if (swing->FirstChildElement("straight") != nullptr) continue;
    const int first = number_of(text_of(*swing, "first"));
    const int second = number_of(text_of(*swing, "second"));
    if (first <= second || std::gcd(first, second) != 1) {
      complaints.push_back(timeline.place(item.measure) + "a swing whose ratio is not in lowest terms, long to short");
    }
  }
}

// A percentage of a forte of 90 that rises with the sign (General MIDI velocities end at 127).
void check_dynamics(const Timeline& timeline, const Item& item, std::map<int, double>& levels, Complaints& complaints) {
  const std::vector<std::string> order = {"ppp", "pp", "p", "mp", "mf", "f", "ff", "fff"};
  for (const XMLElement* dynamics : all(*item.element, "dynamics")) {
    const XMLElement* sign = dynamics->FirstChildElement();
    const XMLElement* sound = item.element->FirstChildElement("sound");
    const std::string where = timeline.place(item.measure);
    int rank = -1;
    for (std::size_t i = 0; i < order.size(); ++i) {
      if (sign != nullptr && order[i] == sign->Name()) rank = static_cast<int>(i);
    }
    if (rank < 0) continue;
    const double level = sound == nullptr ? 0 : sound->DoubleAttribute("dynamics", 0);
    if (level <= 0 || level * 0.9 > 127.5) complaints.push_back(where + "a dynamic that does not sound");
    for (const auto& [other, known] : levels) {
      if ((other < rank && known >= level) || (other > rank && known <= level)) {
        complaints.push_back(where + "a dynamic that is not as loud as its sign");
      }
    }
    levels[rank] = level;
  }
}

const std::set<int>& tones(const std::string& kind) {
  static const std::map<std::string, std::set<int>> table = {
      {"major", {1, 3, 5}},
      {"minor", {1, 3, 5}},
      {"augmented", {1, 3, 5}},
      {"diminished", {1, 3, 5}},
      {"dominant", {1, 3, 5, 7}},
      {"major-seventh", {1, 3, 5, 7}},
      {"minor-seventh", {1, 3, 5, 7}},
      {"diminished-seventh", {1, 3, 5, 7}},
      {"augmented-seventh", {1, 3, 5, 7}},
      {"half-diminished", {1, 3, 5, 7}},
      {"major-minor", {1, 3, 5, 7}},
      {"major-sixth", {1, 3, 5, 6}},
      {"minor-sixth", {1, 3, 5, 6}},
      {"dominant-ninth", {1, 3, 5, 7, 9}},
      {"major-ninth", {1, 3, 5, 7, 9}},
      {"minor-ninth", {1, 3, 5, 7, 9}},
      {"dominant-11th", {1, 3, 5, 7, 9, 11}},
      {"major-11th", {1, 3, 5, 7, 9, 11}},
      {"minor-11th", {1, 3, 5, 7, 9, 11}},
      {"dominant-13th", {1, 3, 5, 7, 9, 11, 13}},
      {"major-13th", {1, 3, 5, 7, 9, 11, 13}},
      {"minor-13th", {1, 3, 5, 7, 9, 11, 13}},
      {"suspended-second", {1, 2, 5}},
      {"suspended-fourth", {1, 4, 5}},
      {"power", {1, 5}},
  };
  static const std::set<int> none;
  const auto found = table.find(kind);
  return found == table.end() ? none : found->second;
}

// What a degree changes is in the chord, what it adds is not (MusicXML 4.0, kind-value and degree).
void check_harmony(const Timeline& timeline, const Item& item, Complaints& complaints) {
  const XMLElement& harmony = *item.element;
  const std::string where = timeline.place(item.measure);
  if (text_of(harmony, "kind") == "none") {
    // The root means nothing then, and must not be shown.
    const XMLElement* root = at(harmony, {"root", "root-step"});
    if (root != nullptr && (root->Attribute("text") == nullptr || attribute(*root, "text") != "")) {
      complaints.push_back(where + "a root is shown of no chord");
    }
    return;
  }
  std::set<int> here = tones(text_of(harmony, "kind"));
  for (const XMLElement* degree : all(harmony, "degree")) {
    const int value = number_of(text_of(*degree, "degree-value"));
    const std::string type = text_of(*degree, "degree-type");
    if ((type == "add") == here.contains(value)) {
      complaints.push_back(where + "a degree is added that is there, or changed that is not");
    }
    if (type != "add" && type != "subtract" && number_of(text_of(*degree, "degree-alter")) == 0) {
      complaints.push_back(where + "a degree that is altered by nothing");
    }
    here.insert(value);
  }
}

// Where it stands, its offset taken in.
Rational moment(const Timeline& timeline, const Item& item) {
  return item.start + Rational(number_of(text_of(*item.element, "offset")), 4 * timeline.facts(item).divisions);
}

}  // namespace

void check_directions(const Timeline& timeline, Complaints& complaints) {
  std::map<int, double> levels;
  std::set<std::tuple<int, Rational>> chords;
  for (const Item& item : timeline.items) {
    if (item.name != "direction" && item.name != "harmony" && item.name != "sound") continue;
    const std::string where = timeline.place(item.measure);
    if (item.staff > timeline.facts(item).staves) complaints.push_back(where + "a sign for a staff that is not there");
    const Rational here = moment(timeline, item);
    if (here < Rational(0) || here > timeline.facts(item).length)
      complaints.push_back(where + "a sign outside its bar");
    if (item.name == "harmony") {
      check_harmony(timeline, item, complaints);
      if (here == timeline.facts(item).length) complaints.push_back(where + "a chord symbol after its bar");
      if (!chords.insert({item.measure, here}).second) complaints.push_back(where + "two chord symbols in one place");
      continue;
    }
    check_tempo(timeline, item, complaints);
    check_swing(timeline, item, complaints);
    check_dynamics(timeline, item, levels, complaints);
  }
}

void check_head(const XMLElement& root, Complaints& complaints) {
  std::vector<std::string> listed;
  for (const XMLElement* part : all(root, "score-part")) {
    listed.push_back(attribute(*part, "id"));
    if (text_of(*part, "part-name").empty()) complaints.emplace_back("a part without a name");
  }
  std::vector<std::string> parts;
  for (const XMLElement* part = root.FirstChildElement("part"); part != nullptr;
       part = part->NextSiblingElement("part")) {
    parts.push_back(attribute(*part, "id"));
  }
  if (listed != parts) complaints.emplace_back("the parts are not those of the list");
  const XMLElement* title = at(root, {"work", "work-title"});
  if (title == nullptr || own_text(*title).empty()) complaints.emplace_back("no title");
  if (!all(root, "encoding-date").empty()) complaints.emplace_back("a date that changes");
  if (all(root, "software").empty()) complaints.emplace_back("nothing says what encoded it");
  if (attribute(root, "version") != "4.0") complaints.emplace_back("not version 4.0");
}

}  // namespace fretsheaf::exchange::test
