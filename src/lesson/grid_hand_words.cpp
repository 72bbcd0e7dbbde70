#include "lesson/grid_hand_words.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "lesson/grid_phrases.h"
#include "theory/arithmetic.h"
#include "theory/pitch.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

using NoteWord = std::optional<Located<std::string>> Note::*;

class HandWordsAttacher {
 public:
  explicit HandWordsAttacher(const HandWordsInput& input) : in_(input) {}

  void attach() {
    if (in_.count.stroke) attach_stroke(*in_.count.stroke);
    if (in_.count.finger) attach_words(*in_.count.finger, RowKind::finger, &Note::finger);
    if (in_.count.hand) attach_hand(*in_.count.hand);
    if (in_.count.spell) attach_spelling(*in_.count.spell);
  }

 private:
  void error(Code code, Range range, std::string message, std::string help) {
    if (in_.report) in_.grid.diagnostics.error(code, range, std::move(message), std::move(help));
  }

  bool struck() const { return in_.event != nullptr && in_.event->kind == EventKind::struck; }

  void report_nothing_struck(Range range, RowKind kind) {
    error(Code::word_without_note, range, "nothing is struck at " + tick(in_.count.text),
          "a " +
              std::string(kind == RowKind::stroke   ? "stroke"
                          : kind == RowKind::finger ? "finger"
                          : kind == RowKind::hand   ? "hand's word"
                                                    : "spelling") +
              " belongs to a note: move it, or take it out");
  }

  void attach_stroke(const Located<Stroke>& stroke) {
    if (!struck()) return report_nothing_struck(stroke.range, RowKind::stroke);
    in_.event->stroke = stroke;
  }

  // In a `vary` grid the notes come later; the hand's word waits in the event.
  void attach_hand(const HandWords& words) {
    if (!in_.vary) return attach_words(words, RowKind::hand, &Note::hand);
    if (!struck()) return report_nothing_struck(words.range, RowKind::hand);
    in_.event->hand = words.words;
  }

  static std::string_view chord_sample(RowKind kind) {
    return kind == RowKind::finger ? "`1,2`" : kind == RowKind::hand ? "`p,i`" : "`Db,F`";
  }

  // The notes that the words belong to, top line first: those that are struck, or else all.
  std::vector<Note*> notes_for(const HandWords& words, RowKind kind) {
    if (!struck()) {
      report_nothing_struck(words.range, kind);
      return {};
    }
    std::vector<Note*> all;
    std::vector<Note*> fresh;
    for (Note& note : in_.event->notes) {
      all.push_back(&note);
      if (!note.held) fresh.push_back(&note);
    }
    if (words.words.size() == fresh.size()) return fresh;
    if (words.words.size() == all.size()) return all;
    error(Code::word_count, words.range,
          number_phrase(words.words.size(), "word") + " for " + number_phrase(fresh.size(), "note") + " at " +
              tick(in_.count.text),
          fresh.size() == 1
              ? std::string("write one word alone, without a comma")
              : "write one a string, top line first, joined by commas: " + std::string(chord_sample(kind)));
    return {};
  }

  void attach_words(const HandWords& words, RowKind kind, NoteWord slot) {
    const std::vector<Note*> notes = notes_for(words, kind);
    for (std::size_t i = 0; i < notes.size(); ++i) notes[i]->*slot = words.words[i];
  }

  void attach_spelling(const HandWords& words) {
    const std::vector<Note*> notes = notes_for(words, RowKind::spell);
    const fretboard::Neck& neck = in_.grid.context.neck;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      const Located<std::string>& word = words.words[i];
      const auto name = theory::parse_note_name(word.value);
      Note& note = *notes[i];
      if (!name || !neck.has(note.place)) continue;
      const int midi = neck.sounding_midi(note.place, note.harmonic);
      if (note.dead || name->pitch_class() != theory::floor_mod(midi, 12)) {
        error(Code::spell_other_note, word.range,
              note.dead ? "a dead note has no name" : tick(word.value) + " is not the note that is played here",
              "a spelling names the same sound: `Db` or `C#`");
        continue;
      }
      note.spell = Located<theory::NoteName>{*name, word.range};
    }
  }

  const HandWordsInput& in_;
};

}  // namespace

void attach_hand_words(const HandWordsInput& input) {
  HandWordsAttacher(input).attach();
}

}  // namespace fretsheaf::lesson
