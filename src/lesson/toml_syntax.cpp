#include "lesson/toml_syntax.h"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "lesson/keys_example.h"
#include "lesson/toml_scan.h"
#include "source/nearest.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;
using Problem = std::optional<SyntaxProblem>;

// Reads statement after statement, and remembers which keys there have been.
class Statements {
 public:
  explicit Statements(const source::Text& text) : text_(text), bytes_(text.bytes()), scan_(bytes_) {
    if (bytes_.starts_with("\xEF\xBB\xBF")) scan_.step(3);
  }

  Problem first_problem() {
    while (true) {
      scan_.skip_lines();
      if (scan_.done()) return {};
      Problem wrong = scan_.here() == '[' ? header() : assignment();
      if (wrong) return runaway_ ? runaway_ : wrong;
    }
  }

 private:
  Problem header() {
    const std::size_t begin = scan_.at();
    const bool list = scan_.here("[[");
    scan_.step(list ? 2 : 1);
    std::vector<std::string> parts;
    if (Problem wrong = scan_.key(parts)) return wrong;
    const std::string_view close = list ? "]]" : "]";
    if (!scan_.here(close)) {
      return SyntaxProblem{begin, scan_.line_end(), Code::toml_syntax, "this heading is not closed",
                           list ? "write [[" + parts.back() + "]]" : "write [" + parts.back() + "]"};
    }
    scan_.step(close.size());
    if (!list && parts.size() == 1 && is_example(parts.back())) {
      return SyntaxProblem{begin, scan_.at(), Code::wrong_type, example_heading.message, example_heading.help};
    }
    prefix_ = heading_path(parts, list);
    takes_example_ = list && parts.size() == 1;
    if (list) {
      prefix_ += std::to_string(++lists_[prefix_]) + '\0';
    } else if (Problem wrong = once(prefix_, "[" + parts.back() + "]", begin, scan_.at())) {
      return wrong;
    }
    return rest_of_line("a heading stands on a line of its own");
  }

  Problem assignment() {
    const std::size_t begin = scan_.at();
    std::vector<std::string> parts;
    if (Problem wrong = scan_.key(parts)) return wrong;
    const std::size_t key_end = bytes_.find_last_not_of(" \t", scan_.at() - 1) + 1;
    if (scan_.here() != '=') return no_equals(begin, parts.back());
    scan_.step();
    if (Problem wrong = once(path(prefix_, parts), parts.back(), begin, key_end)) {
      if (takes_example_ && parts.size() == 1 && is_example_key(parts.back()))
        wrong->help += "; where another example begins here, write [[example]] above its first key";
      return wrong;
    }
    scan_.skip_blanks();
    const std::size_t value_begin = scan_.at();
    if (Problem wrong = scan_.value(parts.back())) return wrong;
    notice_runaway(value_begin, scan_.at());
    const bool quoted = bytes_[value_begin] == '"' || bytes_[value_begin] == '\'';
    return rest_of_line(quoted ? "the text ends before this; inside a text in \" quotes a quote is written \\\""
                               : "a value, and all of it, stands on the line of its key");
  }

  // Where closing quotes are missing, the text goes on to the next opening ones, far below, and only there does it
  // break.
  void notice_runaway(std::size_t begin, std::size_t end) {
    const std::string_view marks = bytes_.substr(begin, 3);
    if (marks != "'''" && marks != "\"\"\"") return;
    const std::string_view body = bytes_.substr(begin + 3, end - begin - 3);
    if (body.find("\n[[") == std::string_view::npos && body.find("\ntab ") == std::string_view::npos) return;
    runaway_ = SyntaxProblem{begin, begin + 3, Code::toml_syntax,
                             std::string(marks) + " opens a text here that is not closed before the next one opens",
                             "write " + std::string(marks) + " on a line of its own after it"};
  }

