#include "lesson/grid_writer.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "fretboard/neck.h"
#include "lesson/grid_items.h"
#include "lesson/grid_stretch.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

// Whether a token may follow another without filler, as in `5h7`, and be read as it is meant.
bool may_touch(const RowItem& left, const RowItem& right) {
  const char32_t first = right.text.front();
  if (first != U'h' && first != U'p' && first != U'/' && first != U'\\') return false;
  const char32_t last = left.text.back();
  return last != U'/' && last != U'\\' && left.text.find(U'^') == std::u32string::npos;
}

// Works out where columns must be put in so that all items have room.
class Widener {
 public:
  Widener(const StripCells& cells, const std::vector<RowPlan>& plans) : cells_(cells) {
    for (const RowPlan& plan : plans) {
      if (plan.changed) rows_.push_back({&plan});
    }
  }

  Widening widen() {
    for (const int boundary : boundaries()) {
      int columns = 0;
      for (const Row& row : rows_) columns = std::max(columns, missing(row, boundary));
      widening_.insert(boundary, columns);
      for (Row& row : rows_) pass(row, boundary);
    }
    return std::move(widening_);
  }

 private:
  struct Row {
    const RowPlan* plan = nullptr;
    std::size_t next = 0;             // the item that comes next
    const RowItem* before = nullptr;  // the one before it in its bar
    int end = 1;                      // where that ends, or the bar line, once widened
    std::size_t sign = 1;             // the bar line that comes next

    const RowItem* item() const { return next < plan->items.size() ? &plan->items[next] : nullptr; }
  };

  std::vector<int> boundaries() const {
    std::vector<int> all;
    for (std::size_t i = 1; i < cells_.signs.size(); ++i) all.push_back(cells_.signs[i].begin);
    for (const Row& row : rows_) {
      for (const RowItem& item : row.plan->items) all.push_back(item.boundary);
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
  }

  int missing(const Row& row, int boundary) const {
    if (const RowItem* item = row.item(); item != nullptr && item->boundary == boundary) {
      return least_begin(row, *item) - widening_.moved(item->anchor) - item->offset;
    }
    const bool ends = row.sign < cells_.signs.size() && cells_.signs[row.sign].begin == boundary;
    if (!ends || row.before == nullptr || !row.before->changed) return 0;
    const bool touched = row.before->old_end == boundary;
    return row.end + (touched ? 0 : 1) - widening_.moved(boundary);
  }

  int least_begin(const Row& row, const RowItem& item) const {
    if (row.before == nullptr) {
      if (!item.changed) return 0;
      // The bar line keeps its blank where the counts do.
      const int line_end = cells_.signs[row.sign - 1].end;
      return std::max(row.end + (item.anchor > line_end ? 1 : 0), least(item));
    }
    if (!item.changed && !row.before->changed) return 0;
    const bool joined = row.before->old_end >= 0 && row.before->old_end == item.old_begin;
    return std::max(row.end + (joined && may_touch(*row.before, item) ? 0 : 1), least(item));
  }

  // A grace note may not come under the count before.
  int least(const RowItem& item) const { return item.least == 0 ? 0 : widening_.moved(item.least - 1) + 1; }

  void pass(Row& row, int boundary) const {
    if (const RowItem* item = row.item(); item != nullptr && item->boundary == boundary) {
      row.before = item;
      row.end = widening_.moved(item->anchor) + item->offset + static_cast<int>(item->text.size());
      ++row.next;
    }
    if (row.sign < cells_.signs.size() && cells_.signs[row.sign].begin == boundary) {
      const Sign& sign = cells_.signs[row.sign++];
      row.before = nullptr;
      row.end = widening_.moved(sign.begin) + sign.end - sign.begin;
    }
  }

  const StripCells& cells_;
  std::vector<Row> rows_;
  Widening widening_;
};

// Writes the rows of one strip.
class StripWriter {
 public:
  StripWriter(const GridInput& input, const Strip& strip, const StripCells& cells, std::vector<RowPlan> plans)
      : input_(input),
        strip_(strip),
        cells_(cells),
        plans_(std::move(plans)),
        widening_(Widener(cells, plans_).widen()),
        bytes_(input.text.bytes()) {
    for (const GridRow& row : strip.rows) {
      if (row.kind != RowKind::string) continue;
      ++string_rows_;
      dashes_ = dashes_ || row.characters.find(U'-') != std::u32string::npos;
    }
  }

