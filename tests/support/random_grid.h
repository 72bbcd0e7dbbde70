#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "fretboard/instrument.h"
#include "support/dice.h"
#include "support/random_music.h"

namespace fretsheaf::test {

// Writes music as a tab grid that reads back as that music.
class GridWriter {
 public:
  GridWriter(const lesson::Music& music, const fretboard::Neck& neck, int bars_a_strip, bool every_beat)
      : music_(music),
        labels_(fretboard::string_labels(neck)),
        bars_a_strip_(bars_a_strip),
        every_beat_(every_beat),
        play_(needs_play(music)) {}

  std::string write() {
    std::string grid;
    for (std::size_t first = 0; first < music_.bars.size(); first += static_cast<std::size_t>(bars_a_strip_)) {
      if (first > 0) grid += "\n";
      grid += strip(first, std::min(music_.bars.size(), first + static_cast<std::size_t>(bars_a_strip_)));
    }
    return grid;
  }

 private:
  using Rational = theory::Rational;

  // A count, what stands under it row by row, and how far to the left that reaches.
  struct Column {
    Rational at;
    std::string count;
    std::map<std::string, std::pair<int, std::string>> tokens;  // by row: characters before the count, and all
    int x = 0;
  };

  static constexpr const char* order_[] = {"count", "section", "ending", "meter", "chord",
                                           "road",  "mark",    "span",   "hold"};
  static constexpr const char* below_[] = {"play", "finger", "hand", "spell", "stroke", "lyric", "text"};

  // Whether counts must be told apart from strums.
  static bool needs_play(const lesson::Music& music) {
    bool needed = false;
    for (const lesson::Bar& bar : music.bars) {
      for (const lesson::Event& event : bar.events) {
        const Rational counts = event.at / bar.meter.count();
        const Rational figure = Rational(counts.floor()) * bar.meter.count();
        const bool bare =
            std::none_of(bar.events.begin(), bar.events.end(), [&](const auto& e) { return e.at == figure; });
        needed = needed || bare || (!event.written_out && !bar.same_as_previous) ||
                 (event.strum && *event.strum != lesson::Strum::plain);
      }
    }
    return needed && !music.has_strings;
  }

  std::vector<std::string> row_names() const {
    std::vector<std::string> names(std::begin(order_), std::end(order_));
    if (music_.has_strings) names.insert(names.end(), labels_.begin(), labels_.end());
    names.insert(names.end(), std::begin(below_), std::end(below_));
    return names;
  }

  std::string strip(std::size_t first, std::size_t last) {
    std::map<std::string, std::string> rows;
    for (const std::string& name : row_names()) {
      rows[name] = name == "span" || name == "hold" ? std::string("mark") : name;
      rows[name].resize(8, ' ');
      rows[name] +=
          name == "count" && first == 0 ? sign(music_.left) : padded("|", first == 0 ? sign(music_.left).size() : 1);
    }
    std::vector<std::string> used = {"count"};
    for (std::size_t i = first; i < last; ++i) write_bar(i, rows, used);
    std::string text;
    for (const std::string& name : row_names()) {
      const bool needed = std::find(labels_.begin(), labels_.end(), name) != labels_.end() ||
                          std::find(used.begin(), used.end(), name) != used.end();
      if (needed) text += rows[name] + "\n";
    }
    return text;
  }

  static std::string padded(std::string text, std::size_t width) {
    text.resize(std::max(width, text.size()), ' ');
    return text;
  }

  static std::string sign(lesson::BarSign sign) {
    const char* signs[] = {"|", "||", "|:", ":|", ":|:", "|"};
    return signs[static_cast<int>(sign)];
  }

  void write_bar(std::size_t i, std::map<std::string, std::string>& rows, std::vector<std::string>& used) {
    std::vector<Column> columns = columns_of(i);
    const int width = place(columns);
    std::map<std::string, std::string> cells;
    for (const std::string& name : row_names()) {
      cells[name] = std::string(static_cast<std::size_t>(width), is_string(name) && i % 2 == 0 ? '-' : ' ');
    }
    for (const Column& column : columns) {
      put(cells["count"], column.x, column.count);
      for (const auto& [name, token] : column.tokens) {
        put(cells[name], column.x - token.first, token.second);
        used.push_back(name);
      }
    }
    write_spans(i, columns, cells["span"], used);
    const std::string end = sign(music_.bars[i].right);
    for (auto& [name, cell] : cells) rows[name] += cell + (name == "count" ? end : padded("|", end.size()));
  }

