#include <algorithm>
#include <array>
#include <string>

#include "theory/chord_kinds.h"
#include "theory/chord_parser.h"

namespace fretsheaf::theory {

namespace {

constexpr std::array<std::string_view, 7> upper_numerals = {"I", "II", "III", "IV", "V", "VI", "VII"};
constexpr std::array<std::string_view, 7> lower_numerals = {"i", "ii", "iii", "iv", "v", "vi", "vii"};

// An accidental and a figure: "bVII".
struct Figure {
  Degree degree;
  bool accidental_written = false;
  bool lower_case = false;
};

// The longest figure at the text's beginning, 0 where there is none.
int take_number(std::string_view& text, const std::array<std::string_view, 7>& numerals) {
  std::size_t length = 0;
  int number = 0;
  for (std::size_t index = 0; index < numerals.size(); ++index) {
    if (!text.starts_with(numerals[index]) || numerals[index].size() <= length) continue;
    length = numerals[index].size();
    number = static_cast<int>(index) + 1;
  }
  text.remove_prefix(length);
  return number;
}

std::optional<Figure> take_figure(std::string_view& text) {
  Figure figure;
  const std::size_t signs = text.find_first_not_of("b#");
  if (signs == std::string_view::npos || signs > 2) return std::nullopt;
  for (const char sign : text.substr(0, signs)) {
    if (sign != text.front()) return std::nullopt;
    figure.degree.alteration += sign == 'b' ? -1 : 1;
  }
  figure.accidental_written = signs > 0;
  text.remove_prefix(signs);
  figure.lower_case = text.starts_with('i') || text.starts_with('v');
  figure.degree.number = take_number(text, figure.lower_case ? lower_numerals : upper_numerals);
  if (figure.degree.number == 0) return std::nullopt;
  return figure;
}

bool has_major_third(ChordKind kind) {
  const std::vector<Degree> tones = tones_of(entry_of(kind));
  return std::ranges::find(tones, Degree{3, 0}) != tones.end();
}

// The kind's suffix after a lower-case figure with the minor third that the case says: "7" is m7, "maj7" mMaj7. What
// has its own minor third or none ("ø", "sus4") is read as it stands; what has a major one contradicts the case.
std::optional<ChordQuality> take_minor_quality(std::string_view& text) {
  constexpr std::string_view major = "maj";
  const std::string minor =
      text.starts_with(major) ? "mMaj" + std::string(text.substr(major.size())) : "m" + std::string(text);
  std::string_view rest = minor;
  if (std::optional<ChordQuality> quality = take_quality(rest); quality && (rest.empty() || rest.front() == '/')) {
    text.remove_prefix(text.size() - rest.size());
    return quality;
  }
  std::optional<ChordQuality> quality = take_quality(text);
  if (quality && has_major_third(quality->kind)) return std::nullopt;
  return quality;
}

std::string figure_text(const Degree& degree, bool lower_case) {
  const std::string accidentals(static_cast<std::size_t>(std::abs(degree.alteration)),
                                degree.alteration < 0 ? 'b' : '#');
  const auto index = static_cast<std::size_t>(degree.number - 1);
  return accidentals + std::string(lower_case ? lower_numerals[index] : upper_numerals[index]);
}

// The kind's suffix without what the case says already.
std::string suffix_after_figure(const RomanNumeral& numeral) {
  std::string suffix(entry_of(numeral.kind).suffix);
  if (!numeral.lower_case) return suffix;
  if (numeral.kind == ChordKind::minor_major_seventh) return "maj7";
  if (numeral.kind == ChordKind::half_diminished || !suffix.starts_with('m')) return suffix;
  return suffix.substr(1);
}

NoteName root_in(const Key& key, const Degree& degree, bool accidental_written) {
  if (accidental_written) return degree_name(key, degree);
  return key.scale()[static_cast<std::size_t>(degree.number - 1)];
}

bool leading_tone_chord(const RomanNumeral& numeral) {
  const bool diminished = numeral.kind == ChordKind::diminished || numeral.kind == ChordKind::diminished_seventh ||
                          numeral.kind == ChordKind::half_diminished;
  return diminished && numeral.degree.number == 7 && !numeral.accidental_written;
}

// The key that a numeral after a slash stands for: major or minor by its case.
Key key_of_relative(const RomanNumeral& numeral, const Key& key) {
  if (!numeral.relative_to) return key;
  const NoteName tonic = practical(root_in(key, *numeral.relative_to, numeral.relative_accidental_written));
  return {tonic, numeral.relative_lower_case ? Mode::minor : Mode::major};
}

}  // namespace

std::optional<RomanNumeral> parse_numeral(std::string_view text) {
  const std::optional<Figure> figure = take_figure(text);
  if (!figure) return std::nullopt;
  std::optional<ChordQuality> quality = figure->lower_case ? take_minor_quality(text) : take_quality(text);
  if (!quality) return std::nullopt;

  RomanNumeral numeral;
  numeral.degree = figure->degree;
  numeral.accidental_written = figure->accidental_written;
  numeral.lower_case = figure->lower_case;
  numeral.kind = quality->kind;
  numeral.alterations = std::move(quality->alterations);
  if (text.empty()) return numeral;

  if (text.front() != '/') return std::nullopt;
  text.remove_prefix(1);
  const std::optional<Figure> relative = take_figure(text);
  if (!relative || !text.empty()) return std::nullopt;
  numeral.relative_to = relative->degree;
  numeral.relative_accidental_written = relative->accidental_written;
  numeral.relative_lower_case = relative->lower_case;
  return numeral;
}

Chord resolve(const RomanNumeral& numeral, const Key& key) {
  const Key home = key_of_relative(numeral, key);
  NoteName root = root_in(home, numeral.degree, numeral.accidental_written);
  if (home.mode == Mode::minor && leading_tone_chord(numeral)) root = degree_name(home, {7, 0});
  return {practical(root), numeral.kind, numeral.alterations, std::nullopt};
}

std::optional<Chord> resolve(const ChordToken& token, const Key& key) {
  if (const auto* chord = std::get_if<Chord>(&token)) return *chord;
  if (const auto* numeral = std::get_if<RomanNumeral>(&token)) return resolve(*numeral, key);
  return std::nullopt;
}

std::string to_string(const RomanNumeral& numeral) {
  std::string text = figure_text(numeral.degree, numeral.lower_case) + suffix_after_figure(numeral);
  for (const Degree& alteration : numeral.alterations) text += alteration.to_string();
  if (numeral.relative_to) text += "/" + figure_text(*numeral.relative_to, numeral.relative_lower_case);
  return text;
}

std::string to_string(const ChordToken& token) {
  if (const auto* chord = std::get_if<Chord>(&token)) return to_string(*chord);
  if (const auto* numeral = std::get_if<RomanNumeral>(&token)) return to_string(*numeral);
  return "N.C.";
}

}  // namespace fretsheaf::theory
