#include "template/check.h"

#include <charconv>
#include <cmath>
#include <cstdint>
#include <string>

#include "source/kebab_name.h"

namespace fretsheaf::templates {
namespace {

using source::Code;
using source::KebabName;
using source::Range;

#define FRETSHEAF_MEASURE(group, name, ...) constexpr KebabName kebab_measure_##name{#name};
#include "template/measures.def"
#undef FRETSHEAF_MEASURE
#define FRETSHEAF_ROLE(name, ...) constexpr KebabName kebab_role_##name{#name};
#include "template/roles.def"
#undef FRETSHEAF_ROLE

// A range that was written, of two; the first where both were.
Range either(Range a, Range b) {
  return a.end > a.begin ? a : b;
}

Range place_of(double Measures::*value, const Places& places) {
  for (std::size_t i = 0; i < measure_count; ++i) {
    if (measure_entries()[i].value == value) return places.measures[i];
  }
  return {};
}

std::string_view key_of(double Measures::*value) {
  for (const MeasureEntry& entry : measure_entries()) {
    if (entry.value == value) return entry.key;
  }
  return {};
}

// least <= natural <= most, by name.
void check_order(const Template& look, const Places& places, double Measures::*smaller, double Measures::*larger,
                 source::Diagnostics& diagnostics) {
  if (look.measures.*smaller <= look.measures.*larger) return;
  const std::string low = plain_number(look.measures.*smaller);
  const std::string high = plain_number(look.measures.*larger);
  diagnostics.error(Code::template_gap_order, either(place_of(smaller, places), place_of(larger, places)),
                    "'" + std::string(key_of(smaller)) + "' (" + low + ") is larger than '" +
                        std::string(key_of(larger)) + "' (" + high + ")",
                    "write values that rise from the least over the natural to the most");
}

void check_sizes(const Template& look, const Places& places, source::Diagnostics& diagnostics) {
  for (std::size_t role = 0; role < role_count; ++role) {
    if (role == static_cast<std::size_t>(Role::music)) continue;  // follows the staff space
    const double size = look.type[role].size;
    if (size >= look.least_type) continue;
    diagnostics.error(Code::template_type_small, either(places.sizes[role], places.least_type),
                      "'" + std::string(role_keys()[role]) + "' is set in " + plain_number(size) +
                          " pt, under the template's least type of " + plain_number(look.least_type) + " pt",
                      "make it larger, or lower 'least-type'");
  }
}

}  // namespace

const std::array<MeasureEntry, measure_count>& measure_entries() {
  static constexpr std::array<MeasureEntry, measure_count> entries = {{
#define FRETSHEAF_MEASURE(group, name, value, least, most) \
  {#group, kebab_measure_##name.view(), &Measures::name, least, most},
#include "template/measures.def"
#undef FRETSHEAF_MEASURE
  }};
  return entries;
}

const std::array<std::string_view, role_count>& role_keys() {
  static constexpr std::array<std::string_view, role_count> keys = {
#define FRETSHEAF_ROLE(name, ...) kebab_role_##name.view(),
#include "template/roles.def"
#undef FRETSHEAF_ROLE
  };
  return keys;
}

double contrast_with_white(Rgb color) {
  const auto linear = [](std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  const double luminance = 0.2126 * linear(color.red) + 0.7152 * linear(color.green) + 0.0722 * linear(color.blue);
  return 1.05 / (luminance + 0.05);
}

std::optional<Rgb> parse_color(std::string_view text) {
  if (text.size() != 7 || text[0] != '#') return std::nullopt;
  std::uint32_t value = 0;
  const auto [end, error] = std::from_chars(text.data() + 1, text.data() + text.size(), value, 16);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return Rgb{static_cast<std::uint8_t>(value >> 16U), static_cast<std::uint8_t>(value >> 8U & 0xFFU),
             static_cast<std::uint8_t>(value & 0xFFU)};
}

std::string plain_number(double value) {
  char buffer[64];
  const auto [end, error] =
      std::to_chars(buffer, buffer + sizeof buffer, std::round(value * 1000) / 1000, std::chars_format::fixed);
  return error == std::errc() ? std::string(buffer, end) : std::string();
}

void check_template(const Template& look, const Places& places, source::Diagnostics& diagnostics) {
  check_sizes(look, places, diagnostics);
  check_order(look, places, &Measures::block_gap_least, &Measures::block_gap, diagnostics);
  check_order(look, places, &Measures::block_gap, &Measures::block_gap_most, diagnostics);
  check_order(look, places, &Measures::line_gap_least, &Measures::line_gap, diagnostics);
  check_order(look, places, &Measures::line_gap, &Measures::line_gap_most, diagnostics);
  if (contrast_with_white(look.accent) < 4.5) {
    diagnostics.error(Code::template_accent_pale, places.accent,
                      "this accent is too pale for text on white paper: its contrast is under 4.5 to 1",
                      "choose a darker colour, such as \"#095461\"");
  }
}

}  // namespace fretsheaf::templates
