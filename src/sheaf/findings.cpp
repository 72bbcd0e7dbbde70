#include "sheaf/findings.h"

#include "source/code.h"

namespace fretsheaf::sheaf {

std::vector<Finding> findings_of(const Made& made) {
  std::vector<Finding> findings;
  for (const Report& report : made.reports) {
    for (const source::Diagnostic& diagnostic : report.diagnostics.sorted()) {
      const source::Text& text = report.files[diagnostic.range.file];
      findings.push_back({diagnostic.severity == source::Severity::error,
                          std::string(source::code_name(diagnostic.code)), diagnostic.message, diagnostic.help,
                          text.name(), text.position(diagnostic.range.begin), text.position(diagnostic.range.end),
                          source::render(diagnostic, report.files)});
    }
  }
  return findings;
}

}  // namespace fretsheaf::sheaf
