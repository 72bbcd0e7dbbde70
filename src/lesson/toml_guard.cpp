#include "lesson/toml_guard.h"

#include <optional>
#include <string>

#include "lesson/limits.h"
#include "lesson/toml_syntax.h"
#include "lesson/toml_tree.h"
#include "source/toml_guard.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

source::Range one_byte(std::size_t at, source::FileId file) {
  return {static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + 1), file};
}

std::string mebibytes(std::size_t bytes) {
  constexpr std::size_t mebi = std::size_t{1024} * 1024;
  return std::to_string(bytes / mebi) + " MiB";
}

void report_encoding(const std::string& bytes, std::size_t at, source::FileId file, source::Diagnostics& diagnostics) {
  const bool utf16 = bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF");
  diagnostics.error(Code::file_encoding, one_byte(at, file),
                    utf16 ? "this file is UTF-16, not UTF-8" : "from here on this file is not UTF-8",
                    "save it again with the encoding UTF-8");
}

}  // namespace

bool guard_toml(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics) {
  const auto stop = source::unsafe_toml(text.bytes(), limits::nesting);
  if (!stop) return true;
  if (stop->too_deep) {
    diagnostics.error(Code::nested_too_deeply, one_byte(stop->at, file),
                      "this is nested more than " + std::to_string(limits::nesting) + " deep",
                      "write it as the description of lesson files has it");
  } else {
    explain_syntax(text, file, stop->at, diagnostics);
  }
  return false;
}

SoundBytes check_bytes(std::string bytes, std::size_t limit, source::FileId file) {
  SoundBytes result;
  if (bytes.size() > limit) {
    result.diagnostics.error(Code::file_too_large, {0, 0, file},
                             "this file is larger than " + mebibytes(limit) + ", the most that is read",
                             "split it into several");
    return result;
  }
  if (const auto at = source::first_invalid_utf8(bytes)) {
    report_encoding(bytes, *at, file, result.diagnostics);
    for (std::size_t i = *at; i < bytes.size(); ++i) {
      if (static_cast<unsigned char>(bytes[i]) >= 0x80) bytes[i] = '?';
    }
  } else if (const auto nul = bytes.find('\0'); nul != std::string::npos) {
    result.diagnostics.error(Code::nul_character, one_byte(nul, file), "this file holds a NUL character",
                             "it is not a text file, or was damaged: take the character out");
  }
  result.shown = std::move(bytes);
  return result;
}

}  // namespace fretsheaf::lesson
