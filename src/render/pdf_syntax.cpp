#include "render/pdf_syntax.h"

#include <algorithm>
#include <cstdint>

#include "sheet/number.h"

namespace fretsheaf::render {
namespace {

constexpr std::string_view hex = "0123456789ABCDEF";

void append_unit(std::string& out, std::uint32_t unit) {
  for (const unsigned shift : {12U, 8U, 4U, 0U}) out += hex[unit >> shift & 15U];
}

void append_utf16(std::string& out, std::uint32_t code_point) {
  if (code_point < 0x10000) return append_unit(out, code_point);
  append_unit(out, 0xD800 + ((code_point - 0x10000) >> 10));
  append_unit(out, 0xDC00 + ((code_point - 0x10000) & 0x3FF));
}

std::uint32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const std::uint32_t first = byte(at);
  const std::size_t more = first < 0x80 ? 0 : first < 0xE0 ? 1 : first < 0xF0 ? 2 : 3;
  std::uint32_t code_point = more == 0 ? first : first & (0x3FU >> more);
  for (std::size_t i = 1; i <= more; ++i) code_point = code_point << 6 | (byte(at + i) & 0x3FU);
  at += 1 + more;
  return code_point;
}

}  // namespace

std::string pdf_reference(int object) {
  return std::to_string(object) + " 0 R";
}

std::string pdf_number(double points) {
  return sheet::fixed(points, 2);
}

std::string pdf_ascii(std::string_view text) {
  std::string out = "(";
  for (const char c : text) {
    if (c == '(' || c == ')' || c == '\\') out += '\\';
    out += c;
  }
  return out += ')';
}

std::string pdf_text(std::string_view text) {
  const auto is_plain = [](char c) { return c >= ' ' && c <= '~'; };
  if (std::ranges::all_of(text, is_plain)) return pdf_ascii(text);
  std::string out = "<FEFF";
  for (std::size_t at = 0; at < text.size();) append_utf16(out, next_code_point(text, at));
  return out += '>';
}

}  // namespace fretsheaf::render
