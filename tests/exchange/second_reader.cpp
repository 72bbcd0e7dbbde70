#include "exchange/second_reader.h"

#include <tinyxml2.h>

#include <algorithm>
#include <map>

namespace fretsheaf::exchange::test {

namespace {

using tinyxml2::XMLElement;

std::string text_of(const XMLElement& parent, const char* child) {
  const XMLElement* found = parent.FirstChildElement(child);
  return found != nullptr && found->GetText() != nullptr ? found->GetText() : "";
}

bool has(const XMLElement& parent, const char* child) {
  return parent.FirstChildElement(child) != nullptr;
}

const XMLElement* first(const XMLElement& parent, std::initializer_list<const char*> path) {
  const XMLElement* at = &parent;
  for (const char* name : path) {
    if (at != nullptr) at = at->FirstChildElement(name);
  }
  return at;
}

bool has_typed(const XMLElement& note, const char* child, const char* type) {
  for (const XMLElement* e = note.FirstChildElement(child); e != nullptr; e = e->NextSiblingElement(child)) {
    if (e->Attribute("type", type) != nullptr) return true;
  }
  return false;
}

// Semitones of C D E F G A B above C.
int step_semitones(const std::string& step) {
  static const std::map<std::string, int> steps = {{"C", 0}, {"D", 2}, {"E", 4}, {"F", 5},
                                                   {"G", 7}, {"A", 9}, {"B", 11}};
  const auto found = steps.find(step);
  return found == steps.end() ? -1000 : found->second;
}

class Reader {
 public:
  WrittenPart read(const std::string& document) {
    tinyxml2::XMLDocument xml;
    if (xml.Parse(document.data(), document.size()) != tinyxml2::XML_SUCCESS) {
      part_.problems.emplace_back("not XML");
      return part_;
    }
    const XMLElement* root = xml.FirstChildElement("score-partwise");
    const XMLElement* part = root == nullptr ? nullptr : root->FirstChildElement("part");
    if (part == nullptr) {
      part_.problems.emplace_back("no part");
      return part_;
    }
    for (const XMLElement* m = part->FirstChildElement("measure"); m != nullptr; m = m->NextSiblingElement("measure")) {
      measure(*m);
    }
    return part_;
  }

 private:
  void problem(const std::string& text) {
    part_.problems.push_back("measure " + part_.measures.back().number + ": " + text);
  }

  void measure(const XMLElement& element) {
    const Rational start =
        part_.measures.empty() ? Rational(0) : part_.measures.back().start + part_.measures.back().length;
    const char* number = element.Attribute("number");
    part_.measures.push_back(
        {number == nullptr ? "?" : number, element.Attribute("implicit", "yes") != nullptr, start, Rational(0)});
    cursor_ = Rational(0);
    for (const XMLElement* e = element.FirstChildElement(); e != nullptr; e = e->NextSiblingElement()) {
      const std::string name = e->Name();
      if (name == "attributes") attributes(*e);
      if (name == "backup") cursor_ = cursor_ - duration(*e);
      if (name == "forward") cursor_ += duration(*e);
      if (name == "note") note(*e);
      if (cursor_ < Rational(0)) problem("goes back behind its start");
      WrittenMeasure& here = part_.measures.back();
      here.length = std::max(here.length, cursor_);
    }
  }

  Rational duration(const XMLElement& element) {
    const std::string text = text_of(element, "duration");
    if (text.empty() || text.find_first_not_of("0123456789") != std::string::npos || divisions_ == 0) {
      problem("a duration of `" + text + "`");
      return Rational(0);
    }
    // Divisions are counted a quarter note.
    return Rational(std::stoll(text), divisions_ * 4);
  }

  void attributes(const XMLElement& element) {
    if (has(element, "divisions")) divisions_ = std::stoll(text_of(element, "divisions"));
    if (has(element, "staves")) part_.staves = std::max(part_.staves, std::stoi(text_of(element, "staves")));
    for (const XMLElement* e = element.FirstChildElement("clef"); e != nullptr; e = e->NextSiblingElement("clef")) {
      if (text_of(*e, "sign") == "TAB") part_.tab_staves.insert(e->IntAttribute("number", 1));
    }
    for (const XMLElement* e = element.FirstChildElement("transpose"); e != nullptr;
         e = e->NextSiblingElement("transpose")) {
      const std::string octaves = text_of(*e, "octave-change");
      const int by = std::stoi(text_of(*e, "chromatic")) + (octaves.empty() ? 0 : 12 * std::stoi(octaves));
      // Without a number it is for all staves (0).
      transpositions_[e->IntAttribute("number", 0)] = by;
    }
  }

