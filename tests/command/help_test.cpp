// `fretsheaf help`: what it explains is what reader, grammar, templates and command line know, and its examples are
// read.
#include "command/help.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cctype>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

#include "command/command.h"
#include "lesson/grid_labels.h"
#include "lesson/keys_example.h"
#include "lesson/keys_lesson.h"
#include "lesson/reader.h"
#include "lesson/schema.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "support/project.h"
#include "support/temporary_folder.h"
#include "template/check.h"
#include "template/parse.h"

using namespace fretsheaf;
using command::HelpEntry;
using command::HelpKind;
using nlohmann::ordered_json;
using Words = std::set<std::string>;

namespace {

// The words of a kind, and of one of its rows, keys or tables.
Words words_of(HelpKind kind, std::string_view of = "") {
  Words words;
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind == kind && entry.of == of) CHECK(words.emplace(entry.word).second);
  }
  return words;
}

template <typename Names>
Words set_of(const Names& names) {
  return {names.begin(), names.end()};
}

Words keys_of(const ordered_json& object) {
  Words names;
  for (const auto& [name, value] : object.items()) names.insert(name);
  return names;
}

ordered_json lesson_schema() {
  return ordered_json::parse(lesson::schema());
}

ordered_json sheaf_schema() {
  platform::MemorySystem system;
  command::Console console;
  command::run({"schema", "sheaf"}, system, console);
  return ordered_json::parse(console.out);
}

command::Console run(std::vector<std::string> words, command::Exit ends) {
  platform::MemorySystem system;
  command::Console console;
  CHECK(command::run(std::move(words), system, console) == ends);
  return console;
}

// What a file of the whole lesson says that is wrong, each in a line.
std::string errors_in(const std::string& lesson, const std::string& sheaf = {}) {
  platform::MemorySystem system;
  if (!sheaf.empty()) system.files["sheaf.toml"] = sheaf;
  system.files["lantern.svg"] = "<svg xmlns='http://www.w3.org/2000/svg'/>";
  const lesson::ReadLesson read = lesson::read_lesson("a.lesson.toml", lesson, system);
  std::string said;
  for (const auto& one : read.diagnostics.sorted()) said += one.message + "\n";
  return said;
}

std::vector<std::string> words_of_command(std::string_view line) {
  std::vector<std::string> words(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ' ' && !quoted) {
      words.emplace_back();
    } else {
      words.back() += c;
    }
  }
  return words;
}

const std::string grid = "tab = '''\ncount | 1   2   3   4   |\nA     | 5   5   3   3   |\n'''\n";

// A sound lesson in which `line` stands at the top, in place of the line for the same key.
std::string lesson_with(const std::string& line) {
  std::string lesson;
  for (const char* own : {"title = \"Tide\"\n", "key = \"D dorian\"\n", "instrument = \"bass\"\n"}) {
    const std::string text(own);
    if (!line.starts_with(text.substr(0, text.find(' ') + 1))) lesson += text;
  }
  return lesson + line + "\n[[example]]\n" + grid;
}

std::string example_with(const std::string& lines) {
  const std::string head = "title = \"Tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n[[example]]\n";
  if (lines.starts_with("vary")) {
    return head + grid + "[[example]]\n" + lines + "\ntab = '''\ncount | 1 & 2 & |\n'''\nmeter = \"2/4\"\n";
  }
  const bool has_own = lines.starts_with("tab") || lines.starts_with("blank-bars");
  std::string music = has_own ? std::string() : grid;
  if (lines.starts_with("meter")) music = "tab = '''\ncount | 1   2   |\nA     | 5   5   |\n'''\n";
  return head + lines + "\n" + music;
}

}  // namespace

TEST_CASE("help explains every verb and option that the command line knows, and no other") {
  Words verbs;
  for (const command::KnownVerb& verb : command::known_verbs()) {
    verbs.insert(verb.name);
    INFO(verb.name);
    CHECK(words_of(HelpKind::option, verb.name) == set_of(verb.options));
  }
  CHECK(words_of(HelpKind::verb) == verbs);
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind == HelpKind::option) CHECK(verbs.contains(std::string(entry.of)));
  }
}

