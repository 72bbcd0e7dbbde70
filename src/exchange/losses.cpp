#include "exchange/losses.h"

#include <algorithm>
#include <utility>

namespace fretsheaf::exchange {

void Losses::error(source::Code code, const platform::XmlElement* at, int measure, const std::string& what,
                   std::string help) {
  diagnostics_.error(code, range_of(at), phrase({measure}) + ": " + what, std::move(help));
}

void Losses::error(source::Code code, const platform::XmlElement* at, std::string what, std::string help) {
  diagnostics_.error(code, range_of(at), std::move(what), std::move(help));
}

void Losses::lose(source::Code code, const platform::XmlElement* at, int measure, const std::string& what,
                  const std::string& help) {
  const auto [same, is_new] = gathered_.try_emplace({code, what, help}, losses_.size());
  if (is_new) {
    losses_.push_back({code, range_of(at), what, help, {measure}});
  } else if (std::vector<int>& measures = losses_[same->second].measures; measures.back() != measure) {
    measures.push_back(measure);
  }
}

void Losses::lose(source::Code code, const platform::XmlElement* at, const std::string& what, const std::string& help) {
  losses_.push_back({code, range_of(at), what, help, {}});
}

void Losses::tell() {
  for (Loss& loss : losses_) {
    std::sort(loss.measures.begin(), loss.measures.end());
    loss.measures.erase(std::unique(loss.measures.begin(), loss.measures.end()), loss.measures.end());
    const std::string where = loss.measures.empty() ? "" : phrase(loss.measures) + ": ";
    diagnostics_.warning(loss.code, loss.range, where + loss.what, loss.help);
  }
  losses_.clear();
  gathered_.clear();
}

const Losses::LineTags& Losses::tags_of(int line) {
  if (tags_.line == line) return tags_;
  tags_ = {line, {}};
  const std::string_view words = text_.line(line);
  for (std::size_t at = words.find('<'); at != std::string_view::npos; at = words.find('<', at + 1)) {
    const std::size_t end = std::min(words.find_first_of(" \t\r/>", at + 1), words.size());
    tags_.columns.try_emplace(words.substr(at + 1, end - at - 1), at);
  }
  return tags_;
}

// The element's tag, or the file's start.
source::Range Losses::range_of(const platform::XmlElement* element) {
  if (element == nullptr) return {};
  const int line = std::clamp(element->line, 1, text_.line_count());
  const std::string_view words = text_.line(line);
  const std::size_t begin = text_.offset(line, 1);
  // Where a line holds several, the first of that name.
  const std::string_view name = element->name;
  const LineTags& tags = tags_of(line);
  const auto found = tags.columns.find(name);
  const std::size_t column =
      found != tags.columns.end() ? found->second : std::min(words.find_first_not_of(" \t"), words.size());
  const std::size_t length = std::min(1 + name.size(), words.size() - column);
  return {static_cast<std::uint32_t>(begin + column), static_cast<std::uint32_t>(begin + column + length), 0};
}

// "measure 3", "measures 3 and 5 to 7": what follows on is drawn together.
std::string Losses::phrase(const std::vector<int>& measures) const {
  std::vector<std::string> parts;
  for (std::size_t first = 0; first < measures.size();) {
    std::size_t last = first;
    while (last + 1 < measures.size() && measures[last + 1] == measures[last] + 1) ++last;
    const auto label = [&](std::size_t i) { return measures_[static_cast<std::size_t>(measures[i])]; };
    if (last > first + 1) {
      parts.push_back(label(first) + " to " + label(last));
    } else {
      for (std::size_t i = first; i <= last; ++i) parts.push_back(label(i));
    }
    first = last + 1;
  }
  std::string text = measures.size() > 1 ? "measures " : "measure ";
  for (std::size_t i = 0; i < parts.size(); ++i) {
    text += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
  }
  return text;
}

}  // namespace fretsheaf::exchange