  int transposition(int staff) const {
    const auto own = transpositions_.find(staff);
    if (own != transpositions_.end()) return own->second;
    const auto all = transpositions_.find(0);
    return all == transpositions_.end() ? 0 : all->second;
  }

  std::optional<int> pitch(const XMLElement& note, int staff) {
    const XMLElement* pitch = note.FirstChildElement("pitch");
    if (pitch == nullptr) return std::nullopt;
    const int step = step_semitones(text_of(*pitch, "step"));
    if (step < 0 || !has(*pitch, "octave")) problem("a pitch without step or octave");
    const std::string alter = text_of(*pitch, "alter");
    return 12 * (std::stoi(text_of(*pitch, "octave")) + 1) + step + (alter.empty() ? 0 : std::stoi(alter)) +
           transposition(staff);
  }

  void note(const XMLElement& element) {
    WrittenNote note;
    note.measure = static_cast<int>(part_.measures.size()) - 1;
    note.staff = has(element, "staff") ? std::stoi(text_of(element, "staff")) : 1;
    note.grace = has(element, "grace");
    const bool chord = has(element, "chord");
    if (!note.grace) note.length = duration(element);
    // The notes of a chord begin with the note that it is written after.
    note.at = chord ? last_onset_ : cursor_;
    last_onset_ = note.at;
    if (!chord) cursor_ += note.length;
    if (has(element, "rest")) return;
    note.midi = pitch(element, note.staff);
    technical(element, note);
    note.cross = text_of(element, "notehead") == "x";
    note.tie_stop = has_typed(element, "tie", "stop");
    note.tie_start = has_typed(element, "tie", "start");
    part_.notes.push_back(note);
  }

  static void technical(const XMLElement& element, WrittenNote& note) {
    for (const XMLElement* n = element.FirstChildElement("notations"); n != nullptr;
         n = n->NextSiblingElement("notations")) {
      const XMLElement* technical = first(*n, {"technical"});
      if (technical == nullptr) continue;
      if (has(*technical, "string")) note.string = std::stoi(text_of(*technical, "string"));
      if (has(*technical, "fret")) note.fret = std::stoi(text_of(*technical, "fret"));
      const XMLElement* harmonic = technical->FirstChildElement("harmonic");
      if (harmonic == nullptr) continue;
      note.harmonic = true;
      for (const char* kind : {"base-pitch", "touching-pitch", "sounding-pitch"}) {
        if (has(*harmonic, kind)) note.harmonic_pitch = kind;
      }
    }
  }

  WrittenPart part_;
  std::int64_t divisions_ = 0;
  std::map<int, int> transpositions_;
  Rational cursor_;
  Rational last_onset_;
};

}  // namespace

WrittenPart read_part(const std::string& document) {
  return Reader().read(document);
}

std::vector<WrittenNote> sounding(const WrittenPart& part, int staff, std::vector<std::string>& problems) {
  struct Open {
    std::size_t index;  // into the result
    Rational end;       // in the part
  };
  std::vector<WrittenNote> result;
  std::vector<Open> open;
  for (const WrittenNote& note : part.notes) {
    if (note.staff != staff) continue;
    const Rational start = part.measures[static_cast<std::size_t>(note.measure)].start + note.at;
    std::size_t index = result.size();
    if (note.tie_stop) {
      const auto partner = std::find_if(open.begin(), open.end(), [&](const Open& o) {
        return o.end == start && result[o.index].midi == note.midi && result[o.index].string == note.string &&
               result[o.index].fret == note.fret;
      });
      if (partner == open.end()) {
        problems.push_back("measure " + part.measures[static_cast<std::size_t>(note.measure)].number +
                           ": a tie stops that nothing started");
        continue;
      }
      index = partner->index;
      result[index].length += note.length;
      open.erase(partner);
    } else {
      result.push_back(note);
      result.back().tie_start = false;
    }
    if (note.tie_start) open.push_back({index, start + note.length});
  }
  if (!open.empty()) problems.emplace_back("a tie starts and never stops");
  return result;
}

}  // namespace fretsheaf::exchange::test
