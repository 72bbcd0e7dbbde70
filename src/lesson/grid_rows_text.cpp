#include "lesson/grid_rows_text.h"

#include <algorithm>
#include <array>
#include <set>
#include <string_view>
#include <utility>

#include "lesson/grid_text.h"
#include "lesson/grid_tokens_text.h"

namespace fretsheaf::lesson {

namespace {

bool contains(const std::vector<Rational>& moments, Rational at) {
  return std::find(moments.begin(), moments.end(), at) != moments.end();
}

bool begins_there(const Bar& bar, Rational at) {
  return std::any_of(bar.events.begin(), bar.events.end(), [&](const Event& event) { return event.at == at; });
}

}  // namespace

GridRows::GridRows(const Music& music, const fretboard::Neck& neck)
    : music_(music), strings_(fretboard::string_labels(neck)), wanted_(music.bars.size()) {
  for (std::size_t bar = 0; bar < music_.bars.size(); ++bar) want_words(bar);
  want_marks();
  want_spans();
  play_ = play_needed();
  for (std::size_t bar = 0; bar < music_.bars.size(); ++bar) {
    if (music_.bars[bar].same_as_previous) continue;
    for (const Event& event : music_.bars[bar].events) want_event(bar, event);
  }
  lay_rows();
}

void GridRows::want(std::size_t bar, Kind kind, int ordinal, Rational at, GridToken token) {
  // All that stands in a `%` bar belongs to its first beat.
  if (music_.bars[bar].same_as_previous) at = music_.bars[bar].begin;
  wanted_[bar].push_back({kind, ordinal, at, std::move(token)});
}

void GridRows::want_free(std::size_t bar, Kind kind, Rational at, GridToken token) {
  const bool percent = music_.bars[bar].same_as_previous;
  int ordinal = 0;
  for (const Wanted& other : wanted_[bar]) {
    if (other.kind == kind && (percent || other.at == at)) ordinal = std::max(ordinal, other.ordinal + 1);
  }
  want(bar, kind, ordinal, at, std::move(token));
}

void GridRows::want_words(std::size_t index) {
  const Bar& bar = music_.bars[index];
  const bool first = index == 0;
  if (bar.meter_written || (!first && !(bar.meter == music_.bars[index - 1].meter))) {
    want(index, Kind::meter, 0, bar.begin, {0, bar.meter.to_string()});
  }
  for (const Ending& ending : music_.endings) {
    if (ending.first_bar == static_cast<int>(index)) want(index, Kind::ending, 0, bar.begin, {0, ending.label});
  }
  for (const ChordMark& chord : bar.chords) want(index, Kind::chord, 0, chord.at, {0, theory::to_string(chord.chord)});
  for (const Word& word : bar.sections) want_free(index, Kind::section, word.at, {0, word_token(word.text)});
  for (const Word& word : bar.roads) want_free(index, Kind::road, word.at, {0, word_token(word.text)});
  if (bar.plays) {
    want_free(index, Kind::road, bar.events.back().at, {0, std::to_string(bar.plays->value) + "x"});
  }
  for (const Word& word : bar.lyrics) {
    want(index, Kind::lyric, word.row, word.at, {0, word_token(word.text) + (word.goes_on ? "-" : "")});
  }
  for (const Word& word : bar.texts) want_free(index, Kind::text, word.at, {0, word_token(word.text)});
}

void GridRows::want_marks() {
  for (const Dynamic& dynamic : music_.dynamics) {
    want_free(static_cast<std::size_t>(dynamic.moment.bar), Kind::mark, dynamic.moment.at, {0, dynamic.text});
  }
}

// Each in the first row that is free from its first bar to its last.
void GridRows::want_spans() {
  std::vector<int> busy_until;  // by row: the last bar of its latest span
  std::vector<std::size_t> order(music_.spans.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::pair(music_.spans[a].first.bar, music_.spans[a].first.at) <
           std::pair(music_.spans[b].first.bar, music_.spans[b].first.at);
  });
  span_rows_.assign(order.size(), 0);
  spans_in_.resize(music_.bars.size());
  for (const std::size_t i : order) {
    const Span& span = music_.spans[i];
    int row = 0;
    while (row < static_cast<int>(busy_until.size()) && busy_until[row] >= span.first.bar) ++row;
    if (row == static_cast<int>(busy_until.size())) busy_until.push_back(0);
    busy_until[row] = span.last.bar;
    span_rows_[i] = row;
    for (int bar = span.first.bar; bar <= span.last.bar; ++bar) spans_in_[static_cast<std::size_t>(bar)].push_back(i);
    // A dash more than its name: a hairpin needs one.
    want(static_cast<std::size_t>(span.first.bar), Kind::span, row, span.first.at, {0, span_name(span.kind) + "-"});
  }
}

