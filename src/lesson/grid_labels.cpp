#include "lesson/grid_labels.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "fretboard/instrument.h"
#include "lesson/grid_mark_row.h"
#include "lesson/grid_phrases.h"
#include "source/nearest.h"
#include "theory/pitch.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

constexpr std::array<std::pair<std::string_view, RowKind>, 14> names = {{
    {"count", RowKind::count},
    {"chord", RowKind::chord},
    {"mark", RowKind::mark},
    {"text", RowKind::text},
    {"lyric", RowKind::lyric},
    {"section", RowKind::section},
    {"ending", RowKind::ending},
    {"meter", RowKind::meter},
    {"road", RowKind::road},
    {"finger", RowKind::finger},
    {"hand", RowKind::hand},
    {"spell", RowKind::spell},
    {"stroke", RowKind::stroke},
    {"play", RowKind::play},
}};

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + ('a' - 'A'));
  }
  return result;
}

std::optional<int> string_number(std::string_view label, std::size_t strings) {
  int number = 0;
  const auto [end, error] = std::from_chars(label.data(), label.data() + label.size(), number);
  if (error != std::errc{} || end != label.data() + label.size()) return std::nullopt;
  if (number < 1 || number > static_cast<int>(strings)) return std::nullopt;
  return number;
}

std::optional<int> find_string(std::string_view label, const std::vector<std::string>& strings) {
  if (const auto number = string_number(label, strings.size())) return number;
  std::optional<int> found;
  for (std::size_t i = 0; i < strings.size(); ++i) {
    if (strings[i] == label) return static_cast<int>(i) + 1;
  }
  for (std::size_t i = 0; i < strings.size(); ++i) {
    if (lower(strings[i]) != lower(label)) continue;
    if (found) return std::nullopt;
    found = static_cast<int>(i) + 1;
  }
  return found;
}

bool is_figures(std::string_view label) {
  return std::all_of(label.begin(), label.end(), [](char c) { return c >= '0' && c <= '9'; });
}

}  // namespace

std::string_view row_name(RowKind kind) {
  for (const auto& [name, named] : names) {
    if (named == kind) return name;
  }
  return "string";
}

std::optional<RowLabel> find_label(std::string_view label, const std::vector<std::string>& strings) {
  for (const auto& [name, kind] : names) {
    if (name == label) return RowLabel{kind};
  }
  if (const auto string = find_string(label, strings)) return RowLabel{RowKind::string, *string};
  return std::nullopt;
}

bool names_a_string(std::string_view label) {
  return is_figures(label) || theory::parse_note_name(label).has_value();
}

std::optional<RowLabel> report_unknown_label(const GridInput& input, std::string_view label, Range range,
                                             const std::vector<std::string>& strings) {
  std::vector<std::string_view> known;
  known.reserve(names.size());
  for (const auto& name : names) known.push_back(name.first);
  const std::string guess = source::nearest(label, known);
  const std::string help = guess.empty()
                               ? "the rows are count, chord, mark, text, lyric, section, ending, meter, road, "
                                 "finger, hand, spell, stroke, play and the strings " +
                                     listed(strings)
                               : "did you mean " + tick(guess) + "?";
  input.diagnostics.error(Code::row_unknown, range, "there is no row called " + tick(label), help);
  if (guess.empty()) return std::nullopt;
  return find_label(guess, strings);
}

