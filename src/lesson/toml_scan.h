#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "source/code.h"

namespace fretsheaf::lesson {

// What breaks TOML's rules, and where in the file.
struct SyntaxProblem {
  std::size_t begin = 0;
  std::size_t end = 0;
  source::Code code = source::Code::toml_syntax;
  std::string message;
  std::string help;
};

// Steps through a TOML file by its grammar (toml.io, version 1.0) to find the first place that breaks it. It only has
// to be as exact as its messages: what it lets pass, the parser has refused already.
class TomlScan {
 public:
  explicit TomlScan(std::string_view bytes) : bytes_(bytes) {}

  std::size_t at() const { return at_; }
  bool done() const { return at_ >= bytes_.size(); }
  char here() const { return done() ? '\n' : bytes_[at_]; }
  bool here(std::string_view word) const { return bytes_.substr(at_, word.size()) == word; }
  void step(std::size_t bytes = 1) { at_ += bytes; }
  void skip_blanks();            // spaces and tab characters
  void skip_lines();             // these, line ends and comments
  std::size_t line_end() const;  // of the line that the scan is in, before its CR or LF
  bool at_line_end() const { return at_ >= line_end(); }

  // A key, dotted or not: its parts, and past it.
  std::optional<SyntaxProblem> key(std::vector<std::string>& parts);
  // A value, and past it. `key` is what it is for.
  std::optional<SyntaxProblem> value(const std::string& key);

 private:
  std::optional<SyntaxProblem> string(const std::string& key);
  std::optional<SyntaxProblem> escapes(const std::string& key, std::size_t begin, std::size_t end);
  std::optional<SyntaxProblem> list(const std::string& key);
  std::optional<SyntaxProblem> table(const std::string& key);
  std::optional<SyntaxProblem> bare(const std::string& key);
  SyntaxProblem unclosed(std::string_view marks) const;
  SyntaxProblem other_quotes(std::size_t length, std::string_view why) const;  // around a grid
  std::string_view words_here() const;                                         // up to a comment, or what ends an item

  std::string_view bytes_;
  std::size_t at_ = 0;
  int depth_ = 0;  // of lists and tables around
};

// The typographic quotation mark that the text begins with, else empty.
std::string_view typographic_quote(std::string_view text);

}  // namespace fretsheaf::lesson
