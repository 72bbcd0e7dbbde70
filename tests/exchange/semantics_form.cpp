#include <algorithm>
#include <set>

#include "exchange/semantics_rules.h"

namespace fretsheaf::exchange::test {

namespace {

class Form {
 public:
  Form(const Timeline& timeline, Complaints& complaints) : timeline_(timeline), complaints_(complaints) {}

  void check() {
    for (std::size_t m = 0; m < timeline_.measures.size(); ++m) {
      measure_ = static_cast<int>(m);
      const XMLElement& element = *timeline_.measures[m].element;
      places(element);
      for (const XMLElement* barline : all(element, "barline")) this->barline(*barline);
      number(timeline_.measures[m]);
      styles(element);
    }
    if (forward_) complain("a repeat begins and never ends");
    if (!ending_.empty()) complain("an ending starts and never stops");
    jumps();
  }

 private:
  void complain(const std::string& text) { complaints_.push_back(timeline_.place(measure_) + text); }

  // A left bar line comes first in its measure, aside from print; a right one last.
  void places(const XMLElement& element) {
    std::set<std::string> seen;
    bool content = false;
    for (const XMLElement* e = element.FirstChildElement(); e != nullptr; e = e->NextSiblingElement()) {
      const std::string name = e->Name();
      if (name == "barline") {
        const std::string location = attribute(*e, "location", "right");
        if (!seen.insert(location).second) complain("two bar lines in one place");
        if (location == "left" && content) complain("a left bar line that is not first in its measure");
      } else if (name != "print" && name != "bookmark" && name != "link") {
        if (seen.contains("right")) complain("a right bar line that is not last in its measure");
        content = true;
      }
    }
  }

  void barline(const XMLElement& barline) {
    const std::string location = attribute(barline, "location", "right");
    if (const XMLElement* ending = barline.FirstChildElement("ending")) this->ending(barline, *ending, location);
    const XMLElement* repeat = barline.FirstChildElement("repeat");
    if (repeat == nullptr) return;
    const bool forward = attribute(*repeat, "direction") == "forward";
    if ((location == "left") != forward) complain("a repeat sign on the wrong side of its measure");
    if (forward) {
      if (forward_) complain("a repeat begins inside a repeat");
      forward_ = true;
      after_endings_ = false;
      latest_ending_ = 0;
    } else {
      // A second or third ending goes back to where the first one did.
      if (!forward_ && !(after_endings_ && barline.FirstChildElement("ending") != nullptr)) {
        complain("a repeat ends that nothing began");
      }
      forward_ = false;
    }
    times(barline, *repeat);
  }

  // `times` only stands on backward repeats that are not part of an ending.
  void times(const XMLElement& barline, const XMLElement& repeat) {
    const std::string times = attribute(repeat, "times");
    if (times.empty()) return;
    const bool allowed = attribute(repeat, "direction") == "backward" && barline.FirstChildElement("ending") == nullptr;
    if (!allowed || number_of(times) < 2) complain("a number of times where none can be");
  }

  void ending(const XMLElement& barline, const XMLElement& ending, const std::string& location) {
    const std::string type = attribute(ending, "type");
    const std::string number = attribute(ending, "number");
    if ((type == "start") != (location == "left")) complain("an ending on the wrong side of its measure");
    if (type == "start") {
      if (!ending_.empty()) complain("an ending starts inside an ending");
      ending_ = number;
      const int first = number_of(number.substr(0, number.find(',')));
      if (first != latest_ending_ + 1) complain("an ending out of order");
      const auto comma = number.find_last_of(", ");
      latest_ending_ = number_of(comma == std::string::npos ? number : number.substr(comma + 1));
      return;
    }
    if (ending_ != number) complain("an ending stops that nothing started");
    ending_.clear();
    after_endings_ = true;
    const bool back = barline.FirstChildElement("repeat") != nullptr;
    if (back && type == "discontinue") complain("an ending that goes back without closing");
  }

  // Numbers rise by one; a new section begins a new system, named, and may begin anew. A pickup is 0 and implicit.
  void number(const MeasureFacts& own) {
    const int number = number_of(own.number, -1);
    if (number == 0 && !own.implicit) complain("a pickup that is numbered");
    const XMLElement* print = own.element->FirstChildElement("print");
    const bool section = measure_ == 0 || (print != nullptr && attribute(*print, "new-system") == "yes");
    if (section) {
      if (number > 1) complain("a section that does not begin with its first measure");
    } else {
      const int before = number_of(timeline_.measures[static_cast<std::size_t>(measure_) - 1].number, -1);
      if (number != (own.implicit ? before : before + 1)) complain("a measure's number does not follow the one before");
    }
  }

