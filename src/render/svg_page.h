#pragma once

#include <span>
#include <vector>

#include "render/svg_glyphs.h"
#include "render/svg_writer.h"
#include "sheet/sheet.h"

namespace fretsheaf::render {

// Writes items as SVG elements: the one switch over item kinds of the SVG.
class SvgPage {
 public:
  // Both must outlive it.
  SvgPage(SvgWriter& writer, SvgGlyphs& glyphs) : writer_(writer), glyphs_(glyphs) {}

  void write(const std::vector<sheet::Item>& items);

  void operator()(const sheet::GlyphRun& run);
  void operator()(const sheet::Rule& rule);
  void operator()(const sheet::Path& path);
  void operator()(const sheet::Link& link);
  void operator()(const sheet::Image& image);
  void operator()(const sheet::Group& group);

 private:
  // Who says what a run spells: the text of its group; nobody, for the whole group has words of its own, or is none; or
  // nobody but in groups further in.
  enum class Voice { runs, words, none, none_here };

  Voice voice_in(const sheet::Group& group) const;
  void say(std::span<const sheet::Item> items);
  void part(sheet::Part part);
  void describe(const sheet::Group& group);

  SvgWriter& writer_;
  SvgGlyphs& glyphs_;
  Voice voice_ = Voice::runs;
  bool in_named_row_ = false;  // of a table, that its header names
  bool in_link_ = false;
};

}  // namespace fretsheaf::render