void GridRows::want_event(std::size_t bar, const Event& event) {
  if (event.fermata) want_free(bar, Kind::mark, event.at, {0, "fermata"});
  if (event.kind == EventKind::rest) return;
  if (event.stroke) {
    want(bar, Kind::stroke, 0, event.at, {0, event.stroke->value == Stroke::down ? "d" : "u"});
  }
  if (is_bare(bar, event)) return;
  if (play_ && event.kind == EventKind::struck && event.strum) {
    want(bar, Kind::play, 0, event.at, {0, strum_token(*event.strum)});
  }
  for (const Note& note : event.notes) {
    want(bar, Kind::string, note.place.string - 1, event.at, note_token(note));
  }
  want_hands(bar, event);
}

// One word a string, of the notes that are struck or of all.
void GridRows::want_hands(std::size_t bar, const Event& event) {
  const auto joined = [&](Kind kind, auto&& word_of) {
    std::string words;
    for (const Note& note : event.notes) {
      const std::string word = word_of(note);
      if (!word.empty()) words += (words.empty() ? "" : ",") + word;
    }
    if (!words.empty()) want(bar, kind, 0, event.at, {0, words});
  };
  joined(Kind::finger, [](const Note& note) { return note.finger ? note.finger->value : ""; });
  joined(Kind::hand, [](const Note& note) { return note.hand ? note.hand->value : ""; });
  joined(Kind::spell, [](const Note& note) { return note.spell ? note.spell->value.to_string() : ""; });
}

// Whether a bare count at a bar's start says it: all that sounds before goes on.
bool GridRows::is_bare(std::size_t index, const Event& event) const {
  const Bar& bar = music_.bars[index];
  if (event.kind != EventKind::held || event.at != bar.begin) return false;
  if (index == 0 || bar.begin != Rational(0)) return event.notes.empty();
  const bool signs = std::any_of(event.notes.begin(), event.notes.end(), [](const Note& note) {
    return !note.held || note.staccato || note.tenuto || note.vibrato || note.bend || note.slide_off != SlideOff::none;
  });
  return !signs && event.notes.size() == music_.bars[index - 1].events.back().notes.size();
}

// A rhythm needs a play row where some counts are not struck.
bool GridRows::play_needed() const {
  if (music_.has_strings) return false;
  for (std::size_t index = 0; index < music_.bars.size(); ++index) {
    const Bar& bar = music_.bars[index];
    if (bar.same_as_previous) continue;
    for (const Event& event : bar.events) {
      if (event.kind == EventKind::held || (event.strum && *event.strum != Strum::plain)) return true;
    }
    for (const Rational at : moments(index)) {
      if (!begins_there(bar, at)) return true;
    }
  }
  return false;
}

// Every position of a bar that a count must say, but for the beats where nothing happens.
std::vector<Rational> GridRows::moments(std::size_t index) const {
  const Bar& bar = music_.bars[index];
  std::set<Rational> all;
  for (const Event& event : bar.events) all.insert(event.at);
  for (const Wanted& wanted : wanted_[index]) all.insert(wanted.at);
  for (const std::size_t i : spans_in_[index]) {
    if (music_.spans[i].last.bar == static_cast<int>(index)) all.insert(music_.spans[i].last.at);
  }
  const std::set<Rational> known = all;
  for (const Rational at : known) all.insert(Rational((at / bar.meter.count()).floor()) * bar.meter.count());
  return {all.begin(), all.end()};
}

