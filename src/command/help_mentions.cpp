#include "command/help_mentions.h"

#include <algorithm>
#include <array>

namespace fretsheaf::command {

namespace {

constexpr std::size_t shortest_word = 2;
constexpr std::size_t most_mentions = 12;
constexpr std::size_t most_in_full = 3;
constexpr std::size_t columns = 79;

bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

// In small letters, with blanks for hyphens: "Hammer-on" → "hammer on".
std::string plain(std::string_view text) {
  std::string all(text);
  for (char& c : all) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + ('a' - 'A'));
    if (c == '-') c = ' ';
  }
  return all;
}

// Whether the word stands in the text as it is, or with an ending: "tie" in "tied", not in "tier".
bool tells_of(const std::string& text, const std::string& word) {
  static constexpr std::array<std::string_view, 6> endings{"", "s", "es", "d", "ed", "ing"};
  for (std::size_t at = 0; (at = text.find(word, at)) != std::string::npos; ++at) {
    if (at > 0 && is_letter(text[at - 1])) continue;
    std::size_t end = at + word.size();
    while (end < text.size() && is_letter(text[end])) ++end;
    const std::string_view ending = std::string_view(text).substr(at + word.size(), end - at - word.size());
    if (std::find(endings.begin(), endings.end(), ending) != endings.end()) return true;
  }
  return false;
}

}  // namespace

std::string singular(std::string word) {
  if (word.size() > 3 && word.ends_with('s') && !word.ends_with("ss")) word.pop_back();
  return word;
}

std::vector<const HelpEntry*> mentions_of(const std::string& word) {
  const std::string sought = singular(plain(word));
  if (sought.size() < shortest_word) return {};
  std::vector<const HelpEntry*> of_lessons;
  std::vector<const HelpEntry*> of_templates;
  for (const HelpEntry& entry : help_entries()) {
    if (!tells_of(plain(entry.text), sought)) continue;
    (entry.kind == HelpKind::template_key ? of_templates : of_lessons).push_back(&entry);
  }
  auto& found = of_lessons.empty() ? of_templates : of_lessons;
  if (found.size() > most_mentions) found.clear();
  return found;
}

std::string told_of(const std::string& word, const std::vector<const HelpEntry*>& entries) {
  std::string text = "'" + word + "' has no entry of its own; ";
  text += entries.size() == 1 ? "this tells of it:\n" : "these tell of it:\n";
  if (entries.size() <= most_in_full) {
    for (const HelpEntry* entry : entries) text += "\n" + explained(*entry);
    return text;
  }
  for (const HelpEntry* entry : entries) {
    text += "\n" + std::string(entry->word) + ": " + help_place(*entry) + "\n" + wrapped(entry->text, 2, columns);
  }
  return text;
}

}  // namespace fretsheaf::command
