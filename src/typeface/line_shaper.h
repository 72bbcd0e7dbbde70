#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "typeface/face.h"
#include "typeface/fonts.h"
#include "typeface/word_shaper.h"

namespace fretsheaf::typeface {

// Shapes lines of text, word by word, and remembers them: in each of its keys a lesson has much the same lines. What is
// remembered is one em large and serves every size.
class LineShaper {
 public:
  ShapedText shape(std::string_view text, const TextStyle& style, const std::vector<std::unique_ptr<Face>>& faces);
  double advance(std::string_view text, const TextStyle& style, const std::vector<std::unique_ptr<Face>>& faces);

 private:
  const ShapedText& shape_at_one_em(std::string_view text, const TextStyle& style,
                                    const std::vector<std::unique_ptr<Face>>& faces);

  WordShaper words_;
  std::unordered_map<std::string, ShapedText> remembered_;
  std::size_t remembered_bytes_ = 0;
};

}  // namespace fretsheaf::typeface
