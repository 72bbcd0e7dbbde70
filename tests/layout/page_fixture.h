#pragma once

#include <string>
#include <vector>

#include "layout/prose.h"
#include "layout/type.h"
#include "score/score.h"
#include "sheet/walk.h"
#include "template/template.h"
#include "typeface/fixed_metrics.h"

namespace fretsheaf::test {

// Layout with glyphs half an em wide: what a test expects can be reckoned by hand.
struct Fixed {
  typeface::FixedMetrics metrics;
  templates::Template look;
  // Role r in font r, so that a test sees which role set a run.
  std::vector<std::vector<typeface::FontId>> fonts = one_font_a_role();
  layout::Type type{metrics, look, fonts};
  layout::Setter setter{type, "en", words::Language::en, 1};

  static std::vector<std::vector<typeface::FontId>> one_font_a_role() {
    std::vector<std::vector<typeface::FontId>> fonts;
    for (int role = 0; role < templates::role_count; ++role) fonts.push_back({role});
    return fonts;
  }
};

inline score::Runs plain_run(std::string text) {
  return {score::Run{std::move(text), false, false, false, std::nullopt}};
}

inline score::Block paragraph(std::string text) {
  score::Block block;
  block.runs = plain_run(std::move(text));
  return block;
}

// Everything that the items spell, in order of drawing.
inline std::string spelled(const std::vector<sheet::Item>& items) {
  std::string text;
  sheet::walk(items, [&](const sheet::Item& item, sheet::GroupChain) {
    if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) text += run->text;
  });
  return text;
}

inline std::vector<std::string> spelled_lines(const layout::Blocks& blocks) {
  std::vector<std::string> lines;
  for (const layout::Block& block : blocks) lines.push_back(spelled(block.items));
  return lines;
}

template <typename Kind>
std::vector<Kind> all_of(const std::vector<sheet::Item>& items) {
  std::vector<Kind> found;
  sheet::walk(items, [&](const sheet::Item& item, sheet::GroupChain) {
    if (const auto* one = std::get_if<Kind>(&item)) found.push_back(*one);
  });
  return found;
}

}  // namespace fretsheaf::test
