#include "exchange/take_part.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

#include "exchange/take_attributes.h"
#include "exchange/take_direction.h"
#include "exchange/take_harmony.h"
#include "exchange/take_note.h"
#include "exchange/xml_text.h"
#include "source/first_few.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

// What no measure of a lesson comes near, so that no file takes long.
constexpr int most_staves = 8;
constexpr std::size_t most_symbols = 1000;
constexpr std::size_t most_heads = 12;
constexpr std::size_t most_chords = 100;

// Positions finer than this never come from counts, and sums of them would leave exact arithmetic.
constexpr std::int64_t finest = 16000000;

class PartTaker {
 public:
  PartTaker(TakenPart& part, Losses& losses) : part_(part), losses_(losses), attributes_(losses, part) {}

  void take(const Xml& part) {
    for (const Xml* m : part.all("measure")) {
      if (lost_) return;
      measure(*m);
    }
  }

 private:
  TakenMeasure& here() { return part_.measures.back(); }

  void measure(const Xml& element) {
    index_ = static_cast<int>(part_.measures.size());
    TakenMeasure own;
    own.element = &element;
    own.number = attribute(element, "number");
    own.implicit = attribute(element, "implicit") == "yes";
    part_.measures.push_back(std::move(own));
    losses_.enter_measure(here().number.empty() ? std::to_string(index_ + 1) : here().number.substr(0, 20));
    cursor_ = Rational(0);
    for (const Xml& e : element.children) {
      if (lost_) break;
      child(e);
      here().length = std::max(here().length, cursor_);
    }
    drop_graces();
    here().repeats_before = attributes_.measure_repeat();
    here().slashes = attributes_.slashes();
    std::erase_if(here().marks,
                  [&](const Mark& mark) { return mark.kind == Mark::Kind::loudness && here().repeats_before > 0; });
  }

  void child(const Xml& element) {
    const std::string_view name = element.name;
    if (name == "note") return note(element);
    if (name == "backup" || name == "forward") return move(element, name == "backup");
    if (name == "attributes") return attributes_.read(element, cursor_, index_);
    if (name == "harmony") return harmony(element);
    if (name == "barline") return barline(element);
    if (name == "print") {
      here().new_system = here().new_system || attribute(element, "new-system") == "yes";
    } else if (name == "direction" || name == "sound") {
      DirectionTaker taker(losses_, part_, here(), index_);
      const Rational at = std::max(cursor_ + offset(element), Rational(0));
      name == "direction" ? taker.direction(element, at) : taker.sound(element, at, false);
    } else if (name != "listening" && name != "grouping" && name != "link" && name != "bookmark") {
      losses_.left_out(&element, index_, "`" + std::string(name) + "`");
    }
  }

  void fail(const Xml& element, const std::string& what) {
    losses_.error(Code::adopt_time, &element, index_, what, "export the score anew from the program that made it");
    lost_ = true;
  }

  Rational in_whole_notes(const Xml& element, Rational amount) {
    if (attributes_.divisions() == 0) {
      fail(element, "a duration stands before any `divisions` say how long it is");
      return {};
    }
    return amount / Rational(4 * attributes_.divisions());
  }

  Rational duration(const Xml& element) {
    const std::string text = text_of(element, "duration");
    const auto amount = decimal(text);
    if (!amount || *amount <= Rational(0)) {
      fail(element, "a duration of `" + text.substr(0, 20) + "` is none");
      return {};
    }
    return in_whole_notes(element, *amount);
  }

  Rational offset(const Xml& element) {
    const auto amount = decimal(text_of(element, "offset"));
    return amount && *amount != Rational(0) ? in_whole_notes(element, *amount) : Rational(0);
  }

  void go_to(const Xml& element, Rational at) {
    constexpr int longest = 1000;
    if (at < Rational(0)) return fail(element, "`backup` goes back behind the measure's start");
    if (at.denominator() > finest || at > Rational(longest)) {
      return fail(element, "a duration is no part of a beat that could be counted");
    }
    cursor_ = at;
  }

  void move(const Xml& element, bool back) {
    const Rational by = duration(element);
    go_to(element, back ? cursor_ - by : cursor_ + by);
  }

