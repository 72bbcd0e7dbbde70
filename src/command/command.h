#pragma once

#include <functional>
#include <string>
#include <vector>

#include "platform/machine.h"

// The verbs of the command line. Each parses nothing and computes nothing of its own: it asks the rooms and reports.
namespace fretsheaf::command {

// What a run ends with; where several apply, the highest.
enum class Exit { done = 0, lesson_wrong = 1, request_wrong = 2, unreadable = 3, stopped = 130 };

// What a verb may talk to: results go to `out`, diagnostics and progress to `errors` (both are appended to).
struct Console {
  std::string out;
  std::string errors;
  bool errors_are_terminal = false;
  // Shows what has come so far, and empties both. Nothing where all is shown at the end.
  std::function<void(Console&)> show;
};

struct TypesetOptions {
  std::vector<std::string> lessons;
  std::vector<std::string> keys;
  std::string to;                    // "" is beside each lesson, "-" standard output
  std::vector<std::string> formats;  // empty is pdf
  std::string template_name;
  std::string instrument;
  std::string capo;
  std::string depfile;   // where to write what the outputs depend on, for Make and Ninja; "" nowhere
  bool split = false;    // MusicXML: a file for every example
  bool answers = false;  // the answer key too
};
Exit typeset(const TypesetOptions& options, platform::System& system, Console& console);

struct CheckOptions {
  std::vector<std::string> lessons;
  bool json = false;  // the findings as a document on standard output
};
Exit check(const CheckOptions& options, platform::System& system, Console& console);

struct SchemaOptions {
  std::string of = "lesson";  // or "sheaf"
};
Exit schema(const SchemaOptions& options, Console& console);

struct TransposeOptions {
  std::string lesson;
  std::string key;
  std::string output;  // the new lesson's file; "" and "-" are standard output
  bool json = false;   // the report as a document on standard output
};
Exit transpose(const TransposeOptions& options, platform::System& system, Console& console);

struct AdoptOptions {
  std::string file;        // MusicXML, plain or compressed
  std::string part;        // its name or number; "" is the only one
  std::string instrument;  // "" is by what the score says
  std::string output;      // the new lesson's file; "" and "-" are standard output
};
Exit adopt(const AdoptOptions& options, platform::System& system, Console& console);

struct SheafOptions {
  std::string folder;  // "" is the current one
  std::string to;      // "" is what the lessons' sheaf.toml says, else beside each lesson
  std::vector<std::string> keys;
  std::vector<std::string> formats;
  std::string jobs;   // worker processes; "" is one a processor
  std::string only;   // one job, as --list calls it
  std::string share;  // "2/8"
  bool list = false;
  bool prune = false;
  bool verify = false;
  bool quiet = false;
  bool json = false;  // how it went as a document on standard output
};
Exit sheaf_verb(const SheafOptions& options, platform::Machine& system, Console& console);

struct SayOptions {
  std::string lesson;
  std::string key;  // "" is the lesson's own
  std::string as = "text";
  bool answers = false;  // tell what its exercises hide
};
Exit say(const SayOptions& options, platform::System& system, Console& console);

struct TidyOptions {
  std::vector<std::string> lessons;
  bool check = false;  // say what would change, and change nothing
};
Exit tidy(const TidyOptions& options, platform::System& system, Console& console);

struct NewOptions {
  std::string file;
  std::string instrument = "bass";
};
Exit new_lesson(const NewOptions& options, platform::System& system, Console& console);

// A lesson that typesets without a warning, to write over. REQUIRES: an instrument's name.
std::string starter_lesson(const std::string& instrument);

struct PreviewOptions {
  std::string path;   // of a lesson file or a folder of them
  std::string port;   // "" is any free one
  bool open = false;  // by whatever the desktop opens addresses with
};
Exit preview_verb(const PreviewOptions& options, platform::Machine& system, Console& console);

// Explains a verb, an option, a key, a row or a sign, or names those that tell of another word, or of the words of a
// phrase; "" lists all words that it explains.
Exit help(const std::string& word, Console& console);

// A verb that the command line's parser knows, and its options ("--key", "-o").
struct KnownVerb {
  std::string name;
  std::vector<std::string> options;
};
std::vector<KnownVerb> known_verbs();

// Parses the arguments (without the program's name) and runs the verb that they name.
Exit run(std::vector<std::string> arguments, platform::Machine& system, Console& console);

}  // namespace fretsheaf::command
