#include <tuple>

#include "exchange/semantics_rules.h"

namespace fretsheaf::exchange::test {

namespace {

int flags_of(const std::string& type) {
  const std::map<std::string, int> flags = {{"eighth", 1}, {"16th", 2},  {"32nd", 3},  {"64th", 4},
                                            {"128th", 5},  {"256th", 6}, {"512th", 7}, {"1024th", 8}};
  const auto found = flags.find(type);
  return found == flags.end() ? 0 : found->second;
}

class Beams {
 public:
  Beams(const Timeline& timeline, Complaints& complaints) : timeline_(timeline), complaints_(complaints) {}

  void check() {
    for (const Item& item : timeline_.items) {
      // Grace notes are beamed among themselves.
      if (item.note() && !item.chord) note(item);
    }
    for (const auto& [key, measure] : open_) complain(measure, "a beam begins and never ends");
  }

 private:
  // Groups are told apart by staff and voice, and by being of grace notes.
  using Key = std::tuple<int, std::string, bool, int>;

  void complain(int measure, const std::string& text) { complaints_.push_back(timeline_.place(measure) + text); }

  void note(const Item& item) {
    std::map<int, std::string> beams;
    for (const XMLElement* beam : all(*item.element, "beam")) {
      const int level = number_of(attribute(*beam, "number", "1"));
      if (!beams.emplace(level, own_text(*beam)).second) complain(item.measure, "two beams of one level on a note");
    }
    const int flags = flags_of(text_of(*item.element, "type"));
    if (!beams.empty() && static_cast<int>(beams.size()) != flags) {
      complain(item.measure, "a note's beams are not as many as its type has flags");
    }
    int expected = 1;
    for (const auto& [number, value] : beams) {
      if (number != expected++) complain(item.measure, "a beam's level is left out");
    }
    for (int level = 1; level <= 8; ++level) {
      const Key key(item.staff, item.voice, item.grace, level);
      const auto own = beams.find(level);
      step(item, key, level, own == beams.end() ? "" : own->second);
    }
  }

  void step(const Item& item, const Key& key, int level, const std::string& value) {
    const auto open = open_.find(key);
    const bool inside = open != open_.end();
    if (inside && open->second != item.measure) {
      complain(open->second, "a beam begins and never ends");
      open_.erase(open);
      return step(item, key, level, value);
    }
    if (value == "begin") {
      if (inside) complain(item.measure, "a beam begins inside a beam");
      open_[key] = item.measure;
    } else if (value == "continue" || value == "end") {
      if (!inside) complain(item.measure, "a beam goes on that nothing began");
      if (value == "end") open_.erase(key);
    } else if (value.empty()) {
      if (inside && !item.rest) complain(item.measure, "a note breaks a beam");
    } else {
      if (level == 1) complain(item.measure, "a hook with no beam beside it");
      if (inside) complain(item.measure, "a hook inside a beam of its level");
    }
  }

  const Timeline& timeline_;
  Complaints& complaints_;
  std::map<Key, int> open_;  // the measure that it began in
};

}  // namespace

void check_beams(const Timeline& timeline, Complaints& complaints) {
  Beams(timeline, complaints).check();
}

}  // namespace fretsheaf::exchange::test
