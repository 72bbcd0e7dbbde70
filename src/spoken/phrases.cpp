#include "spoken/phrases.h"

#include <array>
#include <cctype>

#include "score/printed.h"

namespace fretsheaf::spoken {
namespace {

// The parts of a beat that have names, with what is said of a place and of a length.
struct Part {
  int numerator;
  int denominator;
  Sentence place;
  Sentence alone;
  Sentence after;
};

constexpr std::array parts = {
    Part{1, 2, Sentence::beat_half, Sentence::half_beat, Sentence::beats_and_half},
    Part{1, 4, Sentence::beat_quarter, Sentence::quarter_beat, Sentence::beats_and_quarter},
    Part{3, 4, Sentence::beat_three_quarters, Sentence::three_quarters_beat, Sentence::beats_and_three_quarters},
    Part{1, 3, Sentence::beat_third, Sentence::third_beat, Sentence::beats_and_third},
    Part{2, 3, Sentence::beat_two_thirds, Sentence::two_thirds_beat, Sentence::beats_and_two_thirds},
};

const Part* named(Rational fraction) {
  for (const Part& part : parts) {
    if (part.numerator == fraction.numerator() && part.denominator == fraction.denominator()) return &part;
  }
  return nullptr;
}

constexpr std::array by_value = {Sentence::whole_notes,       Sentence::half_notes,      Sentence::quarter_notes,
                                 Sentence::eighth_notes,      Sentence::sixteenth_notes, Sentence::thirty_second_notes,
                                 Sentence::sixty_fourth_notes};

bool is_word(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) >= 0x80;
}

int log2_of(int lower) {
  int log2 = 0;
  while (lower > 1) {
    lower /= 2;
    ++log2;
  }
  return log2;
}

}  // namespace

Phrases::Phrases(const score::Score& score) : score_(score) {
  const int strings = score.neck.strings();
  strings_.reserve(static_cast<std::size_t>(strings));
  for (int string = 1; string <= strings; ++string) {
    strings_.push_back(plain(score::string_name(string, score.neck, score.naming)));
  }
  constexpr int last = 48;  // past every neck, where harmonics may still be touched
  for (int fret = 0; fret <= last; ++fret) {
    frets_.push_back(words::fret_name(language(), fret));
  }
}

std::string Phrases::operator()(Sentence pattern, int n) const {
  return words::fill((*this)[pattern], {{"n", std::to_string(n)}});
}

std::string Phrases::counted(Sentence one, int n) const {
  return words::fill(words::form(language(), one, n), {{"n", std::to_string(n)}});
}

std::string Phrases::beat(Rational at, const theory::Meter& meter) const {
  const Rational counts = at / meter.count();
  const std::int64_t whole = counts.floor();
  const Rational fraction = counts - Rational(whole);
  const std::string n = std::to_string(whole + 1);
  if (fraction == Rational(0)) return (*this)(Sentence::beat, {{"n", n}});
  if (const Part* part = named(fraction)) return (*this)(part->place, {{"n", n}});
  return (*this)(Sentence::beat_part, {{"n", n}, {"part", fraction.to_string()}});
}

std::string Phrases::beats(Rational count) const {
  const auto whole = static_cast<int>(count.floor());
  const Rational fraction = count - Rational(whole);
  if (fraction == Rational(0)) return counted(Sentence::beats_one, whole);
  const Part* part = named(fraction);
  if (whole == 0) {
    return part != nullptr ? std::string((*this)[part->alone])
                           : (*this)(Sentence::part_beat, {{"part", fraction.to_string()}});
  }
  const std::string beats = counted(Sentence::beats_one, whole);
  return part != nullptr ? (*this)(part->after, {{"beats", beats}})
                         : (*this)(Sentence::beats_and_part, {{"beats", beats}, {"part", fraction.to_string()}});
}

std::string Phrases::values(const score::NoteValue& value) const {
  const auto index = std::min(static_cast<std::size_t>(std::max(value.log2, 0)), by_value.size() - 1);
  std::string text((*this)[by_value[index]]);
  for (int dot = 0; dot < value.dots; ++dot) text = (*this)(Sentence::dotted, {{"values", text}});
  return text;
}

std::string Phrases::meter(const theory::Meter& meter) const {
  return (*this)(Sentence::meter, {{"meter", meter.to_string()},
                                   {"beats", counted(Sentence::beats_one, meter.upper())},
                                   {"values", values({log2_of(meter.lower), 0})}});
}

std::string Phrases::plain(std::string_view text) const {
  constexpr std::string_view flat = "♭";
  constexpr std::string_view sharp = "♯";
  std::string out;
  bool after_sign = false;
  while (!text.empty()) {
    const bool is_flat = text.starts_with(flat);
    if (!is_flat && !text.starts_with(sharp)) {
      if (after_sign && is_word(text.front())) out += ' ';
      after_sign = false;
      out += text.front();
      text.remove_prefix(1);
      continue;
    }
    if (after_sign || (!out.empty() && is_word(out.back()))) out += ' ';
    out += words::word(language(), is_flat ? words::Word::flat : words::Word::sharp);
    after_sign = true;
    text.remove_prefix(flat.size());
  }
  return out;
}

std::string Phrases::degree(std::string_view label) const {
  return plain(score::with_accidentals(label));
}

void add_item(std::string& list, std::string_view item) {
  if (item.empty()) return;
  if (!list.empty()) list += ", ";
  list += item;
}

void add_sentence(std::string& text, std::string_view sentence) {
  if (sentence.empty()) return;
  if (!text.empty() && text.back() != '\n') text += ' ';
  const std::size_t begin = text.size();
  text += sentence;
  words::raise(text, begin);
  if (text.back() != '.' && text.back() != '!' && text.back() != '?') text += '.';
}

}  // namespace fretsheaf::spoken
