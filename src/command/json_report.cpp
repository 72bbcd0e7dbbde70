#include "command/json_report.h"

#include <nlohmann/json.hpp>

#include "sheaf/unreadable.h"
#include "source/code.h"

namespace fretsheaf::command {

namespace {

using nlohmann::ordered_json;

ordered_json place(const source::Text& text, std::size_t offset) {
  const source::Position at = text.position(offset);
  return {{"line", at.line}, {"column", at.column}, {"utf16", at.utf16}};
}

ordered_json entry(const source::Diagnostic& diagnostic, const source::Text& text) {
  return {{"severity", diagnostic.severity == source::Severity::error ? "error" : "warning"},
          {"code", source::code_name(diagnostic.code)},
          {"message", diagnostic.message},
          {"help", diagnostic.help},
          {"range", {{"start", place(text, diagnostic.range.begin)}, {"end", place(text, diagnostic.range.end)}}}};
}

void add_files(const sheaf::Report& report, ordered_json& files) {
  const std::vector<source::Diagnostic> diagnostics = report.diagnostics.sorted();
  for (std::size_t file = 0; file < report.files.size(); ++file) {
    const source::Text& text = report.files[static_cast<source::FileId>(file)];
    ordered_json entries = ordered_json::array();
    for (const source::Diagnostic& diagnostic : diagnostics) {
      if (diagnostic.range.file == file) entries.push_back(entry(diagnostic, text));
    }
    if (file == 0 || !entries.empty()) files.push_back({{"file", text.name()}, {"diagnostics", std::move(entries)}});
  }
}

// A lesson that could not be read has no text, and one finding at its beginning.
ordered_json without_text(const Checked& one) {
  const source::Text empty(one.lesson, {});
  const std::string name = sheaf::shown_name(one.lesson);
  const bool named = one.made.refusal.starts_with(name + ": ");
  const source::Diagnostic why{source::Severity::error,
                               source::Code::file_unreadable,
                               {},
                               one.made.refusal.substr(named ? name.size() + 2 : 0),
                               {}};
  return {{"file", name}, {"diagnostics", ordered_json::array({entry(why, empty)})}};
}

}  // namespace

std::string json_report(const std::vector<Checked>& checked) {
  ordered_json files = ordered_json::array();
  for (const Checked& one : checked) {
    if (one.made.status == sheaf::Made::Status::unreadable && one.made.reports.empty())
      files.push_back(without_text(one));
    for (const sheaf::Report& report : one.made.reports) add_files(report, files);
  }
  const ordered_json document = {{"version", 1}, {"files", std::move(files)}};
  // A file name need not be UTF-8; the document is.
  return document.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace fretsheaf::command
