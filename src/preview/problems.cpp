#include "preview/problems.h"

#include <algorithm>

namespace fretsheaf::preview {
namespace {

std::string last_part(const std::string& path) {
  return path.substr(path.rfind('/') + 1);
}

// The two lines that the one place which renders diagnostics puts between its first line and its help.
std::string excerpt_of(const std::string& rendered) {
  const auto begin = rendered.find('\n') + 1;
  const auto carets = rendered.find('\n', begin);
  if (begin == 0 || carets == std::string::npos) return "";
  const auto end = rendered.find('\n', carets + 1);
  return end == std::string::npos ? "" : rendered.substr(begin, end - begin);
}

Problem problem_of(const source::Diagnostic& diagnostic, const source::Files& files) {
  const source::Text& text = files[diagnostic.range.file];
  const source::Position position = text.position(diagnostic.range.begin);
  Problem problem;
  problem.is_error = diagnostic.severity == source::Severity::error;
  problem.file = last_part(text.name());
  problem.line = position.line;
  problem.column = position.column;
  problem.message = diagnostic.message;
  problem.excerpt = excerpt_of(source::render(diagnostic, files));
  problem.help = diagnostic.help;
  return problem;
}

}  // namespace

void add_problems(const sheaf::Made& made, std::vector<Problem>& problems) {
  const auto first = static_cast<std::ptrdiff_t>(problems.size());
  for (const sheaf::Report& report : made.reports) {
    for (const source::Diagnostic& diagnostic : report.diagnostics.sorted()) {
      problems.push_back(problem_of(diagnostic, report.files));
    }
  }
  if (!made.refusal.empty()) {
    Problem problem;
    problem.message = made.refusal;
    problem.line = 0;
    problem.column = 0;
    problems.push_back(std::move(problem));
  }
  std::stable_partition(problems.begin() + first, problems.end(), [](const Problem& one) { return one.is_error; });
}

bool any_error(const std::vector<Problem>& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& one) { return one.is_error; });
}

}  // namespace fretsheaf::preview
