// Completion of words for three shells.
#include <algorithm>
#include <set>
#include <vector>

#include "command/help.h"
#include "command/pages.h"
#include "fretboard/instrument.h"
#include "platform/disk_system.h"
#include "template/reader.h"

namespace fretsheaf::test {

namespace {

using command::HelpEntry;
using command::HelpKind;

// What may be typed in a place: one of some words, files, or folders.
struct Choice {
  std::string words;   // with blanks between
  std::string ending;  // of files: ".lesson.toml"; "*" is any
  bool folders = false;
};

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : " ") + word;
  return all;
}

std::vector<const HelpEntry*> entries(HelpKind kind, std::string_view of) {
  std::vector<const HelpEntry*> found;
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind == kind && entry.of == of) found.push_back(&entry);
  }
  return found;
}

std::string verb_names() {
  std::vector<std::string> names;
  for (const HelpEntry* verb : entries(HelpKind::verb, "")) names.emplace_back(verb->word);
  return joined(names);
}

std::string option_names(const HelpEntry& verb) {
  std::vector<std::string> names;
  for (const HelpEntry* option : entries(HelpKind::option, verb.word)) names.emplace_back(option->word);
  return joined(names);
}

// Those that no shell reads as something else.
std::string help_words() {
  std::set<std::string> words;
  for (const HelpEntry& entry : command::help_entries()) {
    for (const std::string& word : command::spellings(entry)) {
      const bool is_plain = word.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") ==
                            std::string::npos;
      if (is_plain && word[0] != '-') words.insert(word);
    }
  }
  return joined({words.begin(), words.end()});
}

Choice value_of(const HelpEntry& option) {
  if (option.word == "--key") return {"C Db D Eb E F Gb G Ab A Bb B all", "", false};
  if (option.word == "--instrument") {
    const auto names = fretboard::instrument_names();
    return {joined({names.begin(), names.end()}), "", false};
  }
  if (option.word == "--template") return {joined(templates::template_names(platform::DiskSystem())), ".toml", false};
  if (option.form == "FORMATS") return {"pdf svg musicxml mxl", "", false};
  if (option.form.find('|') != std::string_view::npos) {  // the words themselves: text|html
    std::string words(option.form);
    std::replace(words.begin(), words.end(), '|', ' ');
    return {words, "", false};
  }
  if (option.form == "FOLDER") return {"", "", true};
  if (option.form == "FILE" || option.form == "LESSON") return {"", "*", false};
  return {};
}

// What stands after a verb without an option before it.
Choice argument_of(const HelpEntry& verb) {
  const std::string_view form = verb.form;
  if (form.starts_with("LESSON")) return {"", ".lesson.toml", false};
  if (form.starts_with("FILE")) return {"", "*", false};
  if (form.starts_with("[FOLDER")) return {"", "", true};
  if (form.starts_with("[WORD")) return {help_words(), "", false};
  if (form.starts_with("[lesson | sheaf]")) return {"lesson sheaf", "", false};
  return {};
}

std::string in_bash(const Choice& choice) {
  std::string lines;
  if (!choice.words.empty()) lines += "mapfile -t COMPREPLY < <(compgen -W '" + choice.words + "' -- \"$word\")";
  if (choice.folders) lines += "compopt -o filenames; mapfile -t COMPREPLY < <(compgen -d -- \"$word\")";
  if (choice.ending == "*") lines += "compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- \"$word\")";
  if (choice.ending.starts_with(".")) {
    lines += std::string(lines.empty() ? "" : "; ") +
             "compopt -o filenames; mapfile -t -O \"${#COMPREPLY[@]}\" COMPREPLY < <(compgen -d -- \"$word\"; compgen "
             "-f -X '!*" +
             choice.ending + "' -- \"$word\")";
  }
  return lines.empty() ? ":" : lines;
}

std::string in_zsh(const Choice& choice) {
  std::string lines;
  if (!choice.words.empty()) lines += "compadd -- " + choice.words;
  if (choice.folders) lines += "_files -/";
  if (choice.ending == "*") lines += "_files";
  if (choice.ending.starts_with(".")) {
    lines += std::string(lines.empty() ? "" : "; ") + "_files -g '*" + choice.ending + "'";
  }
  return lines.empty() ? ":" : lines;
}

std::string in_fish(const Choice& choice) {
  std::string lines = choice.words;
  if (choice.folders) lines += "(__fish_complete_directories)";
  if (choice.ending.starts_with(".")) {
    lines += std::string(lines.empty() ? "" : " ") + "(__fish_complete_suffix " + choice.ending + ")";
  }
  return lines.empty() ? "" : " -a '" + lines + "'";
}

