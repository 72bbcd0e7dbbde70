// The signs that `fretsheaf help` explains, held to the grammar in src/lesson/README.md and to the reader.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "command/help.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "support/project.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using command::HelpEntry;
using command::HelpKind;

namespace {

// The rows in which the rules of the grammar are read. What is in none of them has no signs of its own.
const std::map<std::string, std::string> row_of_rule = {
    {"sign", "count"},     {"count cell", "count"}, {"count", "count"},        {"position", "count"},
    {"syllable", "count"}, {"approach", "string"},  {"head", "string"},        {"suffix", "string"},
    {"bend", "string"},    {"word", "text"},        {"ending cell", "ending"}, {"way", "road"},
    {"jump", "road"},      {"finger", "finger"},    {"hand", "hand"},          {"stroke cell", "stroke"},
    {"play cell", "play"}, {"mark", "mark"},        {"dynamic", "mark"},       {"syllables", "lyric"}};
// Rules whose words are no signs: labels, fillers, meters, commas between the words of a chord.
const std::set<std::string> other_rules = {
    "grid",       "strip",      "row",       "label",       "string label", "string cell", "filler",
    "run",        "note",       "fret",      "number",      "bare word",    "chord cell",  "text cell, section cell",
    "lyric cell", "meter cell", "road cell", "finger cell", "hand cell",    "spell cell",  "mark cell",
    "dashes"};

struct Rule {
  std::string name;
  std::vector<std::string> terminals;  // what stands in quotes
};

// The block of rules in the README, without its comments.
std::vector<Rule> grammar() {
  std::istringstream lines(bytes_of(test::project_folder() + "/src/lesson/README.md"));
  std::vector<Rule> rules;
  std::string line;
  while (std::getline(lines, line)) {
    if (!line.starts_with("    ") || line.starts_with("    (*")) continue;
    line.resize(std::min(line.find("(*"), line.size()));
    std::size_t at = 0;
    const std::size_t equals = line.find(" = ");
    if (line[4] != ' ' && equals != std::string::npos) {
      rules.push_back({line.substr(4, line.find_last_not_of(' ', equals) - 3), {}});
      at = equals + 3;
    }
    while ((at = line.find_first_of("\"'?", at)) != std::string::npos) {
      const std::size_t end = line.find(line[at], at + 1);
      if (end == std::string::npos) break;
      if (line[at] != '?') rules.back().terminals.push_back(line.substr(at + 1, end - at - 1));
      at = end + 1;
    }
  }
  return rules;
}

std::string without_quotes(const std::string& word) {
  return word.size() > 2 && word.front() == '"' && word.back() == '"' ? word.substr(1, word.size() - 2) : word;
}

std::vector<std::string> signs_of(const std::string& row) {
  std::vector<std::string> words;
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind != HelpKind::sign || entry.of != row) continue;
    for (const std::string& word : command::spellings(entry)) words.push_back(word);
  }
  return words;
}

std::string said_of(const std::string& rows) {
  const std::string lesson =
      "title = \"Tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n[[example]]\ntab = '''" + rows + "\n'''\n";
  const lesson::ReadLesson read = lesson::read_lesson("a.lesson.toml", lesson, platform::MemorySystem());
  std::string said;
  for (const auto& one : read.diagnostics.sorted()) said += one.message + "\n";
  return said;
}

// The lines of a grid that are rows of this kind, without their labels.
std::string rows_of(const std::string& grid, const std::string& row) {
  std::istringstream lines(grid);
  std::string found;
  std::string line;
  while (std::getline(lines, line)) {
    const std::string label = line.substr(0, line.find_first_of(" |"));
    const bool is_string = label.size() == 1;
    if (row == "string" ? is_string : label == row) found += line.substr(label.size()) + "\n";
  }
  return found;
}

}  // namespace

TEST_CASE("help explains every sign of the grammar") {
  std::set<std::string> met;
  for (const Rule& rule : grammar()) {
    met.insert(rule.name);
    CAPTURE(rule.name);
    const auto row = row_of_rule.find(rule.name);
    if (row == row_of_rule.end()) {
      CHECK(other_rules.contains(rule.name));
      continue;
    }
    const std::vector<std::string> signs = signs_of(row->second);
    for (const std::string& terminal : rule.terminals) {
      CAPTURE(terminal);
      const std::string bare = without_quotes(terminal);
      // A sign is its own word, or one character of a word as (2), 1. and ^1v have them.
      CHECK(std::any_of(signs.begin(), signs.end(), [&](const std::string& word) {
        return bare == without_quotes(word) || (bare.size() <= 1 && word.find(bare) != std::string::npos) ||
               (row->second == "mark" && word == bare + "---");
      }));
    }
  }
  for (const auto& [rule, row] : row_of_rule) {
    CAPTURE(rule);
    CHECK(met.contains(rule));
  }
}

TEST_CASE("every example of a row or a sign is read without a word, and uses what it explains") {
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind != HelpKind::sign && entry.kind != HelpKind::row) continue;
    const std::string grid(entry.example);
    CAPTURE(entry.word, grid);
    CHECK(said_of(grid) == "");
    const std::string rows = rows_of(grid, std::string(entry.kind == HelpKind::row ? entry.word : entry.of));
    CHECK_FALSE(rows.empty());
    if (entry.kind == HelpKind::row) continue;
    for (std::string word : command::spellings(entry)) {
      if (word == "\" \"") word = "\"near the neck\"";
      if (word == "\"D.S.\"" || word == "\"D.C.\"") word = word.substr(0, word.size() - 1);
      word.resize(std::min(word.find("---"), word.size()));
      CAPTURE(word);
      CHECK(rows.find(word) != std::string::npos);
    }
  }
}

TEST_CASE("a sign is an error where its row does not have it") {
  // So that an example which is read shows something: the same grid with a sign of another row in it is not.
  CHECK_FALSE(said_of("\ncount | 1   2   3   4   |\nA     | 5   5   d   3   |").empty());
  CHECK_FALSE(said_of("\ncount  | 1   2   3   4   |\nA      | 5   5   5   5   |\nstroke | p   i   m   a   |").empty());
}
