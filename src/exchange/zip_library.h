#pragma once

#include <zip.h>

namespace fretsheaf::exchange {

// The functions of libzip that are used. It is not linked: what it needs in turn (it can encrypt) would take a tenth of
// the time that a page takes, and few runs pack or unpack a score.
struct ZipLibrary {
  decltype(&zip_source_buffer_create) source_buffer_create = nullptr;
  decltype(&zip_source_buffer) source_buffer = nullptr;
  decltype(&zip_source_keep) source_keep = nullptr;
  decltype(&zip_source_free) source_free = nullptr;
  decltype(&zip_source_stat) source_stat = nullptr;
  decltype(&zip_source_open) source_open = nullptr;
  decltype(&zip_source_read) source_read = nullptr;
  decltype(&zip_source_close) source_close = nullptr;
  decltype(&zip_stat_init) stat_init = nullptr;
  decltype(&zip_open_from_source) open_from_source = nullptr;
  decltype(&zip_close) close = nullptr;
  decltype(&zip_discard) discard = nullptr;
  decltype(&zip_file_add) file_add = nullptr;
  decltype(&zip_set_file_compression) set_file_compression = nullptr;
  decltype(&zip_file_set_dostime) file_set_dostime = nullptr;
  decltype(&zip_fopen) fopen = nullptr;
  decltype(&zip_fread) fread = nullptr;
  decltype(&zip_fclose) fclose = nullptr;
};

// Throws std::runtime_error where the library is not installed.
const ZipLibrary& zip_library();

}  // namespace fretsheaf::exchange
