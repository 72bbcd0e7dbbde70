#include "command/depfile.h"

namespace fretsheaf::command {

namespace {

std::string make_word(const std::string& path) {
  std::string word;
  for (const char c : path) {
    if (c == ' ' || c == '#' || c == '\\') word += '\\';
    if (c == '$') word += '$';
    word += c;
  }
  return word;
}

}  // namespace

std::string depfile(const std::vector<std::string>& made, const sheaf::Inputs& inputs) {
  std::string text;
  for (const std::string& path : made) text += (text.empty() ? "" : " ") + make_word(path);
  text += ":";
  for (const auto& [path, print] : inputs) {
    if (path != "-") text += " \\\n  " + make_word(path);
  }
  return text + "\n";
}

}  // namespace fretsheaf::command
