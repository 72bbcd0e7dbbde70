#include "exchange/adopt_line.h"

#include <algorithm>
#include <set>
#include <utility>

#include "theory/arithmetic.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

bool sounds(const Symbol& symbol) {
  return !symbol.heads.empty();
}

// A rest that says more than silence.
bool speaks(const Symbol& symbol) {
  return symbol.fermata || !symbol.lyrics.empty() || !symbol.graces.empty();
}

int midi_class(const Head& head) {
  return head.pitch && !head.cross ? theory::floor_mod(head.pitch->midi(), 12) : -1;
}

std::vector<int> classes(const Symbol& symbol) {
  std::vector<int> all;
  for (const Head& head : symbol.heads) all.push_back(midi_class(head));
  std::sort(all.begin(), all.end());
  return all;
}

void take_over(std::string& own, const std::string& other) {
  if (own.empty()) own = other;
}

void unite(Head& head, const Head& other) {
  if (!head.string) head.string = other.string;
  if (!head.fret) head.fret = other.fret;
  head.cross = head.cross || other.cross;
  head.parentheses = head.parentheses || other.parentheses;
  head.harmonic = head.harmonic || other.harmonic;
  head.tie_stop = head.tie_stop || other.tie_stop;
  head.tie_start = head.tie_start || other.tie_start;
  head.let_ring = head.let_ring || other.let_ring;
  head.palm_mute = head.palm_mute || other.palm_mute;
  head.accent = head.accent || other.accent;
  head.staccato = head.staccato || other.staccato;
  head.tenuto = head.tenuto || other.tenuto;
  head.vibrato = head.vibrato || other.vibrato;
  if (!head.bend) head.bend = other.bend;
  if (head.slide_off == lesson::SlideOff::none) head.slide_off = other.slide_off;
  if (head.from_nowhere == lesson::Approach::none) head.from_nowhere = other.from_nowhere;
  take_over(head.finger, other.finger);
  take_over(head.hand, other.hand);
  if (head.joins.empty()) head.joins = other.joins;
  if (head.slurs.empty()) head.slurs = other.slurs;
}

// The same event on another staff.
void unite(Symbol& symbol, const Symbol& other) {
  symbol.fermata = symbol.fermata || other.fermata;
  symbol.tremolo = symbol.tremolo || other.tremolo;
  if (!symbol.stroke) symbol.stroke = other.stroke;
  if (symbol.lyrics.empty()) symbol.lyrics = other.lyrics;
  if (symbol.graces.empty()) symbol.graces = other.graces;
  std::vector<bool> taken(other.heads.size(), false);
  for (Head& head : symbol.heads) {
    for (std::size_t i = 0; i < other.heads.size(); ++i) {
      if (taken[i] || midi_class(other.heads[i]) != midi_class(head)) continue;
      // A tab says which string is which; equal pitches keep their order.
      taken[i] = true;
      unite(head, other.heads[i]);
      break;
    }
  }
}

class LineFinder {
 public:
  LineFinder(const AdoptContext& context, Section& section) : context_(context), section_(section) {}

  std::vector<std::vector<Symbol>> run() {
    main_ = main_staff();
    std::vector<std::vector<Symbol>> line;
    for (int measure = section_.first; measure < section_.last; ++measure) line.push_back(of_measure(measure));
    find_rhythm(line);
    return line;
  }

 private:
  const TakenMeasure& taken(int measure) const { return context_.part.measures[static_cast<std::size_t>(measure)]; }

  // The tab where it has notes, else the first staff that has any.
  int main_staff() {
    std::set<int> with_notes;
    for (int measure = section_.first; measure < section_.last; ++measure) {
      for (const Symbol& symbol : taken(measure).symbols) {
        if (sounds(symbol)) with_notes.insert(symbol.staff);
      }
    }
    for (const int staff : with_notes) {
      const auto facts = context_.part.staves.find(staff);
      if (facts != context_.part.staves.end() && facts->second.tab) return staff;
    }
    return with_notes.empty() ? 1 : *with_notes.begin();
  }

