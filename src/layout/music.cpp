#include "layout/music.h"

#include <algorithm>
#include <utility>

#include "layout/music_draw.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

struct NamedRow {
  Row row;
  words::Word word;
};

// Where both kinds of degrees are printed, each row says which it has.
words::Word degree_word(const score::Example& example, std::size_t row) {
  if (example.degree_kinds.size() < 2) return words::Word::degree;
  return example.degree_kinds[row] == lesson::Label::chord_degrees ? words::Word::chord_degree
                                                                   : words::Word::key_degree;
}

// The first column that has something in a row; nullptr where none has.
const Column* first_in(Row row, const std::vector<BarPiece>& pieces) {
  for (const BarPiece& piece : pieces) {
    for (const Column& column : piece.columns) {
      if (!column.row(row).empty()) return &column;
    }
  }
  return nullptr;
}

std::vector<RowName> row_names(const Context& context, const std::vector<BarPiece>& pieces) {
  const NamedRow named_rows[] = {{Row::degree, degree_word(context.example, 0)},
                                 {Row::second_degree, degree_word(context.example, 1)},
                                 {Row::note, words::Word::note},
                                 {Row::finger, words::Word::finger},
                                 {Row::count, words::Word::count}};
  std::vector<RowName> names;
  for (const NamedRow& named : named_rows) {
    const Column* first = first_in(named.row, pieces);
    if (first == nullptr) continue;
    const std::string text(words::word(context.score.language, named.word));
    names.push_back(
        {named.row, context.type.set(templates::Role::row_name, text, sheet::Part::row_name), {first->bar, first->at}});
  }
  return names;
}

MusicLine finished(Layer layer, const LinePlan& plan) {
  MusicLine line;
  line.first_bar = plan.first_bar();
  line.last_bar = plan.stops.back().bar;
  for (const sheet::Box& ink : layer.ink()) {
    line.top = std::min(line.top, ink.top);
    line.bottom = std::max(line.bottom, ink.bottom);
  }
  line.items = layer.take();
  return line;
}

}  // namespace

std::vector<MusicLine> engrave(const score::Example& example, const score::Score& score, double width, Type& type,
                               source::Diagnostics& diagnostics) {
  std::vector<MusicLine> lines;
  if (example.bars.empty()) return lines;
  const Context context = make_context(example, score, width, type, diagnostics);
  Engraving engraving{context, make_pieces(context), {}};
  engraving.names = row_names(context, engraving.pieces);
  split_wide_bars(engraving);
  int number = 0;
  for (const LinePlan& plan : break_lines(engraving)) {
    lines.push_back(finished(stack_line(engraving, plan, ++number), plan));
  }
  return lines;
}

}  // namespace fretsheaf::layout
