#include "exchange/adopt_neck.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdlib>
#include <string_view>

#include "lesson/limits.h"

namespace fretsheaf::exchange {

using fretboard::Instrument;
using source::Code;

namespace {

std::string lower(std::string text) {
  for (char& c : text) c = c == ' ' ? '-' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

// What the names of instruments have in common, the narrower before the wider.
const Instrument* named(const std::string& name, int strings) {
  if (const Instrument* exact = fretboard::find_instrument(lower(name))) return exact;
  const std::string words = lower(name);
  const auto says = [&](std::string_view word) { return words.find(word) != std::string::npos; };
  const char* found = says("ukulele")    ? (says("baritone") ? "baritone-ukulele" : "ukulele")
                      : says("mandolin") ? "mandolin"
                      : says("banjo")    ? (says("tenor") || strings == 4 ? "tenor-banjo" : "banjo")
                      : says("bass")     ? (strings == 5   ? "bass-5"
                                            : strings == 6 ? "bass-6"
                                                           : "bass")
                      : says("guitar")   ? (strings == 7 ? "guitar-7" : "guitar")
                                         : "";
  return fretboard::find_instrument(found);
}

// General MIDI's programs, from 1: guitars 25 to 32, basses 33 to 40, banjo 106.
const Instrument* by_program(int program, int strings) {
  if (program >= 25 && program <= 32) return named("guitar", strings);
  if (program >= 33 && program <= 40) return named("bass", strings);
  return program == 106 ? named("banjo", strings) : nullptr;
}

int distance(const std::vector<theory::Pitch>& a, const std::vector<theory::Pitch>& b) {
  constexpr int other_number = 1000;
  if (a.size() != b.size())
    return other_number * (1 + std::abs(static_cast<int>(a.size()) - static_cast<int>(b.size())));
  int sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += std::abs(a[i].midi() - b[i].midi());
  return sum;
}

const Instrument* nearest(const std::vector<theory::Pitch>& tuning) {
  const auto all = fretboard::instruments();
  return &*std::min_element(all.begin(), all.end(), [&](const Instrument& a, const Instrument& b) {
    return distance(a.tuning, tuning) < distance(b.tuning, tuning);
  });
}

const StaffFacts* tab_of(const TakenPart& part) {
  for (const auto& [number, staff] : part.staves) {
    if (staff.tab) return &staff;
  }
  return nullptr;
}

// The bottom line first; empty where a line has none.
std::vector<theory::Pitch> tuning_of(const StaffFacts* tab) {
  std::vector<theory::Pitch> tuning;
  if (tab == nullptr || tab->tuning.empty()) return tuning;
  const int lines = std::max(tab->lines, tab->tuning.rbegin()->first);
  for (int line = 1; line <= lines; ++line) {
    const auto open = tab->tuning.find(line);
    if (open == tab->tuning.end()) return {};
    tuning.push_back(open->second);
  }
  return tuning;
}

int highest_fret(const TakenPart& part) {
  int highest = 0;
  for (const TakenMeasure& measure : part.measures) {
    for (const Symbol& symbol : measure.symbols) {
      for (const auto* heads : {&symbol.heads, &symbol.graces}) {
        for (const Head& head : *heads) {
          if (head.string && head.fret && !head.cross && !head.harmonic) highest = std::max(highest, *head.fret);
        }
      }
    }
  }
  return highest;
}

class NeckChooser {
 public:
  NeckChooser(const TakenPart& part, const std::string& wished, Losses& losses)
      : part_(part), wished_(wished), losses_(losses), tab_(tab_of(part)), tuning_(tuning_of(tab_)) {}

  std::optional<ChosenNeck> choose() {
    ChosenNeck chosen;
    chosen.instrument = instrument();
    chosen.neck = {chosen.instrument->tuning, chosen.instrument->frets, 0, chosen.instrument->short_fifth_string};
    if (!tuning_.empty()) chosen.neck.tuning = tuning_;
    if (chosen.neck.short_fifth_string && chosen.neck.strings() != 5) {
      return refuse("a banjo has five strings, and this tab " + std::to_string(chosen.neck.strings()));
    }
    if (chosen.neck.strings() > static_cast<int>(lesson::limits::strings))
      return refuse("no instrument has so many strings as this tab has lines");
    for (const theory::Pitch& open : chosen.neck.tuning) {
      if (open.midi() < lesson::limits::lowest_string || open.midi() > lesson::limits::highest_string ||
          std::abs(open.name.alteration) > 2 || open.octave < 0) {
        return refuse("no string is tuned to " + open.to_string());
      }
    }
    chosen.neck.capo = tab_ == nullptr ? 0 : tab_->capo;
    if (chosen.neck.capo < 0 || chosen.neck.capo >= chosen.neck.frets) {
      return refuse("there is no capo at fret " + std::to_string(chosen.neck.capo));
    }
    const int frets = highest_fret(part_) + chosen.neck.capo;
    if (frets > lesson::limits::frets) return refuse("there is no fret " + std::to_string(highest_fret(part_)));
    chosen.neck.frets = std::max(chosen.neck.frets, frets);
    return chosen;
  }

 private:
  std::optional<ChosenNeck> refuse(std::string what) {
    losses_.error(Code::adopt_neck, nullptr, std::move(what), "choose another instrument with --instrument");
    return std::nullopt;
  }

  const Instrument* instrument() {
    const int strings = static_cast<int>(tuning_.size());
    if (const Instrument* wished = fretboard::find_instrument(wished_)) return wished;
    if (const Instrument* own = fretboard::find_instrument(lower(part_.name)); own && fits(*own)) return own;
    for (const Instrument& other : fretboard::instruments()) {
      if (other.tuning == tuning_) return &other;
    }
    if (const Instrument* own = named(part_.name, strings); own && fits(*own)) return own;
    if (const Instrument* own = named(part_.sound, strings); own && fits(*own)) return own;
    if (const Instrument* own = by_program(part_.program, strings); own && fits(*own)) return own;
    const Instrument* guess = tuning_.empty() ? by_clef() : nearest(tuning_);
    losses_.lose(Code::adopt_assumed, nullptr,
                 "the score names no instrument that lessons know, and is taken as for " + std::string(guess->name),
                 "choose another with --instrument");
    return guess;
  }

  bool fits(const Instrument& instrument) const {
    return tuning_.empty() || instrument.tuning.size() == tuning_.size() || !instrument.short_fifth_string;
  }

  const Instrument* by_clef() const {
    const bool low = std::any_of(part_.staves.begin(), part_.staves.end(),
                                 [](const auto& staff) { return staff.second.clef == "F"; });
    return fretboard::find_instrument(low ? "bass" : "guitar");
  }

  const TakenPart& part_;
  const std::string& wished_;
  Losses& losses_;
  const StaffFacts* tab_;
  std::vector<theory::Pitch> tuning_;
};

}  // namespace

std::optional<ChosenNeck> choose_neck(const TakenPart& part, const std::string& wished, Losses& losses) {
  return NeckChooser(part, wished, losses).choose();
}

}  // namespace fretsheaf::exchange