TEST_CASE("what is typed after a verb names every option of it, with what its value is called") {
  for (const HelpEntry& verb : command::help_entries()) {
    if (verb.kind != HelpKind::verb) continue;
    std::string form(verb.form);
    INFO(form);
    for (const HelpEntry& option : command::help_entries()) {
      if (option.kind != HelpKind::option || option.of != verb.word) continue;
      INFO(option.word);
      const std::size_t at = form.find(option.word);
      REQUIRE(at != std::string::npos);
      // The formats may be listed in place of their name.
      const std::string after = form.substr(at + option.word.size());
      if (option.form.empty()) CHECK((after[0] == ']' || after[0] == ' '));
      if (!option.form.empty() && option.form != "FORMATS") CHECK(after.starts_with(" " + std::string(option.form)));
      form.erase(at, option.word.size());
    }
    CHECK(form.find("--") == std::string::npos);
    CHECK(form.find("-o") == std::string::npos);
  }
}

TEST_CASE("help explains every key that the reader knows, and no other") {
  CHECK(words_of(HelpKind::lesson_key) == set_of(lesson::lesson_key_names()));
  CHECK(words_of(HelpKind::example_key) == set_of(lesson::example_key_names()));
  const ordered_json definitions = lesson_schema().at("definitions");
  Words parts;
  for (const auto& [name, value] : definitions.at("example").at("properties").items()) {
    if (value.contains("properties")) {
      parts.insert(name);
      CHECK(words_of(HelpKind::part_key, name) == keys_of(value.at("properties")));
    }
  }
  CHECK(parts == Words{"form", "neck"});
  CHECK(words_of(HelpKind::part_key, "tempo") == keys_of(definitions.at("tempo").at("anyOf").at(2).at("properties")));
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind == HelpKind::part_key) CHECK((entry.of == "tempo" || parts.contains(std::string(entry.of))));
  }
  const ordered_json sheaf = sheaf_schema().at("properties");
  CHECK(words_of(HelpKind::sheaf_key) == keys_of(sheaf));
  CHECK(words_of(HelpKind::sheaf_key, "output") == keys_of(sheaf.at("output").at("properties")));
}

TEST_CASE("help names every value that a key may have") {
  const ordered_json schema = lesson_schema();
  const auto values = [&](const ordered_json& key) {
    ordered_json rule = key;
    if (rule.contains("$ref")) {
      rule =
          schema.at("definitions").at(rule.at("$ref").get<std::string>().substr(std::string("#/definitions/").size()));
    }
    if (rule.contains("items")) rule = rule.at("items");
    return rule.contains("enum") ? rule.at("enum").get<std::vector<std::string>>() : std::vector<std::string>();
  };
  int named = 0;
  for (const HelpEntry& entry : command::help_entries()) {
    ordered_json keys;
    if (entry.kind == HelpKind::lesson_key) keys = schema.at("properties");
    if (entry.kind == HelpKind::example_key) keys = schema.at("definitions").at("example").at("properties");
    if (keys.is_null()) continue;
    for (const std::string& value : values(keys.at(std::string(entry.word)))) {
      CAPTURE(entry.word, value);
      CHECK(entry.text.find(value) != std::string::npos);
      ++named;
    }
  }
  CHECK(named > 40);
}

TEST_CASE("help explains every row of the grid, and no other") {
  Words rows;
  for (int kind = 0; kind <= static_cast<int>(lesson::RowKind::play); ++kind) {
    rows.emplace(lesson::row_name(static_cast<lesson::RowKind>(kind)));
  }
  CHECK(rows.size() == 15);
  CHECK(words_of(HelpKind::row) == rows);
}

TEST_CASE("help explains every key of a template with the words of templates/README.md, and no other") {
  Words top(templates::top_keys.begin(), templates::top_keys.end());
  std::map<std::string, Words> groups;
  for (const auto& entry : templates::measure_entries()) groups[std::string(entry.group)].emplace(entry.key);
  groups["type"] = set_of(templates::role_keys());
  for (const auto& [group, words] : groups) {
    top.insert(group);
    INFO(group);
    CHECK(words_of(HelpKind::template_key, group) == words);
  }
  CHECK(words_of(HelpKind::template_key) == top);
  CHECK(words_of(HelpKind::template_key, "role") == Words{"fonts", "size", "tracking", "tabular"});

  std::string readme = bytes_of(test::project_folder() + "/templates/README.md");
  std::erase(readme, '`');
  std::erase(readme, '*');
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind != HelpKind::template_key || entry.of == "role" || groups.contains(std::string(entry.word)))
      continue;
    const std::string row = "\n| " + std::string(entry.word) + " | ";
    std::string text(entry.text.substr(0, entry.text.size() - 1));
    bool found = readme.find(row + text + " |") != std::string::npos;
    text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
    found = found || readme.find(row + text + " |") != std::string::npos;
    INFO(row << text);
    CHECK(found);
  }
}

