#include "source/utf8.h"

namespace fretsheaf::source {
namespace {

struct Lead {
  std::size_t length;
  char32_t bits;
  char32_t least;  // the smallest code point that needs this length
};

std::optional<Lead> lead(unsigned char byte) {
  if (byte < 0x80) return Lead{1, byte, 0};
  if ((byte & 0xE0) == 0xC0) return Lead{2, byte & 0x1FU, 0x80};
  if ((byte & 0xF0) == 0xE0) return Lead{3, byte & 0x0FU, 0x800};
  if ((byte & 0xF8) == 0xF0) return Lead{4, byte & 0x07U, 0x10000};
  return std::nullopt;
}

bool is_scalar(char32_t code_point) {
  return code_point <= 0x10FFFF && (code_point < 0xD800 || code_point > 0xDFFF);
}

}  // namespace

CodePoint decode_utf8(std::string_view bytes) {
  const auto first = lead(static_cast<unsigned char>(bytes.front()));
  if (!first || first->length > bytes.size()) return {};
  char32_t code_point = first->bits;
  for (std::size_t i = 1; i < first->length; ++i) {
    const auto byte = static_cast<unsigned char>(bytes[i]);
    if ((byte & 0xC0) != 0x80) return {};
    code_point = (code_point << 6) | (byte & 0x3FU);
  }
  if (code_point < first->least || !is_scalar(code_point)) return {};
  return {code_point, first->length, true};
}

std::optional<std::size_t> first_invalid_utf8(std::string_view bytes) {
  std::size_t offset = 0;
  while (offset < bytes.size()) {
    if (static_cast<unsigned char>(bytes[offset]) < 0x80) {
      ++offset;
      continue;
    }
    const auto next = decode_utf8(bytes.substr(offset));
    if (!next.valid) return offset;
    offset += next.length;
  }
  return std::nullopt;
}

void append_utf8(std::string& out, char32_t code_point) {
  if (!is_scalar(code_point)) code_point = U'\uFFFD';
  const auto tail = [&](int shift) { out += static_cast<char>(0x80 | ((code_point >> shift) & 0x3F)); };
  if (code_point < 0x80) {
    out += static_cast<char>(code_point);
  } else if (code_point < 0x800) {
    out += static_cast<char>(0xC0 | (code_point >> 6));
    tail(0);
  } else if (code_point < 0x10000) {
    out += static_cast<char>(0xE0 | (code_point >> 12));
    tail(6);
    tail(0);
  } else {
    out += static_cast<char>(0xF0 | (code_point >> 18));
    tail(12);
    tail(6);
    tail(0);
  }
}

std::u32string from_utf8(std::string_view bytes) {
  std::u32string text;
  while (!bytes.empty()) {
    const CodePoint next = decode_utf8(bytes);
    text += next.code_point;
    bytes.remove_prefix(next.length);
  }
  return text;
}

std::string to_utf8(std::u32string_view text) {
  std::string bytes;
  for (const char32_t code_point : text) append_utf8(bytes, code_point);
  return bytes;
}

std::size_t count_code_points(std::string_view bytes) {
  std::size_t count = 0;
  for (; !bytes.empty(); ++count) bytes.remove_prefix(decode_utf8(bytes).length);
  return count;
}

bool is_control(char32_t c) {
  return (c < 0x20 && c != U'\t') || (c >= 0x7F && c < 0xA0);
}

std::string printable(std::string_view line) {
  std::string shown;
  while (!line.empty()) {
    const CodePoint next = decode_utf8(line);
    if (is_control(next.code_point)) {
      append_utf8(shown, U'\uFFFD');
    } else {
      shown += line.substr(0, next.length);  // a byte of another encoding stays as it is
    }
    line.remove_prefix(next.length);
  }
  return shown;
}

}  // namespace fretsheaf::source
