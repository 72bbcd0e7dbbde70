#include "command/sheaf_list.h"

#include <algorithm>
#include <string_view>

namespace fretsheaf::command {

std::string shell_word(const std::string& word) {
  constexpr std::string_view plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-+=:,./@%";
  if (!word.empty() && word.find_first_not_of(plain) == std::string::npos) return word;
  std::string quoted = "'";
  for (const char c : word) {
    if (c == '\'') {
      quoted += "'\\''";
    } else {
      quoted += c;
    }
  }
  return quoted + "'";
}

std::string sheaf_list(const SheafOptions& options, const std::vector<sheaf::CourseJob>& jobs) {
  std::string command = "fretsheaf sheaf";
  if (!options.folder.empty()) command += " " + shell_word(options.folder);
  if (!options.to.empty()) command += " --to " + shell_word(options.to);
  for (const std::string& key : options.keys) command += " --key " + shell_word(key);
  std::string formats;
  for (const std::string& format : options.formats) formats += (formats.empty() ? "" : ",") + format;
  if (!formats.empty()) command += " --as " + formats;
  if (options.verify) command += " --verify";
  std::string list;
  for (const sheaf::CourseJob& job : jobs) list += command + " --quiet --only " + shell_word(job.name) + "\n";
  return list;
}

}  // namespace fretsheaf::command
