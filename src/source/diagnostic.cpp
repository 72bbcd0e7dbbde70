#include "source/diagnostic.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace fretsheaf::source {
namespace {

auto order(const Diagnostic& d) {
  return std::tie(d.range.file, d.range.begin, d.severity, d.range.end, d.code, d.message, d.help);
}

}  // namespace

void Diagnostics::error(Code code, Range range, std::string message, std::string help) {
  list_.push_back({Severity::error, code, range, std::move(message), std::move(help)});
  ++errors_;
}

void Diagnostics::warning(Code code, Range range, std::string message, std::string help) {
  list_.push_back({Severity::warning, code, range, std::move(message), std::move(help)});
}

std::vector<Diagnostic> Diagnostics::sorted() const {
  std::vector<Diagnostic> result = list_;
  std::sort(result.begin(), result.end(), [](const auto& a, const auto& b) { return order(a) < order(b); });
  const auto equal = [](const auto& a, const auto& b) { return order(a) == order(b); };
  result.erase(std::unique(result.begin(), result.end(), equal), result.end());
  return result;
}

}  // namespace fretsheaf::source
