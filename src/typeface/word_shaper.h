#pragma once

#include <hb.h>

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "typeface/face.h"
#include "typeface/fonts.h"

namespace fretsheaf::typeface {

// A word or a space, one em large, its glyphs from its origin.
struct ShapedWord {
  std::vector<ShapedGlyph> glyphs;
  std::vector<ShapedCluster> clusters;
  double advance = 0;
};

// Shapes words with HarfBuzz and remembers them: a course says the same words, digits and counts again and again, and
// each word of a text is measured before it is set.
class WordShaper {
 public:
  // The size in the style plays no part. What is given back stays until the next call.
  const ShapedWord& shape(std::string_view word, hb_script_t script, FontId font, const Face& face,
                          const TextStyle& style);

 private:
  std::unordered_map<std::string, ShapedWord> remembered_;
  std::size_t remembered_bytes_ = 0;
  std::string key_;
};

}  // namespace fretsheaf::typeface