void GridRows::lay_rows() {
  struct Label {
    Kind kind;
    const char* text;
  };
  constexpr std::array<Label, 15> labels = {{{Kind::section, "section"},
                                             {Kind::ending, "ending"},
                                             {Kind::meter, "meter"},
                                             {Kind::chord, "chord"},
                                             {Kind::road, "road"},
                                             {Kind::span, "mark"},
                                             {Kind::mark, "mark"},
                                             {Kind::string, ""},
                                             {Kind::play, "play"},
                                             {Kind::finger, "finger"},
                                             {Kind::hand, "hand"},
                                             {Kind::spell, "spell"},
                                             {Kind::stroke, "stroke"},
                                             {Kind::lyric, "lyric"},
                                             {Kind::text, "text"}}};
  std::map<Kind, int> most;
  for (const auto& bar : wanted_) {
    for (const Wanted& wanted : bar) most[wanted.kind] = std::max(most[wanted.kind], wanted.ordinal + 1);
  }
  if (music_.has_strings) most[Kind::string] = static_cast<int>(strings_.size());
  rows_.push_back({Kind::section, -1, "count"});
  for (const Label& label : labels) {
    for (int ordinal = 0; ordinal < most[label.kind]; ++ordinal) {
      const bool string = label.kind == Kind::string;
      rows_.push_back({label.kind, ordinal, string ? strings_[static_cast<std::size_t>(ordinal)] : label.text});
    }
  }
}

std::size_t GridRows::row_of(Kind kind, int ordinal) const {
  for (std::size_t row = 1; row < rows_.size(); ++row) {
    if (rows_[row].kind == kind && rows_[row].ordinal == ordinal) return row;
  }
  return 0;
}

std::vector<GridColumn> GridRows::columns(std::size_t index) const {
  const Bar& bar = music_.bars[index];
  std::vector<GridColumn> columns;
  if (bar.same_as_previous) {
    columns.push_back({bar.begin, "%", {}, 0});
  } else {
    std::vector<Rational> all = moments(index);
    for (Rational at; at < bar.end && (music_.has_strings || play_); at += bar.meter.count()) {
      if (at >= bar.begin && !contains(all, at)) all.push_back(at);
    }
    std::sort(all.begin(), all.end());
    for (const Rational at : all) {
      const auto rest = std::find_if(bar.events.begin(), bar.events.end(), [&](const Event& event) {
        return event.at == at && event.kind == EventKind::rest && event.written_out;
      });
      const std::string text = theory::count_name(at, bar.meter.count());
      columns.push_back({at, rest != bar.events.end() ? "(" + text + ")" : text, {}, 0});
    }
  }
  for (const Wanted& wanted : wanted_[index]) {
    const auto column =
        std::find_if(columns.begin(), columns.end(), [&](const GridColumn& own) { return own.at == wanted.at; });
    column->tokens[row_of(wanted.kind, wanted.ordinal)] = wanted.token;
  }
  return columns;
}

std::string GridRows::dashes(std::size_t index, std::size_t row, const std::vector<GridColumn>& columns,
                             int width) const {
  if (rows_[row].kind != Kind::span) return {};
  const int bar = static_cast<int>(index);
  std::string cell;
  for (const std::size_t i : spans_in_[index]) {
    const Span& span = music_.spans[i];
    if (span_rows_[i] != rows_[row].ordinal) continue;
    if (cell.empty()) cell.assign(static_cast<std::size_t>(width), ' ');
    const auto x_of = [&](Rational at) {
      const auto column = std::find_if(columns.begin(), columns.end(), [&](const auto& own) { return own.at == at; });
      return column == columns.end() ? columns.back().x : column->x;
    };
    const int begin = span.first.bar == bar ? x_of(span.first.at) : 0;
    const int end = span.last.bar == bar ? x_of(span.last.at) + 1 : width;
    std::string text = span.first.bar == bar ? span_name(span.kind) + "-" : "-";
    text.resize(std::max(text.size(), static_cast<std::size_t>(std::max(end - begin, 0))), '-');
    cell.replace(static_cast<std::size_t>(begin), text.size(), text);
  }
  return cell;
}

bool GridRows::needs_row(std::size_t row, std::size_t bar) const {
  const Row& own = rows_[row];
  for (const std::size_t i : spans_in_[bar]) {
    if (own.kind == Kind::span && span_rows_[i] >= own.ordinal) return true;
  }
  return std::any_of(wanted_[bar].begin(), wanted_[bar].end(),
                     [&](const Wanted& wanted) { return wanted.kind == own.kind && wanted.ordinal >= own.ordinal; });
}

std::vector<std::size_t> GridRows::used(std::size_t first, std::size_t last) const {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    bool needed = row == count_row || rows_[row].kind == Kind::string;
    for (std::size_t bar = first; bar < last && !needed; ++bar) needed = needs_row(row, bar);
    if (needed) rows.push_back(row);
  }
  return rows;
}

}  // namespace fretsheaf::lesson
