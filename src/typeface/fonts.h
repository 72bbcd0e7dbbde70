#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "platform/system.h"

namespace fretsheaf::typeface {

// A font of the private set, by index; the set numbers its fonts in the order they were first asked for.
using FontId = int;

struct Extents {  // of ink, in points at the given size, relative to the origin, y downward
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;
  double advance = 0;
};

struct ShapedGlyph {
  std::uint32_t id = 0;
  double x = 0;  // from the text's origin
  double y = 0;
};

struct ShapedCluster {
  std::uint16_t bytes = 0;
  std::uint16_t glyphs = 0;
};

// A stretch of shaped text in one font.
struct ShapedRun {
  FontId font = 0;
  std::string text;
  std::vector<ShapedGlyph> glyphs;
  std::vector<ShapedCluster> clusters;
};

// One line of text, shaped. Several runs where a character came from a later font of the list.
struct ShapedText {
  std::vector<ShapedRun> runs;
  double advance = 0;
  Extents ink;
  // Code points that no font of the list has (each once): the caller reports them; they are left out.
  std::vector<char32_t> missing;
};

struct TextStyle {
  std::span<const FontId> fonts;  // tried in order for each character
  double size = 10;
  double tracking = 0;  // points added after each glyph
  bool tabular_figures = false;
};

// An outline in points at the given size, y downward, from the origin.
struct OutlineSegment {
  enum class Kind { move, line, curve, close };
  Kind kind = Kind::move;
  double x = 0, y = 0;    // end
  double x1 = 0, y1 = 0;  // controls of a cubic
  double x2 = 0, y2 = 0;
};

// Shaping and metrics. Pages are laid out against this alone; `FontSet` is the real one, `FixedMetrics` a fake for
// tests whose every glyph is as wide as it is easy to reckon with.
class Shaper {
 public:
  virtual ~Shaper() = default;

  virtual ShapedText shape(std::string_view text, const TextStyle& style) = 0;
  // Of what would be shaped: for who measures alone.
  virtual double advance(std::string_view text, const TextStyle& style) { return shape(text, style).advance; }
  // The glyph of a code point; nullopt where the font has none.
  virtual std::optional<std::uint32_t> glyph(FontId font, char32_t code_point) = 0;
  virtual Extents extents(FontId font, std::uint32_t glyph, double size) = 0;
  // The height of a capital H, and of a lower-case x, at the size.
  virtual double cap_height(FontId font, double size) = 0;
  virtual double x_height(FontId font, double size) = 0;
};

// The private font set: just the files that were opened here, none of the system's by accident, so that every machine
// gives the same bytes. Holds the fonts' bytes and the FreeType and HarfBuzz objects; not for use by two threads.
class FontSet final : public Shaper {
 public:
  explicit FontSet(const platform::System& system);
  ~FontSet() override;
  FontSet(const FontSet&) = delete;
  FontSet& operator=(const FontSet&) = delete;

  // A name of `fonts/fonts.toml` ("charis-bold") or a file's path. Opening one twice gives the same id. The error is
  // what a teacher reads: which font is missing and the Debian package that brings it.
  std::variant<FontId, std::string> open(std::string_view name);

  std::string name(FontId font) const;
  std::vector<std::string> names() const;  // by id

  ShapedText shape(std::string_view text, const TextStyle& style) override;
  double advance(std::string_view text, const TextStyle& style) override;
  std::optional<std::uint32_t> glyph(FontId font, char32_t code_point) override;
  Extents extents(FontId font, std::uint32_t glyph, double size) override;
  double cap_height(FontId font, double size) override;
  double x_height(FontId font, double size) override;

  // The glyph's outline at 1000 points to the em, for the SVG writer.
  std::vector<OutlineSegment> outline(FontId font, std::uint32_t glyph);

  // The FreeType face (an FT_Face), for the PDF renderer; owned by the set. nullptr where FreeType refuses the font.
  void* native_face(FontId font);
  // The same, kept alive by the pointer: cairo's caches hold faces for longer than a set may live.
  std::shared_ptr<void> shared_native_face(FontId font);

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace fretsheaf::typeface
