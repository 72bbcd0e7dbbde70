#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "typeface/face.h"
#include "typeface/fonts.h"

namespace fretsheaf::typeface {

// Shapes lines of text with HarfBuzz and remembers them: a handout says the same digits, counts and words again and
// again. What is remembered is one em large and serves every size.
class LineShaper {
 public:
  ShapedText shape(std::string_view text, const TextStyle& style, const std::vector<std::unique_ptr<Face>>& faces);

 private:
  const ShapedText& shape_at_one_em(std::string_view text, const TextStyle& style,
                                    const std::vector<std::unique_ptr<Face>>& faces);

  std::unordered_map<std::string, ShapedText> remembered_;
  std::size_t remembered_bytes_ = 0;
};

}  // namespace fretsheaf::typeface