namespace {

// Whether so many labels fit badly that another instrument may be meant: two unknown, or the known ones out of order.
bool fit_badly(const std::vector<StringLabel>& labels, const std::vector<std::string>& strings) {
  if (labels.size() < 3) return false;
  std::vector<int> known;
  for (const StringLabel& label : labels) {
    if (const auto string = find_string(label.text, strings)) known.push_back(*string);
  }
  return labels.size() - known.size() > 1 || !std::is_sorted(known.begin(), known.end());
}

bool in_order(const std::vector<StringLabel>& labels, const std::vector<std::string>& strings) {
  int last = 0;
  for (const StringLabel& label : labels) {
    const auto string = find_string(label.text, strings);
    if (!string || *string <= last) return false;
    last = *string;
  }
  return true;
}

// The first instrument, as it is usually tuned, that has all these strings in this order.
const fretboard::Instrument* instrument_with(const std::vector<StringLabel>& labels) {
  for (const fretboard::Instrument& instrument : fretboard::instruments()) {
    const fretboard::Neck neck{instrument.tuning, instrument.frets, 0, instrument.short_fifth_string};
    if (in_order(labels, fretboard::string_labels(neck))) return &instrument;
  }
  return nullptr;
}

}  // namespace

void report_unknown_strings(const GridInput& input, const std::vector<StringLabel>& labels,
                            const std::vector<std::string>& strings) {
  const std::string own = listed(strings);
  const fretboard::Instrument* meant = fit_badly(labels, strings) ? instrument_with(labels) : nullptr;
  if (meant != nullptr) {
    input.diagnostics.error(Code::row_string_unknown, labels.front().range,
                            "these are the strings of another instrument: this one has " + own,
                            "write instrument = \"" + std::string(meant->name) + "\", or label the rows " + own);
    return;
  }
  for (const StringLabel& label : labels) {
    if (find_string(label.text, strings)) continue;
    input.diagnostics.error(
        Code::row_string_unknown, label.range, tick(label.text) + " is no string of this instrument",
        "its strings are " + own + ", the top line first, or 1 to " + std::to_string(strings.size()));
  }
}