  std::vector<source::Edit> write() {
    for (const GridRow& row : strip_.rows) write_row(row);
    for (const RowPlan& plan : plans_) {
      if (plan.row == nullptr && !plan.items.empty()) add_row(plan);
    }
    return std::move(edits_);
  }

 private:
  const RowPlan* plan_of(const GridRow& row) const {
    const auto found =
        std::find_if(plans_.begin(), plans_.end(), [&](const RowPlan& plan) { return plan.row == &row; });
    return found == plans_.end() ? nullptr : &*found;
  }

  void write_row(const GridRow& row) {
    const RowPlan* plan = plan_of(row);
    const bool changed = plan != nullptr && plan->changed;
    if (is_taken_out(row)) return take_out(row);
    if (!changed && widening_.empty()) return;
    const bool anywhere = row.kind == RowKind::count || row.kind == RowKind::string;
    const std::u32string written =
        changed ? filled(row.characters, *plan) : stretched(row.characters, anywhere, widening_);
    edits_.push_back({row.range(0, row.columns()), source::to_utf8(written)});
  }

  // A string's row that has lost all its notes; a strip in which every string has its row keeps them all.
  bool is_taken_out(const GridRow& row) const {
    const RowPlan* plan = plan_of(row);
    if (row.kind != RowKind::string || plan == nullptr || !plan->changed || !plan->items.empty()) return false;
    const bool some_left = std::any_of(plans_.begin(), plans_.end(),
                                       [](const RowPlan& plan) { return plan.string > 0 && !plan.items.empty(); });
    return string_rows_ < input_.context.neck.strings() && some_left;
  }

  // The row's items in their new places.
  std::u32string filled(std::u32string row, const RowPlan& plan) const {
    for (const RowItem& item : plan.erased) {
      const char32_t filler = filler_at(row, plan, item.cell);
      for (int column = item.old_begin; column < item.old_end; ++column) row[static_cast<std::size_t>(column)] = filler;
    }
    if (!plan.items.empty()) extend(row, plan);
    row = stretched(row, plan.string > 0, widening_);
    for (const RowItem& item : plan.items) {
      const int begin = widening_.moved(item.anchor) + item.offset;
      row.replace(static_cast<std::size_t>(begin), item.text.size(), item.text);
    }
    return row;
  }

  // What stands between the tokens of a cell.
  char32_t filler_at(const std::u32string& row, const RowPlan& plan, int cell) const {
    if (plan.string == 0) return U' ';
    const int begin = cells_.signs[static_cast<std::size_t>(cell)].end;
    const int end = std::min(cells_.signs[static_cast<std::size_t>(cell) + 1].begin, static_cast<int>(row.size()));
    bool blank = false;
    for (int column = begin; column < end; ++column) {
      if (row[static_cast<std::size_t>(column)] == U'-') return U'-';
      blank = blank || is_blank(row[static_cast<std::size_t>(column)]);
    }
    return dashes_ && !blank ? U'-' : U' ';
  }

  // A row may have stopped at an earlier bar line than its last item needs.
  void extend(std::u32string& row, const RowPlan& plan) const {
    const auto last = static_cast<std::size_t>(plan.items.back().cell) + 1;
    for (std::size_t sign = 0; sign <= last; ++sign) {
      const Sign& line = cells_.signs[sign];
      if (line.begin < static_cast<int>(row.size())) continue;
      row.resize(static_cast<std::size_t>(line.begin), dashes_ ? U'-' : U' ');
      const bool ends_repeat = line.sign == BarSign::repeat_end && line.end - line.begin > 1;
      row += ends_repeat ? U" |" : U"|";
      if (sign < last) row.resize(std::max(row.size(), static_cast<std::size_t>(line.end)), U' ');
    }
  }

