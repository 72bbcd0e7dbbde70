#pragma once

#include <functional>
#include <string>
#include <vector>

#include "layout/type.h"
#include "score/text.h"

namespace fretsheaf::layout {

// A set line of a paragraph: items from x = 0, baseline y = 0.
struct TextLine {
  std::vector<sheet::Item> items;
  double width = 0;
  double ascent = 0;  // ink above the baseline
  double descent = 0;
};

// The role that sets a run.
using RoleOf = std::function<templates::Role(const score::Run& run)>;
templates::Role body_role(const score::Run& run);

struct ParagraphStyle {
  RoleOf role_of = body_role;
  double scale = 1;  // of the roles' sizes
  sheet::Part part = sheet::Part::text;
  std::string language = "en";
  sheet::Color color;
};

// Breaks runs into lines of at most `width`, ragged right, so that the squares of what the lines but the last leave
// free are least over the whole paragraph; the space between two lines ends the first. A word wider than the measure is
// broken inside. No lines for no text.
std::vector<TextLine> set_paragraph(const score::Runs& runs, double width, const ParagraphStyle& style, Type& type);

// Ends words in a space that draws nothing, `x` from their origin: who hears or copies a text needs it where the eye
// sees a line's end or a gap.
void add_word_space(std::vector<sheet::Item>& items, templates::Role role, double x, Type& type);

// Paragraphs of plain words in one role.
struct PlainStyle {
  templates::Role role{};
  double scale = 1;
  sheet::Part part = sheet::Part::text;
  std::string language = "en";
  sheet::Color color;
};
std::vector<TextLine> set_plain(const std::string& text, double width, const PlainStyle& style, Type& type);

}  // namespace fretsheaf::layout
