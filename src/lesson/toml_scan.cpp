#include "lesson/toml_scan.h"

#include <algorithm>
#include <array>
#include <utility>

#include "lesson/toml_string.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

bool is_bare_key(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
}

char lower_case(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// Numbers and times of day or dates without a blank; the parser has the details.
bool is_number(std::string_view words) {
  return words.find_first_not_of("0123456789+-._eExXoabcdefABCDEFTZ") == std::string_view::npos &&
         words.find_first_of("0123456789") == words.find_first_not_of("+-");
}

// Where a word is no text that lacks its quotes.
bool is_number_key(std::string_view key) {
  constexpr std::array<std::string_view, 6> keys = {"number", "frets", "capo", "practice-log", "blank-bars", "vary"};
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

SyntaxProblem problem(std::size_t begin, std::size_t end, std::string message, std::string help = {}) {
  return {begin, end, source::Code::toml_syntax, std::move(message), std::move(help)};
}

}  // namespace

std::string_view typographic_quote(std::string_view text) {
  constexpr std::array<std::string_view, 11> marks = {"“", "”", "„", "‟", "‘", "’", "‚", "«", "»", "´", "`"};
  const auto* found = std::find_if(marks.begin(), marks.end(), [&](auto mark) { return text.starts_with(mark); });
  return found == marks.end() ? std::string_view() : *found;
}

void TomlScan::skip_blanks() {
  while (!done() && (bytes_[at_] == ' ' || bytes_[at_] == '\t')) ++at_;
}

void TomlScan::skip_lines() {
  while (!done()) {
    const char c = bytes_[at_];
    if (c == '#') {
      at_ = line_end();
    } else if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      ++at_;
    } else {
      return;
    }
  }
}

std::size_t TomlScan::line_end() const {
  const std::size_t end = std::min(bytes_.find('\n', at_), bytes_.size());
  return end > at_ && end > 0 && bytes_[end - 1] == '\r' ? end - 1 : end;
}

std::optional<SyntaxProblem> TomlScan::key(std::vector<std::string>& parts) {
  while (true) {
    skip_blanks();
    const std::size_t begin = at_;
    if (here() == '"' || here() == '\'') {
      const auto quoted = find_toml_string(bytes_, at_);
      if (!quoted) return unclosed(bytes_.substr(at_, 1));
      parts.push_back(toml_string_value(bytes_, *quoted));
      at_ = quoted->end;
    } else {
      while (!done() && is_bare_key(bytes_[at_])) ++at_;
      if (at_ == begin) {
        const std::size_t length = done() ? 1 : source::decode_utf8(bytes_.substr(at_)).length;
        return problem(begin, begin + length, "a key belongs here",
                       "a line is KEY = VALUE, with a key of the letters a to z, digits, '-' and '_'");
      }
      parts.emplace_back(bytes_.substr(begin, at_ - begin));
    }
    skip_blanks();
    if (here() != '.') return {};
    ++at_;
  }
}

std::optional<SyntaxProblem> TomlScan::value(const std::string& key) {
  skip_blanks();
  if (here() == '"' || here() == '\'') return string(key);
  if (here() == '[') return list(key);
  if (here() == '{') return table(key);
  if (key == "tab" && (at_line_end() || here() == '`')) return other_quotes(at_line_end() ? 0 : 1, "");
  if (at_line_end() || here() == '#') {
    return problem(at_, at_line_end() ? at_ : at_ + 1, "'" + key + "' has no value", "write it after the '='");
  }
  if (const auto mark = typographic_quote(bytes_.substr(at_)); !mark.empty()) {
    if (key == "tab") return other_quotes(mark.size(), "");
    return problem(at_, at_ + mark.size(), std::string(mark) + " is not a quote that TOML knows",
                   "write straight quotes, \", before and after the text; `fretsheaf tidy` puts them in");
  }
  return bare(key);
}