TEST_CASE("a text of help is short, is a sentence, and has an example") {
  for (const HelpEntry& entry : command::help_entries()) {
    CAPTURE(entry.word, entry.of);
    const std::string lines = command::wrapped(entry.text, 2, 79);
    CHECK(std::count(lines.begin(), lines.end(), '\n') <= 6);
    CHECK(entry.text.ends_with('.'));
    CHECK(entry.text.find("  ") == std::string_view::npos);
    const std::string all = command::explained(entry);
    if (entry.kind != HelpKind::option) CHECK(all.find("\n\n      ") != std::string::npos);
    CHECK(all.find(" \n") == std::string::npos);
    CHECK(all.ends_with('\n'));
  }
}

TEST_CASE("every example of a key is read without a word") {
  for (const HelpEntry& entry : command::help_entries()) {
    const std::string example(entry.example);
    CAPTURE(entry.word, example);
    if (entry.kind == HelpKind::lesson_key) {
      const bool is_example = entry.word == "example";
      CHECK(errors_in(is_example ? lesson_with("") + example + "\n" : lesson_with(example)) == "");
      CHECK(example.find(std::string(entry.word) + (is_example ? "]]" : " =")) != std::string::npos);
    }
    if (entry.kind == HelpKind::example_key || entry.kind == HelpKind::part_key) {
      CHECK(errors_in(example_with(example)) == "");
      CHECK(example.find(std::string(entry.word) + " =") != std::string::npos);
    }
    if (entry.kind == HelpKind::sheaf_key) {
      CHECK(errors_in(lesson_with(""), example + "\n").empty());
      CHECK(example.find(entry.word) != std::string::npos);
    }
    if (entry.kind == HelpKind::template_key) {
      const std::string all = command::explained(entry);
      source::Diagnostics diagnostics;
      templates::parse_template(source::Text("a.toml", all.substr(all.find("\n\n      "))), 0, diagnostics);
      CHECK(diagnostics.list().empty());
    }
    if (entry.kind == HelpKind::filled_in) {
      CHECK(errors_in(example_with("tempo = [80, 100]\nintro = '" + example + "'\nmeter = \"2/4\"\n" +
                                   "tab = '''\ncount | 1   2 | 1   2 |\nA     | 5   5 | 3   3 |\n'''"))
                .find("{{") == std::string::npos);
    }
  }
}

TEST_CASE("the words that are filled in are those that the reader names") {
  const lesson::ReadLesson read =
      lesson::read_lesson("a.lesson.toml", example_with("intro = \"{{tide}}\""), platform::MemorySystem());
  REQUIRE(read.diagnostics.list().size() == 1);
  const std::string help = read.diagnostics.list()[0].help;
  Words known;
  for (std::size_t at = 0; (at = help.find("{{", at)) != std::string::npos; ++at) {
    known.insert(help.substr(at + 2, help.find_first_of(" }", at) - at - 2));
  }
  CHECK(words_of(HelpKind::filled_in) == known);
}

TEST_CASE("every example of a verb is a command line that is understood") {
  const platform::DiskSystem disk;
  for (const HelpEntry& entry : command::help_entries()) {
    if (entry.kind != HelpKind::verb) continue;
    platform::MemorySystem system(disk);
    system.files["low-tide-vamp.lesson.toml"] =
        bytes_of(test::project_folder() + "/demo-lessons/low-tide-vamp.lesson.toml");
    std::vector<std::string> words = words_of_command(entry.example);
    CHECK(words.front() == "fretsheaf");
    REQUIRE(words.at(1) == entry.word);
    words.erase(words.begin());
    command::Console console;
    const command::Exit exit = command::run(words, system, console);
    INFO(entry.example << "\n" << console.errors);
    // The score to adopt, the course's folder and what serves a preview's pages are not there.
    const bool is_there = entry.word != "adopt" && entry.word != "sheaf" && entry.word != "preview";
    CHECK(exit == (is_there ? command::Exit::done : command::Exit::unreadable));
  }
}

