#include "exchange/container.h"

#include <memory>
#include <new>

#include "exchange/zip_library.h"

namespace fretsheaf::exchange {

namespace {

constexpr const char* media_type = "application/vnd.recordare.musicxml";

constexpr const char* container =
    "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
    "<container>\n"
    "    <rootfiles>\n"
    "        <rootfile full-path=\"score.musicxml\" media-type=\"application/vnd.recordare.musicxml+xml\"/>\n"
    "    </rootfiles>\n"
    "</container>\n";

// In memory nothing but memory can be lacking.
void must(bool done) {
  if (!done) throw std::bad_alloc();
}

void add(const ZipLibrary& zip, zip_t* archive, const char* name, const std::string& bytes, int compression) {
  zip_source_t* source = zip.source_buffer(archive, bytes.data(), bytes.size(), 0);
  must(source != nullptr);
  const zip_int64_t index = zip.file_add(archive, name, source, ZIP_FL_ENC_GUESS);
  if (index < 0) zip.source_free(source);
  must(index >= 0);
  const auto entry = static_cast<zip_uint64_t>(index);
  must(zip.set_file_compression(archive, entry, compression, 0) == 0);
  // The archive's own first day, 1 January 1980: it must have some date.
  constexpr zip_uint16_t first_day = (1 << 5) | 1;
  must(zip.file_set_dostime(archive, entry, 0, first_day, 0) == 0);
}

std::string bytes_of(const ZipLibrary& zip, zip_source_t* source) {
  zip_stat_t size;
  zip.stat_init(&size);
  must(zip.source_stat(source, &size) == 0 && zip.source_open(source) == 0);
  std::string bytes(size.size, '\0');
  const zip_int64_t read = zip.source_read(source, bytes.data(), bytes.size());
  zip.source_close(source);
  must(read == static_cast<zip_int64_t>(bytes.size()));
  return bytes;
}

}  // namespace

std::string mxl(const std::string& document) {
  const ZipLibrary& zip = zip_library();
  const std::unique_ptr<zip_source_t, decltype(zip.source_free)> source(
      zip.source_buffer_create(nullptr, 0, 0, nullptr), zip.source_free);
  must(source != nullptr);
  zip_t* archive = zip.open_from_source(source.get(), ZIP_TRUNCATE, nullptr);
  must(archive != nullptr);
  zip.source_keep(source.get());  // the archive's own reference goes when it is closed
  const std::string type = media_type;
  const std::string index = container;
  add(zip, archive, "mimetype", type, ZIP_CM_STORE);
  add(zip, archive, "META-INF/container.xml", index, ZIP_CM_DEFLATE);
  add(zip, archive, "score.musicxml", document, ZIP_CM_DEFLATE);
  must(zip.close(archive) == 0);
  return bytes_of(zip, source.get());
}

}  // namespace fretsheaf::exchange
