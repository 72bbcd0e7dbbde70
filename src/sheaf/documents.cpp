#include "sheaf/documents.h"

#include <algorithm>

#include "exchange/container.h"
#include "exchange/musicxml.h"
#include "lesson/hidden.h"

namespace fretsheaf::sheaf {

bool is_document(Format format) {
  return format == Format::musicxml || format == Format::mxl;
}

void add_documents(const score::Score& score, Format format, bool split, const std::string& name, Made& made) {
  const auto add = [&](const std::string& own_name, const std::string& document) {
    if (format == Format::mxl) {
      made.outputs.push_back({own_name + ".mxl", exchange::mxl(document)});
    } else {
      made.outputs.push_back({own_name + ".musicxml", document});
    }
  };
  const auto hides = [](const score::Example& example) { return lesson::any(example.hidden); };
  const auto written = [&](const score::Example& example) { return exchange::has_document(score, example); };
  if (std::none_of(score.examples.begin(), score.examples.end(), written)) {
    made.no_document = !score.answer_key && std::any_of(score.examples.begin(), score.examples.end(), hides)
                           ? "for every example hides something; --answers makes that of the answer key"
                           : "for there is no music in this lesson";
    return;
  }
  if (!split) return add(name, exchange::musicxml(score));
  for (std::size_t i = 0; i < score.examples.size(); ++i) {
    if (!exchange::has_document(score, score.examples[i])) continue;
    add(name + "." + std::to_string(score.examples[i].number), exchange::musicxml(score, i));
  }
}

}  // namespace fretsheaf::sheaf
