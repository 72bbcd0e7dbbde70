#include "score/metric_tree.h"

#include <cstdint>
#include <utility>

namespace fretsheaf::score {
namespace {

using Spans = std::vector<MetricSpan>;

MetricSpan joined(std::span<const MetricSpan> parts) {
  return {parts.front().begin, parts.back().end() - parts.front().begin, false, {parts.begin(), parts.end()}};
}

bool alike(std::span<const MetricSpan> spans) {
  for (const MetricSpan& span : spans) {
    if (span.length != spans.front().length) return false;
  }
  return true;
}

// How many of so many equal spans make the next larger one; 0 where nothing is between them and the whole.
std::size_t next_group(std::size_t count) {
  if (count <= 3) return 0;
  if (count % 2 == 0 && count != 6) return 2;
  return count % 3 == 0 ? 3 : 0;
}

MetricSpan grouped(Spans spans) {
  if (spans.size() == 1) return spans.front();
  const std::size_t size = alike(spans) ? next_group(spans.size()) : 0;
  if (size == 0) return joined(spans);
  Spans larger;
  for (std::size_t i = 0; i < spans.size(); i += size) larger.push_back(joined(std::span(spans).subspan(i, size)));
  return grouped(std::move(larger));
}

}  // namespace

MetricSpan metric_tree(const theory::Meter& meter) {
  const std::vector<Rational> starts = meter.beats();
  Spans groups;
  std::size_t beat = 0;
  Rational group_end;
  for (const int counts : meter.groups) {
    group_end += meter.count() * Rational(counts);
    Spans beats;
    for (; beat < starts.size() && starts[beat] < group_end; ++beat) {
      const Rational end = beat + 1 < starts.size() ? starts[beat + 1] : meter.bar();
      beats.push_back({starts[beat], end - starts[beat], true, {}});
    }
    groups.push_back(grouped(std::move(beats)));
  }
  return groups.size() == 1 ? groups.front() : joined(groups);
}

std::span<const MetricSpan> parts_of(const MetricSpan& span, std::vector<MetricSpan>& storage) {
  if (!span.parts.empty()) return span.parts;
  const std::int64_t counts = span.length.numerator() == 1 ? 2 : span.length.numerator();
  const Rational length = span.length / Rational(counts);
  storage.clear();
  for (std::int64_t i = 0; i < counts; ++i) storage.push_back({span.begin + length * Rational(i), length, true, {}});
  return storage;
}

std::vector<MetricSpan> beats_of(const MetricSpan& bar) {
  if (bar.within_beat) return {bar};
  Spans beats;
  for (const MetricSpan& part : bar.parts) {
    for (MetricSpan& beat : beats_of(part)) beats.push_back(std::move(beat));
  }
  return beats;
}

}  // namespace fretsheaf::score
