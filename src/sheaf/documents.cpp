#include "sheaf/documents.h"

#include "exchange/container.h"
#include "exchange/musicxml.h"

namespace fretsheaf::sheaf {

void add_documents(const score::Score& score, Format format, bool split, const std::string& name,
                   std::vector<Output>& outputs) {
  const auto add = [&](const std::string& own_name, const std::string& document) {
    if (format == Format::mxl) {
      outputs.push_back({own_name + ".mxl", exchange::mxl(document)});
    } else {
      outputs.push_back({own_name + ".musicxml", document});
    }
  };
  if (!split) return add(name, exchange::musicxml(score));
  for (std::size_t i = 0; i < score.examples.size(); ++i) {
    if (score.examples[i].bars.empty()) continue;
    add(name + "." + std::to_string(score.examples[i].number), exchange::musicxml(score, i));
  }
}

}  // namespace fretsheaf::sheaf
