#include "exchange/packing.h"

#include <zip.h>

#include <catch2/catch.hpp>

namespace fretsheaf::exchange::test {

std::string zip_of(const std::vector<std::pair<std::string, std::string>>& entries) {
  zip_source_t* source = zip_source_buffer_create(nullptr, 0, 0, nullptr);
  zip_t* archive = zip_open_from_source(source, ZIP_TRUNCATE, nullptr);
  REQUIRE(archive != nullptr);
  zip_source_keep(source);
  for (const auto& [name, bytes] : entries) {
    zip_source_t* own = zip_source_buffer(archive, bytes.data(), bytes.size(), 0);
    REQUIRE(zip_file_add(archive, name.c_str(), own, ZIP_FL_ENC_GUESS) >= 0);
  }
  REQUIRE(zip_close(archive) == 0);
  zip_stat_t size;
  zip_stat_init(&size);
  REQUIRE(zip_source_stat(source, &size) == 0);
  REQUIRE(zip_source_open(source) == 0);
  std::string bytes(size.size, '\0');
  REQUIRE(zip_source_read(source, bytes.data(), bytes.size()) == static_cast<zip_int64_t>(bytes.size()));
  zip_source_close(source);
  zip_source_free(source);
  return bytes;
}

}  // namespace fretsheaf::exchange::test
