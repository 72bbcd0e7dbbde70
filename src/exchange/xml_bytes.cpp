#include "exchange/xml_bytes.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "source/utf8.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

constexpr const char* save_as_utf8 = "save or export it as UTF-8";

// Units of two bytes, the high one first or last.
std::optional<std::string> from_utf16(std::string_view bytes, bool high_first) {
  std::string text;
  if (bytes.size() % 2 != 0) return std::nullopt;
  const auto unit = [&](std::size_t i) {
    const auto a = static_cast<unsigned char>(bytes[i]);
    const auto b = static_cast<unsigned char>(bytes[i + 1]);
    return static_cast<char32_t>(high_first ? a << 8 | b : b << 8 | a);
  };
  text.reserve(bytes.size());
  for (std::size_t i = 0; i < bytes.size(); i += 2) {
    char32_t own = unit(i);
    if (own >= 0xDC00 && own < 0xE000) return std::nullopt;
    if (own >= 0xD800 && own < 0xDC00) {
      if (i + 3 >= bytes.size()) return std::nullopt;
      const char32_t low = unit(i + 2);
      if (low < 0xDC00 || low >= 0xE000) return std::nullopt;
      own = 0x10000 + ((own - 0xD800) << 10) + (low - 0xDC00);
      i += 2;
    }
    source::append_utf8(text, own);
  }
  return text;
}

// What the declaration says of the encoding; empty where it says nothing.
std::string declared_encoding(std::string_view text) {
  if (!text.starts_with("<?xml")) return {};
  const std::string_view declaration = text.substr(0, std::min(text.find("?>"), std::size_t{200}));
  std::size_t at = declaration.find("encoding");
  if (at == std::string_view::npos) return {};
  at = declaration.find_first_of("\"'", at);
  if (at == std::string_view::npos) return {};
  const std::size_t end = declaration.find(declaration[at], at + 1);
  if (end == std::string_view::npos) return {};
  std::string name(declaration.substr(at + 1, end - at - 1));
  for (char& c : name) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return name;
}

XmlRefusal in_encoding(const std::string& name) {
  return {Code::file_encoding, 0, "this file is written in " + name + ", and only UTF-8 and UTF-16 are read",
          save_as_utf8};
}

}  // namespace

std::optional<XmlRefusal> as_utf8(std::string& bytes) {
  const bool high_first = bytes.starts_with("\xFE\xFF");
  const bool low_first = bytes.starts_with("\xFF\xFE");
  if (bytes.starts_with(std::string_view("\xFF\xFE\0\0", 4)) ||
      bytes.starts_with(std::string_view("\0\0\xFE\xFF", 4))) {
    return in_encoding("UTF-32");
  }
  if (high_first || low_first) {
    auto text = from_utf16(std::string_view(bytes).substr(2), high_first);
    if (!text) return XmlRefusal{Code::file_encoding, 0, "this file begins as UTF-16, and is not", save_as_utf8};
    bytes = std::move(*text);
    return std::nullopt;
  }
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.erase(0, 3);
  if (bytes.starts_with(std::string_view("<\0", 2)) || bytes.starts_with(std::string_view("\0<", 2))) {
    return in_encoding("UTF-16 without a byte-order mark");
  }
  const std::string name = declared_encoding(bytes);
  if (!name.empty() && name != "UTF-8" && name != "UTF8" && name != "US-ASCII" && name != "ASCII") {
    return in_encoding(name);
  }
  if (source::first_invalid_utf8(bytes)) {
    return XmlRefusal{Code::file_encoding, 0, "this file is not sound UTF-8", save_as_utf8};
  }
  if (bytes.find('\0') != std::string::npos) {
    return XmlRefusal{Code::nul_character, 0, "this file holds a NUL character", "export the score anew"};
  }
  return std::nullopt;
}

namespace {

class Lookout {
 public:
  explicit Lookout(std::string_view bytes) : bytes_(bytes) {}

  std::optional<XmlRefusal> run() {
    while (!refusal_) {
      at_ = bytes_.find('<', at_);
      if (at_ == std::string_view::npos) return std::nullopt;
      step();
    }
    return refusal_;
  }

 private:
  // Elements of scores lie a dozen deep.
  static constexpr int deepest = 64;
  // What parsing takes of memory a piece, in bytes, and what it may take together.
  static constexpr std::size_t piece = 120;
  static constexpr std::size_t most = std::size_t{110} * 1024 * 1024;

  void step() {
    const std::string_view rest = bytes_.substr(at_);
    if (rest.starts_with("<!--")) return skip("-->");
    if (rest.starts_with("<![CDATA[")) return skip("]]>");
    if (rest.starts_with("<?")) return skip("?>");
    if (rest.starts_with("<!")) return declaration(rest);
    if (rest.starts_with("</")) {
      depth_ = std::max(depth_ - 1, 0);
      ++at_;
      return;
    }
    element(rest);
  }

  void skip(std::string_view end) {
    const std::size_t found = bytes_.find(end, at_);
    at_ = found == std::string_view::npos ? bytes_.size() : found + end.size();
    count(1);
  }

  // A document type may name an outside one, which is not looked for; declarations of its own stand in brackets.
  void declaration(std::string_view rest) {
    const std::size_t end = std::min(rest.find('>'), rest.size());
    if (rest.substr(0, end).find('[') != std::string_view::npos || rest.starts_with("<!ENTITY")) {
      return refuse(Code::adopt_entities, "this document declares entities of its own",
                    "no program needs them for a score: export it anew");
    }
    at_ += end;
  }

  void element(std::string_view rest) {
    std::size_t end = 1;
    std::size_t values = 0;
    for (char quote = 0; end < rest.size() && (quote != 0 || rest[end] != '>'); ++end) {
      const char c = rest[end];
      if (quote == 0 && (c == '"' || c == '\'')) {
        quote = c;
        ++values;
      } else if (c == quote) {
        quote = 0;
      }
    }
    const bool closed = end > 0 && end < rest.size() && rest[end - 1] == '/';
    // The element, the text before it, its attributes.
    count(2 + values);
    if (!closed && ++depth_ > deepest) {
      return refuse(Code::nested_too_deeply, "elements stand more than 64 deep here", "this is no score");
    }
    at_ += end;
  }

  void count(std::size_t pieces) {
    memory_ += pieces * piece;
    if (memory_ > most && !refusal_) {
      refuse(Code::adopt_too_much, "this document has more elements than a lesson's score can have",
             "take it in parts");
    }
  }

  void refuse(Code code, std::string what, std::string help) {
    refusal_ = XmlRefusal{code, at_, std::move(what), std::move(help)};
  }

  std::string_view bytes_;
  std::size_t at_ = 0;
  int depth_ = 0;
  std::size_t memory_ = 0;
  std::optional<XmlRefusal> refusal_;
};

}  // namespace

std::optional<XmlRefusal> look_over(std::string_view bytes) {
  return Lookout(bytes).run();
}

}  // namespace fretsheaf::exchange