  bool is_string(const std::string& name) const {
    return std::find(labels_.begin(), labels_.end(), name) != labels_.end();
  }

  static void put(std::string& cell, int x, const std::string& text) {
    cell.replace(static_cast<std::size_t>(x), text.size(), text);
  }

  // Gives every column its place; the width of the cell.
  static int place(std::vector<Column>& columns) {
    int x = 1;
    for (Column& column : columns) {
      int left = 0;
      std::size_t right = column.count.size();
      for (const auto& entry : column.tokens) {
        left = std::max(left, entry.second.first);
        right = std::max(right, entry.second.second.size() - static_cast<std::size_t>(entry.second.first));
      }
      column.x = x + left;
      x = column.x + static_cast<int>(right) + 1;
    }
    return x;
  }

  static std::string count_text(Rational at, const theory::Meter& meter) {
    const Rational counts = at / meter.count();
    const Rational part = counts - Rational(counts.floor());
    if (part == Rational(0)) return std::to_string(counts.floor() + 1);
    if (part == Rational(1, 2)) return "&";
    if (part == Rational(1, 4)) return "e";
    if (part == Rational(3, 4)) return "a";
    if (part == Rational(1, 3)) return "la";
    if (part == Rational(2, 3)) return "li";
    return "+" + part.to_string();
  }

  std::vector<Column> columns_of(std::size_t i) {
    const lesson::Bar& bar = music_.bars[i];
    std::vector<Column> columns;
    if (bar.same_as_previous) {
      columns.push_back({bar.begin, "%", {}, 0});
    } else {
      add_counts(bar, columns);
    }
    if (bar.meter_written) columns[0].tokens["meter"] = {0, bar.meter.to_string()};
    for (const auto& chord : bar.chords) add(columns, chord.at, "chord", theory::to_string(chord.chord));
    for (const auto& word : bar.sections) add(columns, word.at, "section", word.text);
    for (const auto& word : bar.roads) add(columns, word.at, "road", quoted(word.text));
    for (const auto& word : bar.texts) add(columns, word.at, "text", quoted(word.text));
    for (const auto& word : bar.lyrics) add(columns, word.at, "lyric", word.text + (word.goes_on ? "-" : ""));
    if (bar.plays) columns.back().tokens["road"] = {0, std::to_string(bar.plays->value) + "x"};
    for (const auto& dynamic : music_.dynamics) {
      if (dynamic.moment.bar == static_cast<int>(i)) add(columns, dynamic.moment.at, "mark", dynamic.text);
    }
    for (const auto& span : music_.spans) {
      if (span.first.bar == static_cast<int>(i)) add(columns, span.first.at, "span", span_name(span.kind) + "-");
    }
    for (const auto& ending : music_.endings) {
      if (ending.first_bar == static_cast<int>(i)) columns[0].tokens["ending"] = {0, ending.label};
    }
    return columns;
  }

  static std::string quoted(const std::string& text) {
    return text.find_first_of(" |") == std::string::npos ? text : "\"" + text + "\"";
  }

  static void add(std::vector<Column>& columns, Rational at, const std::string& row, const std::string& text) {
    const auto found = std::find_if(columns.begin(), columns.end(), [&](const Column& c) { return c.at == at; });
    (found == columns.end() ? columns.front() : *found).tokens[row] = {0, text};
  }

  void add_counts(const lesson::Bar& bar, std::vector<Column>& columns) {
    for (const lesson::Event& event : bar.events) {
      const Rational count = bar.meter.count();
      const Rational figure = Rational((event.at / count).floor()) * count;
      const bool has_figure =
          std::any_of(columns.begin(), columns.end(), [&](const Column& c) { return c.at == figure; });
      if (figure != event.at && !has_figure) columns.push_back({figure, count_text(figure, bar.meter), {}, 0});
      const std::string text = count_text(event.at, bar.meter);
      const bool rest = event.kind == lesson::EventKind::rest && event.written_out;
      columns.push_back({event.at, rest ? "(" + text + ")" : text, {}, 0});
      add_event(columns.back(), event);
    }
    if (every_beat_ && (music_.has_strings || play_)) add_beats(bar, columns);
  }

