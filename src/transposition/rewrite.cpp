#include "transposition/rewrite.h"

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "lesson/grid_writer.h"
#include "lesson/toml_string.h"
#include "source/edit.h"
#include "transposition/names.h"

namespace fretsheaf::transposition {

namespace {

using lesson::Range;

// "x535", and with dashes where a fret takes two figures.
std::string frets_text(const std::vector<std::optional<int>>& frets) {
  const bool dashes = std::any_of(frets.begin(), frets.end(), [](const auto& fret) { return fret.value_or(0) > 9; });
  std::string text;
  for (const auto& fret : frets) {
    if (dashes && !text.empty()) text += "-";
    text += fret ? std::to_string(*fret) : "x";
  }
  return text;
}

// The text of a key with another tonic, the mode as it is written.
std::string key_text(std::string_view written, const theory::Key& key) {
  const auto begin = std::min(written.find_first_not_of(' '), written.size());
  const auto gap = std::min(written.find(' ', begin), written.size());
  if (!theory::parse_key(written, key.mode)) return key.to_string();  // written with escapes
  return std::string(written.substr(0, begin)) + key.tonic.to_string() + std::string(written.substr(gap));
}

class Rewriter {
 public:
  Rewriter(const source::Text& file, const lesson::Lesson& before, const lesson::Lesson& after)
      : file_(file), before_(before), after_(after) {}

  std::string run() {
    write_key();
    write_also_in();
    const int fifths = fifths_between(before_.key, after_.key);
    write_text(before_.title, fifths);
    write_text(before_.subtitle, fifths);
    write_text(before_.intro, fifths);
    for (const lesson::Prose& note : before_.practice) write_text(note, fifths);
    for (std::size_t i = 0; i < before_.examples.size(); ++i) write_example(i);
    return source::edited(file_.bytes(), std::move(edits_));
  }

 private:
  // Puts what `change` makes of a string's text between its quotes.
  void write_string(Range range, const std::function<std::string(std::string_view)>& change) {
    if (range.file != 0) return;
    const std::string_view bytes = file_.bytes();
    const auto string = lesson::find_toml_string(bytes, range.begin);
    if (!string) return;
    const std::string_view body = bytes.substr(string->body_begin, string->body_end - string->body_begin);
    std::string text = change(body);
    if (text == body) return;
    edits_.push_back({{static_cast<std::uint32_t>(string->body_begin), static_cast<std::uint32_t>(string->body_end), 0},
                      std::move(text)});
  }

  void write_text(const lesson::Prose& text, int fifths) {
    write_string(text.range, [&](std::string_view body) { return shifted_text(body, fifths); });
  }
  void write_text(const std::optional<lesson::Prose>& text, int fifths) {
    if (text) write_text(*text, fifths);
  }

  void write_key() {
    const theory::Key& key = after_.key;
    if (before_.key_range.file == 0) {
      return write_string(before_.key_range, [&](std::string_view body) { return key_text(body, key); });
    }
    if (key == before_.key) return;
    // It came from a sheaf.toml: the lesson says its own now, under its title.
    const std::string_view bytes = file_.bytes();
    const std::size_t line_end = std::min(bytes.find('\n', before_.title.range.end), bytes.size());
    const bool crlf = line_end > 0 && line_end < bytes.size() && bytes[line_end - 1] == '\r';
    const auto at = static_cast<std::uint32_t>(crlf ? line_end - 1 : line_end);
    edits_.push_back({{at, at, 0}, std::string(crlf ? "\r\n" : "\n") + "key = \"" + key.to_string() + "\""});
  }

  void write_also_in() {
    for (const auto& key : before_.also_in) {
      if (!(key.value == after_.key)) continue;
      write_string(key.range, [&](std::string_view body) {
        return body == "all" ? std::string(body) : key_text(body, before_.key);
      });
    }
  }

  void write_example(std::size_t index) {
    const lesson::Example& from = before_.examples[index];
    const lesson::Example& to = after_.examples[index];
    const int fifths = fifths_between(from.key, to.key);
    if (from.key_range != Range{}) {
      write_string(from.key_range, [&](std::string_view body) { return key_text(body, to.key); });
    }
    write_text(from.title, fifths);
    write_text(from.intro, fifths);
    for (const lesson::Prose& note : from.practice) write_text(note, fifths);
    if (from.form) {
      write_string(from.form->bars.range, [&](std::string_view body) { return shifted_form(body, fifths); });
    }
    if (from.neck) write_neck(*from.neck, *to.neck, fifths);
    for (std::size_t i = 0; i < from.shapes.size(); ++i) write_shape(from.shapes[i], to.shapes[i], fifths);
    write_grid(from, to, fifths);
  }

  void write_neck(const lesson::NeckPicture& from, const lesson::NeckPicture& to, int fifths) {
    if (from.chord) {
      const Range& range = from.chord->range;
      const std::string chord = shifted_chord(written(range), fifths);
      if (chord != written(range)) edits_.push_back({range, chord});
    }
    if (from.frets == to.frets || !to.frets) return;
    std::string frets = std::to_string(to.frets->first) + "-" + std::to_string(to.frets->second);
    write_string(from.frets_range, [&](std::string_view) { return frets; });
  }

