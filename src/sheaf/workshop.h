#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "platform/system.h"
#include "source/diagnostic.h"
#include "source/text.h"

// One lesson from its file's bytes to the bytes of its handouts. What a run needs once (fonts, templates) is kept for
// the next lesson.
namespace fretsheaf::sheaf {

enum class Format { pdf, svg, musicxml };

// "pdf", "svg", "musicxml"; nullopt where there is no such format.
std::optional<Format> parse_format(std::string_view name);

struct Job {
  std::string lesson;                        // the lesson file's path; `-` is standard input
  std::optional<std::string> key;            // as given on the command line
  std::optional<std::string> template_name;  // in place of the lesson's own
  std::vector<Format> formats;
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
  // Suffixes of SVG pages that an earlier, longer run may have left: ".d-dorian.p3.svg" and on.
  std::string svg_page_prefix;  // ".d-dorian.p", empty where no SVG was asked for
  int svg_pages = 0;
};

class Workshop {
 public:
  explicit Workshop(platform::System& system);
  ~Workshop();
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;

  // Makes a job's outputs in memory; writes nothing.
  Made make(const Job& job);

  // Reads and checks a lesson as `make` does, without typesetting it.
  Made check(const std::string& lesson);

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

// The lesson file's name without folder and ".lesson.toml" (or its last extension); "lesson" for standard input.
std::string stem(const std::string& lesson);

}  // namespace fretsheaf::sheaf