TEST_CASE("asked for nothing, help lists every word by its kind") {
  const command::Console console = run({"help"}, command::Exit::done);
  CHECK(console.errors.empty());
  CHECK(console.out.starts_with("fretsheaf help WORD explains one of these:\n\nVerbs\n    typeset  sheaf  "));
  std::set<std::string> headings;
  for (std::size_t at = 0; (at = console.out.find("\n\n", at)) != std::string::npos; at += 2) {
    CHECK(headings.insert(console.out.substr(at + 2, console.out.find('\n', at + 2) - at - 2)).second);
  }
  for (const HelpEntry& entry : command::help_entries()) {
    for (const std::string& word : command::spellings(entry)) {
      CAPTURE(word);
      CHECK(((console.out + " ").find(" " + word + " ") != std::string::npos ||
             console.out.find(" " + word + "\n") != std::string::npos));
    }
  }
}

TEST_CASE("a word is explained for all that it is, as exactly as it was written") {
  CHECK(run({"help", "PM"}, command::Exit::done).out ==
        "PM---: in the mark row of the tab grid\n"
        "\n"
        "  Palm mute, as far as the dashes reach.\n"
        "\n"
        "      count | 1   2   3   4   |\n"
        "      mark  | PM------        |\n"
        "      A     | 5   5   5   5   |\n");
  CHECK(run({"help", "PM--------"}, command::Exit::done).out == run({"help", "PM---"}, command::Exit::done).out);
  CHECK(run({"help", "margin-left"}, command::Exit::done).out ==
        "margin-left: a key of a template, under [page]\n"
        "\n"
        "  The left margin of a right-hand page, wide enough for a punch.\n"
        "  From 0 to 200.\n"
        "\n"
        "      [page]\n"
        "      margin-left = 62\n");
  CHECK(run({"help", "capo"}, command::Exit::done).out ==
        "capo: a key of a lesson\n"
        "\n"
        "  The capo's fret. Frets in the tab are counted from it; key, chords and note\n"
        "  names are as they sound.\n"
        "\n"
        "      capo = 2\n");
  const auto titles = [](const std::string& word) {
    const std::string said = run({"help", word}, command::Exit::done).out;
    std::string lines = said.substr(0, said.find('\n') + 1);
    for (std::size_t at = 0; (at = said.find("\n\n", at)) != std::string::npos; ++at) {
      if (said[at + 2] != ' ') lines += said.substr(at + 2, said.find('\n', at + 2) - at - 1);
    }
    return lines;
  };
  CHECK(titles("p") ==
        "p: in a string row of the tab grid\n"
        "ppp, pp, p, mp, mf, f, ff, fff: in the mark row of the tab grid\n"
        "p, i, m, a: in the hand row of the tab grid\n");
  CHECK(titles("P") == "T, P: in the hand row of the tab grid\n");
  CHECK(titles("--part") == "--part PART: an option of adopt\n");
  CHECK(titles("part") == titles("--part"));
  CHECK(titles("Capo") == titles("capo"));
  CHECK(titles("To Coda") == titles("\"To Coda\""));
  CHECK(titles("G") == titles("string"));
  CHECK(titles("-o") == "-o FILE: an option of transpose\n-o LESSON: an option of adopt\n");
  CHECK(run({"tidy", "--help"}, command::Exit::done).out == run({"help", "tidy"}, command::Exit::done).out);
}

TEST_CASE("a verb is explained with what is typed and all its options") {
  CHECK(run({"help", "tidy"}, command::Exit::done).out ==
        "tidy: a verb\n"
        "\n"
        "  fretsheaf tidy LESSON... [--check]\n"
        "\n"
        "  Sets the columns of a lesson's grids in line and mends what needs no guess,\n"
        "  such as tabs and curly quotes. Nothing else in the file changes.\n"
        "\n"
        "  --check\n"
        "      Says what is not tidy, and changes nothing.\n"
        "\n"
        "      fretsheaf tidy low-tide-vamp.lesson.toml\n");
}

TEST_CASE("every typeset command of the README on a demo lesson is done") {
  const platform::DiskSystem disk;
  const std::string readme = bytes_of(test::project_folder() + "/README.md");
  const std::string begin = "\n    fretsheaf typeset ";
  int commands = 0;
  for (std::size_t at = 0; (at = readme.find(begin, at)) != std::string::npos; ++at) {
    const std::string line = readme.substr(at + 5, readme.find('\n', at + 5) - at - 5);
    std::vector<std::string> words = words_of_command(line);
    const std::string path = test::project_folder() + "/demo-lessons/" + words.at(2);
    if (!disk.exists(path)) continue;  // the lesson that the README begins with, or a LESSON
    CAPTURE(line);
    platform::MemorySystem system(disk);
    system.files[words[2]] = bytes_of(path);
    words.erase(words.begin());
    command::Console console;
    CHECK(command::run(words, system, console) == command::Exit::done);
    CHECK(console.errors.find("error: ") == std::string::npos);
    ++commands;
  }
  CHECK(commands == 4);
}

