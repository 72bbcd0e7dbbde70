// The man page, in the `man` macros of groff_man(7).
#include <algorithm>
#include <utility>

#include "command/help.h"
#include "command/pages.h"

namespace fretsheaf::test {

namespace {

using command::HelpEntry;
using command::HelpKind;

// Text as roff has it: hyphens that stay hyphens when they are copied, no character beyond ASCII, nothing at a line's
// beginning that looks like a request.
std::string roff(std::string_view text) {
  static const std::pair<std::string_view, std::string_view> signs[] = {
      {"\\", "\\e"},   {"-", "\\-"},    {"°", "\\[de]"}, {"ø", "\\[/o]"}, {"…", "..."},     {"–", "\\[en]"},
      {"·", "\\[pc]"}, {"©", "\\[co]"}, {"~", "\\[ti]"}, {"^", "\\[ha]"}, {"\"", "\\[dq]"}, {"'", "\\[aq]"}};
  std::string result;
  bool begins = true;
  while (!text.empty()) {
    if (begins && (text.front() == '.' || text.front() == '\'')) result += "\\&";
    begins = text.front() == '\n';
    const auto* found = std::find_if(std::begin(signs), std::end(signs),
                                     [&](const auto& sign) { return text.starts_with(sign.first); });
    result += found == std::end(signs) ? text.substr(0, 1) : found->second;
    text.remove_prefix(found == std::end(signs) ? 1 : found->first.size());
  }
  return result;
}

std::string set_off(std::string_view lines) {
  while (lines.starts_with('\n')) lines.remove_prefix(1);
  return ".PP\n.RS 4\n.EX\n" + roff(lines) + "\n.EE\n.RE\n";
}

std::string paragraph(std::string_view title, std::string_view text) {
  return ".TP\n.B " + roff(title) + "\n" + roff(text) + "\n";
}

std::string verbs() {
  std::string page;
  for (const HelpEntry& verb : command::help_entries()) {
    if (verb.kind != HelpKind::verb) continue;
    page +=
        ".SS " + roff(verb.word) + "\n.EX\n" + roff(command::synopsis(verb)) + ".EE\n.PP\n" + roff(verb.text) + "\n";
    for (const HelpEntry& option : command::help_entries()) {
      if (option.kind != HelpKind::option || option.of != verb.word) continue;
      const std::string value = option.form.empty() ? std::string() : " " + std::string(option.form);
      page += paragraph(std::string(option.word) + value, option.text);
    }
    page += set_off(verb.example);
  }
  return page;
}

std::string rows() {
  std::string page;
  for (const HelpEntry& row : command::help_entries()) {
    if (row.kind != HelpKind::row) continue;
    page += ".SS " + std::string(row.word == "string" ? "A string" : "The " + std::string(row.word)) + " row\n" +
            roff(row.text) + "\n" + set_off(row.example);
    for (const HelpEntry& sign : command::help_entries()) {
      if (sign.kind == HelpKind::sign && sign.of == row.word) page += paragraph(sign.word, sign.text);
    }
  }
  return page;
}

std::string keys(HelpKind kind) {
  std::string page;
  for (const HelpEntry& key : command::help_entries()) {
    if (key.kind != kind) continue;
    page += paragraph(key.word, key.text);
    for (const HelpEntry& part : command::help_entries()) {
      if (kind != HelpKind::example_key || part.kind != HelpKind::part_key || part.of != key.word) continue;
      page += ".RS\n" + paragraph(part.word, part.text) + ".RE\n";
    }
  }
  return page;
}

}  // namespace

std::string man_page() {
  const std::string usage = command::usage();
  const std::string exit = usage.substr(usage.find("Exit status: ") + 13);
  return ".\\\" Written from the texts of fretsheaf help; tests/run --update-golden writes it anew.\n"
         ".TH FRETSHEAF 1 \"\" fretsheaf\n"
         ".SH NAME\nfretsheaf \\- typeset a music teacher\\[aq]s handouts\n"
         ".SH SYNOPSIS\n.B fretsheaf\n.I verb\n.RI [ argument \" ...]\"\n.br\n.B fretsheaf help\n.RI [ word ]\n"
         ".SH DESCRIPTION\n"
         "A lesson file, NAME.lesson.toml, says which string, which fret and which count, over which chords and at "
         "which "
         "tempos. fretsheaf makes a printed handout of it, in any key, as PDF, SVG or MusicXML. What is wrong in a "
         "lesson is said with its place and the way out, and leaves the earlier handout as it was.\n.PP\n"
         "A lesson or file written \\- is standard input or output.\n"
         ".SH VERBS\n" +
         verbs() +
         ".SH THE TAB GRID\n"
         "The music of an example is a grid of rows. The count row says when, a string row says where; a token belongs "
         "to the count that it stands under.\n" +
         rows() + ".SH TEXTS\nIn every printed text these are filled in for the key that is being typeset:\n" +
         keys(HelpKind::filled_in) + ".SH KEYS OF A LESSON\n" + keys(HelpKind::lesson_key) +
         ".SH KEYS OF AN EXAMPLE\n" + keys(HelpKind::example_key) + ".SH KEYS OF A SHEAF.TOML\n" +
         keys(HelpKind::sheaf_key) + ".SH EXIT STATUS\n" + roff(exit) + ".SH ENVIRONMENT\n" +
         paragraph("FRETSHEAF_DATA",
                   "The folder of the program's own data, in place of the one it was installed with.") +
         ".SH FILES\n" + paragraph("NAME.lesson.toml", "A lesson.") +
         paragraph("sheaf.toml", "What the lessons in its folder and below have in common.") +
         paragraph(".fretsheaf", "The record of fretsheaf sheaf, beside the handouts. It may be deleted.");
}

}  // namespace fretsheaf::test
