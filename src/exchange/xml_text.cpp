#include "exchange/xml_text.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>

namespace fretsheaf::exchange {

namespace {

std::string trimmed(std::string_view all) {
  constexpr std::string_view blanks = " \t\r\n";
  const std::size_t begin = std::min(all.find_first_not_of(blanks), all.size());
  return std::string(all.substr(begin, all.find_last_not_of(blanks) + 1 - begin));
}

bool figures(std::string_view text, std::size_t most) {
  return !text.empty() && text.size() <= most && text.find_first_not_of("0123456789") == std::string_view::npos;
}

std::int64_t value_of(std::string_view text) {
  std::int64_t value = 0;
  for (const char c : text) value = value * 10 + (c - '0');
  return value;
}

}  // namespace

std::string text_of(const Xml& element) {
  return trimmed(element.text);
}

std::string text_of(const Xml& parent, const char* child) {
  const Xml* found = parent.child(child);
  return found == nullptr ? std::string() : text_of(*found);
}

std::string attribute(const Xml& element, const char* name) {
  const std::string* found = element.attribute(name);
  return found == nullptr ? std::string() : trimmed(*found);
}

bool has(const Xml& parent, const char* child) {
  return parent.child(child) != nullptr;
}

std::optional<int> whole(const std::string& text) {
  constexpr std::size_t most = 9;
  const bool negative = text.starts_with("-");
  const std::string_view digits = std::string_view(text).substr(negative || text.starts_with("+") ? 1 : 0);
  if (!figures(digits, most)) return std::nullopt;
  const auto value = static_cast<int>(value_of(digits));
  return negative ? -value : value;
}

std::optional<Rational> decimal(const std::string& text) {
  constexpr std::size_t most = 9;
  constexpr std::size_t most_decimals = 6;
  const bool negative = text.starts_with("-");
  std::string_view rest = std::string_view(text).substr(negative || text.starts_with("+") ? 1 : 0);
  const std::size_t point = std::min(rest.find('.'), rest.size());
  const std::string_view before = rest.substr(0, point);
  std::string_view after = rest.substr(std::min(point + 1, rest.size()));
  while (after.ends_with('0')) after.remove_suffix(1);
  if ((before.empty() && after.empty()) || (!before.empty() && !figures(before, most))) return std::nullopt;
  if (!after.empty() && !figures(after, most_decimals)) return std::nullopt;
  std::int64_t scale = 1;
  for (std::size_t i = 0; i < after.size(); ++i) scale *= 10;
  const Rational value = Rational(value_of(before)) + Rational(value_of(after), scale);
  return negative ? -value : value;
}

Rational simplest(Rational value) {
  for (int denominator = 1; denominator <= 64; ++denominator) {
    const Rational near((value * Rational(denominator) + Rational(1, 2)).floor(), denominator);
    const Rational off = near > value ? near - value : value - near;
    if (off < Rational(1, 500000)) return near;
  }
  return value;
}

}  // namespace fretsheaf::exchange