  void note(const Xml& element) {
    if (has(element, "cue")) {
      losses_.left_out(&element, index_, "a cue note");
      if (!has(element, "grace")) go_to(element, cursor_ + duration(element));
      return;
    }
    const int staff = whole(text_of(element, "staff")).value_or(1);
    if (staff < 1 || staff > most_staves) return fail(element, "there is no staff " + std::to_string(staff));
    NoteTaker taker(losses_, index_, attributes_.transposed(staff));
    if (has(element, "grace")) return grace(element, taker, staff);
    const Rational length = duration(element);
    if (lost_) return;
    if (has(element, "chord")) return chord_note(element, taker, length);
    if (here().symbols.size() == most_symbols) {
      losses_.error(Code::adopt_too_much, &element, index_, "it has more than 1000 notes and rests",
                    "take the score in parts");
      lost_ = true;
      return;
    }
    Symbol symbol;
    symbol.staff = staff;
    symbol.voice = text_of(element, "voice");
    symbol.at = cursor_;
    symbol.length = length;
    symbol.element = &element;
    symbol.rest = has(element, "rest");
    const Xml* rest = element.child("rest");
    if (rest == nullptr || attribute(*rest, "measure") != "yes") here().only_rests_of_bar = false;
    if (!symbol.rest) symbol.heads.push_back(taker.head(element));
    taker.add_event_signs(element, symbol);
    note_dynamics(element);
    symbol.graces = std::move(graces_[staff]);
    graces_.erase(staff);
    here().symbols.push_back(std::move(symbol));
    go_to(element, cursor_ + length);
  }

  // Some programs write them on the note.
  void note_dynamics(const Xml& element) {
    for (const Xml* n : element.all("notations")) {
      for (const Xml* e : n->all("dynamics")) {
        DirectionTaker(losses_, part_, here(), index_).dynamics(*e, cursor_);
      }
    }
  }

  // Those that wait for a note which does not come.
  void drop_graces() {
    for (const auto& [staff, graces] : graces_) {
      for (const Head& grace : graces) losses_.left_out(grace.element, index_, "a grace note with no note after it");
    }
    graces_.clear();
  }

  void chord_note(const Xml& element, NoteTaker& taker, Rational length) {
    if (here().symbols.empty() || here().symbols.back().rest)
      return fail(element, "a note of a chord has none before it");
    Symbol& symbol = here().symbols.back();
    if (symbol.heads.size() == most_heads) return fail(element, "a chord has more than 12 notes");
    if (length != symbol.length) {
      losses_.error(Code::adopt_polyphony, &element, index_, "the notes of a chord last differently",
                    "a lesson holds one line of music: notes that begin together end together");
    }
    symbol.heads.push_back(taker.head(element));
    taker.add_event_signs(element, symbol);
  }

  void grace(const Xml& element, NoteTaker& taker, int staff) {
    std::vector<Head>& waiting = graces_[staff];
    if (waiting.size() == most_heads) return losses_.left_out(&element, index_, "a thirteenth grace note to one note");
    waiting.push_back(taker.head(element));
  }

  void harmony(const Xml& element) {
    const auto chord = chord_of(element, attributes_.transposed(whole(text_of(element, "staff")).value_or(1)));
    if (!chord) {
      const Xml* kind = element.child("kind");
      const std::string name = kind == nullptr ? "" : " (" + text_of(*kind).substr(0, 40) + ")";
      return losses_.left_out(&element, index_, "a chord symbol" + name);
    }
    if (here().harmonies.size() == most_chords) return losses_.left_out(&element, index_, "a hundred and first chord");
    if (has(element, "frame")) losses_.left_out(&element, index_, "a chord's `frame`");
    here().harmonies.push_back({std::max(cursor_ + offset(element), Rational(0)), *chord});
  }

  void barline(const Xml& element) {
    const std::string location = attribute(element, "location");
    if (location == "middle") return losses_.left_out(&element, index_, "a bar line inside a measure");
    BarEdge& edge = location == "left" ? here().left : here().right;
    edge.element = &element;
    edge.style = text_of(element, "bar-style");
    if (const Xml* repeat = element.child("repeat")) {
      const bool forward = attribute(*repeat, "direction") == "forward";
      edge.repeat = forward == (location == "left");
      edge.times = whole(attribute(*repeat, "times")).value_or(0);
      if (!edge.repeat) losses_.left_out(&element, index_, "a repeat sign on the wrong side of its measure");
    }
    if (const Xml* ending = element.child("ending")) {
      const bool starts = attribute(*ending, "type") == "start";
      if (starts == (location == "left")) {
        edge.ending = attribute(*ending, "number");
        edge.ending_words = text_of(*ending);
      }
    }
    if (has(element, "fermata")) losses_.left_out(&element, index_, "a fermata on a bar line");
    for (const char* sign : {"segno", "coda"}) {
      if (has(element, sign)) {
        here().marks.push_back({Mark::Kind::road, location == "left" ? Rational(0) : cursor_, sign, {}, &element});
      }
    }
  }

