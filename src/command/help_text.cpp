#include <algorithm>

#include "command/help.h"
#include "template/check.h"

namespace fretsheaf::command {

namespace {

constexpr std::size_t columns = 79;

std::size_t code_points(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

// What is between the separators, in order.
std::vector<std::string> parts(std::string_view text, std::string_view separator) {
  std::vector<std::string> found;
  for (std::size_t at = 0;;) {
    const std::size_t end = text.find(separator, at);
    found.emplace_back(text.substr(at, end - at));
    if (end == std::string_view::npos) return found;
    at = end + separator.size();
  }
}

// Words in lines, with `between` between two of one line.
std::string in_lines(const std::vector<std::string>& words, std::string_view between, std::size_t indent,
                     std::size_t width) {
  std::string lines;
  std::size_t column = 0;
  for (const std::string& word : words) {
    const std::size_t wide = code_points(word);
    if (column > 0 && column + between.size() + wide <= width) {
      lines += between;
      column += between.size() + wide;
    } else {
      lines += (column > 0 ? "\n" : "") + std::string(indent, ' ');
      column = indent + wide;
    }
    lines += word;
  }
  return lines + "\n";
}

std::string indented(std::string_view text, std::size_t indent) {
  std::string lines;
  for (const std::string& line : parts(text, "\n")) {
    if (!line.empty()) lines += std::string(indent, ' ') + line + "\n";
  }
  return lines;
}

// A measure of templates: its limits and the music-stand's value, which is the example.
std::string measure(const HelpEntry& entry) {
  const auto& entries = templates::measure_entries();
  const auto found = std::find_if(entries.begin(), entries.end(), [&](const templates::MeasureEntry& one) {
    return one.group == entry.of && one.key == entry.word;
  });
  if (found == entries.end()) return {};
  const templates::Template plain;
  return "  From " + templates::plain_number(found->least) + " to " + templates::plain_number(found->most) +
         ".\n\n      [" + std::string(entry.of) + "]\n      " + std::string(entry.word) + " = " +
         templates::plain_number(plain.measures.*found->value) + "\n";
}

std::string role(const HelpEntry& entry) {
  const auto& keys = templates::role_keys();
  const auto found = std::find(keys.begin(), keys.end(), entry.word);
  if (found == keys.end()) return {};
  const templates::Template plain;
  const double size = plain.type[static_cast<std::size_t>(found - keys.begin())].size;
  return "\n      [type]\n      " + std::string(entry.word) + " = { size = " + templates::plain_number(size) + " }\n";
}

std::string example_of(const HelpEntry& entry) {
  if (!entry.example.empty()) return "\n" + indented(entry.example, 6);
  if (entry.kind != HelpKind::template_key) return {};
  return entry.of == "type" ? role(entry) : measure(entry);
}

std::string options_of(const HelpEntry& verb) {
  std::string lines;
  for (const HelpEntry& entry : help_entries()) {
    if (entry.kind != HelpKind::option || entry.of != verb.word) continue;
    lines += "  " + std::string(entry.word) + (entry.form.empty() ? "" : " ") + std::string(entry.form) + "\n" +
             wrapped(entry.text, 6, columns);
  }
  return lines.empty() ? lines : "\n" + lines;
}

std::string template_place(const HelpEntry& entry) {
  if (entry.of == "type") return "a role of type, under [type] of a template";
  if (entry.of == "role") return "a key of a role, under [type] of a template";
  return "a key of a template" + (entry.of.empty() ? "" : ", under [" + std::string(entry.of) + "]");
}

// What stands over the words of one kind in the list of all.
std::string group_of(const HelpEntry& entry) {
  const std::string of(entry.of);
  switch (entry.kind) {
    case HelpKind::verb:
      return "Verbs";
    case HelpKind::option:
      return "Options";
    case HelpKind::row:
      return "Rows of the tab grid";
    case HelpKind::sign:
      return "Signs in the " + of + " row";
    case HelpKind::filled_in:
      return "Filled in between {{ and }} in texts";
    case HelpKind::lesson_key:
      return "Keys of a lesson";
    case HelpKind::example_key:
      return "Keys of an example";
    case HelpKind::part_key:
      return "Keys of an example's " + of;
    case HelpKind::sheaf_key:
      return "Keys of a sheaf.toml";
    case HelpKind::template_key:
      break;
  }
  if (entry.of == "type") return "Roles of type in a template";
  if (entry.of == "role") return "Keys of a role";
  return "Keys of a template" + (of.empty() ? "" : ", under [" + of + "]");
}

}  // namespace

std::vector<std::string> spellings(const HelpEntry& entry) {
  return parts(entry.word, ", ");
}

std::string help_place(const HelpEntry& entry) {
  const std::string of(entry.of);
  switch (entry.kind) {
    case HelpKind::verb:
      return "a verb";
    case HelpKind::option:
      return "an option of " + of;
    case HelpKind::row:
      return "a row of the tab grid";
    case HelpKind::sign:
      return "in " + (of == "string" ? "a string" : "the " + of) + " row of the tab grid";
    case HelpKind::filled_in:
      return "filled in where it stands in a text";
    case HelpKind::lesson_key:
      return "a key of a lesson";
    case HelpKind::example_key:
      return "a key of an example";
    case HelpKind::part_key:
      return "a key of an example's " + of;
    case HelpKind::sheaf_key:
      return "a key of a sheaf.toml" + (of.empty() ? "" : ", under [" + of + "]");
    case HelpKind::template_key:
      break;
  }
  return template_place(entry);
}

std::string synopsis(const HelpEntry& verb) {
  const std::string begin = "fretsheaf " + std::string(verb.word) + " ";
  std::string lines;
  for (const std::string& line : parts(verb.form, "\n")) {
    lines += (lines.empty() ? begin : std::string(begin.size(), ' ')) + line + "\n";
  }
  return lines;
}

std::string wrapped(std::string_view text, std::size_t indent, std::size_t width) {
  return in_lines(parts(text, " "), " ", indent, width);
}

std::string explained(const HelpEntry& entry) {
  std::string title(entry.word);
  if (entry.kind == HelpKind::option && !entry.form.empty()) title += " " + std::string(entry.form);
  std::string text = title + ": " + help_place(entry) + "\n\n";
  if (entry.kind == HelpKind::verb) text += indented(synopsis(entry), 2) + "\n";
  text += wrapped(entry.text, 2, columns);
  if (entry.kind == HelpKind::verb) text += options_of(entry);
  return text + example_of(entry);
}

std::string help_words() {
  std::string text = "fretsheaf help WORD explains one of these:\n";
  std::string group;
  std::vector<std::string> words;
  const auto end_group = [&] {
    if (!words.empty()) text += "\n" + group + "\n" + in_lines(words, "  ", 4, columns);
    words.clear();
  };
  for (const HelpEntry& entry : help_entries()) {
    if (group_of(entry) != group) {
      end_group();
      group = group_of(entry);
    }
    for (std::string& word : spellings(entry)) {
      if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(std::move(word));
    }
  }
  end_group();
  return text;
}

std::string usage() {
  std::string text = "fretsheaf typesets a music teacher's lesson file into a printed handout.\n\n";
  for (const HelpEntry& entry : help_entries()) {
    if (entry.kind == HelpKind::verb) text += indented(synopsis(entry), 2) + wrapped(entry.text, 6, 114);
  }
  return text +
         "\nA lesson or FILE written - is standard input or output. fretsheaf help VERB explains a verb's options.\n"
         "fretsheaf --version says which version this is.\n"
         "Exit status: 0 done, 1 a lesson has errors, 2 the command line is wrong, 3 a file cannot be read or "
         "written.\n";
}

}  // namespace fretsheaf::command
