#include "exchange/zip_library.h"

#include "platform/loaded_library.h"

namespace fretsheaf::exchange {
namespace {

ZipLibrary load() {
  // By the number of the interface that zip.h was of when this was compiled.
  platform::LoadedLibrary library("libzip.so.4");
  ZipLibrary zip;
  library.find("zip_source_buffer_create", zip.source_buffer_create);
  library.find("zip_source_buffer", zip.source_buffer);
  library.find("zip_source_keep", zip.source_keep);
  library.find("zip_source_free", zip.source_free);
  library.find("zip_source_stat", zip.source_stat);
  library.find("zip_source_open", zip.source_open);
  library.find("zip_source_read", zip.source_read);
  library.find("zip_source_close", zip.source_close);
  library.find("zip_stat_init", zip.stat_init);
  library.find("zip_open_from_source", zip.open_from_source);
  library.find("zip_close", zip.close);
  library.find("zip_discard", zip.discard);
  library.find("zip_file_add", zip.file_add);
  library.find("zip_set_file_compression", zip.set_file_compression);
  library.find("zip_file_set_dostime", zip.file_set_dostime);
  library.find("zip_fopen", zip.fopen);
  library.find("zip_fread", zip.fread);
  library.find("zip_fclose", zip.fclose);
  library.require_all("packed scores need Debian's package libzip4");
  return zip;
}

}  // namespace

const ZipLibrary& zip_library() {
  static const ZipLibrary zip = load();
  return zip;
}

}  // namespace fretsheaf::exchange