// A text's first sentence in single quotes; the texts have no other quotes than these.
std::string quoted(std::string_view text) {
  text = text.substr(0, std::min(text.find(". "), text.size()));
  std::string result = "'";
  for (const char c : text) result += c == '\'' ? std::string("\\'") : std::string(1, c);
  if (result.ends_with('.')) result.pop_back();
  return result + "'";
}

// One arm of a `case` for each option with a value, and one for each verb.
std::string arms(const std::string& indent, std::string (*in_shell)(const Choice&)) {
  std::string lines = indent + "case \"$verb $before\" in\n";
  for (const HelpEntry* verb : entries(HelpKind::verb, "")) {
    for (const HelpEntry* option : entries(HelpKind::option, verb->word)) {
      if (option->form.empty()) continue;
      lines += indent + "  '" + std::string(verb->word) + " " + std::string(option->word) + "') " +
               in_shell(value_of(*option)) + "; return ;;\n";
    }
  }
  lines += indent + "esac\n" + indent + "case $verb in\n";
  for (const HelpEntry* verb : entries(HelpKind::verb, "")) {
    lines += indent + "  " + std::string(verb->word) + ") options='" + option_names(*verb) + "' ;;\n";
  }
  lines += indent + "esac\n";
  return lines;
}

std::string arguments(const std::string& indent, std::string (*in_shell)(const Choice&)) {
  std::string lines = indent + "case $verb in\n";
  for (const HelpEntry* verb : entries(HelpKind::verb, "")) {
    lines += indent + "  " + std::string(verb->word) + ") " + in_shell(argument_of(*verb)) + " ;;\n";
  }
  return lines + indent + "esac\n";
}

const std::string origin = "# Written from the texts of fretsheaf help; tests/run --update-golden writes it anew.\n";

}  // namespace

std::string bash_completion() {
  return "# Completion of fretsheaf for bash.\n" + origin +
         "_fretsheaf() {\n"
         "  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} verb=${COMP_WORDS[1]} options=\n"
         "  COMPREPLY=()\n"
         "  if ((COMP_CWORD == 1)); then\n"
         "    mapfile -t COMPREPLY < <(compgen -W '" +
         verb_names() +
         "' -- \"$word\")\n"
         "    return\n"
         "  fi\n" +
         arms("  ", in_bash) +
         "  if [[ $word == -* ]]; then\n"
         "    mapfile -t COMPREPLY < <(compgen -W \"$options\" -- \"$word\")\n"
         "    return\n"
         "  fi\n" +
         arguments("  ", in_bash) +
         "}\n"
         "complete -F _fretsheaf fretsheaf\n";
}

std::string zsh_completion() {
  return "#compdef fretsheaf\n# Completion of fretsheaf for zsh.\n" + origin +
         "local before=$words[CURRENT-1] verb=$words[2] options=\n"
         "if ((CURRENT == 2)); then\n"
         "  compadd -- " +
         verb_names() +
         "\n"
         "  return\n"
         "fi\n" +
         arms("", in_zsh) +
         "if [[ $PREFIX == -* ]]; then\n"
         "  compadd -- ${=options}\n"
         "  return\n"
         "fi\n" +
         arguments("", in_zsh);
}

std::string fish_completion() {
  std::string lines = "# Completion of fretsheaf for fish.\n" + origin +
                      "function __fretsheaf_verb\n"
                      "    set -l words (commandline -opc)\n"
                      "    test (count $words) -ge 2; and test $words[2] = $argv[1]\n"
                      "end\n"
                      "complete -c fretsheaf -f\n";
  for (const HelpEntry* verb : entries(HelpKind::verb, "")) {
    const std::string name(verb->word);
    lines += "complete -c fretsheaf -n __fish_use_subcommand -a " + name + " -d " + quoted(verb->text) + "\n";
    const std::string here = "complete -c fretsheaf -n '__fretsheaf_verb " + name + "'";
    for (const HelpEntry* option : entries(HelpKind::option, verb->word)) {
      const bool is_long = option->word.starts_with("--");
      const Choice value = value_of(*option);
      lines += here + (is_long ? " -l " : " -s ") + std::string(option->word.substr(is_long ? 2 : 1));
      if (!option->form.empty()) lines += (value.ending == "*" ? " -rF" : " -x") + in_fish(value);
      lines += " -d " + quoted(option->text) + "\n";
    }
    const Choice argument = argument_of(*verb);
    if (argument.ending == "*") lines += here + " -F\n";
    if (const std::string words = in_fish(argument); !words.empty()) lines += here + words + "\n";
  }
  return lines;
}

}  // namespace fretsheaf::test