namespace {

bool stands_twice(const std::vector<GridRow>& rows, std::size_t i) {
  const GridRow& row = rows[i];
  return std::any_of(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(i),
                     [&](const GridRow& other) { return other.kind == row.kind && other.string == row.string; });
}

// Whether a row of a lower string stands above row `i`, where string `string` has no place then.
bool follows_lower(const Strip& strip, std::size_t i, int string) {
  return std::any_of(strip.rows.begin(), strip.rows.begin() + static_cast<std::ptrdiff_t>(i),
                     [&](const GridRow& other) { return other.kind == RowKind::string && other.string > string; });
}

// Loudness is said once at a count; lines and stretches may lie over each other.
bool has_dynamic(const GridRow& row) {
  const auto parts = [&](int column) { return is_blank(row.at(column)) || row.at(column) == U'|'; };
  for (int begin = 0, end = 0; begin < row.columns(); begin = end + 1) {
    for (end = begin; end < row.columns() && !parts(end);) ++end;
    if (is_dynamic(row.text(begin, end))) return true;
  }
  return false;
}

// A row without the blanks at its end.
std::u32string_view inked(const GridRow& row) {
  return std::u32string_view(row.characters).substr(0, row.characters.find_last_not_of(U' ') + 1);
}

// Whether a row says again what one above says, of a kind that says each thing once.
bool says_again(const std::vector<GridRow>& above, const GridRow& row) {
  constexpr std::array<RowKind, 9> kinds = {RowKind::chord,  RowKind::mark,   RowKind::ending,
                                            RowKind::meter,  RowKind::finger, RowKind::hand,
                                            RowKind::stroke, RowKind::spell,  RowKind::play};
  if (std::find(kinds.begin(), kinds.end(), row.kind) == kinds.end()) return false;
  if (row.kind == RowKind::mark && !has_dynamic(row)) return false;
  if (row.characters.find_first_not_of(U" |:") == std::u32string::npos) return false;
  return std::any_of(above.begin(), above.end(),
                     [&](const GridRow& other) { return other.kind == row.kind && inked(other) == inked(row); });
}

// Pasted tab often has a capital for both strings of one letter. The upper of the two rows is then the higher string.
void tell_twins_apart(const GridInput& input, Strip& strip, const std::vector<std::string>& strings) {
  for (std::size_t i = 0; i < strip.rows.size(); ++i) {
    GridRow& row = strip.rows[i];
    if (row.kind != RowKind::string) continue;
    const std::string& label = strings[static_cast<std::size_t>(row.string) - 1];
    const auto twin = std::find(strings.begin(), strings.end(), lower(label));
    if (twin == strings.end() || *twin == label) continue;
    const int higher = static_cast<int>(twin - strings.begin()) + 1;
    const auto rows_of = [&](int string) {
      return std::count_if(strip.rows.begin(), strip.rows.end(), [&](const GridRow& other) {
        return other.kind == RowKind::string && other.string == string;
      });
    };
    if (rows_of(row.string) != 2 || rows_of(higher) != 0 || follows_lower(strip, i, higher)) continue;
    input.diagnostics.error(Code::row_twice, row.label, "two rows are labelled " + tick(label),
                            "write " + tick(*twin) + " for the higher one, here");
    row.string = higher;
  }
}

// Whether all rows of strings, two at least, stand bottom line first.
bool all_upside_down(const Strip& strip) {
  int rows = 0;
  int above = 0;
  for (const GridRow& row : strip.rows) {
    if (row.kind != RowKind::string) continue;
    if (rows > 0 && row.string > above) return false;
    above = row.string;
    ++rows;
  }
  return rows > 1;
}

// A tuning that is written top line first, as the rows of a tab stand: its lowest string comes last. Where one string
// is short, its pitch says nothing of that.
bool falls(const fretboard::Neck& neck) {
  return !neck.short_fifth_string && neck.tuning.back().midi() < neck.tuning.front().midi();
}

void report_falling_tuning(const GridInput& input) {
  std::string pitches;
  const auto& tuning = input.context.neck.tuning;
  for (auto pitch = tuning.rbegin(); pitch != tuning.rend(); ++pitch) {
    pitches += (pitches.empty() ? "\"" : ", \"") + pitch->to_string() + "\"";
  }
  input.diagnostics.error(Code::row_order, *input.context.tuning, "this tuning is written top line first",
                          "a tuning begins with the tab's bottom line: write tuning = [" + pitches + "]");
}

void check_order(const GridInput& input, const Strip& strip, const std::vector<std::string>& strings) {
  if (input.context.tuning && all_upside_down(strip) && falls(input.context.neck)) {
    report_falling_tuning(input);
    return;
  }
  int last = 0;
  for (const GridRow& row : strip.rows) {
    if (row.kind != RowKind::string) continue;
    if (row.string < last) {
      input.diagnostics.error(Code::row_order, row.label, "this string row is out of order",
                              "the tab's top line stands first: " + listed(strings));
      return;
    }
    last = row.string;
  }
}

}  // namespace

void check_labels(const GridInput& input, Strip& strip, const std::vector<std::string>& strings) {
  tell_twins_apart(input, strip, strings);
  std::vector<GridRow> kept;
  for (std::size_t i = 0; i < strip.rows.size(); ++i) {
    GridRow& row = strip.rows[i];
    if (says_again(kept, row)) {
      input.diagnostics.error(Code::row_twice, row.label,
                              "the same " + std::string(row_name(row.kind)) + " row stands twice in this strip",
                              "keep one of them");
      continue;
    }
    // A second count row has begun a new strip.
    if (row.kind != RowKind::string || !stands_twice(strip.rows, i)) {
      kept.push_back(std::move(row));  // its kind and string can still be read
      continue;
    }
    strip.damaged = true;
    const std::string& string = strings[static_cast<std::size_t>(row.string) - 1];
    input.diagnostics.error(Code::row_twice, row.label,
                            "the row of the " + tick(string) + " string stands twice in this strip",
                            "a blank line begins a new strip");
  }
  strip.rows = std::move(kept);
  check_order(input, strip, strings);
}

}  // namespace fretsheaf::lesson
