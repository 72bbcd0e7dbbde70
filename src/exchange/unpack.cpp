#include <algorithm>
#include <memory>
#include <optional>
#include <string_view>

#include "exchange/container.h"
#include "exchange/xml_bytes.h"
#include "exchange/zip_library.h"
#include "platform/xml_document.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

constexpr const char* names_no_score = "`META-INF/container.xml` in this archive names no score";
constexpr const char* export_anew = "export the score anew from the program that made it";

Unpackable broken(std::string what) {
  return {Code::adopt_container, std::move(what), export_anew};
}

std::variant<std::string, Unpackable> entry(const ZipLibrary& zip, zip_t* archive, const std::string& name,
                                            std::size_t limit) {
  const std::unique_ptr<zip_file_t, decltype(zip.fclose)> file(zip.fopen(archive, name.c_str(), 0), zip.fclose);
  if (file == nullptr) return broken("this archive has no readable `" + name + "`");
  std::string bytes;
  constexpr std::size_t stretch = std::size_t{64} * 1024;
  while (true) {
    const std::size_t had = bytes.size();
    bytes.resize(had + stretch);
    const zip_int64_t read = zip.fread(file.get(), bytes.data() + had, stretch);
    if (read < 0) return broken("`" + name + "` in this archive is damaged");
    bytes.resize(had + static_cast<std::size_t>(read));
    if (read == 0) return bytes;
    if (bytes.size() > limit) {
      return Unpackable{Code::file_too_large, "`" + name + "` in this archive is larger than its kind ever is",
                        "a score may have 16 MiB: take it in parts"};
    }
  }
}

// A path inside the archive, and no way out of it.
bool is_inside(std::string_view path) {
  if (path.empty() || path.front() == '/' || path.find('\\') != std::string_view::npos ||
      path.find(':') != std::string_view::npos) {
    return false;
  }
  while (!path.empty()) {
    const std::size_t slash = std::min(path.find('/'), path.size());
    const std::string_view part = path.substr(0, slash);
    if (part == ".." || part == "." || part.empty()) return false;
    path.remove_prefix(std::min(slash + 1, path.size()));
  }
  return true;
}

std::variant<std::string, Unpackable> rootfile(const std::string& container) {
  if (look_over(container)) return broken(names_no_score);
  const auto parsed = platform::parse_xml(container, platform::XmlEncoding::utf8);
  const auto* document = std::get_if<platform::XmlDocument>(&parsed);
  const platform::XmlElement* at =
      document != nullptr && document->root.name == "container" ? &document->root : nullptr;
  for (const char* name : {"rootfiles", "rootfile"}) at = at == nullptr ? nullptr : at->child(name);
  const std::string* path = at == nullptr ? nullptr : at->attribute("full-path");
  if (path == nullptr) return broken(names_no_score);
  if (!is_inside(*path)) return broken("`META-INF/container.xml` names a score outside its archive");
  return *path;
}

}  // namespace

bool is_packed(const std::string& bytes) {
  return bytes.starts_with("PK\x03\x04") || bytes.starts_with("PK\x05\x06");
}

std::variant<std::string, Unpackable> unpack(const std::string& bytes, std::size_t limit) {
  const ZipLibrary& zip = zip_library();
  zip_source_t* source = zip.source_buffer_create(bytes.data(), bytes.size(), 0, nullptr);
  if (source == nullptr) return broken("this archive is damaged");
  const std::unique_ptr<zip_t, decltype(zip.discard)> archive(zip.open_from_source(source, ZIP_RDONLY, nullptr),
                                                              zip.discard);
  if (archive == nullptr) {
    zip.source_free(source);
    return broken("this archive is damaged");
  }
  constexpr std::size_t container_limit = std::size_t{64} * 1024;
  const auto container = entry(zip, archive.get(), "META-INF/container.xml", container_limit);
  if (const auto* why = std::get_if<Unpackable>(&container)) return *why;
  const auto path = rootfile(std::get<std::string>(container));
  if (const auto* why = std::get_if<Unpackable>(&path)) return *why;
  return entry(zip, archive.get(), std::get<std::string>(path), limit);
}

}  // namespace fretsheaf::exchange
