// The compressed form, byte by byte: ZIP's local file header (PKWARE's application note, 4.3.7) and what MusicXML 4.0
// asks of a container: `mimetype` first and stored, so that its text begins at byte 38.
#include "exchange/container.h"

#include <zip.h>

#include <catch2/catch.hpp>
#include <cstdint>

#include "exchange/exported.h"
#include "exchange/schema.h"
#include "exchange/sound_lesson.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

int word_at(const std::string& bytes, std::size_t at) {
  return static_cast<std::uint8_t>(bytes[at]) | static_cast<std::uint8_t>(bytes[at + 1]) << 8;
}

// An entry's bytes, as libzip unpacks them.
std::string entry(const std::string& archive, const char* name) {
  zip_source_t* source = zip_source_buffer_create(archive.data(), archive.size(), 0, nullptr);
  zip_t* zip = zip_open_from_source(source, ZIP_RDONLY | ZIP_CHECKCONS, nullptr);
  REQUIRE(zip != nullptr);
  zip_stat_t size;
  REQUIRE(zip_stat(zip, name, 0, &size) == 0);
  std::string bytes(size.size, ' ');
  zip_file_t* file = zip_fopen(zip, name, 0);
  REQUIRE(file != nullptr);
  CHECK(zip_fread(file, bytes.data(), bytes.size()) == static_cast<zip_int64_t>(bytes.size()));
  zip_fclose(file);
  zip_discard(zip);
  return bytes;
}

}  // namespace

TEST_CASE("a compressed document says what it is at byte 38, stored, with no extra field") {
  const std::string bytes = exchange::mxl("<score-partwise/>");
  CHECK(bytes.substr(0, 4) == "PK\x03\x04");
  CHECK(word_at(bytes, 8) == 0);   // stored
  CHECK(word_at(bytes, 26) == 8);  // the name's length
  CHECK(word_at(bytes, 28) == 0);  // the extra field's
  CHECK(bytes.substr(30, 8) == "mimetype");
  CHECK(bytes.substr(38, 34) == "application/vnd.recordare.musicxml");
  CHECK(bytes.substr(72, 4) == "PK\x03\x04");
}

TEST_CASE("a compressed document has the day of its format's beginning and the same bytes each time") {
  const std::string document = export_lesson(sound_lesson).document;
  const std::string bytes = exchange::mxl(document);
  CHECK(word_at(bytes, 10) == 0);               // midnight
  CHECK(word_at(bytes, 12) == ((1 << 5) | 1));  // 1 January 1980
  CHECK(bytes == exchange::mxl(document));
  CHECK(bytes.size() < document.size() / 5);
}

TEST_CASE("a compressed document's container names the score, which is the document") {
  const std::string document = export_lesson(sound_lesson).document;
  const std::string bytes = exchange::mxl(document);
  CHECK(entry(bytes, "score.musicxml") == document);
  const std::string container = entry(bytes, "META-INF/container.xml");
  CHECK(container.find("<rootfile full-path=\"score.musicxml\" "
                       "media-type=\"application/vnd.recordare.musicxml+xml\"/>") != std::string::npos);
  CHECK(schema_accepts({container}, "container.xsd"));
  CHECK_FALSE(schema_accepts({"<container/>"}, "container.xsd", true));
}
