#include "lesson/tidy_characters.h"

#include <algorithm>
#include <array>
#include <optional>

#include "lesson/grid_labels.h"
#include "lesson/grid_rows.h"
#include "lesson/lookalikes.h"
#include "lesson/toml_string.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

void note(std::vector<Mended>& mended, Lookalike kind, std::size_t at) {
  const auto found = std::find_if(mended.begin(), mended.end(), [&](const Mended& m) { return m.kind == kind; });
  if (found == mended.end()) {
    mended.push_back({kind, at, 1});
  } else {
    ++found->number;
  }
}

// What a line of a grid is, as far as it matters here.
enum class LineKind { count, words, marks, string };

LineKind kind_of(std::string_view line) {
  std::size_t end = std::min(line.find('|'), line.size());
  for (std::size_t at = 0; at < end;) {
    const auto next = source::decode_utf8(line.substr(at));
    if (is_like_bar_line(next.code_point)) end = at;
    at += next.length;
  }
  const std::size_t begin = std::min(line.find_first_not_of(" \t"), end);
  const std::string_view label = line.substr(begin, end - begin);
  const auto found = find_label(label.substr(0, label.find_last_not_of(" \t") + 1), {});
  if (!found) return LineKind::string;
  if (found->kind == RowKind::count) return LineKind::count;
  return found->kind == RowKind::mark ? LineKind::marks : LineKind::words;
}

// One line of a grid, character by character.
class LineMender {
 public:
  LineMender(std::string_view line, std::size_t offset, std::vector<Mended>& mended)
      : line_(line), offset_(offset), mended_(mended), kind_(kind_of(line)) {}

  std::string mend() {
    for (std::size_t at = 0; at < line_.size();) {
      const auto next = source::decode_utf8(line_.substr(at));
      const char plain = plain_for(next.code_point, at, at + next.length);
      if (plain == 0) {
        result_ += line_.substr(at, next.length);
        if (next.code_point == U'"') quoted_ = !quoted_;
      } else {
        result_ += plain;
      }
      at += next.length;
    }
    return std::move(result_);
  }

 private:
  bool has_words() const { return kind_ == LineKind::words; }

  // The character to write instead; 0 where this one stays.
  char plain_for(char32_t c, std::size_t begin, std::size_t end) {
    if (has_words() && is_curly_quote(c) && (quoted_ ? is_edge(end) : is_edge_before(begin))) {
      note(mended_, Lookalike::quote, offset_ + begin);
      quoted_ = !quoted_;
      return '"';
    }
    if (has_words() && quoted_) return 0;
    if (is_like_bar_line(c)) {
      note(mended_, Lookalike::bar_line, offset_ + begin);
      return '|';
    }
    if (is_long_dash(c) && (kind_ == LineKind::string || kind_ == LineKind::marks)) {
      note(mended_, Lookalike::dash, offset_ + begin);
      return '-';
    }
    return 0;
  }

  // Quotes begin a word, and end one.
  bool is_edge_before(std::size_t at) const {
    return at == 0 || line_[at - 1] == ' ' || line_[at - 1] == '|' || line_[at - 1] == '\t';
  }
  bool is_edge(std::size_t at) const {
    return at >= line_.size() || line_[at] == ' ' || line_[at] == '|' || line_[at] == '\t' || line_[at] == '\r' ||
           line_[at] == '-';
  }

  std::string_view line_;
  std::size_t offset_;
  std::vector<Mended>& mended_;
  LineKind kind_;
  std::string result_;
  bool quoted_ = false;
};

// Goes through a file as TOML would, with curly quotes taken for straight ones where a value begins.
class QuoteMender {
 public:
  QuoteMender(std::string_view file, std::vector<Mended>& mended) : file_(file), mended_(mended) {}

  std::string mend() {
    while (at_ < file_.size()) step();
    return std::move(result_);
  }

 private:
  void keep(std::size_t end) {
    result_ += file_.substr(at_, end - at_);
    at_ = end;
  }

  void step() {
    const char c = file_[at_];
    if (c == '#') return keep(std::min(file_.find('\n', at_), file_.size()));
    if (value_begins_ && straighten()) {
      value_begins_ = false;
      return;
    }
    if (c == '"' || c == '\'') {
      value_begins_ = false;
      const auto string = find_toml_string(file_, at_);
      if (!string && straighten_lines()) return;
      return keep(string ? string->end : at_ + 1);
    }
    if (c == '=' || c == '[' || c == ',') value_begins_ = true;
    if (c != ' ' && c != '\t' && c != '\n' && c != '\r' && c != '=' && c != '[' && c != ',') value_begins_ = false;
    keep(at_ + 1);
  }