  std::string line_end() const {
    const GridRow& any = strip_.rows.front();
    return bytes_.substr(any.offsets.back(), 2) == "\r\n" ? "\r\n" : "\n";
  }

  std::uint32_t line_begin(const GridRow& row) const {
    const std::size_t before = bytes_.rfind('\n', row.offsets.front());
    const std::size_t begin = before == std::string_view::npos ? 0 : before + 1;
    return static_cast<std::uint32_t>(std::max<std::size_t>(begin, input_.grid.begin));
  }

  void take_out(const GridRow& row) {
    const std::uint32_t end = row.offsets.back();
    const std::string ending = line_end();
    const bool has_line_end = bytes_.substr(end, ending.size()) == ending;
    const auto whole = static_cast<std::uint32_t>(end + (has_line_end ? ending.size() : 0));
    edits_.push_back({{line_begin(row), whole, row.file}, ""});
  }

  // After the row of the nearest string above, else before the nearest below.
  void add_row(const RowPlan& plan) {
    const GridRow* above = nullptr;
    const GridRow* below = nullptr;
    for (const GridRow& row : strip_.rows) {
      if (row.kind != RowKind::string || is_taken_out(row)) continue;
      if (row.string < plan.string) above = &row;
      if (row.string > plan.string && below == nullptr) below = &row;
    }
    const GridRow& beside = above != nullptr ? *above : below != nullptr ? *below : strip_.rows.back();
    std::u32string bars = filled(U"|", plan);
    const std::string line = label_like(beside, plan.string) + source::to_utf8(bars);
    if (above == nullptr && below != nullptr) {
      const std::uint32_t at = line_begin(beside);
      edits_.push_back({{at, at, beside.file}, line + line_end()});
    } else {
      const std::uint32_t at = beside.offsets.back();
      edits_.push_back({{at, at, beside.file}, line_end() + line});
    }
  }

  // The string's label, as wide and as far in as the other row's.
  std::string label_like(const GridRow& row, int string) const {
    const std::uint32_t begin = line_begin(row);
    const std::string before(bytes_.substr(begin, row.label.begin - begin));
    const std::string_view old = bytes_.substr(row.label.begin, row.label.end - row.label.begin);
    std::string after(bytes_.substr(row.label.end, row.offsets.front() - row.label.end));
    const bool numbered = !old.empty() && old.front() >= '0' && old.front() <= '9';
    const std::string label = numbered
                                  ? std::to_string(string)
                                  : fretboard::string_labels(input_.context.neck)[static_cast<std::size_t>(string) - 1];
    const std::size_t width = old.size() + after.size();
    after.resize(width > label.size() ? width - label.size() : 0, ' ');
    return before + label + after;
  }

  const GridInput& input_;
  const Strip& strip_;
  const StripCells& cells_;
  std::vector<RowPlan> plans_;
  Widening widening_;
  std::string_view bytes_;
  std::vector<source::Edit> edits_;
  int string_rows_ = 0;
  bool dashes_ = false;  // whether the strip's string rows are filled with them
};

}  // namespace

std::vector<source::Edit> rewrite_grid(const source::Text& text, Range grid, const GridContext& context,
                                       const GridChange& change) {
  std::vector<source::Edit> edits;
  if (change.empty()) return edits;
  source::Diagnostics unused;
  const GridInput input{text, grid, context, unused};
  const std::vector<Strip> strips = read_strips(input);
  const GridDraft draft = read_draft(input, strips);
  for (std::size_t i = 0; i < strips.size(); ++i) {
    const StripCells cells = read_cells(input, strips[i]);
    std::vector<const BarDraft*> bars;
    for (const BarDraft& bar : draft.bars) {
      if (bar.strip == static_cast<int>(i)) bars.push_back(&bar);
    }
    const auto own = StripWriter(input, strips[i], cells, plan_rows(input, strips[i], cells, bars, change)).write();
    edits.insert(edits.end(), own.begin(), own.end());
  }
  return edits;
}

}  // namespace fretsheaf::lesson
