#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "platform/xml_document.h"
#include "source/code.h"
#include "source/diagnostic.h"
#include "source/text.h"

namespace fretsheaf::exchange {

// What is said about a score that is taken in: errors at their element, and what a lesson cannot keep, each kind once
// with all its measures.
class Losses {
 public:
  // Both must live longer. `text` is the document as it was parsed, the file 0 of the diagnostics.
  Losses(const source::Text& text, source::Diagnostics& diagnostics) : text_(text), diagnostics_(diagnostics) {}

  // How the next measure is called ("12").
  void enter_measure(std::string label) { measures_.push_back(std::move(label)); }
  int measure() const { return static_cast<int>(measures_.size()) - 1; }

  void error(source::Code code, const platform::XmlElement* at, int measure, const std::string& what, std::string help);
  // The same without a measure.
  void error(source::Code code, const platform::XmlElement* at, std::string what, std::string help);
  bool has_errors() const { return diagnostics_.has_errors(); }

  // "measures 3 and 5: WHAT". Equal ones are gathered until `tell`.
  void lose(source::Code code, const platform::XmlElement* at, int measure, const std::string& what,
            const std::string& help);
  void lose(source::Code code, const platform::XmlElement* at, const std::string& what, const std::string& help);
  void left_out(const platform::XmlElement* at, int measure, const std::string& what) {
    lose(source::Code::adopt_left_out, at, measure, what + " is left out", "a lesson has no sign for it");
  }

  // Hands over what was gathered.
  void tell();

 private:
  struct Loss {
    source::Code code;
    source::Range range;
    std::string what;
    std::string help;
    std::vector<int> measures;  // empty where it is of the whole file
  };

  // Where each element's name stands first in a line; kept for the line that was asked for last, as a whole document
  // may be one.
  struct LineTags {
    int line = 0;
    std::unordered_map<std::string_view, std::size_t> columns;
  };

  source::Range range_of(const platform::XmlElement* element);
  const LineTags& tags_of(int line);
  std::string phrase(const std::vector<int>& measures) const;

  const source::Text& text_;
  source::Diagnostics& diagnostics_;
  std::vector<std::string> measures_;
  std::vector<Loss> losses_;
  std::map<std::tuple<source::Code, std::string, std::string>, std::size_t> gathered_;  // those of measures, in losses_
  LineTags tags_;
};

}  // namespace fretsheaf::exchange