  Problem no_equals(std::size_t begin, const std::string& key) const {
    const std::size_t end = scan_.line_end();
    const std::string_view rest = bytes_.substr(scan_.at(), end - scan_.at());
    if (rest.starts_with(":")) {
      return SyntaxProblem{scan_.at(), scan_.at() + 1, Code::toml_syntax, "':' stands where '=' belongs",
                           "write " + key + " = …"};
    }
    if (!rest.empty() && static_cast<unsigned char>(rest.front()) >= 0x80 && scan_.at() > begin) {
      const std::size_t length = source::decode_utf8(rest).length;
      return SyntaxProblem{scan_.at(), scan_.at() + length, Code::toml_syntax,
                           "'" + std::string(rest.substr(0, length)) + "' cannot stand in a key",
                           "keys have the letters a to z, digits, '-' and '_'"};
    }
    const auto equals = rest.find('=');
    if (equals != std::string_view::npos && rest.find_first_of("|\"'") > equals) {
      std::string joined = key + "-" + std::string(rest.substr(0, equals));
      joined.erase(joined.find_last_not_of(" \t") + 1);
      for (char& c : joined) c = c == ' ' || c == '\t' ? '-' : c;
      return SyntaxProblem{begin, scan_.at() + equals, Code::toml_syntax, "a key has no spaces in it",
                           "write " + joined + " ="};
    }
    const bool grid = rest.find('|') != std::string_view::npos;
    return SyntaxProblem{
        begin, end, Code::toml_syntax, "this line has no '=' after its key",
        grid ? "a tab grid stands between ''' and ''', after tab =" : "a line is KEY = VALUE; a comment begins with #"};
  }

  Problem rest_of_line(std::string_view help) {
    scan_.skip_blanks();
    if (scan_.at_line_end()) return {};
    if (scan_.here() == '#') {
      scan_.step(scan_.line_end() - scan_.at());
      return {};
    }
    const bool remark = scan_.here(";") || scan_.here("//") || scan_.here("--") || scan_.here("%");
    return SyntaxProblem{scan_.at(), scan_.line_end(), Code::toml_syntax,
                         "there is more on this line than belongs there",
                         remark ? "a remark begins with #" : std::string(help)};
  }

  static bool is_example(std::string_view heading) {
    constexpr std::string_view example[] = {"example"};
    return heading == example[0] || !source::nearest(heading, example).empty();
  }

  static std::string path(const std::string& prefix, const std::vector<std::string>& parts) {
    std::string result = prefix;
    for (const std::string& part : parts) result += part + '\0';
    return result;
  }

  // Under a `[[…]]`, its latest item is meant.
  std::string heading_path(const std::vector<std::string>& parts, bool list) const {
    std::string result;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      result += parts[i] + '\0';
      const auto found = lists_.find(result);
      const bool itself = list && i + 1 == parts.size();
      if (found != lists_.end() && !itself) result += std::to_string(found->second) + '\0';
    }
    return result;
  }

  Problem once(const std::string& path, const std::string& name, std::size_t begin, std::size_t end) {
    const auto [earlier, fresh] = seen_.emplace(path, begin);
    if (fresh) return {};
    return SyntaxProblem{
        begin, end, Code::duplicate_key, "'" + name + "' is written twice",
        "it stands in line " + std::to_string(text_.position(earlier->second).line) + " already: keep one of them"};
  }

  const source::Text& text_;
  std::string_view bytes_;
  TomlScan scan_;
  std::string prefix_;  // of the latest heading; parts end in NUL, which no file holds
  std::map<std::string, int> lists_;
  std::map<std::string, std::size_t> seen_;
  bool takes_example_ = true;  // what stands here may be an example's, and its heading forgotten
  Problem runaway_;
};

}  // namespace

void explain_syntax(const source::Text& text, source::FileId file, std::size_t stopped,
                    source::Diagnostics& diagnostics) {
  Problem problem = Statements(text).first_problem();
  if (!problem) {
    problem = SyntaxProblem{stopped, stopped + 1, Code::toml_syntax, "this cannot be read as TOML",
                            "a line is KEY = VALUE, [[example]] or, after a #, a comment"};
  }
  diagnostics.error(problem->code,
                    {static_cast<std::uint32_t>(problem->begin), static_cast<std::uint32_t>(problem->end), file},
                    std::move(problem->message), std::move(problem->help));
}

}  // namespace fretsheaf::lesson
