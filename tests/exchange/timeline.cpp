#include "exchange/timeline.h"

#include <algorithm>

namespace fretsheaf::exchange::test {

std::string own_text(const XMLElement& element) {
  return element.GetText() == nullptr ? "" : element.GetText();
}

std::string text_of(const XMLElement& parent, const char* child) {
  const XMLElement* found = parent.FirstChildElement(child);
  return found == nullptr ? "" : own_text(*found);
}

std::string attribute(const XMLElement& element, const char* name, const char* otherwise) {
  const char* value = element.Attribute(name);
  return value == nullptr ? otherwise : value;
}

int number_of(const std::string& text, int otherwise) {
  if (text.empty() || text.size() > 8 || text.find_first_not_of("-0123456789") != std::string::npos) return otherwise;
  return std::stoi(text);
}

const XMLElement* at(const XMLElement& parent, std::initializer_list<const char*> path) {
  const XMLElement* here = &parent;
  for (const char* name : path) {
    if (here != nullptr) here = here->FirstChildElement(name);
  }
  return here;
}

std::vector<const XMLElement*> all(const XMLElement& parent, const char* name) {
  std::vector<const XMLElement*> found;
  for (const XMLElement* e = parent.FirstChildElement(); e != nullptr; e = e->NextSiblingElement()) {
    if (std::string(e->Name()) == name) found.push_back(e);
    const auto beneath = all(*e, name);
    found.insert(found.end(), beneath.begin(), beneath.end());
  }
  return found;
}

namespace {

int midi_of(const std::string& step, int alter, int octave) {
  const std::map<std::string, int> steps = {{"C", 0}, {"D", 2}, {"E", 4}, {"F", 5}, {"G", 7}, {"A", 9}, {"B", 11}};
  const auto found = steps.find(step);
  return 12 * (octave + 1) + alter + (found == steps.end() ? 0 : found->second);
}

class Layout {
 public:
  Timeline make(const XMLElement& part) {
    for (const XMLElement* m = part.FirstChildElement("measure"); m != nullptr; m = m->NextSiblingElement("measure")) {
      measure(*m);
    }
    return std::move(result_);
  }

 private:
  MeasureFacts& facts() { return result_.measures.back(); }
  int index() const { return static_cast<int>(result_.measures.size()) - 1; }
  void complain(const std::string& text) { result_.complaints.push_back(result_.place(index()) + text); }

  void measure(const XMLElement& element) {
    MeasureFacts next = result_.measures.empty() ? MeasureFacts{} : result_.measures.back();
    next.element = &element;
    next.number = attribute(element, "number");
    next.implicit = attribute(element, "implicit") == "yes";
    next.length = Rational(0);
    result_.measures.push_back(next);
    cursor_ = Rational(0);
    after_note_ = false;
    for (const XMLElement* e = element.FirstChildElement(); e != nullptr; e = e->NextSiblingElement()) child(*e);
    if (cursor_ != facts().length) complain("its last staff stops before the others");
  }

  void child(const XMLElement& element) {
    Item item;
    item.element = &element;
    item.name = element.Name();
    item.measure = index();
    item.start = cursor_;
    item.staff = number_of(text_of(element, "staff"), 1);
    item.voice = text_of(element, "voice");
    if (item.name == "attributes") attributes(element);
    if (item.note()) {
      note(item);
    } else if (item.name == "backup" || item.name == "forward") {
      item.length = duration(element);
      cursor_ = item.name == "backup" ? cursor_ - item.length : cursor_ + item.length;
      after_note_ = false;
    }
    if (cursor_ < Rational(0)) complain("backs up behind its start");
    facts().length = std::max(facts().length, cursor_);
    result_.items.push_back(item);
  }

  void note(Item& item) {
    const XMLElement& element = *item.element;
    item.chord = element.FirstChildElement("chord") != nullptr;
    item.grace = element.FirstChildElement("grace") != nullptr;
    item.rest = element.FirstChildElement("rest") != nullptr;
    if (!item.grace) item.length = duration(element);
    if (item.chord) {
      if (!after_note_) complain("a chord's note with no note before it");
      item.start = latest_;
    } else {
      cursor_ += item.length;
    }
    latest_ = item.start;
    after_note_ = !item.rest;
  }

  Rational duration(const XMLElement& element) {
    const std::string text = text_of(element, "duration");
    if (text.empty() || text.find_first_not_of("0123456789") != std::string::npos || std::stoll(text) == 0) {
      complain("a duration that is no whole number of divisions");
      return Rational(0);
    }
    return Rational(std::stoll(text), 4 * facts().divisions);
  }

  void attributes(const XMLElement& element) {
    const std::string divisions = text_of(element, "divisions");
    if (!divisions.empty()) {
      const int number = number_of(divisions);
      if (number <= 0) complain("divisions that are no whole number above 0");
      facts().divisions = std::max(1, number);
    }
    if (const XMLElement* fifths = at(element, {"key", "fifths"})) facts().fifths = number_of(own_text(*fifths));
    if (element.FirstChildElement("staves") != nullptr) facts().staves = number_of(text_of(element, "staves"), 1);
    if (const XMLElement* time = element.FirstChildElement("time")) this->time(*time);
    for (const XMLElement* clef : all(element, "clef")) {
      facts().clefs[number_of(attribute(*clef, "number"), 1)] = text_of(*clef, "sign");
    }
    for (const XMLElement* details : all(element, "staff-details")) tuning(*details);
    for (const XMLElement* transpose : all(element, "transpose")) {
      facts().transposed[number_of(attribute(*transpose, "number"), 0)] =
          number_of(text_of(*transpose, "chromatic")) + 12 * number_of(text_of(*transpose, "octave-change"));
    }
  }

  void time(const XMLElement& element) {
    int beats = 0;
    std::string digits;
    for (const char c : text_of(element, "beats") + "+") {
      if (c == '+') {
        beats += number_of(digits);
        digits.clear();
      } else {
        digits += c;
      }
    }
    const int type = number_of(text_of(element, "beat-type"));
    if (beats <= 0 || type <= 0 || (type & (type - 1)) != 0) {
      complain("a time signature of " + text_of(element, "beats") + "/" + text_of(element, "beat-type"));
      return;
    }
    facts().bar = Rational(beats, type);
  }

  void tuning(const XMLElement& details) {
    Tuning tuning;
    tuning.lines = number_of(text_of(details, "staff-lines"), 5);
    tuning.capo = number_of(text_of(details, "capo"));
    for (const XMLElement* line : all(details, "staff-tuning")) {
      const int number = number_of(attribute(*line, "line"));
      const int midi = midi_of(text_of(*line, "tuning-step"), number_of(text_of(*line, "tuning-alter")),
                               number_of(text_of(*line, "tuning-octave")));
      if (number < 1 || number > tuning.lines) complain("a tuning for a line that the staff has not");
      if (!tuning.midi.emplace(number, midi).second) complain("two tunings for one line");
    }
    facts().tunings[number_of(attribute(details, "number"), 1)] = tuning;
  }

  Timeline result_;
  Rational cursor_;
  Rational latest_;
  bool after_note_ = false;
};

}  // namespace

Timeline timeline_of(const XMLElement& part) {
  return Layout().make(part);
}

std::optional<int> written_midi(const XMLElement& note) {
  const XMLElement* pitch = note.FirstChildElement("pitch");
  if (pitch == nullptr) return std::nullopt;
  return midi_of(text_of(*pitch, "step"), number_of(text_of(*pitch, "alter")), number_of(text_of(*pitch, "octave")));
}

}  // namespace fretsheaf::exchange::test
