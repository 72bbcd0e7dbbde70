#include "render/cairo_pdf.h"

// Compiled in: one library less to load.
#define XXH_INLINE_ALL
#include <xxhash.h>
#include <zlib.h>

#include <algorithm>
#include <charconv>
#include <utility>

#include "render/pdf_syntax.h"

namespace fretsheaf::render {
namespace {

// Half the time of the usual level, and a fiftieth more of a handout's bytes at the most.
constexpr int packing_level = 3;
constexpr std::string_view end_of_object = "endobj\n";

std::optional<int> number_at(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  int number = 0;
  if (at >= text.size() || std::from_chars(text.data() + at, text.data() + text.size(), number).ec != std::errc()) {
    return std::nullopt;
  }
  return number;
}

// Where the line of a dictionary's own key begins: three blanks in, or just after "<<".
std::size_t line_of(std::string_view body, std::string_view key) {
  for (const std::string_view before : {"\n   ", "<< "}) {
    for (std::size_t at = 0; (at = body.find(std::string(before) + std::string(key), at)) != std::string_view::npos;
         ++at) {
      const std::size_t end = at + before.size() + key.size();
      if (end < body.size() && (body[end] == ' ' || body[end] == '\n')) return at + before.size();
    }
  }
  return std::string_view::npos;
}

// The number after a word near the end of the file.
std::optional<int> trailing(std::string_view bytes, std::string_view word) {
  const std::size_t at = bytes.rfind(word);
  return at == std::string_view::npos ? std::nullopt
                                      : number_at(bytes, at + word.size() + (word == "startxref" ? 1 : 0));
}

std::string hex_of(XXH128_hash_t hash) {
  XXH128_canonical_t canonical;
  XXH128_canonicalFromHash(&canonical, hash);
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out;
  for (const unsigned char byte : canonical.digest) (out += digits[byte >> 4]) += digits[byte & 15];
  return out;
}

// An entry of the table: twenty bytes.
std::string entry(std::size_t place) {
  const std::string digits = std::to_string(place);
  return std::string(10 - std::min<std::size_t>(10, digits.size()), '0') + digits + " 00000 n \n";
}

}  // namespace

std::optional<CairoPdf> CairoPdf::read(std::string_view bytes) {
  CairoPdf pdf;
  if (!pdf.read_table(bytes) || !pdf.read_objects(bytes) || !pdf.read_pages()) return std::nullopt;
  return pdf;
}

bool CairoPdf::read_table(std::string_view bytes) {
  const std::optional<int> table = trailing(bytes, "startxref");
  const std::optional<int> size = trailing(bytes, "/Size");
  const std::optional<int> root = trailing(bytes, "/Root");
  const std::optional<int> info = trailing(bytes, "/Info");
  if (!table || !size || !root || !info || *table < 0 || *size < 1) return false;
  table_ = static_cast<std::size_t>(*table);
  const std::string head = "xref\n0 " + std::to_string(*size) + "\n";
  if (table_ > bytes.size() || !bytes.substr(table_).starts_with(head)) return false;
  constexpr std::size_t line = 20;
  const auto count = static_cast<std::size_t>(*size);
  if ((bytes.size() - table_ - head.size()) / line < count) return false;
  for (std::size_t i = 0; i < count; ++i) {
    const std::string_view written = bytes.substr(table_ + head.size() + i * line, line);
    std::size_t place = 0;
    std::from_chars(written.data(), written.data() + 10, place);
    places_.push_back(written[17] == 'n' ? place : 0);
  }
  catalog_ = *root;
  info_ = *info;
  return catalog_ > 0 && catalog_ < *size && info_ > 0 && info_ < *size;
}

// Each object ends where the next begins.
bool CairoPdf::read_objects(std::string_view bytes) {
  std::vector<std::size_t> ends = places_;
  ends.push_back(table_);
  std::ranges::sort(ends);
  bodies_.resize(places_.size());
  for (std::size_t i = 1; i < places_.size(); ++i) {
    if (places_[i] == 0) continue;
    const std::string head = std::to_string(i) + " 0 obj\n";
    const std::size_t end = *std::ranges::upper_bound(ends, places_[i]);
    if (end > bytes.size()) return false;
    const std::string_view object = bytes.substr(places_[i], end - places_[i]);
    const std::size_t last = object.rfind(end_of_object);
    if (!object.starts_with(head) || last == std::string_view::npos) return false;
    bodies_[i] = object.substr(head.size(), last - head.size());
  }
  return true;
}

bool CairoPdf::read_pages() {
  const std::optional<int> tree = number_of(catalog_, "/Pages");
  if (!tree || *tree <= 0 || *tree >= objects()) return false;
  const std::string_view kids = body(*tree);
  std::size_t at = kids.find("/Kids [");
  if (at == std::string_view::npos) return false;
  at += 7;
  while (const std::optional<int> page = number_at(kids, at)) {
    if (*page <= 0 || *page >= objects()) return false;
    pages_.push_back(*page);
    at = kids.find('R', at) + 1;
  }
  return true;
}

int CairoPdf::add(std::string body) {
  int number = objects();
  if (free_.empty()) {
    bodies_.emplace_back();
  } else {
    number = free_.back();
    free_.pop_back();
  }
  set(number, std::move(body));
  return number;
}

void CairoPdf::drop(int object) {
  bodies_[static_cast<std::size_t>(object)].clear();
  free_.push_back(object);
}

void CairoPdf::set_key(int object, std::string_view key, const std::string& value) {
  std::string& body = bodies_[static_cast<std::size_t>(object)];
  const std::size_t known = line_of(body, key);
  if (known != std::string::npos) {
    const std::size_t from = known + key.size();
    body.replace(from, body.find('\n', from) - from, " " + value);
    return;
  }
  body.insert(body.rfind(">>"), "   " + std::string(key) + " " + value + "\n");
}

std::optional<int> CairoPdf::number_of(int object, std::string_view key) const {
  const std::string& text = body(object);
  const std::size_t at = line_of(text, key);
  return at == std::string::npos ? std::nullopt : number_at(text, at + key.size());
}

std::optional<std::string> CairoPdf::unpacked(int stream) const {
  const std::string& text = body(stream);
  const std::optional<int> length_object = number_of(stream, "/Length");
  constexpr std::string_view begin_of_stream = "\nstream\n";
  const std::size_t begin = text.find(begin_of_stream);
  if (!length_object || *length_object >= objects() || begin == std::string::npos) return std::nullopt;
  const std::optional<int> length = number_at(body(*length_object), 0);
  const std::size_t from = begin + begin_of_stream.size();
  if (!length || *length < 0 || from + static_cast<std::size_t>(*length) > text.size()) return std::nullopt;
  z_stream zip{};
  if (inflateInit(&zip) != Z_OK) return std::nullopt;
  zip.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data() + from));
  zip.avail_in = static_cast<uInt>(*length);
  std::string out;
  int state = Z_OK;
  while (state == Z_OK) {
    const std::size_t done = out.size();
    out.resize(done + std::max<std::size_t>(done, 65536));
    zip.next_out = reinterpret_cast<Bytef*>(out.data() + done);
    zip.avail_out = static_cast<uInt>(out.size() - done);
    state = inflate(&zip, Z_NO_FLUSH);
    out.resize(out.size() - zip.avail_out);
  }
  inflateEnd(&zip);
  return state == Z_STREAM_END ? std::optional(std::move(out)) : std::nullopt;
}

