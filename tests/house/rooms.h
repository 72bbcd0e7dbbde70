#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

// The table of rooms: which other rooms a room's files may include.
const std::map<std::string, std::set<std::string>>& rooms();

// What the includes of one file do against the table, in words, one line an include; empty where they keep to it.
// `path` is from the project's top ("src/score/build.cpp").
std::vector<std::string> bad_includes(const std::string& path, std::string_view text);

// The same for the link line of each room in a CMake file.
std::vector<std::string> bad_link_lines(std::string_view cmake);
