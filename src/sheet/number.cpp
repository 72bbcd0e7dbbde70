#include "sheet/number.h"

#include <array>
#include <charconv>
#include <string_view>

namespace fretsheaf::sheet {
namespace {

// The largest finite double has 309 digits before the point.
using Digits = std::array<char, 328>;

std::string_view write(Digits& digits, double value, int decimals) {
  const auto end =
      std::to_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed, decimals);
  std::string_view text(digits.data(), static_cast<std::size_t>(end.ptr - digits.data()));
  if (text.front() == '-' && text.find_first_not_of("-0.") == std::string_view::npos) text.remove_prefix(1);
  return text;
}

}  // namespace

void append_fixed(std::string& out, double value, int decimals) {
  Digits digits;
  out += write(digits, value, decimals);
}

void append_short(std::string& out, double value, int decimals) {
  Digits digits;
  std::string_view text = write(digits, value, decimals);
  if (text.find('.') != std::string_view::npos) {
    while (text.back() == '0') text.remove_suffix(1);
    if (text.back() == '.') text.remove_suffix(1);
  }
  out += text;
}

std::string fixed(double value, int decimals) {
  std::string out;
  append_fixed(out, value, decimals);
  return out;
}

std::string shortest(double value, int decimals) {
  std::string out;
  append_short(out, value, decimals);
  return out;
}

}  // namespace fretsheaf::sheet