  std::vector<Symbol> of_measure(int measure) {
    std::set<int> staves = {main_};
    for (const Symbol& symbol : taken(measure).symbols) staves.insert(symbol.staff);
    std::vector<Symbol> line = of_staff(measure, main_);
    for (const int staff : staves) {
      if (staff != main_) add_staff(measure, line, of_staff(measure, staff));
    }
    return line;
  }

  // The staff's voices in one.
  std::vector<Symbol> of_staff(int measure, int staff) {
    std::vector<Symbol> line;
    for (const Symbol& symbol : taken(measure).symbols) {
      if (symbol.staff == staff && (sounds(symbol) || speaks(symbol))) line.push_back(symbol);
    }
    std::stable_sort(line.begin(), line.end(), [](const Symbol& a, const Symbol& b) { return a.at < b.at; });
    std::vector<Symbol> one;
    for (Symbol& symbol : line) {
      if (one.empty() || symbol.at >= one.back().at + one.back().length) {
        one.push_back(std::move(symbol));
      } else {
        add_beside(measure, one.back(), std::move(symbol));
      }
    }
    return one;
  }

  // What begins before the one before has ended: another voice.
  void add_beside(int measure, Symbol& before, Symbol symbol) {
    if (symbol.at == before.at && symbol.length == before.length) {
      before.heads.insert(before.heads.end(), symbol.heads.begin(), symbol.heads.end());
      before.graces.insert(before.graces.end(), symbol.graces.begin(), symbol.graces.end());
      before.fermata = before.fermata || symbol.fermata;
      before.lyrics.insert(before.lyrics.end(), symbol.lyrics.begin(), symbol.lyrics.end());
      before.rest = before.rest && symbol.rest;
    } else if (sounds(before) && sounds(symbol)) {
      report(symbol, measure, "two voices sound at once");
    } else if (!sounds(before)) {
      before = std::move(symbol);
    }
  }

  void report(const Symbol& symbol, int measure, const std::string& what) {
    if (std::exchange(reported_, true)) return;
    context_.losses.error(Code::adopt_polyphony, symbol.element, measure, what,
                          "a lesson holds one line of music: take out what is not to be in it");
  }

  // Where it sounds, it must say what the line says.
  void add_staff(int measure, std::vector<Symbol>& line, const std::vector<Symbol>& other) {
    for (const Symbol& symbol : other) {
      const auto same = std::find_if(line.begin(), line.end(), [&](const Symbol& own) { return own.at == symbol.at; });
      if (same != line.end() && (!sounds(symbol) || classes(*same) == classes(symbol))) {
        unite(*same, symbol);
      } else if (sounds(symbol)) {
        report(symbol, measure, "two staves have different music");
      }
    }
  }

  void find_rhythm(const std::vector<std::vector<Symbol>>& line) {
    int pitched = 0;
    int strums = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
      const TakenMeasure& measure = taken(section_.first + static_cast<int>(i));
      for (const Symbol& symbol : line[i]) {
        for (const Head& head : symbol.heads) {
          const bool strum = head.slash || (!head.pitch && measure.slashes);
          ++(strum ? strums : pitched);
          if (!strum && !head.pitch && !(head.string && head.fret)) return report_percussion(symbol, i);
        }
      }
    }
    if (pitched > 0 && strums > 0) {
      context_.losses.error(Code::adopt_polyphony, taken(section_.first).element, section_.first,
                            "from here on strums stand among notes",
                            "an example of a lesson has notes, or is a rhythm of strums");
    }
    section_.strings = strums == 0;
  }

  void report_percussion(const Symbol& symbol, std::size_t i) {
    context_.losses.error(Code::adopt_percussion, symbol.element, section_.first + static_cast<int>(i),
                          "a note has no pitch", "a lesson is for strings with frets, and holds no percussion");
  }

  const AdoptContext& context_;
  Section& section_;
  int main_ = 1;
  bool reported_ = false;
};

}  // namespace

std::vector<std::vector<Symbol>> line_of(const AdoptContext& context, Section& section) {
  return LineFinder(context, section).run();
}

}  // namespace fretsheaf::exchange
