#include "lesson/grid_rows.h"

#include <algorithm>
#include <optional>

#include "fretboard/neck.h"
#include "lesson/grid_labels.h"
#include "lesson/grid_phrases.h"
#include "lesson/grid_strips.h"
#include "lesson/limits.h"
#include "lesson/lookalikes.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {

using source::Code;

Range GridRow::range(int begin, int end) const {
  const auto offset = [&](int column) {
    return offsets[static_cast<std::size_t>(std::clamp(column, 0, static_cast<int>(offsets.size()) - 1))];
  };
  return {offset(begin), offset(end), file};
}

std::string GridRow::text(int begin, int end) const {
  const Range bytes = range(begin, end);
  return std::string(file_bytes.substr(bytes.begin, bytes.end - bytes.begin));
}

bool is_blank(char32_t character) {
  // No-break, figure and narrow spaces come along when text is pasted.
  return character == U' ' || character == U'\u00A0' || (character >= U'\u2000' && character <= U'\u200A') ||
         character == U'\u202F' || character == U'\u3000';
}

namespace {

// A line's code points and where each lies in the file.
struct Line {
  std::u32string characters;
  std::vector<std::uint32_t> offsets;  // one more than characters
  source::FileId file = 0;

  Range range(std::size_t begin, std::size_t end) const { return {offsets[begin], offsets[end], file}; }
};

Line read_line(std::string_view bytes, std::uint32_t offset, source::FileId file) {
  Line line;
  line.file = file;
  if (bytes.ends_with('\r')) bytes.remove_suffix(1);
  line.characters.reserve(bytes.size());
  line.offsets.reserve(bytes.size() + 1);
  while (!bytes.empty()) {
    const auto next = source::decode_utf8(bytes);
    line.characters += next.code_point;
    line.offsets.push_back(offset);
    offset += static_cast<std::uint32_t>(next.length);
    bytes.remove_prefix(next.length);
  }
  line.offsets.push_back(offset);
  return line;
}

bool is_blank_line(const Line& line) {
  return std::all_of(line.characters.begin(), line.characters.end(),
                     [](char32_t c) { return is_blank(c) || c == U'\t'; });
}

// The characters that are not blank at either end: [begin, end).
std::pair<std::size_t, std::size_t> trimmed(const Line& line, std::size_t end) {
  const auto blank = [&](std::size_t i) { return is_blank(line.characters[i]) || line.characters[i] == U'\t'; };
  std::size_t begin = 0;
  while (begin < end && blank(begin)) ++begin;
  while (end > begin && blank(end - 1)) --end;
  return {begin, end};
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Whether all of it could stand in a count row.
bool looks_like_counts(std::string_view text) {
  return text.find_first_not_of("0123456789&+/()%|: eali") == std::string_view::npos &&
         text.find_first_of("123456789") != std::string_view::npos;
}

class RowReader {
 public:
  explicit RowReader(const GridInput& input)
      : input_(input), bytes_(input.text.bytes()), strings_(fretboard::string_labels(input.context.neck)) {}

  std::vector<Strip> read() {
    std::size_t at = input_.grid.begin;
    while (at < input_.grid.end) {
      const std::size_t line_end = std::min<std::size_t>(bytes_.find('\n', at), input_.grid.end);
      read_line(lesson::read_line(bytes_.substr(at, line_end - at), static_cast<std::uint32_t>(at), input_.grid.file));
      at = line_end + 1;
    }
    close_strip();
    return settle_strips(input_, std::move(written_), strings_);
  }

 private:
  void open_strip(const Line& line) {
    open_.emplace();
    const auto [begin, end] = trimmed(line, line.characters.size());
    open_->first_line = line.range(begin, end);
  }

  // Two strips with no blank line between: said once, and read as two.
  void second_count_row(const Line& line, Range label) {
    if (open_->guessed_count) {  // it was none
      std::erase_if(open_->rows, [](const GridRow& row) { return row.kind == RowKind::count; });
      open_->guessed_count = false;
      open_->unclear = true;
      return;
    }
    input_.diagnostics.error(Code::row_twice, label, "the count row stands twice in this strip",
                             open_->string_labels.empty() ? "keep one of them; a blank line begins a new strip"
                                                          : "a blank line begins a new strip");
    // Counts without a string row may be what was left standing of an earlier try.
    open_->unclear = open_->unclear || open_->string_labels.empty();
    close_strip();
    open_strip(line);
  }

  void read_line(const Line& line) {
    if (is_blank_line(line)) return close_strip();
    if (!open_) open_strip(line);
    if (++open_->lines > limits::strip_rows) return report_too_many(line);
    const bool tabbed = report_tab(line);
    const std::size_t bar = line.characters.find(U'|');
    if (bar == std::u32string::npos) {
      open_->unclear = true;
      return report_no_bar_line(line);
    }
    const auto [begin, end] = trimmed(line, bar);
    const auto label = read_label(line, begin, end);
    if (!label) {
      open_->unclear = true;
      return;
    }
    if (label->kind == RowKind::count && open_->has_count()) second_count_row(line, line.range(begin, end));
    add_row(line, bar, *label, line.range(begin, end), tabbed);
  }

  void report_too_many(const Line& line) {
    if (open_->lines == limits::strip_rows + 1) {
      const auto [begin, end] = trimmed(line, std::min(line.characters.find(U'|'), line.characters.size()));
      input_.diagnostics.error(Code::row_limit, line.range(begin, end),
                               "this strip has more than " + std::to_string(limits::strip_rows) + " rows",
                               "a blank line begins a new strip");
    }
    open_->unclear = true;
  }

  void add_row(const Line& line, std::size_t bar, RowLabel label, Range label_range, bool tabbed) {
    GridRow row;
    row.kind = label.kind;
    row.string = label.string;
    row.label = label_range;
    row.characters = line.characters.substr(bar);
    row.offsets.assign(line.offsets.begin() + static_cast<std::ptrdiff_t>(bar), line.offsets.end());
    row.file_bytes = bytes_;
    row.file = line.file;
    const std::size_t last = row.characters.rfind(U'|');
    row.shifted = tabbed && row.characters.find(U'\t') < last;
    // A tab before the label's bar line or after the last moves nothing.
    std::replace(row.characters.begin(), row.characters.end(), U'\t', U' ');
    open_->rows.push_back(std::move(row));
  }

  std::optional<RowLabel> read_label(const Line& line, std::size_t begin, std::size_t end) {
    const Range range = line.range(begin, end);
    const std::string_view label = bytes_.substr(range.begin, range.end - range.begin);
    if (label.empty()) return report_no_label(line, end);
    if (names_a_string(label)) open_->string_labels.push_back({std::string(label), range});
    if (const auto found = find_label(label, strings_)) return found;
    if (names_a_string(label)) {
      open_->foreign = true;
      return std::nullopt;
    }
    if (label.ends_with(':')) {
      const std::string_view bare = label.substr(0, label.find_last_not_of(" :") + 1);
      input_.diagnostics.error(Code::row_label_colon, line.range(end - 1, end), "a row's label has no colon",
                               "write " + tick(bare) + " alone; a repeat's end, `:|`, closes the strip before");
      return find_label(bare, strings_);
    }
    if (is_digit(label.front()) && looks_like_counts(label) && !open_->has_count()) {
      input_.diagnostics.error(Code::row_label_missing, range, "this row has no label",
                               "write `count |` before it: a row is a label, then its bars");
      return std::nullopt;
    }
    const std::size_t width = label.find_first_of(" -:");
    if (width != std::string_view::npos && find_label(label.substr(0, width), strings_)) {
      const std::string name(label.substr(0, width));
      input_.diagnostics.error(Code::bar_line_none, line.range(begin, begin + width),
                               "there is no bar line after " + tick(name),
                               "a row is a label, then its bars: write " + tick(name + " |") + " and go on");
      return std::nullopt;
    }
    return report_unknown_label(input_, label, range, strings_);
  }

  // A first row of counts is read as what it must be, so that the rows under it are not blamed.
  std::optional<RowLabel> report_no_label(const Line& line, std::size_t bar) {
    const Range cells = line.range(bar, line.characters.size());
    const bool counts = open_->string_labels.empty() && !open_->has_count() &&
                        looks_like_counts(bytes_.substr(cells.begin, cells.end - cells.begin));
    input_.diagnostics.error(Code::row_label_missing, line.range(bar, bar + 1), "this row has no label",
                             counts ? "write `count` before its first bar line"
                                    : "write what it is before its first bar line: count, chord, or a string's letter");
    if (!counts) return std::nullopt;
    open_->guessed_count = true;
    return RowLabel{RowKind::count};
  }

  bool report_tab(const Line& line) {
    const std::size_t tab = line.characters.find(U'\t');
    if (tab == std::u32string::npos) return false;
    input_.diagnostics.error(
        Code::grid_tab, line.range(tab, tab + 1), "a tab character stands in the grid",
        "use spaces: a tab's width differs from one editor to the next; `fretsheaf tidy` puts them in "
        "where only one width fits");
    return true;
  }

  void report_no_bar_line(const Line& line) {
    const auto twin = std::find_if(line.characters.begin(), line.characters.end(), is_like_bar_line);
    if (twin != line.characters.end()) {
      const auto at = static_cast<std::size_t>(twin - line.characters.begin());
      const Range range = line.range(at, at + 1);
      const std::string written(bytes_.substr(range.begin, range.end - range.begin));
      input_.diagnostics.error(Code::bar_line_unknown, range, tick(written) + " is no bar line",
                               "write `|`, the upright stroke of the keyboard");
      return;
    }
    const auto [begin, end] = trimmed(line, line.characters.size());
    const bool remark = line.characters[begin] == U'#';
    input_.diagnostics.error(Code::bar_line_none, line.range(begin, end), "this line of the grid has no bar line",
                             remark ? "a grid has no remarks: put them outside its quotes"
                                    : "a row is a label, then its bars: `count | 1 2 3 4 |`");
  }

  void close_strip() {
    if (open_) written_.push_back(std::move(*open_));
    open_.reset();
  }

  const GridInput& input_;
  std::string_view bytes_;
  std::vector<std::string> strings_;
  std::vector<WrittenStrip> written_;
  std::optional<WrittenStrip> open_;
};

}  // namespace

std::vector<Strip> read_strips(const GridInput& input) {
  return RowReader(input).read();
}

}  // namespace fretsheaf::lesson
