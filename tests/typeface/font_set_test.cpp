#include <catch2/catch.hpp>

#include "platform/memory_system.h"
#include "real_fonts.h"
#include "typeface/known_fonts.h"

using namespace fretsheaf;
using namespace fretsheaf::typeface;

namespace {

std::string error_of(const std::variant<FontId, std::string>& opened) {
  REQUIRE(std::holds_alternative<std::string>(opened));
  return std::get<std::string>(opened);
}

std::string bytes_of(const std::string& file_name) {
  const platform::DiskSystem disk;
  const auto read = disk.read(disk.font_path(file_name), 1 << 24);
  REQUIRE(std::holds_alternative<std::string>(read));
  return std::get<std::string>(read);
}

}  // namespace

TEST_CASE("Every font that fonts.toml names can be opened and has letters or signs") {
  RealFonts fonts;
  CHECK(known_fonts().size() == 10);
  for (const KnownFont& known : known_fonts()) {
    INFO(known.name);
    const FontId font = fonts.open(known.name);
    CHECK(fonts.set.name(font) == known.name);
    CHECK_FALSE(known.package.empty());
    CHECK(fonts.set.glyph(font, known.name == "noto-music" ? U'\U0001D11E' : U'g').has_value());
  }
}

TEST_CASE("Fonts are numbered as they are asked for, and one asked for twice is the same") {
  const platform::DiskSystem system;
  FontSet fonts(system);
  CHECK(std::get<FontId>(fonts.open("inter-bold")) == 0);
  CHECK(std::get<FontId>(fonts.open("charis-bold")) == 1);
  CHECK(std::get<FontId>(fonts.open("inter-bold")) == 0);
  CHECK(fonts.names() == std::vector<std::string>{"inter-bold", "charis-bold"});
}

TEST_CASE("A font that is not installed is named with its package") {
  const platform::MemorySystem bare;
  FontSet fonts(bare);
  CHECK(error_of(fonts.open("charis-bold")) ==
        "the font \"charis-bold\" (CharisSIL-Bold.ttf) is not installed; it is in the Debian package fonts-sil-charis");
}

TEST_CASE("The font of code has letters, figures and accidentals of one width") {
  RealFonts fonts;
  const FontId mono = fonts.open("dejavu-mono");
  const auto advance = [&](char32_t c) {
    const auto glyph = fonts.set.glyph(mono, c);
    REQUIRE(glyph);
    return fonts.set.extents(mono, *glyph, 9).advance;
  };
  for (char32_t c = U' '; c <= U'~'; ++c) CHECK(advance(c) == Approx(advance(U'0')));
  for (const char32_t c : {U'\u266D', U'\u266E', U'\u266F', U'\u2502', U'\u2500'}) {
    CHECK(advance(c) == Approx(advance(U'0')));
  }
}

TEST_CASE("An unknown font name is answered with the names that there are") {
  const platform::MemorySystem bare;
  FontSet fonts(bare);
  CHECK(error_of(fonts.open("charis-heavy")) ==
        "there is no font named \"charis-heavy\"; the names are charis-bold charis-bold-italic charis-italic "
        "charis-regular dejavu-mono inter-bold inter-medium inter-regular inter-semibold noto-music");
}

TEST_CASE("A font is opened by its path, and named without its folders") {
  platform::MemorySystem memory;
  memory.files["one/Inter-Bold.otf"] = bytes_of("Inter-Bold.otf");
  memory.files["two/Inter-Bold.otf"] = bytes_of("Inter-Medium.otf");
  FontSet fonts(memory);
  const FontId one = std::get<FontId>(fonts.open("one/Inter-Bold.otf"));
  const FontId two = std::get<FontId>(fonts.open("two/Inter-Bold.otf"));
  CHECK(fonts.name(one) == "Inter-Bold");
  CHECK(fonts.name(two) == "Inter-Bold-2");
  CHECK(fonts.cap_height(one, 10) > 6);
}

TEST_CASE("What is no font is refused with the file's name") {
  platform::MemorySystem memory;
  memory.files["look/words.ttf"] = "these are only words";
  memory.files["look/empty.otf"] = "";
  memory.files["look/half.ttf"] = bytes_of("NotoMusic-Regular.ttf").substr(0, 300);
  FontSet fonts(memory);
  CHECK(error_of(fonts.open("look/words.ttf")) == "the font file look/words.ttf holds no TrueType or OpenType font");
  CHECK(error_of(fonts.open("look/empty.otf")) == "the font file look/empty.otf holds no TrueType or OpenType font");
  CHECK(error_of(fonts.open("look/half.ttf")) == "the font file look/half.ttf holds no TrueType or OpenType font");
  CHECK(error_of(fonts.open("look/none.ttf")).starts_with("the font file look/none.ttf "));
}

TEST_CASE("A FreeType face outlives its set for whoever shares it") {
  std::shared_ptr<void> face;
  {
    RealFonts fonts;
    face = fonts.set.shared_native_face(fonts.inter);
    CHECK(fonts.set.native_face(fonts.inter) == face.get());
  }
  CHECK(face != nullptr);
}
