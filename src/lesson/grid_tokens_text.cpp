#include "lesson/grid_tokens_text.h"

#include <algorithm>
#include <array>

namespace fretsheaf::lesson {

namespace {

const char* sign_of(Approach approach) {
  constexpr std::array signs = {"", "h", "p", "/", "\\"};
  return signs.at(static_cast<std::size_t>(approach));
}

std::string suffixes(const Note& note) {
  std::string text;
  if (note.accent && !note.held) text += ">";
  if (note.staccato) text += ".";
  if (note.tenuto) text += "_";
  if (note.vibrato) text += "~";
  if (note.bend) text += "^" + note.bend->tones.to_string() + (note.bend->release ? "v" : "");
  if (note.slide_off != SlideOff::none) text += note.slide_off == SlideOff::up ? "/" : "\\";
  return text;
}

}  // namespace

GridToken note_token(const Note& note) {
  if (note.held) return {0, "=" + suffixes(note)};
  std::string text;
  for (const GraceNote& grace : note.graces) text += sign_of(grace.approach) + std::to_string(grace.place.fret);
  text += sign_of(note.approach);
  if (note.ghost || note.harmonic) text += note.ghost ? "(" : "<";
  const int before = static_cast<int>(text.size());
  text += note.dead ? "x" : std::to_string(note.place.fret);
  if (note.ghost || note.harmonic) text += note.ghost ? ")" : ">";
  return {before, text + suffixes(note)};
}

std::string strum_token(Strum strum) {
  constexpr std::array tokens = {"*", "x", ">", "(*)"};
  return tokens.at(static_cast<std::size_t>(strum));
}

std::string span_name(SpanKind kind) {
  constexpr std::array names = {"<", ">", "PM", "let", "TP"};
  return names.at(static_cast<std::size_t>(kind));
}

std::string word_token(const std::string& words) {
  const bool bare = std::all_of(words.begin(), words.end(), [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '.' || c == ',' ||
           c == '!' || c == '?' || c == '\'';
  });
  return bare ? words : "\"" + words + "\"";
}

}  // namespace fretsheaf::lesson
