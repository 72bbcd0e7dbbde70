#include "source/edit.h"

#include <algorithm>

namespace fretsheaf::source {

std::string edited(std::string_view bytes, std::vector<Edit> edits) {
  std::stable_sort(edits.begin(), edits.end(), [](const Edit& a, const Edit& b) {
    return a.range.begin != b.range.begin ? a.range.begin < b.range.begin : a.range.end < b.range.end;
  });
  std::string out;
  std::size_t done = 0;
  for (const Edit& edit : edits) {
    out += bytes.substr(done, edit.range.begin - done);
    out += edit.text;
    done = edit.range.end;
  }
  return out.append(bytes.substr(done));
}

}  // namespace fretsheaf::source
