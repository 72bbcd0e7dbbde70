#include <algorithm>
#include <set>

#include "exchange/semantics_rules.h"

namespace fretsheaf::exchange::test {

namespace {

bool ends_by_repeat(const MeasureFacts& measure) {
  for (const XMLElement* repeat : all(*measure.element, "repeat")) {
    if (attribute(*repeat, "direction") == "backward") return true;
  }
  return false;
}

bool begins_repeat(const MeasureFacts& measure) {
  for (const XMLElement* repeat : all(*measure.element, "repeat")) {
    if (attribute(*repeat, "direction") == "forward") return true;
  }
  return false;
}

// How much of its bar an implicit measure leaves to another: a pickup, or one that completes the measure before it.
void check_lengths(const Timeline& timeline, Complaints& complaints) {
  const auto& measures = timeline.measures;
  Rational repeated_pickup;  // what the latest start of a repeat leaves to the bar that goes back to it
  for (std::size_t i = 0; i < measures.size(); ++i) {
    const MeasureFacts& own = measures[i];
    const std::string where = timeline.place(static_cast<int>(i));
    if (begins_repeat(own)) repeated_pickup = own.implicit ? own.length : Rational(0);
    if (own.length > own.bar) {
      complaints.push_back(where + "longer than its time signature");
      continue;
    }
    if (own.length == own.bar || own.implicit) continue;
    const Rational missing = own.bar - own.length;
    const bool completed = i + 1 < measures.size() && measures[i + 1].implicit &&
                           measures[i + 1].number == own.number && measures[i + 1].length == missing;
    const bool goes_back = ends_by_repeat(own) && repeated_pickup == missing;
    if (!completed && !goes_back) complaints.push_back(where + "shorter than its time signature");
  }
}

// Every staff from its measure's start to its end, one thing after the other.
void check_filled(const Timeline& timeline, Complaints& complaints) {
  struct Lane {
    Rational reached;
    std::string voice;
    bool started = false;
  };
  for (std::size_t m = 0; m < timeline.measures.size(); ++m) {
    std::map<int, Lane> lanes;
    const MeasureFacts& facts = timeline.measures[m];
    const std::string where = timeline.place(static_cast<int>(m));
    for (const Item& item : timeline.in_measure(static_cast<int>(m))) {
      if (!item.note() || item.grace || item.chord) continue;
      Lane& lane = lanes[item.staff];
      if (lane.started && lane.voice != item.voice) complaints.push_back(where + "a staff changes its voice");
      if (item.start != lane.reached) {
        complaints.push_back(where + (item.start < lane.reached ? "notes of a staff overlap" : "a gap in a staff"));
      }
      lane = {item.end(), item.voice, true};
    }
    for (int staff = 1; staff <= facts.staves; ++staff) {
      if (lanes[staff].reached != facts.length) complaints.push_back(where + "a staff is not filled");
    }
    if (lanes.size() > static_cast<std::size_t>(facts.staves))
      complaints.push_back(where + "a staff that is not there");
    std::set<std::string> voices;
    for (const auto& [staff, lane] : lanes) {
      if (!voices.insert(lane.voice).second) complaints.push_back(where + "one voice on two staves");
    }
  }
}

// Whole 1 … 1024th.
std::optional<Rational> type_length(const std::string& type) {
  const std::map<std::string, Rational> lengths = {
      {"breve", Rational(2)},      {"whole", Rational(1)},      {"half", Rational(1, 2)},
      {"quarter", Rational(1, 4)}, {"eighth", Rational(1, 8)},  {"16th", Rational(1, 16)},
      {"32nd", Rational(1, 32)},   {"64th", Rational(1, 64)},   {"128th", Rational(1, 128)},
      {"256th", Rational(1, 256)}, {"512th", Rational(1, 512)}, {"1024th", Rational(1, 1024)}};
  const auto found = lengths.find(type);
  return found == lengths.end() ? std::nullopt : std::optional(found->second);
}

Rational dotted(Rational length, std::size_t dots) {
  Rational sum = length;
  for (Rational more = length / Rational(2); dots > 0; --dots, more = more / Rational(2)) sum += more;
  return sum;
}

std::size_t count_of(const XMLElement& parent, const char* child) {
  std::size_t count = 0;
  for (const XMLElement* e = parent.FirstChildElement(child); e != nullptr; e = e->NextSiblingElement(child)) ++count;
  return count;
}

void check_values(const Timeline& timeline, Complaints& complaints) {
  for (const Item& item : timeline.items) {
    if (!item.note() || item.grace) continue;
    const XMLElement* rest = item.element->FirstChildElement("rest");
    const std::string where = timeline.place(item.measure);
    if (rest != nullptr && attribute(*rest, "measure") == "yes") {
      if (item.length != timeline.facts(item).length) complaints.push_back(where + "a bar's rest of another length");
      continue;
    }
    const auto type = type_length(text_of(*item.element, "type"));
    if (!type) {
      complaints.push_back(where + "a note without a type");
      continue;
    }
    Rational length = dotted(*type, count_of(*item.element, "dot"));
    if (const XMLElement* change = item.element->FirstChildElement("time-modification")) {
      const int actual = number_of(text_of(*change, "actual-notes"));
      const int normal = number_of(text_of(*change, "normal-notes"));
      if (actual <= 0 || normal <= 0) continue;
      length = length * Rational(normal, actual);
    }
    if (length != item.length) complaints.push_back(where + "a note's type and dots do not make its duration");
  }
}

// What a tuplet must be, from its start to its stop.
struct OpenTuplet {
  int measure = 0;
  int actual = 0;
  int normal = 0;
  Rational unit;
  Rational filled;
  bool stopped = false;
};

class Tuplets {
 public:
  Tuplets(const Timeline& timeline, Complaints& complaints) : timeline_(timeline), complaints_(complaints) {}