  // Bare counts on the beats where nothing starts.
  static void add_beats(const lesson::Bar& bar, std::vector<Column>& columns) {
    for (Rational at(0); at < bar.end; at += bar.meter.count()) {
      const auto after = std::find_if(columns.begin(), columns.end(), [&](const Column& c) { return c.at >= at; });
      if (at <= bar.begin || (after != columns.end() && after->at == at)) continue;
      columns.insert(after, {at, count_text(at, bar.meter), {}, 0});
    }
  }

  void add_event(Column& column, const lesson::Event& event) {
    if (event.fermata) column.tokens["hold"] = {0, "fermata"};
    if (event.stroke) column.tokens["stroke"] = {0, event.stroke->value == lesson::Stroke::down ? "d" : "u"};
    if (!event.written_out) return;
    if (play_ && event.kind == lesson::EventKind::struck) {
      const char* strums[] = {"*", "x", ">", "(*)"};
      column.tokens["play"] = {0, strums[static_cast<int>(*event.strum)]};
    }
    std::string fingers;
    std::string hands;
    std::string spellings;
    for (const lesson::Note& note : event.notes) {
      column.tokens[labels_[static_cast<std::size_t>(note.place.string) - 1]] = token(note);
      if (note.finger) fingers += (fingers.empty() ? "" : ",") + note.finger->value;
      if (note.hand) hands += (hands.empty() ? "" : ",") + note.hand->value;
      if (note.spell) spellings += (spellings.empty() ? "" : ",") + note.spell->value.to_string();
    }
    if (!fingers.empty()) column.tokens["finger"] = {0, fingers};
    if (!hands.empty()) column.tokens["hand"] = {0, hands};
    if (!spellings.empty()) column.tokens["spell"] = {0, spellings};
  }

  static std::string approach(lesson::Approach approach) {
    const char* signs[] = {"", "h", "p", "/", "\\"};
    return signs[static_cast<int>(approach)];
  }

  static std::pair<int, std::string> token(const lesson::Note& note) {
    if (note.held) return {0, "="};
    std::string text;
    for (const auto& grace : note.graces) text += approach(grace.approach) + std::to_string(grace.place.fret);
    text += approach(note.approach);
    if (note.ghost || note.harmonic) text += note.ghost ? "(" : "<";
    const int before = static_cast<int>(text.size());
    text += note.dead ? "x" : std::to_string(note.place.fret);
    if (note.ghost || note.harmonic) text += note.ghost ? ")" : ">";
    if (note.accent) text += ">";
    if (note.staccato) text += ".";
    if (note.tenuto) text += "_";
    if (note.vibrato) text += "~";
    if (note.bend) text += "^" + note.bend->tones.to_string() + (note.bend->release ? "v" : "");
    if (note.slide_off != lesson::SlideOff::none) text += note.slide_off == lesson::SlideOff::up ? "/" : "\\";
    return {before, text};
  }

  static std::string span_name(lesson::SpanKind kind) {
    const char* names[] = {"<", ">", "PM", "let", "TP"};
    return names[static_cast<int>(kind)];
  }

  void write_spans(std::size_t i, const std::vector<Column>& columns, std::string& cell,
                   std::vector<std::string>& used) {
    const int index = static_cast<int>(i);
    for (const lesson::Span& span : music_.spans) {
      if (span.first.bar > index || span.last.bar < index) continue;
      const auto x_of = [&](const lesson::Moment& moment) {
        const auto found =
            std::find_if(columns.begin(), columns.end(), [&](const Column& c) { return c.at == moment.at; });
        return found == columns.end() ? columns.back().x : found->x;
      };
      const int begin = span.first.bar == index ? x_of(span.first) : 0;
      const int end = span.last.bar == index ? std::max(x_of(span.last) + 1, begin) : static_cast<int>(cell.size());
      std::string text = span.first.bar == index ? span_name(span.kind) : "-";
      text.resize(std::max(text.size(), static_cast<std::size_t>(end - begin)), '-');
      // A hairpin over one count still needs a dash to be one.
      if (text.size() == 1 && span.first.bar == index) text += "-";
      put(cell, begin, text);
      used.push_back("span");
    }
  }

  const lesson::Music& music_;
  std::vector<std::string> labels_;
  int bars_a_strip_;
  bool every_beat_;
  bool play_;
};

inline std::string write_grid(const lesson::Music& music, const fretboard::Neck& neck, int bars_a_strip = 4,
                              bool every_beat = true) {
  return GridWriter(music, neck, bars_a_strip, every_beat).write();
}

}  // namespace fretsheaf::test
