#include <algorithm>

#include "exchange/semantics_rules.h"

namespace fretsheaf::exchange::test {

namespace {

bool typed(const XMLElement& note, const char* name, const char* type) {
  for (const XMLElement* e : all(note, name)) {
    if (attribute(*e, "type") == type) return true;
  }
  return false;
}

// Where a note ends, in the part.
class Clock {
 public:
  explicit Clock(const Timeline& timeline) {
    Rational start;
    for (const MeasureFacts& measure : timeline.measures) {
      starts_.push_back(start);
      start += measure.length;
    }
  }
  Rational begin(const Item& item) const { return starts_[static_cast<std::size_t>(item.measure)] + item.start; }
  Rational end(const Item& item) const { return begin(item) + item.length; }

 private:
  std::vector<Rational> starts_;
};

void check_ties(const Timeline& timeline, Complaints& complaints) {
  const Clock clock(timeline);
  std::vector<const Item*> open;
  for (const Item& item : timeline.items) {
    if (!item.note() || item.rest) continue;
    const std::string where = timeline.place(item.measure);
    for (const char* type : {"start", "stop"}) {
      if (typed(*item.element, "tie", type) != typed(*item.element, "tied", type)) {
        complaints.push_back(where + "a tie sounds and is not drawn, or the other way round");
      }
    }
    if (typed(*item.element, "tie", "stop")) {
      const auto partner = std::find_if(open.begin(), open.end(), [&](const Item* other) {
        return other->staff == item.staff && clock.end(*other) == clock.begin(item) &&
               written_midi(*other->element) == written_midi(*item.element);
      });
      if (partner == open.end()) {
        complaints.push_back(where + "a tie stops that nothing started");
      } else {
        open.erase(partner);
      }
    }
    if (typed(*item.element, "tie", "start")) open.push_back(&item);
  }
  for (const Item* item : open) complaints.push_back(timeline.place(item->measure) + "a tie starts and never stops");
}

std::string string_of(const Item& item) {
  const XMLElement* string = at(*item.element, {"notations", "technical", "string"});
  return string == nullptr ? "" : own_text(*string);
}

// What a pair of ends must be besides a pair.
const char* wrong_pair(const std::string& name, const Item& from, const Item& to) {
  if (string_of(from) != string_of(to)) return "joins two strings";
  // A harmonic's pitch does not say where the finger goes.
  if (at(*from.element, {"notations", "technical", "harmonic"}) != nullptr) return nullptr;
  if (at(*to.element, {"notations", "technical", "harmonic"}) != nullptr) return nullptr;
  const auto first = written_midi(*from.element);
  const auto second = written_midi(*to.element);
  if (!first || !second) return nullptr;
  if (name == "hammer-on" && *second <= *first) return "does not go up";
  if (name == "pull-off" && *second >= *first) return "does not go down";
  if (name == "slide" && *second == *first) return "goes nowhere";
  return nullptr;
}

// Spans that stand on notes and are told apart by their number.
void check_spans(const Timeline& timeline, const std::string& name, Complaints& complaints) {
  std::map<std::pair<int, std::string>, const Item*> open;
  const auto complain = [&](const Item& item, const std::string& text) {
    complaints.push_back(timeline.place(item.measure) + "a " + name + " " + text);
  };
  for (const Item& item : timeline.items) {
    if (!item.note()) continue;
    for (const XMLElement* end : all(*item.element, name.c_str())) {
      const std::pair<int, std::string> key(item.staff, attribute(*end, "number", "1"));
      const auto found = open.find(key);
      const std::string type = attribute(*end, "type");
      if (type == "start") {
        if (found != open.end()) complain(item, "starts while another of its number is open");
        open[key] = &item;
      } else if (type == "stop") {
        if (found == open.end()) {
          complain(item, "stops that nothing started");
          continue;
        }
        if (name != "slur" && name != "wavy-line") {
          if (const char* wrong = wrong_pair(name, *found->second, item)) complain(item, wrong);
          if (found->second == &item) complain(item, "joins a note to itself");
        }
        open.erase(found);
      }
    }
  }
  for (const auto& [key, item] : open) complain(*item, "starts and never stops");
}

void check_wedges(const Timeline& timeline, const char* name, Complaints& complaints) {
  std::map<std::string, int> open;
  for (const Item& item : timeline.items) {
    if (item.name != "direction") continue;
    for (const XMLElement* wedge : all(*item.element, name)) {
      const std::string number = attribute(*wedge, "number", "1");
      const std::string type = attribute(*wedge, "type");
      if (type == "continue") continue;
      if (type != "stop") {
        if (!open.emplace(number, item.measure).second) {
          complaints.push_back(timeline.place(item.measure) + "a " + name + " starts while another is open");
        }
      } else if (open.erase(number) == 0) {
        complaints.push_back(timeline.place(item.measure) + "a " + name + " stops that nothing started");
      }
    }
  }
  for (const auto& [number, measure] : open) {
    complaints.push_back(timeline.place(measure) + "a " + name + " starts and never stops");
  }
}

void check_syllables(const Timeline& timeline, Complaints& complaints) {
  std::map<std::string, int> words;  // verses in the middle of a word: where it began
  for (const Item& item : timeline.items) {
    if (!item.note()) continue;
    for (const XMLElement* lyric : all(*item.element, "lyric")) {
      const std::string verse = attribute(*lyric, "number", "1");
      const std::string syllabic = text_of(*lyric, "syllabic");
      const bool inside = words.contains(verse);
      const bool goes_on = syllabic == "middle" || syllabic == "end";
      if (inside != goes_on) {
        complaints.push_back(timeline.place(item.measure) + "a syllable that does not fit the one before it");
      }
      if (syllabic == "begin" || syllabic == "middle") {
        words[verse] = item.measure;
      } else {
        words.erase(verse);
      }
    }
  }
  for (const auto& [verse, measure] : words) complaints.push_back(timeline.place(measure) + "a word never ends");
}

}  // namespace

void check_pairs(const Timeline& timeline, Complaints& complaints) {
  check_ties(timeline, complaints);
  for (const char* name : {"slur", "slide", "glissando", "hammer-on", "pull-off", "wavy-line"}) {
    check_spans(timeline, name, complaints);
  }
  for (const char* name : {"wedge", "bracket", "dashes", "octave-shift"}) check_wedges(timeline, name, complaints);
  check_syllables(timeline, complaints);
}

}  // namespace fretsheaf::exchange::test
