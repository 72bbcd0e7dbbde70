#include "lesson/tidy.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "lesson/grid_phrases.h"
#include "lesson/grid_tidy.h"
#include "lesson/same_music.h"
#include "lesson/tidy_bar_lines.h"
#include "lesson/tidy_characters.h"
#include "source/edit.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

// The music of a grid that is sound.
std::optional<Music> sound_music(const std::string& grid, const GridContext& context) {
  const source::Text text("", grid);
  source::Diagnostics diagnostics;
  Music music = read_grid(text, {0, static_cast<std::uint32_t>(grid.size()), 0}, context, diagnostics);
  if (diagnostics.has_errors()) return std::nullopt;
  return music;
}

// One grid, put right step by step.
class GridMender {
 public:
  GridMender(std::string grid, const GridContext& context) : grid_(std::move(grid)), context_(context) {}

  const std::string& grid() const { return grid_; }
  const std::vector<Mended>& characters() const { return characters_; }
  bool bar_lines_moved() const { return bar_lines_moved_; }
  bool realigned() const { return realigned_; }

  void mend() {
    grid_ = with_plain_characters(grid_, characters_);
    std::optional<Music> music = sound_music(grid_, context_);
    if (!music) music = mend_columns();
    if (!music) return;
    std::string set = lesson::realigned(grid_, context_);
    if (set == grid_) return;
    const std::optional<Music> after = sound_music(set, context_);
    if (!after || !same_music(*music, *after)) return;
    realigned_ = true;
    grid_ = std::move(set);
  }

 private:
  // Tries tab stops of all usual widths, and both ends of bars that differ; what is sound must say one thing.
  std::optional<Music> mend_columns() {
    const std::size_t tab = grid_.find('\t');
    for (const int width : {8, 4, 2}) {
      if (tab == std::string::npos && width != 8) break;
      const std::string expanded = with_tabs_expanded(grid_, width);
      add_candidate(expanded, false);
      for (const Side side : {Side::left, Side::right}) {
        if (auto aligned = with_bar_lines_aligned(expanded, side)) add_candidate(std::move(*aligned), true);
      }
    }
    if (ambiguous_ || !found_) return std::nullopt;
    if (tab != std::string::npos) {
      characters_.push_back({Lookalike::tab, tab, static_cast<int>(std::count(grid_.begin(), grid_.end(), '\t'))});
    }
    grid_ = candidate_;
    return found_;
  }

  void add_candidate(std::string grid, bool bar_lines_moved) {
    std::optional<Music> music = sound_music(grid, context_);
    if (!music) return;
    if (found_) {
      ambiguous_ = ambiguous_ || !same_music(*found_, *music);
      return;
    }
    found_ = std::move(music);
    candidate_ = std::move(grid);
    bar_lines_moved_ = bar_lines_moved;
  }

  std::string grid_;
  const GridContext& context_;
  std::vector<Mended> characters_;
  std::string candidate_;
  std::optional<Music> found_;
  bool ambiguous_ = false;
  bool bar_lines_moved_ = false;
  bool realigned_ = false;
};

std::string said(const Mended& mended) {
  const auto number = static_cast<std::size_t>(mended.number);
  switch (mended.kind) {
    case Lookalike::quote:
      return number_phrase(number, "curly quote");
    case Lookalike::bar_line:
      return number_phrase(number, "stroke") + " that " + (mended.number == 1 ? "is" : "are") + " no `|`";
    case Lookalike::dash:
      return mended.number == 1 ? "1 long dash" : std::to_string(number) + " long dashes";
    case Lookalike::tab:
      break;
  }
  return number_phrase(number, "tab");
}

class Tidier {
 public:
  Tidier(const std::string& path, std::string bytes, const platform::System& system)
      : path_(path), system_(system), file_(path, std::move(bytes)) {}

  Tidied tidy() {
    result_.bytes = file_.bytes();
    result_.read = read_lesson(path_, result_.bytes, system_);
    if (result_.read.grids.empty()) straighten_quotes();
    std::vector<source::Edit> edits;
    for (const WrittenGrid& grid : result_.read.grids) tidy_grid(grid, edits);
    if (!edits.empty()) {
      result_.bytes = source::edited(result_.bytes, std::move(edits));
      result_.read = read_lesson(path_, result_.bytes, system_);
    }
    return std::move(result_);
  }

 private:
  void straighten_quotes() {
    std::vector<Mended> mended;
    std::string straight = with_straight_quotes(result_.bytes, mended);
    if (mended.empty()) return;
    for (const Mended& one : mended) note(file_.position(one.at).line, said(one));
    result_.bytes = std::move(straight);
    result_.read = read_lesson(path_, result_.bytes, system_);
  }

  void tidy_grid(const WrittenGrid& grid, std::vector<source::Edit>& edits) {
    const std::string written = result_.bytes.substr(grid.range.begin, grid.range.end - grid.range.begin);
    const GridContext context{grid.neck, grid.key, grid.meter, grid.vary};
    GridMender mender(written, context);
    mender.mend();
    if (mender.grid() == written) return;
    edits.push_back({grid.range, mender.grid()});
    // Straightened quotes have moved no line.
    const source::Text& text = result_.read.files[0];
    for (const Mended& one : mender.characters()) note(text.position(grid.range.begin + one.at).line, said(one));
    const int line = text.position(grid.range.begin).line;
    if (mender.bar_lines_moved()) note(line, "bar lines that stood apart");
    if (mender.realigned()) note(line, "columns out of line");
  }

  void note(int line, std::string what) { result_.notes.push_back({line, std::move(what)}); }

  const std::string& path_;
  const platform::System& system_;
  source::Text file_;
  Tidied result_;
};

}  // namespace

Tidied tidy(const std::string& path, std::string bytes, const platform::System& system) {
  if (!source::is_valid_utf8(bytes)) return {bytes, {}, read_lesson(path, bytes, system)};
  return Tidier(path, std::move(bytes), system).tidy();
}

}  // namespace fretsheaf::lesson
