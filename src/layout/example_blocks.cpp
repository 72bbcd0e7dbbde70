#include "layout/example_blocks.h"

#include <algorithm>
#include <utility>

#include "layout/heading.h"
#include "layout/ink.h"
#include "layout/music.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

constexpr double line_clear = 0.3;       // ink to ink between lines of music, as a share of their gap
constexpr double heading_clear = 0.52;   // ink to ink between a heading and its music, as a share of their gap
constexpr std::size_t short_intro = 12;  // lines; a longer one may be parted in its middle

// What a page break hurts: after the first of several lines and before the last it leaves a line alone, between two it
// leaves both. That is worse than a page half blank (fill.cpp), and better than one nearly empty or one more. Chosen by
// eye.
constexpr double lone_line_penalty = 120;
constexpr double line_penalty = 25;
constexpr double after_music_penalty = 60;  // from the example's own ladder and notes

// A bar that two lines share is told with the first, unless the second has no other.
std::string told(const MusicLine& line, const MusicLine* before, const score::ExampleAlternatives& words) {
  std::string all = before == nullptr ? words.opening : std::string();
  const bool shared = before != nullptr && before->last_bar == line.first_bar && line.last_bar > line.first_bar;
  for (int bar = line.first_bar + (shared ? 1 : 0); bar <= line.last_bar; ++bar) {
    const auto index = static_cast<std::size_t>(bar);
    if (index >= words.bars.size()) break;
    if (!all.empty() && !words.bars[index].empty()) all += ' ';
    all += words.bars[index];
  }
  return all;
}

Block music_block(MusicLine line, std::string alternative, Setter& setter) {
  Block block;
  block.height = line.bottom;
  if (const auto ink = ink_of(line.items, setter.type)) {
    block.ascent = -ink->top;
    block.height = ink->bottom;
  }
  sheet::Group figure;
  figure.tag = sheet::Tag::figure;
  figure.alternative = std::move(alternative);
  figure.items = std::move(line.items);
  block.items.emplace_back(std::move(figure));
  return block;
}

void set_gaps(Blocks& lines, const templates::Measures& m) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    Block& line = lines[i];
    if (i == 0) {
      const double clear = heading_clear * m.heading_to_chord;
      // Where there is no chord row the ink begins below the origin: what counts is the ink then.
      line.gap = line.ascent > 0 ? m.heading_to_chord : 1.5 * clear + line.ascent;
      line.gap_least = line.gap - 0.3 * clear;
      line.gap_most = line.gap + 0.25 * clear;
      line.clearance = clear;
    } else {
      const double lift = std::min(0.0, line.ascent);
      line.gap = m.line_gap + lift;
      line.gap_least = m.line_gap_least + lift;
      line.gap_most = m.line_gap_most + lift;
      line.clearance = line_clear * m.line_gap;
    }
  }
}

void set_penalties(Blocks& lines) {
  const std::size_t n = lines.size();
  for (std::size_t i = 0; i < n; ++i) {
    const int alone = (i == 0 ? 1 : 0) + (i + 2 == n ? 1 : 0);
    lines[i].part_penalty = alone > 0 ? alone * lone_line_penalty : line_penalty;
  }
  if (n > 0) lines.back().part_penalty = after_music_penalty;
}

// Holds an intro to its heading and to its music.
void keep_intro(Blocks& intro) {
  const std::size_t n = intro.size();
  for (std::size_t i = 0; i < n; ++i) {
    if (n <= short_intro || i + 2 >= n) intro[i].keep_with_next = true;
  }
}

void append(Blocks& to, Blocks from) {
  for (Block& block : from) to.push_back(std::move(block));
}

}  // namespace

Blocks example_blocks(const score::Example& example, const score::ExampleAlternatives& words, const score::Score& score,
                      double width, Setter& setter, source::Diagnostics& diagnostics) {
  const templates::Measures& m = setter.measures();
  Blocks blocks;
  Block heading = example_heading(example, width, setter);
  const std::string title = score::plain(example.title);
  heading.bookmark = words::fill_number(setter.words, words::Word::example, example.number);
  if (!title.empty()) *heading.bookmark += ": " + title;
  const std::string name = *heading.bookmark;
  blocks.push_back(std::move(heading));

  Blocks intro = set_prose(example.intro, std::min(width, m.prose_measure), setter, 2);
  if (!intro.empty()) {
    intro.front().gap = intro.front().gap_least = intro.front().gap_most = m.heading_to_text;
  }
  keep_intro(intro);
  append(blocks, std::move(intro));

  Blocks lines;
  const Nest nest{setter.new_group(), sheet::Tag::none, sheet::ExampleInfo{example.number, title}, {}};
  std::vector<MusicLine> engraved = engrave(example, score, width, setter.type, diagnostics);
  for (std::size_t i = 0; i < engraved.size(); ++i) {
    const std::string alternative = told(engraved[i], i > 0 ? &engraved[i - 1] : nullptr, words);
    lines.push_back(music_block(std::move(engraved[i]), alternative.empty() ? name : alternative, setter));
    lines.back().nests = {nest};
  }
  set_gaps(lines, m);
  set_penalties(lines);
  append(blocks, std::move(lines));
  return blocks;
}

namespace {

// A short list is not broken over pages, and no list leaves a single line on either.
void keep_list_whole(Blocks& list) {
  constexpr std::size_t short_list = 6;  // lines
  constexpr double list_penalty = 40;
  const std::size_t n = list.size();
  for (std::size_t i = 0; i + 1 < n; ++i) {
    list[i].part_penalty = std::max(list[i].part_penalty, list_penalty);
    if (n <= short_list || i == 0 || i + 2 == n) list[i].keep_with_next = true;
  }
}

}  // namespace

bool practice_fits(const std::vector<score::Blocks>& notes, double width, Setter& setter) {
  return std::all_of(notes.begin(), notes.end(),
                     [&](const score::Blocks& note) { return code_fits(note, width, setter); });
}

Blocks practice_blocks(const std::vector<score::Blocks>& notes, const std::string& hint, double width, Setter& setter) {
  const templates::Measures& m = setter.measures();
  Blocks blocks;
  blocks.push_back(
      section_heading(std::string(words::word(setter.words, words::Word::practice_notes)), hint, width, setter));
  Blocks list = set_numbered(notes, std::min(width, m.prose_measure), setter);
  if (!list.empty()) list.front().gap = list.front().gap_least = list.front().gap_most = m.heading_to_text;
  keep_list_whole(list);
  append(blocks, std::move(list));
  return blocks;
}

}  // namespace fretsheaf::layout
