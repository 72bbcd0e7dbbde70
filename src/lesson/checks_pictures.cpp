#include <algorithm>
#include <string>

#include "lesson/checks.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

std::string bars_text(int count) {
  return std::to_string(count) + (count == 1 ? " bar" : " bars");
}

int bars_of(const Example& example) {
  if (example.blank_bars) return example.blank_bars->value;
  return example.music.bars.empty() ? 0 : example.music.bars.back().number;
}

void check_form(const Example& example, source::Diagnostics& diagnostics) {
  const Form& form = *example.form;
  if (form.here_first == 0) return;
  const int marked = form.here_last - form.here_first + 1;
  const int bars = bars_of(example);
  if (marked != bars) {
    diagnostics.error(Code::form_mismatch, form.here_range,
                      "'here' marks " + bars_text(marked) + " of the form, and this example has " + bars_text(bars),
                      "mark as many as the example has, a pickup not counted");
    return;
  }
  const bool pickup = !example.music.bars.empty() && example.music.bars.front().number == 0;
  if (form.write_out && pickup && form.here_first > 1) {
    diagnostics.error(Code::form_mismatch, form.here_range,
                      "this example begins with a pickup, and in the written-out form bars stand before it",
                      "write the pickup's bar out, or let the example begin the form");
  }
}

void check_neck(const Example& example, source::Diagnostics& diagnostics) {
  if (example.neck->of != NeckPicture::Of::notes || example.blank_bars || example.music.has_strings) return;
  diagnostics.error(Code::conflicting_keys, example.neck->range, "a rhythm has no notes for a picture of the neck",
                    "write of = \"key\" or of = \"chord i7\"");
}

}  // namespace

void check_pictures(const Lesson& lesson, const SoundMusic& sound, source::Diagnostics& diagnostics) {
  for (std::size_t i = 0; i < lesson.examples.size(); ++i) {
    const Example& example = lesson.examples[i];
    if (!sound[i]) continue;
    if (example.form) check_form(example, diagnostics);
    if (example.neck) check_neck(example, diagnostics);
  }
}

}  // namespace fretsheaf::lesson
