#include "theory/chord_parser.h"

#include <algorithm>
#include <array>

#include "theory/chord_kinds.h"

namespace fretsheaf::theory {

namespace {

constexpr std::array<std::string_view, 6> alteration_signs = {"b5", "#5", "b9", "#9", "#11", "b13"};

bool has_seventh(const ChordKindEntry& entry) {
  return std::ranges::any_of(tones_of(entry), [](const Degree& tone) { return tone.number == 7; });
}

// One reading of the text's beginning as a kind, the longest there is.
void match(std::string_view text, const ChordKindEntry& entry, std::string_view suffix, const ChordKindEntry*& best,
           std::size_t& length) {
  if (!text.starts_with(suffix) || (best != nullptr && suffix.size() <= length)) return;
  best = &entry;
  length = suffix.size();
}

const ChordKindEntry& take_kind(std::string_view& text) {
  const ChordKindEntry* best = nullptr;
  std::size_t length = 0;
  for (const ChordKindEntry& entry : chord_kinds()) {
    match(text, entry, entry.suffix, best, length);
    if (!entry.other_suffix.empty()) match(text, entry, entry.other_suffix, best, length);
  }
  text.remove_prefix(length);
  return *best;  // the major kind's empty suffix begins every text
}

std::optional<Degree> take_alteration(std::string_view& text) {
  for (const std::string_view sign : alteration_signs) {
    if (!text.starts_with(sign)) continue;
    text.remove_prefix(sign.size());
    return chord_degree(sign);
  }
  return std::nullopt;
}

bool contains(const std::vector<Degree>& degrees, const Degree& degree) {
  return std::ranges::find(degrees, degree) != degrees.end();
}

}  // namespace

std::optional<ChordQuality> take_quality(std::string_view& text) {
  std::string_view rest = text;
  const ChordKindEntry& entry = take_kind(rest);
  const std::vector<Degree> own = tones_of(entry);
  ChordQuality quality{entry.kind, {}};
  while (const std::optional<Degree> alteration = take_alteration(rest)) {
    const bool twice = contains(own, *alteration) || contains(quality.alterations, *alteration);
    if (twice || !has_seventh(entry)) return std::nullopt;
    quality.alterations.push_back(*alteration);
  }
  text = rest;
  return quality;
}

std::optional<Chord> parse_symbol(std::string_view text) {
  if (text.empty() || text.front() < 'A' || text.front() > 'G') return std::nullopt;
  std::size_t length = 1;
  while (length < text.size() && (text[length] == '#' || text[length] == 'b')) ++length;
  const std::optional<NoteName> root = parse_note_name(text.substr(0, length));
  if (!root) return std::nullopt;
  text.remove_prefix(length);

  std::optional<ChordQuality> quality = take_quality(text);
  if (!quality) return std::nullopt;
  Chord chord{*root, quality->kind, std::move(quality->alterations), std::nullopt};
  if (text.empty()) return chord;
  if (text.size() < 2 || text.front() != '/' || text[1] < 'A' || text[1] > 'G') return std::nullopt;
  chord.bass = parse_note_name(text.substr(1));
  if (!chord.bass) return std::nullopt;
  return chord;
}

std::optional<ChordToken> parse_chord(std::string_view text) {
  if (text == "N.C.") return NoChord{};
  if (std::optional<Chord> chord = parse_symbol(text)) return *std::move(chord);
  if (std::optional<RomanNumeral> numeral = parse_numeral(text)) return *std::move(numeral);
  return std::nullopt;
}

}  // namespace fretsheaf::theory
