#include <algorithm>

#include "spoken/bars.h"
#include "spoken/opening.h"
#include "spoken/phrases.h"
#include "spoken/pictures.h"
#include "spoken/spoken.h"

namespace fretsheaf::spoken {
namespace {

// A bar's sentences in one line.
std::string joined(SaidBar bar) {
  std::replace(bar.body.begin(), bar.body.end(), '\n', ' ');
  std::string text = std::move(bar.head);
  for (const std::string* part : {&bar.body, &bar.tail}) {
    if (part->empty()) continue;
    text += ' ';
    text += *part;
  }
  return text;
}

}  // namespace

score::Alternatives alternatives(const score::Score& score) {
  const Phrases phrases(score);
  score::Alternatives all;
  all.examples.reserve(score.examples.size());
  for (const score::Example& example : score.examples) {
    score::ExampleAlternatives& own = all.examples.emplace_back();
    own.opening = opening_of(example, phrases);
    for (SaidBar& bar : bars_of(example, phrases)) own.bars.push_back(joined(std::move(bar)));
    if (example.neck) own.neck = neck_said(*example.neck, phrases);
    for (const score::ChordBox& box : example.boxes) own.boxes.push_back(box_said(box, phrases));
    if (example.form) own.form = form_said(example, phrases);
  }
  return all;
}

}  // namespace fretsheaf::spoken
