#pragma once

#include <string>
#include <vector>

#include "layout/fill.h"
#include "layout/frame.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// What stands around the blocks of every page: the three texts at its foot with the rule above them, from page 2 on the
// running head, and on page 1, or where that has no room for them on page 2, the cautions. In all of it x = 0 is the
// text's left edge and y the page's own.
class Furniture {
 public:
  // `pages` is the greatest number of pages that the page number must have room for.
  Furniture(const score::Score& score, const Frame& frame, int pages, Setter& setter);

  // The room that it leaves for blocks.
  PageRoom room() const;
  // The running head and the footer of page `page` (from 0) of `pages`; artifacts. The first page has no running head.
  std::vector<sheet::Item> head(int page, int pages) const;
  std::vector<sheet::Item> foot(int page, int pages) const;
  // Which page it is: "page 1 of 2".
  std::string description(int page, int pages) const;
  // The cautions at the foot of their page, a paragraph; empty where the template leaves them out.
  std::vector<sheet::Item> cautions() const;
  // That page, from 0: the first.
  int caution_page() const { return caution_page_; }
  void move_cautions(int page) { caution_page_ = page; }

 private:
  // The footer's texts as they stand on a page.
  struct Texts {
    std::vector<TextLine> left;
    std::vector<TextLine> centre;
    std::vector<TextLine> right;
  };

  void arrange(int pages);
  std::string filled(const std::string& pattern, int page, int pages) const;
  std::vector<TextLine> lines(const std::string& text, double width, templates::Role role, sheet::Part part) const;
  Texts texts(int page, int pages) const;
  std::vector<TextLine> caution_lines() const;
  // The baseline of a page's first row at the foot.
  double first_row(int page) const;
  void put(std::vector<sheet::Item>& items, TextLine line, double x, double y, const std::string& pattern) const;
  void put_footer(std::vector<sheet::Item>& items, Texts texts, double y) const;
  double put_column(std::vector<sheet::Item>& items, std::vector<TextLine> lines, double y,
                    const std::string& pattern) const;

  const score::Score& score_;
  Frame frame_;
  Setter& setter_;
  double left_width_ = 0;      // the measure of the left text
  bool centre_below_ = false;  // in rows of its own
  int rows_ = 1;
  int caution_rows_ = 0;
  int caution_page_ = 0;
};

// An address as people read it: without its scheme, "www." and a last slash.
std::string bare_address(const std::string& uri);

}  // namespace fretsheaf::layout
