#pragma once

#include <tinyxml2.h>

#include <algorithm>
#include <initializer_list>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "theory/rational.h"

// A document laid out in time, for checks of what it means: every element with the measure, the place in it and the
// staff that it belongs to.
namespace fretsheaf::exchange::test {

using theory::Rational;
using tinyxml2::XMLElement;

// The text of a child, "" where there is none.
std::string text_of(const XMLElement& parent, const char* child);
std::string own_text(const XMLElement& element);
std::string attribute(const XMLElement& element, const char* name, const char* otherwise = "");
// A whole number, `otherwise` where the text is none.
int number_of(const std::string& text, int otherwise = 0);
// The element at the end of a path of children, nullptr where there is none.
const XMLElement* at(const XMLElement& parent, std::initializer_list<const char*> path);
// Every element beneath with that name, in the document's order.
std::vector<const XMLElement*> all(const XMLElement& parent, const char* name);

struct Item {
  const XMLElement* element = nullptr;
  std::string name;
  int measure = 0;
  Rational start;   // in its measure, in whole notes
  Rational length;  // 0 but for notes, backups and forwards
  int staff = 1;
  std::string voice;
  bool chord = false;
  bool grace = false;
  bool rest = false;

  bool note() const { return name == "note"; }
  Rational end() const { return start + length; }
};

// How a staff is tuned, as staff-details say it.
struct Tuning {
  int lines = 5;
  std::map<int, int> midi;  // of the open lines, 1 the bottom
  int capo = 0;
};

struct MeasureFacts {
  const XMLElement* element = nullptr;
  std::string number;
  bool implicit = false;
  Rational length;  // as far as its music reaches
  Rational bar;     // what its time signature asks for
  std::int64_t divisions = 1;
  int fifths = 0;
  int staves = 1;
  std::map<int, std::string> clefs;  // by staff: "TAB", "G"
  std::map<int, Tuning> tunings;     // by staff
  std::map<int, int> transposed;     // by staff: semitones from written to sounding
};

struct Timeline {
  std::vector<MeasureFacts> measures;
  std::vector<Item> items;
  std::vector<std::string> complaints;  // what could not be laid out

  std::string place(int measure) const {
    return "measure " + measures[static_cast<std::size_t>(measure)].number + ": ";
  }
  // The items of one measure: they stand in the document's order.
  std::span<const Item> in_measure(int measure) const {
    const auto before = [](int limit) { return [limit](const Item& item) { return item.measure < limit; }; };
    const auto begin = std::partition_point(items.begin(), items.end(), before(measure));
    return {begin, std::partition_point(begin, items.end(), before(measure + 1))};
  }
  const MeasureFacts& facts(const Item& item) const { return measures[static_cast<std::size_t>(item.measure)]; }
};

Timeline timeline_of(const XMLElement& part);

// The note's written pitch, nullopt for rests and unpitched notes.
std::optional<int> written_midi(const XMLElement& note);

}  // namespace fretsheaf::exchange::test