  std::optional<char> quote_at(std::size_t at, std::size_t& end) const {
    if (at >= file_.size()) return std::nullopt;
    const auto next = source::decode_utf8(file_.substr(at));
    end = at + next.length;
    if (is_curly_quote(next.code_point)) return '"';
    if (is_curly_apostrophe(next.code_point)) return '\'';
    return std::nullopt;
  }

  // Three quotes are not the quotes of a short value, whatever else they may be.
  bool straighten() {
    char mark = 0;
    if (!three_at(at_, mark)) return straighten_value();
    return file_.substr(at_, 3) != std::string(3, mark) && straighten_lines();
  }

  // Where three quotes in a row end, curly or straight.
  std::optional<std::size_t> three_at(std::size_t at, char& mark) const {
    for (int i = 0; i < 3; ++i) {
      std::size_t end = at + 1;
      auto quote = quote_at(at, end);
      if (!quote && at < file_.size() && (file_[at] == '"' || file_[at] == '\'')) quote = file_[at];
      if (!quote || (i > 0 && *quote != mark)) return std::nullopt;
      mark = *quote;
      at = end;
    }
    return at;
  }

  // Whether the value here is a grid, which has quotes of its own.
  bool is_grid() const {
    const std::size_t line = at_ == 0 ? 0 : file_.rfind('\n', at_ - 1) + 1;
    std::string key;
    for (const char c : file_.substr(line, at_ - line)) key += c == ' ' || c == '\t' ? "" : std::string(1, c);
    return key == "tab=";
  }

  // Three quotes, and the next three of their kind that stand at a line's beginning.
  bool straighten_lines() {
    char mark = 0;
    const auto open_end = three_at(at_, mark);
    if (!open_end) return false;
    for (std::size_t line = file_.find('\n', *open_end); line < file_.size(); line = file_.find('\n', line + 1)) {
      char closing = 0;
      const auto close_end = three_at(line + 1, closing);
      if (!close_end || closing != mark) continue;
      const std::string_view body = file_.substr(*open_end, line + 1 - *open_end);
      const std::string marks(3, is_grid() ? '\'' : mark);
      if (body.find(marks) != std::string_view::npos) return false;
      if (file_.substr(at_, 3) != marks) note(mended_, Lookalike::quote, at_);
      if (file_.substr(line + 1, 3) != marks) note(mended_, Lookalike::quote, line + 1);
      result_.append(marks).append(body).append(marks);
      at_ = *close_end;
      return true;
    }
    return false;
  }

  bool straighten_value() {
    std::size_t begin = at_;
    const auto open = quote_at(at_, begin);
    if (!open) return false;
    const std::size_t line_end = std::min(file_.find_first_of("\r\n", at_), file_.size());
    for (std::size_t at = begin; at < line_end;) {
      std::size_t end = at + source::decode_utf8(file_.substr(at)).length;
      const auto close = quote_at(at, end);
      if (close && *close == *open && value_ends(end)) return put(*open, begin, at, end);
      at = end;
    }
    return false;
  }

  bool value_ends(std::size_t at) const {
    at = std::min(file_.find_first_not_of(" \t", at), file_.size());
    return at >= file_.size() || std::string_view("\r\n,]}#").find(file_[at]) != std::string_view::npos;
  }

  bool put(char mark, std::size_t begin, std::size_t end, std::size_t past) {
    const std::string_view body = file_.substr(begin, end - begin);
    if (body.find(mark) != std::string_view::npos || body.find('\\') != std::string_view::npos) return false;
    note(mended_, Lookalike::quote, at_);
    note(mended_, Lookalike::quote, end);
    result_ += mark;
    result_ += body;
    result_ += mark;
    at_ = past;
    return true;
  }

  std::string_view file_;
  std::vector<Mended>& mended_;
  std::string result_;
  std::size_t at_ = 0;
  bool value_begins_ = false;
};

}  // namespace

std::string with_plain_characters(std::string_view grid, std::vector<Mended>& mended) {
  std::string result;
  for (std::size_t at = 0; at < grid.size();) {
    const std::size_t end = std::min(grid.find('\n', at), grid.size());
    result += LineMender(grid.substr(at, end - at), at, mended).mend();
    if (end < grid.size()) result += '\n';
    at = end + 1;
  }
  return result;
}

std::string with_straight_quotes(std::string_view file, std::vector<Mended>& mended) {
  return QuoteMender(file, mended).mend();
}

}  // namespace fretsheaf::lesson
