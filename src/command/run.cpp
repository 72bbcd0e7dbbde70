#include <CLI/CLI.hpp>
#include <algorithm>
#include <string_view>

#include "command/command.h"
#include "command/help.h"
#include "command/report.h"
#include "source/nearest.h"
#include "source/utf8.h"

namespace fretsheaf::command {

namespace {

// The parser of the command line, and where what it reads goes.
struct Parser {
  CLI::App app{"fretsheaf", "fretsheaf"};
  TypesetOptions typeset_options;
  TransposeOptions transpose_options;
  AdoptOptions adopt_options;
  CheckOptions check_options;
  SayOptions say_options;
  TidyOptions tidy_options;
  SchemaOptions schema_options;
  SheafOptions sheaf_options;
  NewOptions new_options;
  PreviewOptions preview_options;
  CLI::App* typeset_verb = nullptr;
  CLI::App* transpose_verb = nullptr;
  CLI::App* adopt_verb = nullptr;
  CLI::App* check_verb = nullptr;
  CLI::App* say_verb = nullptr;
  CLI::App* tidy_verb = nullptr;
  CLI::App* schema_verb = nullptr;
  CLI::App* sheaf_verb = nullptr;
  CLI::App* new_verb = nullptr;
  CLI::App* preview_verb = nullptr;

  Parser() {
    app.set_help_flag();
    app.require_subcommand(0, 1);  // else "sheaf" in "schema sheaf" is taken for a second verb
    typeset_verb = verb("typeset");
    typeset_verb->add_option("LESSON", typeset_options.lessons);
    typeset_verb->add_option("--key", typeset_options.keys)->take_all()->allow_extra_args(false);
    typeset_verb->add_option("--to", typeset_options.to);
    typeset_verb->add_option("--as", typeset_options.formats)->delimiter(',')->allow_extra_args(false);
    typeset_verb->add_option("--template", typeset_options.template_name);
    typeset_verb->add_option("--instrument", typeset_options.instrument);
    typeset_verb->add_option("--capo", typeset_options.capo);
    typeset_verb->add_option("--depfile", typeset_options.depfile);
    typeset_verb->add_flag("--split", typeset_options.split);
    typeset_verb->add_flag("--answers", typeset_options.answers);
    add_sheaf();
    transpose_verb = verb("transpose");
    transpose_verb->add_option("LESSON", transpose_options.lesson);
    transpose_verb->add_option("--key", transpose_options.key);
    transpose_verb->add_option("-o", transpose_options.output);
    transpose_verb->add_flag("--json", transpose_options.json);
    adopt_verb = verb("adopt");
    adopt_verb->add_option("FILE", adopt_options.file);
    adopt_verb->add_option("--part", adopt_options.part);
    adopt_verb->add_option("--instrument", adopt_options.instrument);
    adopt_verb->add_option("-o", adopt_options.output);
    check_verb = verb("check");
    check_verb->add_option("LESSON", check_options.lessons);
    check_verb->add_flag("--json", check_options.json);
    say_verb = verb("say");
    say_verb->add_option("LESSON", say_options.lesson);
    say_verb->add_option("--key", say_options.key);
    say_verb->add_option("--as", say_options.as);
    say_verb->add_flag("--answers", say_options.answers);
    tidy_verb = verb("tidy");
    tidy_verb->add_option("LESSON", tidy_options.lessons);
    tidy_verb->add_flag("--check", tidy_options.check);
    schema_verb = verb("schema");
    schema_verb->add_option("OF", schema_options.of);
    preview_verb = verb("preview");
    preview_verb->add_option("LESSON", preview_options.path);
    preview_verb->add_option("--port", preview_options.port);
    preview_verb->add_flag("--open", preview_options.open);
    new_verb = verb("new");
    new_verb->add_option("FILE", new_options.file);
    new_verb->add_option("--instrument", new_options.instrument);
    verb("help");  // takes its word as it stands: see run()
  }

  void add_sheaf() {
    sheaf_verb = verb("sheaf");
    sheaf_verb->add_option("FOLDER", sheaf_options.folder);
    sheaf_verb->add_option("--to", sheaf_options.to);
    sheaf_verb->add_option("--key", sheaf_options.keys)->take_all()->allow_extra_args(false);
    sheaf_verb->add_option("--as", sheaf_options.formats)->delimiter(',')->allow_extra_args(false);
    sheaf_verb->add_option("--jobs", sheaf_options.jobs);
    sheaf_verb->add_option("--only", sheaf_options.only);
    sheaf_verb->add_option("--share", sheaf_options.share);
    sheaf_verb->add_flag("--list", sheaf_options.list);
    sheaf_verb->add_flag("--prune", sheaf_options.prune);
    sheaf_verb->add_flag("--verify", sheaf_options.verify);
    sheaf_verb->add_flag("--quiet", sheaf_options.quiet);
    sheaf_verb->add_flag("--json", sheaf_options.json);
  }