TEST_CASE("help on an unknown word names the nearest known ones") {
  const std::string help = "help: fretsheaf help lists all words that it explains\n";
  CHECK(run({"help", "cuont"}, command::Exit::request_wrong).errors ==
        "fretsheaf: error: there is no help on 'cuont'; did you mean 'count'?\n" + help);
  CHECK(run({"help", "margin-lft"}, command::Exit::request_wrong).errors ==
        "fretsheaf: error: there is no help on 'margin-lft'; did you mean 'margin-left' or 'margin-top'?\n" + help);
  CHECK(run({"help", "heading-to-nex"}, command::Exit::request_wrong).errors ==
        "fretsheaf: error: there is no help on 'heading-to-nex'; did you mean 'heading-to-box', 'heading-to-neck' or "
        "'heading-to-text'?\n" +
            help);
  CHECK(run({"help", "barnacle"}, command::Exit::request_wrong).errors ==
        "fretsheaf: error: there is no help on 'barnacle'\n" + help);
  CHECK(run({"help", "barnacle", "weed"}, command::Exit::request_wrong).errors ==
        "fretsheaf: error: there is no help on 'barnacle weed'\n" + help);
}

TEST_CASE("help on several words that have no entry together shows what tells of each") {
  const std::string key = run({"help", "key"}, command::Exit::done).out;
  CHECK(run({"help", "key", "signature"}, command::Exit::done).out ==
        "'key signature' has no entry of its own; these tell of it:\n\n" + key);
  CHECK(run({"help", "key signature"}, command::Exit::done).out ==
        run({"help", "key", "signature"}, command::Exit::done).out);
  const std::string both = run({"help", "tuning", "of", "a", "capo"}, command::Exit::done).out;
  CHECK(both == "'tuning of a capo' has no entry of its own; these tell of it:\n\n" +
                    run({"help", "tuning"}, command::Exit::done).out + "\n" +
                    run({"help", "capo"}, command::Exit::done).out);
}

TEST_CASE("help on a word of the trade that is no sign shows what tells of it") {
  CHECK(run({"help", "Hammer-Ons"}, command::Exit::done).out ==
        "'Hammer-Ons' has no entry of its own; this tells of it:\n\n" + run({"help", "h"}, command::Exit::done).out);
  const std::string slide = run({"help", "slide"}, command::Exit::done).out;
  CHECK(slide == "'slide' has no entry of its own; these tell of it:\n\n" +
                     run({"help", "/"}, command::Exit::done).out + "\n" + run({"help", "\\"}, command::Exit::done).out);
  CHECK(run({"help", "palm", "mute"}, command::Exit::done).out.find("\n\nPM---: in the mark row") != std::string::npos);
  CHECK(run({"help", "fingers"}, command::Exit::done).out == run({"help", "finger"}, command::Exit::done).out);
  // Where many tell of it, a line or two of each will do.
  const std::string repeat = run({"help", "repeat"}, command::Exit::done).out;
  CHECK(repeat.find("\n|:, :|: in the count row of the tab grid\n  Around what is repeated.") != std::string::npos);
  CHECK(repeat.find("count |") == std::string::npos);
  // What stands in every other text tells nothing.
  CHECK(run({"help", "the"}, command::Exit::request_wrong).out.empty());
}

TEST_CASE("help knows the everyday words of a lesson") {
  for (const std::string word :
       {"pickup",         "rest",      "triplet",  "tie",       "eighth",    "sixteenth", "repeat",
        "bar line",       "slide",     "bend",     "pull-off",  "vibrato",   "ghost",     "dead note",
        "harmonic",       "grace",     "accent",   "staccato",  "palm mute", "let ring",  "tremolo",
        "strum",          "slap",      "dynamics", "crescendo", "hairpin",   "scale",     "QR",
        "time signature", "metronome", "lyrics",   "fingering", "transpose", "exercise"}) {
    CAPTURE(word);
    run({"help", word}, command::Exit::done);
  }
}
