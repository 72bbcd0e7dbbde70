#include "command/help.h"

#include <algorithm>

#include "command/command.h"
#include "command/help_mentions.h"
#include "command/report.h"
#include "source/nearest.h"

namespace fretsheaf::command {

namespace {

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c; });
  return text;
}

std::string without_quotes(std::string text) {
  if (text.size() > 2 && text.starts_with('"') && text.ends_with('"')) return text.substr(1, text.size() - 2);
  return text;
}

// The entries of which a spelling becomes `word` by `change`.
template <typename Change>
std::vector<const HelpEntry*> entries_of(const std::string& word, Change change) {
  std::vector<const HelpEntry*> found;
  for (const HelpEntry& entry : help_entries()) {
    const auto words = spellings(entry);
    const auto is_word = [&](const std::string& spelling) { return change(spelling) == word; };
    if (std::any_of(words.begin(), words.end(), is_word)) found.push_back(&entry);
  }
  return found;
}

// A string row stands under "string", and is labelled by its letter.
bool is_string_letter(const std::string& word) {
  return word.size() == 1 && word[0] >= 'A' && word[0] <= 'G';
}

// What a word is most probably meant to be: as it is written, without its quotes, in another case, without the dashes
// of an option, without those of a stretch (`PM---`), without the s of a plural.
std::vector<const HelpEntry*> find(const std::string& word) {
  const auto same = [](const std::string& spelling) { return spelling; };
  if (auto found = entries_of(word, same); !found.empty()) return found;
  if (auto found = entries_of(word, without_quotes); !found.empty()) return found;
  if (is_string_letter(word)) return entries_of("string", same);
  const auto no_case = [](const std::string& spelling) { return lower(without_quotes(spelling)); };
  if (auto found = entries_of(lower(word), no_case); !found.empty()) return found;
  if (auto found = entries_of("--" + word, same); !found.empty()) return found;
  const auto no_dashes = [](const std::string& spelling) {
    const std::size_t dashes = spelling.find("---");
    return dashes == 0 ? spelling : spelling.substr(0, dashes);
  };
  const std::size_t end = word.find_last_not_of('-');
  auto stretches = entries_of(word.substr(0, end == std::string::npos ? 0 : end + 1), no_dashes);
  return stretches.empty() ? entries_of(singular(lower(word)), no_case) : stretches;
}

// Up to three known words that are near to one that is not known, the nearest first.
std::string suggestions(const std::string& word) {
  std::vector<std::string> words;
  for (const HelpEntry& entry : help_entries()) {
    for (std::string& spelling : spellings(entry)) words.push_back(std::move(spelling));
  }
  std::sort(words.begin(), words.end());
  words.erase(std::unique(words.begin(), words.end()), words.end());
  std::vector<std::string_view> known(words.begin(), words.end());
  std::vector<std::string> near;
  while (near.size() < 3) {
    near.push_back(source::nearest(word, known));
    if (near.back().empty()) break;
    known.erase(std::find(known.begin(), known.end(), near.back()));
  }
  if (near.back().empty()) near.pop_back();
  std::string text;
  for (std::size_t i = 0; i < near.size(); ++i) {
    text += i == 0 ? "; did you mean " : i + 1 == near.size() ? " or " : ", ";
    text += "'" + near[i] + "'";
  }
  return text.empty() ? text : text + "?";
}

// What tells of the single words of a phrase ("key signature"), each entry once. Words of one or two letters are signs,
// or hold the phrase together.
std::vector<const HelpEntry*> entries_of_words(const std::string& phrase) {
  constexpr std::size_t shortest = 3;
  std::vector<const HelpEntry*> all;
  for (std::size_t begin = 0; begin < phrase.size();) {
    const std::size_t end = std::min(phrase.find(' ', begin), phrase.size());
    if (end - begin >= shortest) {
      for (const HelpEntry* entry : find(phrase.substr(begin, end - begin))) {
        if (std::find(all.begin(), all.end(), entry) == all.end()) all.push_back(entry);
      }
    }
    begin = end + 1;
  }
  return all;
}

}  // namespace

Exit help(const std::string& word, Console& console) {
  if (word.empty()) {
    console.out += help_words();
    return Exit::done;
  }
  const std::vector<const HelpEntry*> found = find(word);
  if (found.empty()) {
    auto telling = mentions_of(word);
    if (telling.empty() && word.find(' ') != std::string::npos) telling = entries_of_words(word);
    if (!telling.empty()) {
      console.out += told_of(word, telling);
      return Exit::done;
    }
    complain("there is no help on '" + word + "'" + suggestions(word), console);
    console.errors += "help: fretsheaf help lists all words that it explains\n";
    return Exit::request_wrong;
  }
  for (const HelpEntry* entry : found) console.out += (entry == found.front() ? "" : "\n") + explained(*entry);
  return Exit::done;
}

}  // namespace fretsheaf::command
