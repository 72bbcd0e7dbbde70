#include "exchange/zip_library.h"

#include <dlfcn.h>

#include <stdexcept>
#include <string>

namespace fretsheaf::exchange {
namespace {

// By the number of the interface that zip.h was of when this was compiled.
constexpr const char* file = "libzip.so.4";

[[noreturn]] void fail() {
  throw std::runtime_error(std::string(file) + " cannot be loaded: packed scores need Debian's package libzip4");
}

template <typename Function>
void find(void* library, const char* name, Function& function) {
  function = reinterpret_cast<Function>(dlsym(library, name));
  if (function == nullptr) fail();
}

ZipLibrary load() {
  void* const library = dlopen(file, RTLD_LAZY | RTLD_LOCAL);
  if (library == nullptr) fail();
  ZipLibrary zip;
  find(library, "zip_source_buffer_create", zip.source_buffer_create);
  find(library, "zip_source_buffer", zip.source_buffer);
  find(library, "zip_source_keep", zip.source_keep);
  find(library, "zip_source_free", zip.source_free);
  find(library, "zip_source_stat", zip.source_stat);
  find(library, "zip_source_open", zip.source_open);
  find(library, "zip_source_read", zip.source_read);
  find(library, "zip_source_close", zip.source_close);
  find(library, "zip_stat_init", zip.stat_init);
  find(library, "zip_open_from_source", zip.open_from_source);
  find(library, "zip_close", zip.close);
  find(library, "zip_discard", zip.discard);
  find(library, "zip_file_add", zip.file_add);
  find(library, "zip_set_file_compression", zip.set_file_compression);
  find(library, "zip_file_set_dostime", zip.file_set_dostime);
  find(library, "zip_fopen", zip.fopen);
  find(library, "zip_fread", zip.fread);
  find(library, "zip_fclose", zip.fclose);
  return zip;
}

}  // namespace

const ZipLibrary& zip_library() {
  static const ZipLibrary zip = load();
  return zip;
}

}  // namespace fretsheaf::exchange