SyntaxProblem TomlScan::unclosed(std::string_view marks) const {
  const std::string name(marks);
  if (marks.size() == 3) {
    const std::string other(3, marks.front() == '"' ? '\'' : '"');
    const std::size_t first = bytes_.find(other, at_ + 3);
    if (first != std::string_view::npos && bytes_[first - 1] == '\n') {
      return problem(first, first + 3, other + " does not close the text that " + name + " opened",
                     "write " + name + " here, too, or " + other + " before it; a tab grid has ''' and '''");
    }
    return problem(at_, at_ + 3, name + " opens a text here that is never closed",
                   "write " + name + " on a line of its own after it");
  }
  const std::string_view rest = bytes_.substr(at_ + 1, line_end() - at_ - 1);
  for (std::size_t i = 0; i < rest.size(); ++i) {
    if (const auto mark = typographic_quote(rest.substr(i)); !mark.empty() && mark != "’") {
      return problem(at_ + 1 + i, at_ + 1 + i + mark.size(), std::string(mark) + " does not close the text",
                     "write a straight " + name + " there");
    }
  }
  return problem(at_, line_end(), "this text is not closed on its line",
                 "write " + name + " at its end; a text of several lines stands between \"\"\" and \"\"\"");
}

SyntaxProblem TomlScan::other_quotes(std::size_t length, std::string_view why) const {
  SyntaxProblem wrong = problem(at_, at_ + length, "a tab grid is written between ''' and '''",
                                std::string(why) + "write tab = ''' and close with '''");
  wrong.code = source::Code::grid_quotes;
  return wrong;
}

std::optional<SyntaxProblem> TomlScan::string(const std::string& key) {
  const bool three = here("\"\"\"") || here("'''");
  const auto found = find_toml_string(bytes_, at_);
  if (!found && !three && key == "tab") return other_quotes(1, "");
  if (!found) return unclosed(bytes_.substr(at_, three ? 3 : 1));
  const bool lines = found->quotes == Quotes::basic_lines || found->quotes == Quotes::literal_lines;
  for (std::size_t i = found->body_begin; i < found->body_end; ++i) {
    const auto c = static_cast<unsigned char>(bytes_[i]);
    const bool line_end = lines && (c == '\n' || (c == '\r' && bytes_.substr(i, 2) == "\r\n"));
    if ((c < 0x20 && c != '\t' && !line_end) || c == 0x7F) {
      return problem(i, i + 1, "a control character stands here", "take it out");
    }
  }
  if (found->quotes == Quotes::basic || found->quotes == Quotes::basic_lines) {
    if (auto wrong = escapes(key, found->body_begin, found->body_end)) return wrong;
  }
  at_ = found->end;
  return {};
}

std::optional<SyntaxProblem> TomlScan::escapes(const std::string& key, std::size_t begin, std::size_t end) {
  const std::string_view body = bytes_.substr(0, end);
  for (std::size_t i = begin; i < end; ++i) {
    if (body[i] != '\\') continue;
    const char letter = i + 1 < end ? body[i + 1] : ' ';
    const std::size_t digits = letter == 'u' ? 4 : 8;
    const bool number = letter == 'u' || letter == 'U';
    const bool known = std::string_view("btnfr\"\\").find(letter) != std::string_view::npos;
    const bool line_goes_on = body.find_first_not_of(" \t\r", i + 1) == body.find('\n', i + 1);
    const bool sound =
        number ? body.substr(i + 2, digits).size() == digits &&
                     body.substr(i + 2, digits).find_first_not_of("0123456789abcdefABCDEF") == std::string_view::npos
               : known || line_goes_on;
    if (sound) {
      i += line_goes_on && !known ? 0 : 1;
      continue;
    }
    if (key == "tab") {
      return other_quotes(here("\"\"\"") ? 3 : 1, "in other quotes a '\\' has a meaning of its own: ");
    }
    const std::size_t length = i + 1 < end ? 1 + source::decode_utf8(body.substr(i + 1)).length : 1;
    return problem(i, i + length, "'" + std::string(body.substr(i, length)) + "' has no meaning in a text in \" quotes",
                   "write \\\\ for a backslash, or put the text between ' and '");
  }
  return {};
}

