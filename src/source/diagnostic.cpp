#include "source/diagnostic.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace fretsheaf::source {
namespace {

auto order(const Diagnostic& d) {
  return std::tie(d.range.file, d.range.begin, d.severity, d.range.end, d.code, d.message, d.help);
}

// More than anybody reads. A file from a stranger may hold a million slips, and saying each would take its time.
constexpr std::size_t most = 10000;

void add(std::vector<Diagnostic>& list, Diagnostic one) {
  if (list.size() == most) {
    one.code = Code::out_of_range;
    one.message = "there is more wrong from here on; only so many findings are said";
    one.help = "mend those before it and try again";
  }
  if (list.size() <= most) list.push_back(std::move(one));
}

}  // namespace

void Diagnostics::error(Code code, Range range, std::string message, std::string help) {
  add(list_, {Severity::error, code, range, std::move(message), std::move(help)});
  ++errors_;
}

void Diagnostics::warning(Code code, Range range, std::string message, std::string help) {
  add(list_, {Severity::warning, code, range, std::move(message), std::move(help)});
}

std::vector<Diagnostic> Diagnostics::sorted() const {
  std::vector<Diagnostic> result = list_;
  std::sort(result.begin(), result.end(), [](const auto& a, const auto& b) { return order(a) < order(b); });
  const auto equal = [](const auto& a, const auto& b) { return order(a) == order(b); };
  result.erase(std::unique(result.begin(), result.end(), equal), result.end());
  return result;
}

}  // namespace fretsheaf::source
