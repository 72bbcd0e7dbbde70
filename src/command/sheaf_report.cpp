#include "command/sheaf_report.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <tuple>

#include "sheet/number.h"

namespace fretsheaf::command {

namespace {

using nlohmann::ordered_json;

ordered_json place(const source::Position& at) {
  return {{"line", at.line}, {"column", at.column}, {"utf16", at.utf16}};
}

ordered_json entry(const sheaf::Finding& finding) {
  return {{"file", finding.file}, {"severity", finding.is_error ? "error" : "warning"},
          {"code", finding.code}, {"message", finding.message},
          {"help", finding.help}, {"range", {{"start", place(finding.begin)}, {"end", place(finding.end)}}}};
}

template <typename T>
std::vector<T> sorted(std::vector<T> list) {
  std::sort(list.begin(), list.end());
  return list;
}

}  // namespace

std::string sheaf_report(const sheaf::Tally& tally, double seconds) {
  std::string text;
  for (const std::string& file : tally.gone) text += file + ": its lesson, key or format is gone; --prune removes it\n";
  for (const std::string& file : tally.pruned) text += file + ": removed\n";
  for (const std::string& file : tally.altered) text += file + ": was changed since it was made, and is kept\n";
  if (tally.stopped) text += "stopped; what is done is kept, and the next run goes on from there\n";
  const std::string time = seconds < 60 ? sheet::fixed(seconds, 1) + " s" : in_words(seconds);
  return text + "made " + std::to_string(tally.made) + ", up to date " + std::to_string(tally.current) + ", failed " +
         std::to_string(tally.failed) + ", in " + time + "\n";
}

std::string sheaf_document(const sheaf::Tally& tally, const std::vector<sheaf::Finding>& findings, double seconds) {
  std::vector<sheaf::Finding> ordered = findings;
  std::stable_sort(ordered.begin(), ordered.end(), [](const sheaf::Finding& a, const sheaf::Finding& b) {
    return std::tie(a.file, a.begin.line, a.begin.column) < std::tie(b.file, b.begin.line, b.begin.column);
  });
  ordered_json found = ordered_json::array();
  for (const sheaf::Finding& finding : ordered) found.push_back(entry(finding));
  const ordered_json document = {{"version", 1},
                                 {"made", tally.made},
                                 {"up-to-date", tally.current},
                                 {"failed", tally.failed},
                                 {"seconds", seconds},
                                 {"stopped", tally.stopped},
                                 {"files", sorted(tally.made_files)},
                                 {"gone", tally.gone},
                                 {"removed", tally.pruned},
                                 {"kept", tally.altered},
                                 {"findings", std::move(found)}};
  // A file name need not be UTF-8; the document is.
  return document.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace fretsheaf::command