  CLI::App* verb(const std::string& name) {
    CLI::App* sub = app.add_subcommand(name);
    sub->set_help_flag();
    sub->allow_extras();
    return sub;
  }
};

std::string suggestion(const std::string& word, const std::vector<std::string_view>& known) {
  const std::string near = source::nearest(word, known);
  return near.empty() ? std::string() : "; did you mean '" + near + "'?";
}

std::vector<const CLI::App*> verbs_of(const Parser& parser) {
  return parser.app.get_subcommands([](const CLI::App*) { return true; });
}

std::vector<std::string_view> options_of(const CLI::App& verb) {
  std::vector<std::string_view> names;
  for (const CLI::Option* option : verb.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back(name);
  }
  return names;
}

// An option that the verb does not know, or a word too many; empty where all was understood.
std::string not_understood(const CLI::App& verb) {
  for (const std::string& word : verb.remaining()) {
    if (!word.starts_with("-")) return "'" + word + "' is one word too many for " + verb.get_name();
    std::string name = word.substr(std::min(word.find_first_not_of('-'), word.size()));
    name.resize(std::min(name.find('='), name.size()));
    std::string near = source::nearest(name, options_of(verb));
    return verb.get_name() + " has no option '" + word + "'" + (near.empty() ? "" : "; did you mean '--" + near + "'?");
  }
  return {};
}

Exit refuse(const std::string& what, Console& console) {
  complain(what, console);
  console.errors += "help: fretsheaf --help lists the verbs and their options\n";
  return Exit::request_wrong;
}

// `fretsheaf help palm mute`: several words are one that has blanks in it.
Exit help_on(const std::vector<std::string>& arguments, Console& console) {
  std::string all;
  for (std::size_t i = 1; i < arguments.size(); ++i) all += (i == 1 ? "" : " ") + arguments[i];
  return help(all, console);
}

Exit refuse_verb(const std::string& word, const std::vector<std::string_view>& verbs, Console& console) {
  if (!word.ends_with(".lesson.toml"))
    return refuse("there is no verb '" + word + "'" + suggestion(word, verbs), console);
  complain("'" + word + "' is a lesson, not a verb", console);
  console.errors += "help: fretsheaf typeset " + source::printable(word) + " makes its handout\n";
  return Exit::request_wrong;
}

Exit dispatch(const Parser& parser, platform::Machine& system, Console& console) {
  for (const CLI::App* verb : verbs_of(parser)) {
    if (!verb->parsed()) continue;
    if (const std::string what = not_understood(*verb); !what.empty()) return refuse(what, console);
  }
  if (parser.typeset_verb->parsed()) {
    if (parser.typeset_options.lessons.empty()) return refuse("typeset which lesson? name its file", console);
    return typeset(parser.typeset_options, system, console);
  }
  if (parser.sheaf_verb->parsed()) return sheaf_verb(parser.sheaf_options, system, console);
  if (parser.transpose_verb->parsed()) {
    if (parser.transpose_options.lesson.empty()) return refuse("transpose which lesson? name its file", console);
    if (parser.transpose_options.key.empty()) return refuse("transpose to which key? name it with --key", console);
    return transpose(parser.transpose_options, system, console);
  }
  if (parser.adopt_verb->parsed()) {
    if (parser.adopt_options.file.empty()) return refuse("adopt which score? name its file", console);
    return adopt(parser.adopt_options, system, console);
  }
  if (parser.check_verb->parsed()) {
    if (parser.check_options.lessons.empty()) return refuse("check which lesson? name its file", console);
    return check(parser.check_options, system, console);
  }
  if (parser.say_verb->parsed()) {
    if (parser.say_options.lesson.empty()) return refuse("say which lesson? name its file", console);
    return say(parser.say_options, system, console);
  }
  if (parser.tidy_verb->parsed()) {
    if (parser.tidy_options.lessons.empty()) return refuse("tidy which lesson? name its file", console);
    return tidy(parser.tidy_options, system, console);
  }
  if (parser.schema_verb->parsed()) return schema(parser.schema_options, console);
  if (parser.preview_verb->parsed()) {
    if (parser.preview_options.path.empty()) return refuse("preview which lesson? name its file", console);
    return preview_verb(parser.preview_options, system, console);
  }
  if (parser.new_options.file.empty()) return refuse("new needs the name of the file to write", console);
  return new_lesson(parser.new_options, system, console);
}

}  // namespace

std::vector<KnownVerb> known_verbs() {
  const Parser parser;
  std::vector<KnownVerb> verbs;
  for (const CLI::App* verb : verbs_of(parser)) {
    verbs.push_back({verb->get_name(), {}});
    for (const CLI::Option* option : verb->get_options()) {
      for (const std::string& name : option->get_lnames()) verbs.back().options.push_back("--" + name);
      for (const std::string& name : option->get_snames()) verbs.back().options.push_back("-" + name);
    }
  }
  return verbs;
}

Exit run(std::vector<std::string> arguments, platform::Machine& system, Console& console) {
  if (arguments.empty()) {
    console.errors += usage();
    return Exit::request_wrong;
  }
  Parser parser;
  const std::string first = arguments.front();
  std::vector<std::string_view> verbs;
  for (const CLI::App* verb : verbs_of(parser)) verbs.push_back(verb->get_name());
  const bool is_verb = std::find(verbs.begin(), verbs.end(), first) != verbs.end();
  // Before the options are read: what is asked about may look like one.
  if (first == "help") return help_on(arguments, console);
  if (std::find_if(arguments.begin(), arguments.end(),
                   [](const std::string& word) { return word == "--help" || word == "-h"; }) != arguments.end()) {
    if (is_verb) return help(first, console);
    console.out += usage();
    return Exit::done;
  }
  if (first == "--version") {
    console.out += "fretsheaf " FRETSHEAF_VERSION "\n";
    return Exit::done;
  }
  if (!is_verb) return refuse_verb(first, verbs, console);
  const std::string last = arguments.back();
  std::reverse(arguments.begin(), arguments.end());  // the library takes them last first
  try {
    parser.app.parse(arguments);
  } catch (const CLI::ParseError&) {
    // What is left to go wrong here: an option at the line's end that wants a value.
    return refuse("'" + last + "' needs a value after it", console);
  }
  return dispatch(parser, system, console);
}

}  // namespace fretsheaf::command
