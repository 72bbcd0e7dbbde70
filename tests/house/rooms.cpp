#include "house/rooms.h"

#include <algorithm>
#include <sstream>

namespace {

using Names = std::set<std::string>;

Names with(Names names, std::initializer_list<std::string> more) {
  names.insert(more);
  return names;
}

std::map<std::string, Names> table() {
  const Names lesson_sees = {"source", "theory", "fretboard", "platform"};
  const Names from_lesson = with(lesson_sees, {"lesson"});
  const Names score_sees = with(from_lesson, {"words"});
  const Names from_score = with(score_sees, {"score"});
  const Names all_above =
      with(from_score, {"transposition", "spoken", "sheet", "typeface", "template", "layout", "render", "exchange"});
  return {
      {"platform", {}},
      {"source", {}},
      {"words", {}},
      {"theory", {}},
      {"fretboard", {"theory"}},
      {"lesson", lesson_sees},
      {"transposition", from_lesson},
      {"score", score_sees},
      {"spoken", from_score},
      {"sheet", {}},
      {"typeface", {"platform"}},
      {"template", {"source", "platform"}},
      {"layout", with(from_score, {"template", "typeface", "sheet"})},
      {"render", {"sheet", "typeface", "platform"}},
      {"exchange", from_score},
      {"sheaf", all_above},
      {"preview", with(all_above, {"sheaf"})},
      {"command", with(all_above, {"sheaf", "preview"})},
  };
}

// src/ROOM/file is in ROOM; src/main.cpp starts the command on the real machine.
Names seen_from(const std::string& path, std::string& room) {
  const auto slash = path.find('/', 4);
  if (slash == std::string::npos) {
    room = "main";
    return {"command", "platform"};
  }
  room = path.substr(4, slash - 4);
  const auto known = rooms().find(room);
  return known == rooms().end() ? Names{} : known->second;
}

// The path between the quotes or brackets of an include line; empty where it is no such line.
std::string included(const std::string& line) {
  const auto hash = line.find_first_not_of(" \t");
  if (hash == std::string::npos || line[hash] != '#') return {};
  const auto word = line.find("include", hash + 1);
  if (word == std::string::npos || line.find_first_not_of(" \t", hash + 1) != word) return {};
  const auto open = line.find_first_of("\"<", word);
  if (open == std::string::npos) return {};
  const auto close = line.find_first_of("\">", open + 1);
  const std::string path = line.substr(open + 1, close - open - 1);
  const bool is_system = line[open] == '<';
  // A room in angle brackets is no way around the table.
  if (is_system && !rooms().contains(path.substr(0, path.find('/')))) return {};
  return path;
}

}  // namespace

const std::map<std::string, std::set<std::string>>& rooms() {
  static const std::map<std::string, std::set<std::string>> all = table();
  return all;
}

std::vector<std::string> bad_includes(const std::string& path, std::string_view text) {
  std::vector<std::string> bad;
  std::string room;
  const Names seen = seen_from(path, room);
  if (room != "main" && !rooms().contains(room)) bad.push_back(path + ": " + room + " is no room of the table");
  std::istringstream lines{std::string(text)};
  std::string line;
  for (int number = 1; std::getline(lines, line); ++number) {
    const std::string target = included(line);
    if (target.empty()) continue;
    const std::string other = target.substr(0, target.find('/'));
    const std::string place = path + ":" + std::to_string(number) + ": ";
    if (target.find('/') == std::string::npos) {
      bad.push_back(place + "name the room: " + target);
    } else if (other != room && !seen.contains(other)) {
      bad.push_back(place + room + " may not see " + other);
    }
  }
  return bad;
}

std::vector<std::string> bad_link_lines(std::string_view cmake) {
  std::vector<std::string> bad;
  std::istringstream lines{std::string(cmake)};
  std::string line;
  while (std::getline(lines, line)) {
    if (!line.starts_with("room(")) continue;
    std::replace(line.begin(), line.end(), ')', ' ');
    std::istringstream words(line.substr(5));
    std::string room;
    std::string word;
    words >> room;
    bool sees = false;
    if (!rooms().contains(room)) bad.push_back(room + " is no room of the table");
    while (words >> word) {
      const bool is_keyword = word == "SEES" || word == "USES";
      if (is_keyword) sees = word == "SEES";
      if (!is_keyword && sees && rooms().contains(room) && !rooms().at(room).contains(word)) {
        bad.push_back(room + " may not link " + word);
      }
    }
  }
  return bad;
}
