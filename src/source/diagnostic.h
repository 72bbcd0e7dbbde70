#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "source/code.h"
#include "source/range.h"

namespace fretsheaf::source {

enum class Severity { error, warning };

// What is wrong, as data. `message` says it in a teacher's words, `help` says what to write instead; neither ends in a
// full stop or holds a place: `render` puts that in front.
struct Diagnostic {
  Severity severity = Severity::error;
  Code code{};
  Range range{};
  std::string message;
  std::string help;  // may be empty
};

// Gathers what a reader finds; readers go on after an error and return what they could read.
class Diagnostics {
 public:
  void error(Code code, Range range, std::string message, std::string help = {});
  void warning(Code code, Range range, std::string message, std::string help = {});

  bool has_errors() const { return errors_ > 0; }
  const std::vector<Diagnostic>& list() const { return list_; }
  // By file, then by place, errors before warnings at one place; equal ones once.
  std::vector<Diagnostic> sorted() const;

 private:
  std::vector<Diagnostic> list_;
  int errors_ = 0;
};

class Files;

// `FILE:LINE:COLUMN: error: MESSAGE`, the source line, carets under the range (as far as it lies on that line), and
// `help: …` where there is one; ends in a newline. The one place that does so.
std::string render(const Diagnostic& diagnostic, const Files& files);

}  // namespace fretsheaf::source
