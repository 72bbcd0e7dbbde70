#include <algorithm>
#include <string>

#include "lesson/checks.h"
#include "lesson/vary.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

// The example that is to be varied; nullptr after an error, here or there.
const Example* source_of(const Lesson& lesson, std::size_t index, const SoundMusic& sound,
                         source::Diagnostics& diagnostics) {
  const Located<int>& vary = *lesson.examples[index].vary;
  const auto named = static_cast<std::size_t>(vary.value - 1);
  const std::string name = "example " + std::to_string(vary.value);
  const auto refuse = [&](const std::string& message, const std::string& help) {
    diagnostics.error(Code::vary_mismatch, vary.range, message, help);
    return nullptr;
  };
  if (named >= lesson.examples.size()) {
    return refuse("there is no " + name, "this lesson has " + std::to_string(lesson.examples.size()));
  }
  if (named == index) return refuse("an example cannot vary itself", "name the example that has the notes");
  const Example& source = lesson.examples[named];
  if (source.vary)
    return refuse(name + " has no notes of its own",
                  "write vary = " + std::to_string(source.vary->value) + ", where they are");
  if (source.blank_bars) return refuse(name + " has blank bars and no notes", "name an example that has notes");
  if (!sound[named]) return nullptr;
  if (!source.music.has_strings)
    return refuse(name + " is a rhythm and has no notes", "name an example that has notes");
  return &source;
}

bool has_no_chords(const Music& music) {
  return std::all_of(music.bars.begin(), music.bars.end(), [](const Bar& bar) { return bar.chords.empty(); });
}

std::string notes(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " note" : " notes");
}

// Words of the plucking hand come before their notes are known: one for each of them.
bool check_hand(Music& music, source::Diagnostics& diagnostics) {
  bool sound = true;
  for (Bar& bar : music.bars) {
    for (Event& event : bar.events) {
      if (event.hand.empty() || !notes_for_hand(event).empty()) continue;
      const std::size_t struck = static_cast<std::size_t>(
          std::count_if(event.notes.begin(), event.notes.end(), [](const Note& note) { return !note.held; }));
      diagnostics.error(Code::word_count, source::joined(event.hand.front().range, event.hand.back().range),
                        std::to_string(event.hand.size()) + (event.hand.size() == 1 ? " word" : " words") + " for " +
                            notes(struck) + ", which come from the example that is varied",
                        "write one a string, top line first, joined by commas: `i,m`");
      sound = false;
    }
  }
  return sound;
}

}  // namespace

void fill_varied(Lesson& lesson, SoundMusic& sound, source::Diagnostics& diagnostics) {
  for (std::size_t i = 0; i < lesson.examples.size(); ++i) {
    Example& example = lesson.examples[i];
    if (!example.vary || example.blank_bars) continue;
    const Example* source = source_of(lesson, i, sound, diagnostics);
    const bool readable = sound[i] && source != nullptr;
    sound[i] = false;
    if (!readable) continue;
    const std::size_t there = count_struck(source->music);
    const std::size_t slots = count_struck(example.music);
    if (there == slots) {
      example.music.chords_borrowed = has_no_chords(example.music);
      put_notes(source->music, example.music);
      sound[i] = check_hand(example.music, diagnostics);
      continue;
    }
    const std::string which = "example " + std::to_string(example.vary->value);
    diagnostics.error(Code::vary_mismatch, example.vary->range,
                      which + " has " + notes(there) + ", and this rhythm has places for " + std::to_string(slots),
                      slots > there ? "write fewer counts, or a 'play' row with a * where each note falls"
                                    : "write more counts, so that every note has its place");
  }
}

}  // namespace fretsheaf::lesson