std::optional<SyntaxProblem> TomlScan::list(const std::string& key) {
  const std::size_t open = at_++;
  ++depth_;
  while (true) {
    skip_lines();
    if (here() == ']' && !done()) break;
    if (done()) return problem(open, open + 1, "this '[' is never closed", "write ']' after the last item");
    if (auto wrong = value(key)) return wrong;
    skip_lines();
    if (here() == ',') {
      ++at_;
    } else if (!done() && here() != ']') {
      // What begins the next line as a key does is no item: then the bracket is what is missing.
      const std::string_view rest = bytes_.substr(at_, line_end() - at_);
      if (is_bare_key(here()) && rest.find('=') != std::string_view::npos) {
        return problem(open, open + 1, "this '[' is never closed", "write ']' after the last item");
      }
      return problem(at_, at_ + source::decode_utf8(bytes_.substr(at_)).length, "a ',' is missing before this",
                     "write a ',' between the items of a list");
    }
  }
  ++at_;
  --depth_;
  return {};
}

std::optional<SyntaxProblem> TomlScan::table(const std::string& key) {
  const std::size_t open = at_++;
  ++depth_;
  skip_blanks();
  while (here() != '}' || done()) {
    if (at_line_end()) {
      return problem(open, open + 1, "this '{' is not closed on its line", "write all of it, and a '}', on one line");
    }
    std::vector<std::string> parts;
    if (auto wrong = this->key(parts)) return wrong;
    if (here() == ':') {
      return problem(at_, at_ + 1, "':' stands where '=' belongs", "write " + parts.back() + " = …");
    }
    if (here() != '=') {
      return problem(at_, at_ + 1, "a '=' is missing after '" + parts.back() + "'",
                     "write { KEY = VALUE, KEY = VALUE }");
    }
    ++at_;
    if (auto wrong = value(parts.back())) return wrong;
    skip_blanks();
    if (here() == ',') {
      const std::size_t comma = at_++;
      skip_blanks();
      if (here() == '}')
        return problem(comma, comma + 1, "nothing follows this ','",
                       "take it out: a '{ … }' has none after its last value");
    } else if (here() != '}' && !at_line_end()) {
      return problem(at_, at_ + source::decode_utf8(bytes_.substr(at_)).length, "a ',' is missing before this",
                     "write a ',' between the values of '" + key + "'");
    }
  }
  ++at_;
  --depth_;
  return {};
}

std::string_view TomlScan::words_here() const {
  std::string_view rest = bytes_.substr(at_, line_end() - at_);
  rest = rest.substr(0, rest.find(" #"));
  if (depth_ > 0) {
    rest = rest.substr(0, rest.find_first_of(",]}"));
    // Of words beside a number the number is the value, and a comma is missing after it.
    const auto word = rest.substr(0, rest.find(' '));
    if (is_number(word)) return word;
  }
  const auto last = rest.find_last_not_of(" \t");
  return rest.substr(0, last == std::string_view::npos ? 1 : last + 1);
}

std::optional<SyntaxProblem> TomlScan::bare(const std::string& key) {
  const std::string_view words = words_here();
  const std::size_t end = at_ + words.size();
  const std::string before = depth_ > 0 ? "write " : "write " + key + " = ";
  if (is_number(words) || words == "true" || words == "false" || words == "inf" || words == "nan") {
    const auto digits = words.substr(std::min(words.find_first_not_of("+-"), words.size()));
    const bool whole = digits.find_first_not_of("0123456789") == std::string_view::npos;
    if (whole && digits.size() > 1 && digits.front() == '0') {
      const auto first = std::min(digits.find_first_not_of('0'), digits.size() - 1);
      return problem(at_, end, "a number does not begin with 0", before + std::string(digits.substr(first)));
    }
    at_ = end;
    return {};
  }
  std::string lower = "|" + std::string(words) + "|";
  std::transform(lower.begin(), lower.end(), lower.begin(), lower_case);
  for (const auto& [meant, synonyms] : {std::pair{"true", "|true|yes|on|"}, std::pair{"false", "|false|no|off|"}}) {
    if (std::string_view(synonyms).find(lower) != std::string_view::npos) {
      return problem(at_, end, "'" + std::string(words) + "' is not a value", before + meant);
    }
  }
  if (depth_ == 0 && is_number_key(key)) {
    return problem(at_, end, "'" + key + "' is a number", "write it in figures, as in " + key + " = 2");
  }
  const std::string mark = words.find_first_of("\"\\") == std::string_view::npos ? "\"" : "'";
  return problem(at_, end, "a text needs quotes around it", before + mark + std::string(words) + mark);
}

}  // namespace fretsheaf::lesson
