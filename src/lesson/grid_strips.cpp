#include "lesson/grid_strips.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

#include "lesson/limits.h"

namespace fretsheaf::lesson {

using source::Code;

bool WrittenStrip::has_count() const {
  return std::any_of(rows.begin(), rows.end(), [](const GridRow& row) { return row.kind == RowKind::count; });
}

namespace {

bool has_string(const WrittenStrip& strip, int string) {
  return std::any_of(strip.rows.begin(), strip.rows.end(),
                     [&](const GridRow& row) { return row.kind == RowKind::string && row.string == string; });
}

// Rows of one kind besides those of the strings: each strip has its own, most likely.
bool share_a_kind(const WrittenStrip& one, const WrittenStrip& other) {
  return std::any_of(one.rows.begin(), one.rows.end(), [&](const GridRow& row) {
    return row.kind != RowKind::string &&
           std::any_of(other.rows.begin(), other.rows.end(), [&](const GridRow& its) { return its.kind == row.kind; });
  });
}

bool share_a_string(const WrittenStrip& one, const WrittenStrip& other) {
  return std::any_of(one.rows.begin(), one.rows.end(),
                     [&](const GridRow& row) { return row.kind == RowKind::string && has_string(other, row.string); });
}

template <typename T>
void append(std::vector<T>& to, std::vector<T>& from) {
  to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

void append(WrittenStrip& upper, WrittenStrip& lower) {
  append(upper.rows, lower.rows);
  append(upper.string_labels, lower.string_labels);
  upper.foreign = upper.foreign || lower.foreign;
  upper.unclear = upper.unclear || lower.unclear;
}

class StripJoiner {
 public:
  StripJoiner(const GridInput& input, std::vector<WrittenStrip> written)
      : input_(input), written_(std::move(written)) {}

  std::vector<WrittenStrip> join() {
    for (std::size_t i = 0; i < written_.size(); ++i) {
      WrittenStrip& strip = written_[i];
      const bool stray = !strip.has_count() && !strip.unclear;
      if (stray && !joined_.empty() && belong_together(joined_.back(), strip)) {
        report(strip);
        append(joined_.back(), strip);
        said_ = true;
        continue;
      }
      said_ = false;
      if (stray && i + 1 < written_.size() && belong_together(written_[i + 1], strip)) {
        report(strip);
        said_ = true;
        append(strip, written_[i + 1]);
        ++i;
      }
      joined_.push_back(std::move(strip));
    }
    return std::move(joined_);
  }

 private:
  static bool belong_together(const WrittenStrip& counted, const WrittenStrip& stray) {
    return counted.has_count() && !counted.unclear && !share_a_string(counted, stray) &&
           !share_a_kind(counted, stray) && counted.rows.size() + stray.rows.size() <= limits::strip_rows;
  }

  // Once a strip, though a blank line may stand after each of its rows.
  void report(const WrittenStrip& stray) {
    if (said_) return;
    input_.diagnostics.error(Code::count_row_missing, stray.first_line,
                             "a blank line parts these rows from their count row",
                             "take the blank line out; or, where a new strip begins here, write its count row");
  }

  const GridInput& input_;
  std::vector<WrittenStrip> written_;
  std::vector<WrittenStrip> joined_;
  bool said_ = false;  // of the last of `joined_`
};

// Where a string row is another instrument's, no other of the strip can be trusted.
void drop_string_rows(const GridInput& input, WrittenStrip& strip, const std::vector<std::string>& strings) {
  report_unknown_strings(input, strip.string_labels, strings);
  strip.unclear = true;
  std::erase_if(strip.rows, [](const GridRow& row) { return row.kind == RowKind::string; });
}

void number_rows(std::vector<GridRow>& rows) {
  std::map<RowKind, int> seen;
  for (GridRow& row : rows) row.ordinal = seen[row.kind]++;
}

Strip settle(const GridInput& input, WrittenStrip written, const std::vector<std::string>& strings) {
  if (written.foreign) drop_string_rows(input, written, strings);
  Strip strip{std::move(written.rows), -1, written.unclear};
  number_rows(strip.rows);
  check_labels(input, strip, strings);
  const auto count =
      std::find_if(strip.rows.begin(), strip.rows.end(), [](const GridRow& row) { return row.kind == RowKind::count; });
  if (count != strip.rows.end()) {
    strip.count_row = static_cast<int>(count - strip.rows.begin());
  } else if (!strip.rows.empty() && !written.unclear) {
    input.diagnostics.error(Code::count_row_missing, written.first_line, "this strip has no count row",
                            "write a row above it that says when: `count | 1 2 3 4 |`");
  }
  return strip;
}

}  // namespace

std::vector<Strip> settle_strips(const GridInput& input, std::vector<WrittenStrip> written,
                                 const std::vector<std::string>& strings) {
  std::vector<WrittenStrip> joined = StripJoiner(input, std::move(written)).join();
  std::vector<Strip> strips;
  strips.reserve(joined.size());
  for (WrittenStrip& strip : joined) {
    strips.push_back(settle(input, std::move(strip), strings));
  }
  return strips;
}

}  // namespace fretsheaf::lesson