  void write_shape(const lesson::Shape& from, const lesson::Shape& to, int fifths) {
    write_string(from.range, [&](std::string_view body) {
      const auto gap = std::min(body.find(' '), body.size());
      std::string chord = shifted_chord(body.substr(0, gap), fifths);
      const auto frets = std::min(body.find_first_not_of(' ', gap), body.size());
      if (from.frets && !to.frets) return chord;
      if (from.frets == to.frets) return chord + std::string(body.substr(gap));
      return chord + std::string(body.substr(gap, frets - gap)) + frets_text(*to.frets);
    });
  }

  void write_grid(const lesson::Example& from, const lesson::Example& to, int fifths) {
    if (from.grid == Range{}) return;
    lesson::GridChange change;
    if (!from.vary) collect_notes(from.music, to.music, change);
    for (const lesson::Bar& bar : from.music.bars) collect_words(from, bar, fifths, change);
    const lesson::GridContext context{before_.neck, from.key, from.meter, from.vary.has_value()};
    const auto edits = lesson::rewrite_grid(file_, from.grid, context, change);
    edits_.insert(edits_.end(), edits.begin(), edits.end());
  }

  using Written = std::map<std::uint32_t, const lesson::Note*>;  // by where it was written

  static Written written_notes(const lesson::Music& music) {
    Written notes;
    for (const lesson::Bar& bar : music.bars) {
      if (bar.same_as_previous) continue;
      for (const lesson::Event& event : bar.events) {
        // What goes on has the place of the note that it comes from, which stands before it.
        for (const lesson::Note& note : event.notes) notes.emplace(note.range.begin, &note);
      }
    }
    return notes;
  }

  static bool same_place(const lesson::Note& a, const lesson::Note& b) {
    return a.place == b.place && std::equal(a.graces.begin(), a.graces.end(), b.graces.begin(), b.graces.end(),
                                            [](const auto& x, const auto& y) { return x.place == y.place; });
  }

  void collect_notes(const lesson::Music& from, const lesson::Music& to, lesson::GridChange& change) const {
    const Written there = written_notes(to);
    for (const auto& [at, note] : written_notes(from)) {
      const lesson::Note& moved = *there.at(at);
      if (!same_place(*note, moved)) change.notes.emplace(at, moved);
    }
    for (std::size_t b = 0; b < from.bars.size(); ++b) {
      if (from.bars[b].same_as_previous) continue;
      for (std::size_t e = 0; e < from.bars[b].events.size(); ++e) {
        collect_hands(from.bars[b].events[e], to.bars[b].events[e], change);
      }
    }
  }

  // The words of a count's notes, one a string.
  static void collect_hands(const lesson::Event& from, const lesson::Event& to, lesson::GridChange& change) {
    std::optional<std::uint32_t> fingers;
    std::optional<std::uint32_t> spellings;
    const auto earliest = [](std::optional<std::uint32_t>& first, const auto& word) {
      if (word) first = std::min(first.value_or(word->range.begin), word->range.begin);
    };
    for (const lesson::Note& note : from.notes) {
      earliest(fingers, note.finger);
      earliest(spellings, note.spell);
    }
    const bool keeps = std::any_of(to.notes.begin(), to.notes.end(), [](const auto& note) { return note.finger; });
    if (fingers && !keeps) change.words[*fingers] = "";
    if (!spellings) return;
    std::string& words = change.words[*spellings];
    for (const lesson::Note& note : to.notes) {
      if (note.spell) words += (words.empty() ? "" : ",") + note.spell->value.to_string();
    }
  }

  void collect_words(const lesson::Example& example, const lesson::Bar& bar, int fifths,
                     lesson::GridChange& change) const {
    const auto collect = [&](Range range, std::string (*shift)(std::string_view, int)) {
      const bool inside = range.begin >= example.grid.begin && range.end <= example.grid.end;
      if (!inside) return;  // a chord that came with another example's notes
      if (file_.bytes()[range.begin] == '"') range = {range.begin + 1, range.end - 1, range.file};
      std::string text = shift(written(range), fifths);
      if (text != written(range)) change.words[range.begin] = std::move(text);
    };
    for (const lesson::ChordMark& mark : bar.chords) collect(mark.range, shifted_chord);
    for (const lesson::Word& word : bar.texts) collect(word.range, shifted_text);
  }

  std::string_view written(Range range) const {
    return std::string_view(file_.bytes()).substr(range.begin, range.end - range.begin);
  }

  const source::Text& file_;
  const lesson::Lesson& before_;
  const lesson::Lesson& after_;
  std::vector<source::Edit> edits_;
};

}  // namespace

std::string rewritten(const source::Text& file, const lesson::Lesson& before, const lesson::Lesson& after) {
  return Rewriter(file, before, after).run();
}

}  // namespace fretsheaf::transposition
