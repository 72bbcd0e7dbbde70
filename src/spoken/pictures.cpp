#include "spoken/pictures.h"

#include <algorithm>
#include <cstddef>

#include "spoken/chords.h"

namespace fretsheaf::spoken {
namespace {

// "A string: 3rd fret, flat 3; 5th fret, 4"
std::string string_said(const score::NeckPicture& neck, int string, const Phrases& phrases) {
  std::string text;
  for (const score::NeckMark& mark : neck.marks) {
    if (mark.place.string != string) continue;
    text += text.empty() ? phrases.string(string) + std::string(phrases[Sentence::colon])
                         : std::string(phrases[Sentence::semicolon]);
    text += phrases.fret(mark.place.fret);
    add_item(text, phrases.plain(mark.label));
    if (mark.root) add_item(text, phrases[Sentence::root]);
  }
  return text;
}

// One string of a chord's shape; `index` from the bottom line.
std::string stopped_said(const fretboard::ChordShape& shape, std::size_t index, const Phrases& phrases) {
  const int string = static_cast<int>(shape.frets.size() - index);
  std::string text = phrases.string(string);
  const std::optional<int>& fret = shape.frets[index];
  add_item(text, fret ? std::string_view(phrases.fret(*fret)) : phrases[Sentence::not_played]);
  if (fret && *fret > 0 && shape.fingers[index] > 0) add_item(text, phrases(Sentence::finger, shape.fingers[index]));
  return text;
}

bool same(const score::FormCell& a, const score::FormCell& b) {
  return a.chords == b.chords && a.here == b.here && !a.repeat_end && !b.repeat_begin;
}

std::string cell_said(const score::FormCell& cell, const Phrases& phrases) {
  std::string text;
  if (cell.repeat_begin) add_item(text, phrases[Sentence::repeat_begins]);
  if (cell.chords.empty()) add_item(text, phrases[Sentence::chord_to_find]);
  for (const auto& chord : cell.chords) {
    add_item(text, chord ? chord_name(*chord, phrases) : std::string(phrases[Sentence::no_chord]));
  }
  if (cell.repeat_end) add_item(text, phrases[Sentence::repeat_ends]);
  return text;
}

std::string bars_called(std::size_t first, std::size_t last, const Phrases& phrases) {
  if (first == last) return words::fill_number(phrases.language(), words::Word::bar, static_cast<int>(first) + 1);
  return phrases(Sentence::bars_from_to, {{"from", std::to_string(first + 1)}, {"to", std::to_string(last + 1)}});
}

}  // namespace

std::string neck_said(const score::NeckPicture& neck, const Phrases& phrases) {
  std::string text;
  add_sentence(text, phrases.plain(neck.title));
  add_sentence(text, phrases(Sentence::frets_from_to,
                             {{"from", std::to_string(neck.first)}, {"to", std::to_string(neck.last)}}));
  if (neck.marks.empty()) add_sentence(text, phrases[Sentence::marks_to_find]);
  for (int string = phrases.score().neck.strings(); string > 0; --string) {
    add_sentence(text, string_said(neck, string, phrases));
  }
  return text;
}

std::string box_said(const score::ChordBox& box, const Phrases& phrases) {
  std::string name = chord_name(box.chord, phrases);
  if (box.fingered) name = phrases(Sentence::shape, {{"chord", name}, {"shape", chord_name(*box.fingered, phrases)}});
  std::string text;
  add_sentence(text, name);
  if (box.shape.barre) {
    add_sentence(text, phrases(Sentence::barre, {{"fret", phrases.fret(box.shape.barre->fret)}}));
  }
  std::string strings;
  for (std::size_t i = 0; i < box.shape.frets.size(); ++i) {
    if (i > 0) strings += phrases[Sentence::semicolon];
    strings += stopped_said(box.shape, i, phrases);
  }
  add_sentence(text, strings);
  return text;
}

std::string form_said(const score::Example& example, const Phrases& phrases) {
  const std::vector<score::FormCell>& bars = example.form->bars;
  std::string text;
  add_sentence(text, std::string(words::word(phrases.language(), words::Word::form)) +
                         std::string(phrases[Sentence::colon]) +
                         phrases.counted(Sentence::bars_one, static_cast<int>(bars.size())));
  std::size_t here = 0;
  while (here < bars.size() && !bars[here].here) ++here;
  if (here < bars.size()) {
    std::size_t last = here;
    while (last + 1 < bars.size() && bars[last + 1].here) ++last;
    add_sentence(text, phrases(Sentence::form_here, {{"bars", bars_called(here, last, phrases)}}));
  }
  for (std::size_t first = 0; first < bars.size();) {
    std::size_t last = first;
    while (last + 1 < bars.size() && same(bars[last], bars[last + 1])) ++last;
    std::string cell = cell_said(bars[first], phrases);
    if (bars[last].repeat_end && last > first) add_item(cell, phrases[Sentence::repeat_ends]);
    add_sentence(text, bars_called(first, last, phrases) + std::string(phrases[Sentence::colon]) + cell);
    first = last + 1;
  }
  return text;
}

}  // namespace fretsheaf::spoken
