#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

// What `fretsheaf help` explains: one table of texts, from which the usage, the man page and the shells' completions
// come too.
namespace fretsheaf::command {

enum class HelpKind {
  verb,
  option,
  row,           // of a tab grid
  sign,          // in one of its rows
  filled_in,     // {{…}} in a text
  lesson_key,    // at the top of a lesson file
  example_key,   // under [[example]]
  part_key,      // in the braces of one of those
  sheaf_key,     // of a sheaf.toml
  template_key,  // of a template file
};

// All texts are the table's own and live as long as the program.
struct HelpEntry {
  HelpKind kind;
  std::string_view of;       // the verb, row, key or TOML table that it belongs to; "" where that is none
  std::string_view word;     // as it is typed; the spellings of a sign have ", " between
  std::string_view form;     // what is typed after a verb, a line each; what the value of an option is called, or ""
  std::string_view text;     // sentences, one paragraph
  std::string_view example;  // as it would be written, without a line end at its end
};

// All of them, those of one kind together, and in one kind those of one `of`.
std::span<const HelpEntry> help_entries();

// The words by which an entry is found.
std::vector<std::string> spellings(const HelpEntry& entry);

// "an option of typeset", "in the mark row": what an entry is, for the line over its text.
std::string help_place(const HelpEntry& entry);

// What is typed for a verb, from "fretsheaf" on; all lines but the first stand under the first word after the verb.
std::string synopsis(const HelpEntry& verb);

// What a text says in lines of at most `width` columns, each with `indent` blanks before it.
std::string wrapped(std::string_view text, std::size_t indent, std::size_t width);

// An entry whole: what it is, its text, an example.
std::string explained(const HelpEntry& entry);

// All words, by kind.
std::string help_words();

// Every verb with what it does, and the exit status.
std::string usage();

}  // namespace fretsheaf::command
