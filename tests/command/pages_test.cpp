// What is installed beside the program: it is what the table of help says, and it works where it is used.
#include "command/pages.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <sstream>
#include <string>

#include "command/help.h"
#include "support/golden.h"
#include "support/project.h"
#include "support/running.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using Words = std::set<std::string>;

namespace {

const std::string& pages() {
  static const std::string folder = test::project_folder() + "/src/command/pages";
  return folder;
}

// The lines that a command prints, sorted; it must end well.
Words lines_of(const std::string& command, const std::string& folder) {
  std::string said;
  INFO(command);
  const int status = test::shell(command, folder, &said);
  INFO(said);
  CHECK(status == 0);
  std::istringstream lines(said);
  Words found;
  for (std::string line; std::getline(lines, line);) found.insert(line);
  return found;
}

// What each shell offers for a command line that is typed as far as here. A script of zsh is run with stand-ins for the
// two builtins that it calls, outside of the line editor.
Words in_bash(const std::string& words, const std::string& folder) {
  return lines_of("bash -c '. \"" + pages() + "/fretsheaf.bash\"; compopt() { :; }; COMP_WORDS=(" + words +
                      "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _fretsheaf; printf \"%s\\n\" \"${COMPREPLY[@]}\"'",
                  folder);
}

Words in_zsh(const std::string& words, const std::string& folder) {
  return lines_of(
      "zsh -fc 'compadd() { shift; print -l -- ${(M)@:#${PREFIX}*} }; _files() { print -l -- files \"$@\" }\n"
      "_it() { . \"" +
          pages() + "/_fretsheaf\" }; words=(" + words + "); CURRENT=$#words PREFIX=$words[-1]; _it'",
      folder);
}

Words in_fish(const std::string& line, const std::string& folder) {
  const Words found =
      lines_of("HOME=\"$PWD\" fish --no-config -c '. \"" + pages() + "/fretsheaf.fish\"; complete -C \"" + line +
                   "\" | string replace -r \"\\t.*\" \"\"; or true'",
               folder);
  return found;
}

Words verbs_in_t() {
  return {"tidy", "transpose", "typeset"};
}

}  // namespace

TEST_CASE("the man page and the completions are what the table of help says") {
  check_kept("src/command/pages/fretsheaf.1", test::man_page());
  check_kept("src/command/pages/fretsheaf.bash", test::bash_completion());
  check_kept("src/command/pages/_fretsheaf", test::zsh_completion());
  check_kept("src/command/pages/fretsheaf.fish", test::fish_completion());
}

TEST_CASE("the README lists each verb with all that may be typed after it") {
  std::string block;
  for (const command::HelpEntry& entry : command::help_entries()) {
    if (entry.kind != command::HelpKind::verb) continue;
    std::istringstream lines(command::synopsis(entry));
    for (std::string line; std::getline(lines, line);) block += "    " + line + "\n";
  }
  CHECK(bytes_of(test::project_folder() + "/README.md").find("\n\n" + block + "\n") != std::string::npos);
}

TEST_CASE("a reader of man pages finds nothing wrong with ours, and shows every verb, option, row and key") {
  const TemporaryFolder folder;
  CHECK(lines_of("mandoc -T lint -W warning '" + pages() + "/fretsheaf.1' | grep -v 'missing date' || true",
                 folder.path())
            .empty());
  std::string shown;
  CHECK(test::shell("mandoc -T utf8 -O width=200 '" + pages() + "/fretsheaf.1' | sed 's/.\\x08//g'", folder.path(),
                    &shown) == 0);
  for (const command::HelpEntry& entry : command::help_entries()) {
    if (entry.kind == command::HelpKind::template_key) continue;
    CAPTURE(entry.word, entry.of);
    CHECK(shown.find(entry.kind == command::HelpKind::sign ? entry.word : entry.word.substr(0, entry.word.find(' '))) !=
          std::string::npos);
  }
}

TEST_CASE("bash completes verbs, options, their values, and files") {
  const TemporaryFolder folder;
  put(folder / "gull song.lesson.toml", "");
  put(folder / "gull.txt", "");
  std::filesystem::create_directory(folder / "gulls");
  CHECK(in_bash("fretsheaf t", folder.path()) == verbs_in_t());
  CHECK(in_bash("fretsheaf typeset --t", folder.path()) == Words{"--to", "--template"});
  CHECK(in_bash("fretsheaf new x --instrument ban", folder.path()) == Words{"banjo"});
  CHECK(in_bash("fretsheaf typeset g", folder.path()) == Words{"gull song.lesson.toml", "gulls"});
  CHECK(in_bash("fretsheaf typeset a --template la", folder.path()) == Words{"large-print"});
  CHECK(in_bash("fretsheaf sheaf g", folder.path()) == Words{"gulls"});
  CHECK(in_bash("fretsheaf adopt g", folder.path()) == Words{"gull song.lesson.toml", "gull.txt", "gulls"});
  CHECK(in_bash("fretsheaf schema s", folder.path()) == Words{"sheaf"});
  CHECK(in_bash("fretsheaf help swing", folder.path()) == Words{"swing-ratio"});
}

TEST_CASE("zsh completes verbs, options, their values, and files") {
  const TemporaryFolder folder;
  CHECK(in_zsh("fretsheaf t", folder.path()) == verbs_in_t());
  CHECK(in_zsh("fretsheaf typeset --t", folder.path()) == Words{"--to", "--template"});
  CHECK(in_zsh("fretsheaf new x --instrument ban", folder.path()) == Words{"banjo"});
  CHECK(in_zsh("fretsheaf typeset g", folder.path()) == Words{"files", "-g", "*.lesson.toml"});
  CHECK(in_zsh("fretsheaf sheaf g", folder.path()) == Words{"files", "-/"});
  CHECK(in_zsh("fretsheaf schema s", folder.path()) == Words{"sheaf"});
  CHECK(in_zsh("fretsheaf help swing", folder.path()) == Words{"swing-ratio"});
}

TEST_CASE("fish completes verbs, options, their values, and files") {
  const TemporaryFolder folder;
  put(folder / "gull.lesson.toml", "");
  put(folder / "gull.txt", "");
  std::filesystem::create_directory(folder / "gulls");
  CHECK(in_fish("fretsheaf t", folder.path()) == verbs_in_t());
  CHECK(in_fish("fretsheaf typeset --t", folder.path()) == Words{"--to", "--template"});
  CHECK(in_fish("fretsheaf new x --instrument ban", folder.path()) == Words{"banjo"});
  CHECK(in_fish("fretsheaf sheaf g", folder.path()) == Words{"gulls/"});
  CHECK(in_fish("fretsheaf schema s", folder.path()) == Words{"sheaf"});
  CHECK(in_fish("fretsheaf adopt gull.t", folder.path()) == Words{"gull.txt"});
  CHECK(in_fish("fretsheaf help swing-", folder.path()) == Words{"swing-ratio"});
}
