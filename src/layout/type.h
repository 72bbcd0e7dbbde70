#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/sheet.h"
#include "template/template.h"
#include "typeface/fonts.h"

namespace fretsheaf::layout {

// Shaped words, relative to their origin on the baseline at (0, 0); `width` is their advance, `ink` their outline's
// box.
struct Words {
  std::vector<sheet::Item> items;
  double width = 0;
  sheet::Box ink;
};

// A character that no font of a role has.
struct MissingCharacter {
  char32_t code_point = 0;
  templates::Role role{};
};

// Sets words in the roles of a template. The one place where layout meets fonts.
class Type {
 public:
  // Holds references; both must outlive it. `fonts` are the ids for each role, in the template's order.
  Type(typeface::Shaper& shaper, const templates::Template& look, std::vector<std::vector<typeface::FontId>> fonts);

  const templates::Template& look() const { return look_; }
  const templates::Measures& measures() const { return look_.measures; }

  // ♭ ♮ ♯ are set in the music font, scaled and raised as prose needs them.
  Words set(templates::Role role, std::string_view text, sheet::Part part, sheet::Color color = {});
  // The same at another size than the role's: a title that steps down to fit, a digit repeated smaller.
  Words set_at_size(templates::Role role, double size, std::string_view text, sheet::Part part,
                    sheet::Color color = {});
  // The advance alone.
  double width(templates::Role role, std::string_view text);
  double width_at_size(templates::Role role, double size, std::string_view text);
  double cap_height(templates::Role role);
  double x_height(templates::Role role);

  // A sign of the music font (role `music`), at a staff space of `space` points (1 space = 0.25 em). It spells nothing
  // as text.
  Words sign(char32_t code_point, double space, sheet::Part part);

  // Several side by side that are one word ("mf"), which they spell as text.
  Words signs(std::u32string_view code_points, double space, sheet::Part part, std::string_view text);

  // The ink of a placed glyph's outline, from its origin.
  typeface::Extents glyph_ink(int font, std::uint32_t glyph, double size) { return shaper_.extents(font, glyph, size); }

  const std::vector<MissingCharacter>& missing() const { return missing_; }

 private:
  // A stretch of words that one list of fonts sets; an accidental stands above the line, with room on both sides.
  struct Stretch {
    std::string_view text;
    templates::Role role{};
    typeface::TextStyle style;
    double gap = 0;
    double y = 0;
  };
  std::vector<Stretch> stretches(templates::Role role, double size, std::string_view text) const;
  Stretch stretch(templates::Role role, double size, std::string_view text, bool accidental) const;

  // Code keeps the accidentals of its own font, which are as wide as its letters: columns stay columns.
  bool code_has(char32_t code_point) const;
  void note_missing(char32_t code_point, templates::Role role);

  typeface::Shaper& shaper_;
  const templates::Template& look_;
  std::vector<std::vector<typeface::FontId>> fonts_;
  std::vector<MissingCharacter> missing_;
};

}  // namespace fretsheaf::layout
