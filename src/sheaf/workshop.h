#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "platform/system.h"
#include "score/build.h"
#include "sheaf/format.h"
#include "sheaf/traced_system.h"
#include "source/diagnostic.h"
#include "source/text.h"
#include "transposition/move.h"

// One lesson from its file's bytes to the bytes of its handouts. What a run needs once (fonts, templates) is kept for
// the next lesson.
namespace fretsheaf::sheaf {

// What a run asks of one lesson.
struct Request {
  std::string lesson;                        // the lesson file's path; `-` is standard input
  std::vector<std::string> keys;             // as given on the command line; none is the lesson's own
  std::optional<std::string> instrument;     // in place of the lesson's own
  std::optional<int> capo;                   // in place of the lesson's own
  std::optional<std::string> template_name;  // in place of the lesson's own
  std::vector<Format> formats;               // empty: those of its sheaf.toml, else PDF
  bool also_in = false;                      // with no keys: the keys of its `also-in` after its own
  bool split = false;                        // MusicXML: a file for every example
  bool answers = false;                      // the answer key too, where the lesson hides anything
};

// One handout of a lesson: in one key, for one instrument.
struct Job {
  std::string lesson;
  transposition::Destination to;
  std::optional<std::string> template_name;
  std::vector<Format> formats;
  bool split = false;
  bool answers = false;
  std::string suffix;  // what follows STEM in the names of its outputs: ".d-dorian.ukulele"
};

// A file to write: what follows STEM in its name (".d-dorian.pdf") and its bytes.
struct Output {
  std::string suffix;
  std::string bytes;
};

// Diagnostics and the files that they point into.
struct Report {
  source::Files files;
  source::Diagnostics diagnostics;
};

struct Made {
  enum class Status { done, lesson_wrong, request_wrong, unreadable };
  Status status = Status::done;
  std::vector<Report> reports;
  std::string refusal;          // why, for request_wrong and unreadable: a line without a full stop
  std::vector<Output> outputs;  // empty unless done
  std::string no_document;      // why no MusicXML is among them where it was asked for: "for …"
  // Sets of SVG pages: an earlier, longer run may have left ".d-dorian.p3.svg" and on.
  struct SvgPages {
    std::string prefix;  // ".d-dorian.p"
    int pages = 0;
  };
  std::vector<SvgPages> svg_pages;
};

// The jobs that a request comes to, and what was said about its lesson when it was read.
struct Plan {
  Made made;  // without outputs
  std::vector<Job> jobs;
  std::vector<Format> own_formats;    // of its sheaf.toml, else PDF, whatever was asked
  std::string key;                    // the lesson's own
  std::vector<std::string> suffixes;  // of its handouts in its own key and in those of `also-in`, whatever was asked
};

// A lesson's file in another key.
struct Transposed {
  Made made;  // without outputs
  theory::Key from;
  std::optional<transposition::Moved> moved;  // nullopt where it could not be moved, which `made` says
  std::string text;                           // the new file's bytes
};

// How a lesson is told in words.
enum class Telling { text, html };

// Whether a workshop remembers which files were read for a lesson.
enum class Trace { off, on };

class Workshop {
 public:
  explicit Workshop(platform::System& system, Trace trace = Trace::off);
  ~Workshop();
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;

  // Reads the lesson and works out its jobs. No two of them have one suffix.
  Plan plan(const Request& request);

  // Makes a job's outputs in memory; writes nothing. What was said about the lesson before is not said again.
  // REQUIRES: a job of a plan of this workshop.
  Made make(const Job& job);

  // A lesson as it was read last without errors, until it is read again or forgotten; nullptr where there is none.
  const lesson::Lesson* lesson(const std::string& path) const;

  // What a job's handout, or its answer key, notates; nullopt where the lesson cannot be moved there.
  // REQUIRES: a job of a plan of this workshop.
  std::optional<score::Score> score(const Job& job, score::Copy copy);

  // A lesson's file in another key, which `key` names as on the command line; writes nothing.
  Transposed transpose(const std::string& lesson, const std::string& key);

  // Reads and checks a lesson as a plan does, and all that typesetting it in its own key would find in its score.
  Made check(const std::string& lesson);

  // The walk-through of a lesson in words, as the one output. `key` names one key as on the command line, "" the
  // lesson's own; with `answers` what its exercises hide is told.
  Made say(const std::string& lesson, const std::string& key, Telling telling, bool answers);

  // What was read for the lesson so far, the lesson itself among it. REQUIRES: Trace::on.
  Inputs inputs(const std::string& lesson);

  // Lets go of what is kept of a lesson: its jobs cannot be made any more.
  void forget(const std::string& lesson);

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

// The lesson file's name without folder and ".lesson.toml" (or its last extension); "lesson" for standard input.
std::string stem(const std::string& lesson);

}  // namespace fretsheaf::sheaf
