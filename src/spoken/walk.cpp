#include <algorithm>
#include <string>
#include <utility>

#include "spoken/bars.h"
#include "spoken/opening.h"
#include "spoken/phrases.h"
#include "spoken/pictures.h"
#include "spoken/prose.h"
#include "spoken/spoken.h"
#include "words/language.h"

namespace fretsheaf::spoken {
namespace {

using words::Word;

score::Run run_of(std::string text) {
  score::Run run;
  run.text = std::move(text);
  return run;
}

class Walker {
 public:
  explicit Walker(const score::Score& score) : score_(score), phrases_(score) {
    walk_.language = words::language_code(score.language);
    walk_.title = phrases_.plain(score.title);
  }

  Walk walk() {
    add_title_block();
    add_prose(score_.intro, 1, phrases_, walk_);
    const score::Example* before = nullptr;
    for (const score::Example& example : score_.examples) {
      add_example(example, before);
      before = &example;
    }
    add_practice(score_.practice, 2);
    add_log();
    add_footer();
    return std::move(walk_);
  }

 private:
  std::string word(Word word) const { return std::string(words::word(score_.language, word)); }

  void heading(int level, std::string_view text) {
    Piece& piece = walk_.pieces.emplace_back();
    piece.kind = Piece::Kind::heading;
    piece.level = level;
    std::string raised(text);
    words::raise(raised, 0);
    piece.runs.push_back(run_of(std::move(raised)));
  }

  void paragraph(const std::string& text) {
    if (text.empty()) return;
    walk_.pieces.emplace_back().runs.push_back(run_of(phrases_.plain(text)));
  }

  void item(std::string text, std::optional<int> ordinal) {
    Piece& piece = walk_.pieces.emplace_back();
    piece.kind = Piece::Kind::item;
    piece.ordinal = ordinal;
    piece.depth = 1;
    words::raise(text, 0);
    piece.runs.push_back(run_of(std::move(text)));
  }

  void sentence(std::string_view text) {
    std::string said;
    add_sentence(said, text);
    paragraph(said);
  }

  void add_title_block() {
    const score::Heading& head = score_.heading;
    heading(1, walk_.title);
    sentence(head.answer_key);
    sentence(phrases_.plain(score::plain(head.subtitle)));
    std::string meta = head.series;
    add_item(meta, head.number);
    add_item(meta, head.level);
    sentence(meta);
    for (const score::Fact& fact : head.facts) {
      sentence(fact.label + std::string(phrases_[Sentence::colon]) + score::plain(fact.value));
    }
    if (head.name_line) {
      sentence(word(Word::name) + ", " + word(Word::date) + std::string(phrases_[Sentence::colon]) +
               std::string(phrases_[Sentence::marks_to_find]));
    }
    if (head.logo && !head.logo->alternative.empty()) {
      sentence(phrases_(Sentence::picture, {{"text", head.logo->alternative}}));
    }
    if (head.link) walk_.pieces.emplace_back().runs.push_back({*head.link, false, false, false, head.link});
  }

  void add_example(const score::Example& example, const score::Example* before) {
    std::string title = words::fill_number(score_.language, Word::example, example.number);
    const std::string name = phrases_.plain(score::plain(example.title));
    if (!name.empty()) title += std::string(phrases_[Sentence::colon]) + name;
    heading(2, title);
    add_prose(example.intro, 2, phrases_, walk_);
    if (example.form) paragraph(form_said(example, phrases_));
    if (example.neck) paragraph(neck_said(*example.neck, phrases_));
    add_boxes(example);
    paragraph(opening_of(example, phrases_, before));
    for (SaidBar& bar : bars_of(example, phrases_)) add_bar(bar);
    add_ladder(example);
    add_build_up(example);
    add_practice(example.practice, 3);
  }

  void add_bar(SaidBar& bar) {
    Piece& piece = walk_.pieces.emplace_back();
    piece.kind = Piece::Kind::lines;
    // What repeats an earlier bar goes on in its line.
    const bool one_line = bar.body.find('\n') == std::string::npos;
    if (one_line && !bar.body.empty()) bar.head += ' ' + bar.body;
    piece.cells.push_back(std::move(bar.head));
    for (std::size_t at = 0; !one_line && at < bar.body.size();) {
      const std::size_t end = std::min(bar.body.find('\n', at), bar.body.size());
      piece.cells.push_back(bar.body.substr(at, end - at));
      at = end + 1;
    }
    if (!bar.tail.empty()) piece.cells.push_back(std::move(bar.tail));
  }

  void add_boxes(const score::Example& example) {
    if (example.boxes.empty()) return;
    heading(3, word(Word::chord_shapes));
    for (const score::ChordBox& box : example.boxes) item(box_said(box, phrases_), std::nullopt);
  }

  void add_ladder(const score::Example& example) {
    if (!example.ladder) return;
    heading(3, word(Word::tempo_ladder));
    sentence(phrases_(Sentence::passes_at_each, {{"passes", words::counted(score_.language, words::Counted::passes,
                                                                           std::max(1, example.ladder->passes))}}));
    std::string rungs;
    for (const int rung : example.ladder->rungs) add_item(rungs, std::to_string(rung));
    sentence(rungs);
  }

  void add_build_up(const score::Example& example) {
    if (example.build_up.empty()) return;
    heading(3, word(Word::build_up));
    int ordinal = 0;
    for (const score::Step& step : example.build_up) item(step_said(step), ++ordinal);
  }

  std::string step_said(const score::Step& step) const {
    if (step.whole) return word(Word::whole);
    if (step.first == step.last) return words::fill_number(score_.language, Word::bar, step.first);
    return phrases_(Sentence::bars_from_to, {{"from", std::to_string(step.first)}, {"to", std::to_string(step.last)}});
  }

  void add_practice(const std::vector<score::Blocks>& notes, int level) {
    if (notes.empty()) return;
    heading(level, word(Word::practice_notes));
    for (const score::Blocks& note : notes) add_note(note, level, phrases_, walk_);
  }

  void add_log() {
    if (score_.practice_log == 0) return;
    heading(2, word(Word::practice_log));
    Piece& piece = walk_.pieces.emplace_back();
    piece.kind = Piece::Kind::table;
    piece.cells = {word(Word::date), word(Word::tempo), word(Word::clean_passes), word(Word::note_column)};
    piece.rows = score_.practice_log;
    std::string rows;
    add_sentence(rows, phrases_.counted(Sentence::rows_one, piece.rows));
    piece.runs.push_back(run_of(std::move(rows)));
  }

  void add_footer() {
    paragraph(word(Word::cautions));
    sentence(score_.teacher);
    sentence(score_.copyright);
  }

  const score::Score& score_;
  Phrases phrases_;
  Walk walk_;
};

}  // namespace

Walk walk_through(const score::Score& score) {
  return Walker(score).walk();
}

}  // namespace fretsheaf::spoken
