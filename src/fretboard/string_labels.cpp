#include <algorithm>
#include <charconv>

#include "fretboard/neck.h"

namespace fretsheaf::fretboard {

namespace {

std::string lower_letter(std::string label) {
  label.front() = static_cast<char>(label.front() - 'A' + 'a');
  return label;
}

std::string upper_letter(std::string_view label) {
  std::string result(label);
  if (!result.empty() && result.front() >= 'a' && result.front() <= 'g') {
    result.front() = static_cast<char>(result.front() - 'a' + 'A');
  }
  return result;
}

std::vector<int> strings_named(const Neck& neck, std::string_view letter) {
  std::vector<int> strings;
  for (int string = 1; string <= neck.strings(); ++string) {
    if (neck.open_pitch(string).name.to_string() == letter) strings.push_back(string);
  }
  return strings;
}

// Of two strings that share a letter; where they sound the same, the upper line counts as the higher.
int higher_sounding(const Neck& neck, int upper_line, int lower_line) {
  return neck.open_pitch(lower_line).midi() > neck.open_pitch(upper_line).midi() ? lower_line : upper_line;
}

std::string label_of(const Neck& neck, int string) {
  std::string letter = neck.open_pitch(string).name.to_string();
  const std::vector<int> sharing = strings_named(neck, letter);
  if (sharing.size() == 1) return letter;
  if (sharing.size() > 2) return std::to_string(string);
  return string == higher_sounding(neck, sharing[0], sharing[1]) ? lower_letter(letter) : letter;
}

std::optional<int> line_number(const Neck& neck, std::string_view label) {
  int line = 0;
  const auto [end, error] = std::from_chars(label.data(), label.data() + label.size(), line);
  const bool whole = error == std::errc{} && end == label.data() + label.size() && label.front() != '0';
  if (!whole || line < 1 || line > neck.strings()) return std::nullopt;
  return line;
}

}  // namespace

std::vector<std::string> string_labels(const Neck& neck) {
  std::vector<std::string> labels;
  for (int string = 1; string <= neck.strings(); ++string) labels.push_back(label_of(neck, string));
  return labels;
}

std::optional<int> string_of_label(const Neck& neck, std::string_view label) {
  if (const std::optional<int> line = line_number(neck, label)) return line;
  const std::vector<std::string> labels = string_labels(neck);
  const auto exact = std::ranges::find(labels, label);
  if (exact != labels.end()) return static_cast<int>(exact - labels.begin()) + 1;
  const std::vector<int> sharing = strings_named(neck, upper_letter(label));
  if (sharing.size() != 1) return std::nullopt;
  return sharing.front();
}

}  // namespace fretsheaf::fretboard