  void styles(const XMLElement& element) {
    for (const XMLElement* style : all(element, "measure-style")) {
      const std::string staff = attribute(*style, "number", "0");
      for (const char* name : {"slash", "measure-repeat", "beat-repeat"}) {
        const XMLElement* own = style->FirstChildElement(name);
        if (own == nullptr) continue;
        const std::string key = std::string(name) + staff;
        const bool start = attribute(*own, "type") == "start";
        if (start ? !styles_.insert(key).second : styles_.erase(key) == 0) {
          complain(std::string("a ") + name + (start ? " starts inside another" : " stops that nothing started"));
        }
      }
    }
    if (std::any_of(styles_.begin(), styles_.end(),
                    [](const auto& key) { return key.starts_with("measure-repeat"); })) {
      same_as_before();
    }
  }

  // The music that a repeat sign stands for is in its measure too.
  void same_as_before() {
    if (measure_ == 0) return complain("a bar repeat with no bar before it");
    std::vector<std::string> music[2];
    for (const Item& item : timeline_.items) {
      const int which = item.measure - measure_ + 1;
      if (which < 0 || which > 1 || !item.note()) continue;
      music[which].push_back(std::to_string(item.staff) + " " + item.start.to_string() + " " + item.length.to_string() +
                             " " + std::to_string(written_midi(*item.element).value_or(-1)));
    }
    if (music[0] != music[1]) complain("a bar repeat whose music is another");
  }

  // Every jump has somewhere to go to.
  void jumps() {
    std::set<std::string> targets;
    std::set<std::string> wanted;
    std::set<std::string> coming_to_coda;
    bool fine = false;
    bool al_fine = false;
    for (const Item& item : timeline_.items) {
      if (item.name != "direction" && item.name != "sound") continue;
      for (const XMLElement* sound : sounds(item)) {
        if (sound->Attribute("segno") != nullptr) targets.insert("segno " + attribute(*sound, "segno"));
        if (sound->Attribute("coda") != nullptr) targets.insert("coda " + attribute(*sound, "coda"));
        if (sound->Attribute("dalsegno") != nullptr) wanted.insert("segno " + attribute(*sound, "dalsegno"));
        if (sound->Attribute("tocoda") != nullptr) wanted.insert("coda " + attribute(*sound, "tocoda"));
        fine = fine || sound->Attribute("fine") != nullptr;
      }
      signs(item);
      for (const XMLElement* words : all(*item.element, "words")) {
        al_fine = al_fine || own_text(*words).find("al Fine") != std::string::npos;
      }
    }
    for (const std::string& target : wanted) {
      if (!targets.contains(target))
        complain("a jump to a " + target.substr(0, target.find(' ')) + " that is not there");
    }
    if (al_fine && !fine) complain("a way to a fine that is not there");
  }

  static std::vector<const XMLElement*> sounds(const Item& item) {
    if (item.name == "sound") return {item.element};
    return all(*item.element, "sound");
  }

  // A sign that is printed and does nothing when it is played is half a sign.
  void signs(const Item& item) {
    if (item.name != "direction") return;
    const XMLElement* sound = item.element->FirstChildElement("sound");
    const auto says = [&](const char* name) { return sound != nullptr && sound->Attribute(name) != nullptr; };
    for (const char* name : {"segno", "coda"}) {
      if (!all(*item.element, name).empty() && !says(name)) {
        complaints_.push_back(timeline_.place(item.measure) + "a " + name + " that no jump can find");
      }
    }
    for (const XMLElement* words : all(*item.element, "words")) {
      const std::string text = own_text(*words);
      const bool fits = (!text.starts_with("D.C.") || says("dacapo")) &&
                        (!text.starts_with("D.S.") || says("dalsegno")) && (text != "To Coda" || says("tocoda")) &&
                        (text != "fine" || says("fine"));
      if (!fits) complaints_.push_back(timeline_.place(item.measure) + "`" + text + "` does nothing when it is played");
      // What follows the sign is not played any more: it stands after the last note that is.
      const bool jumps = says("dacapo") || says("dalsegno") || says("tocoda");
      if (jumps && item.start != timeline_.facts(item).length) {
        complaints_.push_back(timeline_.place(item.measure) + "`" + text + "` jumps before its measure ends");
      }
      if (says("fine") && item.start == Rational(0)) {
        complaints_.push_back(timeline_.place(item.measure) + "a fine before its last note");
      }
    }
  }

  const Timeline& timeline_;
  Complaints& complaints_;
  int measure_ = 0;
  bool forward_ = false;
  bool after_endings_ = false;
  int latest_ending_ = 0;
  std::string ending_;  // the number of the open one
  std::set<std::string> styles_;
};

}  // namespace

void check_form(const Timeline& timeline, Complaints& complaints) {
  Form(timeline, complaints).check();
}

}  // namespace fretsheaf::exchange::test