  TakenPart& part_;
  Losses& losses_;
  AttributesTaker attributes_;
  int index_ = 0;
  Rational cursor_;
  std::map<int, std::vector<Head>> graces_;  // by staff: those that wait for their note
  bool lost_ = false;                        // where in time the rest of the part is cannot be known
};

// Of two parts of one id the first.
std::map<std::string, const Xml*> parts_by_id(const Xml& root) {
  std::map<std::string, const Xml*> parts;
  for (const Xml* p : root.all("part")) {
    parts.emplace(attribute(*p, "id"), p);
  }
  return parts;
}

struct Listed {
  const Xml* element;  // its score-part; may be null
  const Xml* part;
  std::string name;
};

std::vector<Listed> parts_of(const Xml& root) {
  std::vector<Listed> parts;
  const std::map<std::string, const Xml*> by_id = parts_by_id(root);
  const Xml* list = root.child("part-list");
  for (const Xml* e : list == nullptr ? std::vector<const Xml*>() : list->all("score-part")) {
    const auto part = by_id.find(attribute(*e, "id"));
    if (part != by_id.end()) parts.push_back({e, part->second, text_of(*e, "part-name")});
  }
  const Xml* first = root.child("part");
  if (parts.empty() && first != nullptr) parts.push_back({nullptr, first, ""});
  return parts;
}

std::string names_of(const std::vector<Listed>& parts) {
  std::vector<std::string> names;
  for (const Listed& part : parts) {
    const std::string name = part.name.empty() ? "without a name" : "`" + part.name.substr(0, 40) + "`";
    names.push_back(std::to_string(names.size() + 1) + " " + name);
  }
  return source::first_few(names, 8);
}

const Listed* choose(const std::vector<Listed>& parts, const std::string& wanted) {
  if (wanted.empty()) return parts.size() == 1 ? &parts.front() : nullptr;
  for (const Listed& part : parts) {
    if (part.name == wanted) return &part;
  }
  const auto number = whole(wanted);
  if (!number || *number < 1 || *number > static_cast<int>(parts.size())) return nullptr;
  return &parts[static_cast<std::size_t>(*number) - 1];
}

// The same elements of a document that puts parts into measures are not looked for.
bool is_partwise(const Xml& root, Losses& losses) {
  if (root.name == "score-partwise") return true;
  if (root.name == "score-timewise") {
    losses.error(Code::adopt_not_score, &root, "this score puts its parts into measures (score-timewise)",
                 "export it as score-partwise, as programs do by themselves");
  } else {
    losses.error(Code::adopt_not_score, &root,
                 "this is no MusicXML score: it begins with `" + root.name.substr(0, 40) + "`",
                 "a score begins with `score-partwise`");
  }
  return false;
}

}  // namespace

std::optional<TakenPart> take_part(const Xml& root, const std::string& wanted, Losses& losses) {
  if (!is_partwise(root, losses)) return std::nullopt;
  const std::vector<Listed> parts = parts_of(root);
  const Listed* chosen = choose(parts, wanted);
  if (parts.empty()) {
    losses.error(Code::adopt_not_score, &root, "this score has no part", "export the score anew");
    return std::nullopt;
  }
  if (chosen == nullptr) {
    losses.error(Code::adopt_parts, &root,
                 wanted.empty() ? "this score has " + std::to_string(parts.size()) + " parts, and a lesson holds one"
                                : "this score has no part `" + wanted.substr(0, 40) + "`",
                 "choose one with --part: " + names_of(parts));
    return std::nullopt;
  }
  TakenPart part;
  part.name = chosen->name;
  if (chosen->element != nullptr) {
    if (const Xml* own = chosen->element->child("score-instrument")) {
      part.sound = text_of(*own, "instrument-sound");
    }
    if (const Xml* midi = chosen->element->child("midi-instrument")) {
      part.program = whole(text_of(*midi, "midi-program")).value_or(0);
    }
  }
  PartTaker(part, losses).take(*chosen->part);
  if (part.measures.empty() && !losses.has_errors()) {
    losses.error(Code::adopt_not_score, chosen->part, "this part has no measure", "export the score anew");
  }
  return part;
}

}  // namespace fretsheaf::exchange
