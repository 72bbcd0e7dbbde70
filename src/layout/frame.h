#pragma once

#include <string>
#include <vector>

#include "layout/fill.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// The paper and where text stands on it.
struct Frame {
  double width = 0;
  double height = 0;
  double text_width = 0;
  double left = 0;  // margin of a right-hand page
  double right = 0;
  bool mirrored = false;

  // The text's left edge on a page counted from 0: a two-sided left-hand page has the margins changed over.
  double text_left(int page) const { return mirrored && page % 2 == 1 ? right : left; }
};

// Letter keeps A4's text width, with what it is wider shared by both margins.
Frame make_frame(lesson::Paper paper, const templates::Template& look);

// The three texts at a page's foot, the rule above them, and from page 2 the running head.
class Furniture {
 public:
  // `pages` is the greatest number of pages that the page number must have room for.
  Furniture(const score::Score& score, const Frame& frame, int pages, Setter& setter);

  // The room that it leaves for blocks.
  PageRoom room() const;
  // For page `page`, from 0, of `pages`; x = 0 is the text's left edge, y the page's own. Artifacts all.
  std::vector<sheet::Item> items(int page, int pages) const;

 private:
  void arrange(int pages);
  std::string filled(const std::string& pattern, int page, int pages) const;
  std::vector<TextLine> lines(const std::string& text, double width) const;
  void put_centre(std::vector<sheet::Item>& items, TextLine line, double x, double y) const;
  void put_footer(std::vector<sheet::Item>& items, int page, int pages) const;
  void put_running_head(std::vector<sheet::Item>& items) const;

  const score::Score& score_;
  Frame frame_;
  Setter& setter_;
  double left_width_ = 0;  // the measure of the left text
  int left_rows_ = 1;
  bool centre_below_ = false;  // in rows of its own
  int rows_ = 1;
};

// An address as people read it: without its scheme, "www." and a last slash.
std::string bare_address(const std::string& uri);

}  // namespace fretsheaf::layout