  void check() {
    for (const Item& item : timeline_.items) {
      if (!item.note() || item.grace) continue;
      if (!item.chord) close(item.staff);
      note(item);
    }
    for (int staff = 1; staff <= 2; ++staff) close(staff);
    for (const auto& [staff, open] : open_) complain(open.measure, "a tuplet starts and never stops");
  }

 private:
  void complain(int measure, const std::string& text) { complaints_.push_back(timeline_.place(measure) + text); }

  void note(const Item& item) {
    const XMLElement* change = item.element->FirstChildElement("time-modification");
    bool stops = false;
    for (const XMLElement* tuplet : all(*item.element, "tuplet")) {
      if (attribute(*tuplet, "type") == "stop") stops = true;
      if (attribute(*tuplet, "type") == "start") start(item, change);
    }
    const auto open = open_.find(item.staff);
    if (open == open_.end()) {
      if (change != nullptr) complain(item.measure, "a time modification outside a tuplet");
      if (stops) complain(item.measure, "a tuplet stops that nothing started");
      return;
    }
    OpenTuplet& own = open->second;
    if (own.measure != item.measure) complain(item.measure, "a tuplet over a bar line");
    if (change == nullptr || number_of(text_of(*change, "actual-notes")) != own.actual ||
        number_of(text_of(*change, "normal-notes")) != own.normal) {
      complain(item.measure, "a note inside a tuplet does not share its ratio");
    }
    if (!item.chord) own.filled += item.length;
    own.stopped = own.stopped || stops;
  }

  // The other notes of a chord come after the one that says where a tuplet stops.
  void close(int staff) {
    const auto open = open_.find(staff);
    if (open == open_.end() || !open->second.stopped) return;
    const OpenTuplet& own = open->second;
    // So many of the unit as the ratio says, in the time of the normal ones.
    // A pickup may begin in the middle of one.
    const bool pickup = timeline_.measures[static_cast<std::size_t>(own.measure)].implicit;
    if (own.filled != own.unit * Rational(own.normal) && !pickup) complain(own.measure, "a tuplet that is not full");
    open_.erase(open);
  }

  void start(const Item& item, const XMLElement* change) {
    if (open_.contains(item.staff)) complain(item.measure, "a tuplet inside a tuplet");
    OpenTuplet open;
    open.measure = item.measure;
    if (change != nullptr) {
      open.actual = number_of(text_of(*change, "actual-notes"));
      open.normal = number_of(text_of(*change, "normal-notes"));
      const std::string unit = text_of(*change, "normal-type");
      const auto length = type_length(unit.empty() ? text_of(*item.element, "type") : unit);
      open.unit = dotted(length.value_or(Rational(0)), count_of(*change, "normal-dot"));
    }
    open_[item.staff] = open;
  }

  const Timeline& timeline_;
  Complaints& complaints_;
  std::map<int, OpenTuplet> open_;  // by staff
};

void check_chords_and_graces(const Timeline& timeline, Complaints& complaints) {
  const Item* before = nullptr;
  const Item* grace = nullptr;
  const auto complain = [&](const Item& item, const char* text) {
    complaints.push_back(timeline.place(item.measure) + text);
  };
  for (const Item& item : timeline.items) {
    if (!item.note()) continue;
    if (item.chord && before != nullptr) {
      const bool same = before->staff == item.staff && before->voice == item.voice && before->grace == item.grace;
      if (!same) complain(item, "a chord's note of another staff or voice");
      if (before->length != item.length) complain(item, "a chord's note of another duration");
    }
    if (grace != nullptr && (grace->measure != item.measure || grace->staff != item.staff || item.rest)) {
      complain(*grace, "a grace note with no note after it");
    }
    grace = item.grace ? &item : nullptr;
    before = &item;
  }
  if (grace != nullptr) complain(*grace, "a grace note with no note after it");
}

}  // namespace

void check_time(const Timeline& timeline, Complaints& complaints) {
  check_lengths(timeline, complaints);
  check_filled(timeline, complaints);
  check_values(timeline, complaints);
  Tuplets(timeline, complaints).check();
  check_chords_and_graces(timeline, complaints);
}

}  // namespace fretsheaf::exchange::test