void CairoPdf::pack(int stream, const std::string& bytes) {
  std::string packed(compressBound(static_cast<uLong>(bytes.size())), '\0');
  auto size = static_cast<uLongf>(packed.size());
  compress2(reinterpret_cast<Bytef*>(packed.data()), &size, reinterpret_cast<const Bytef*>(bytes.data()),
            static_cast<uLong>(bytes.size()), packing_level);
  packed.resize(size);
  set(stream,
      "<< /Length " + std::to_string(size) + "\n   /Filter /FlateDecode\n>>\nstream\n" + packed + "\nendstream\n");
}

std::string CairoPdf::written() const {
  std::string out = "%PDF-1.7\n%\xB5\xED\xAE\xFB\n";
  std::string table = "xref\n0 " + std::to_string(objects()) + "\n0000000000 65535 f \n";
  for (int i = 1; i < objects(); ++i) {
    if (body(i).empty()) {
      table += "0000000000 65535 f \n";
      continue;
    }
    table += entry(out.size());
    ((out += std::to_string(i)) += " 0 obj\n") += body(i);
    out += end_of_object;
  }
  const std::string id = "<" + hex_of(XXH3_128bits(out.data(), out.size())) + ">";
  const std::size_t place = out.size();
  out += table;
  out += "trailer\n<< /Size " + std::to_string(objects()) + "\n   /Root " + pdf_reference(catalog_) + "\n   /Info " +
         pdf_reference(info_) + "\n   /ID [" + id + id + "]\n>>\nstartxref\n" + std::to_string(place) + "\n%%EOF\n";
  return out;
}

}  // namespace fretsheaf::render
