#include <algorithm>
#include <string>

#include "layout/music_draw.h"
#include "layout/music_signs.h"
#include "words/words.h"

namespace fretsheaf::layout {

using sheet::Part;
using templates::Role;

namespace {

constexpr double leading = 1.25;  // of the lyric's size
// The space of the sign after "To Coda", of the words' size (chosen by eye).
constexpr double coda_beside = 0.4125;
constexpr double coda_gap = 0.8;  // spaces

std::string trimmed_lower(const std::string& text) {
  std::string lower;
  for (const char c : text) lower += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return lower;
}

// A syllable of a verse in a line.
struct Syllable {
  const lesson::Word* word;
  const Stop* stop;
  double half;
};

std::vector<Syllable> syllables(const Context& context, const LinePlan& line, int verse) {
  std::vector<Syllable> found;
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::column) continue;
    for (const lesson::Word& word : context.bar(stop.column->bar).lyrics) {
      if (word.row != verse || word.at != stop.column->at) continue;
      const Words words = context.type.set(Role::lyric, word.text, Part::lyric);
      found.push_back({&word, &stop, (words.ink.right - words.ink.left) / 2});
    }
  }
  return found;
}

// The last stop up to `end` at which a syllable still sounds: events without one of their own, before a rest.
const Stop* held_to(const Context& context, const LinePlan& line, const Stop* from, const Stop* end) {
  const Stop* last = nullptr;
  bool passed = false;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    const Stop& stop = line.stops[i];
    if (&stop == end) break;
    if (passed && line.is_event(i)) {
      if (context.event(stop.column->bar, stop.column->event).rest) break;
      last = &stop;
    }
    passed = passed || &stop == from;
  }
  return last;
}

}  // namespace

double lyric_leading(const Context& context) {
  return leading * context.type.look().style(Role::lyric).size;
}

Layer lyric_syllable(const Context& context, const lesson::Word& word) {
  Layer layer;
  const double y = word.row * lyric_leading(context);
  layer.centred(context.type.set(Role::lyric, word.text, Part::lyric), 0, y);
  if (word.goes_on) {
    const double hyphen = 0.4 * context.type.look().style(Role::lyric).size;
    const double right = layer.ink().back().right;
    layer.reserve({right, y - 0.01, right + hyphen, y});
  }
  return layer;
}

Layer lyric_lines(const Context& context, const LinePlan& line) {
  Layer layer;
  int verses = 0;
  for (const score::Bar& bar : context.example.bars) {
    for (const lesson::Word& word : bar.lyrics) verses = std::max(verses, word.row + 1);
  }
  const double size = context.type.look().style(Role::lyric).size;
  for (int verse = 0; verse < verses; ++verse) {
    const double y = verse * lyric_leading(context);
    const std::vector<Syllable> found = syllables(context, line, verse);
    for (std::size_t i = 0; i < found.size(); ++i) {
      const Syllable& here = found[i];
      const Syllable* next = i + 1 < found.size() ? &found[i + 1] : nullptr;
      const double from = here.stop->centre + here.half;
      if (here.word->goes_on) {
        const double to = next ? next->stop->centre - next->half : line.width;
        const double middle = (from + to) / 2;
        const double half = std::min(0.15 * size, (to - from) / 2 - 0.05 * size);
        if (half > 0)
          layer.rule(Part::lyric, {middle - half, y - 0.25 * size}, {middle + half, y - 0.25 * size}, 0.07 * size);
        continue;
      }
      const Stop* held = held_to(context, line, here.stop, next ? next->stop : nullptr);
      if (held == nullptr) continue;
      double to = held->centre + proportion::head * context.space;
      if (next != nullptr) to = std::min(to, next->stop->centre - next->half - 0.3 * size);
      if (to - from > 0.5 * size) layer.rule(Part::lyric, {from + 0.15 * size, y}, {to, y}, 0.06 * size);
    }
  }
  return layer;
}

Layer fermata_sign(const Context& context) {
  Layer layer;
  const Words sign = context.type.sign(U'\U0001D110', context.space, Part::articulation);
  layer.centred(sign, 0, -sign.ink.bottom);
  return layer;
}

Layer road_sign(const Context& context, const std::string& text) {
  Layer layer;
  const std::string lower = trimmed_lower(text);
  const double left = -proportion::head * context.space;
  if (lower == "segno" || lower == "coda") {
    const Words sign =
        context.type.sign(lower == "segno" ? U'\U0001D10B' : U'\U0001D10C', context.space, Part::road_sign);
    layer.words(sign, left - sign.ink.left, -sign.ink.bottom);
    return layer;
  }
  // A single word keeps its capital: "Fine".
  std::string words = text;
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
  const Words set = context.type.set(Role::expression, words, Part::road_sign);
  layer.words(set, left, 0);
  if (lower == "to coda") {
    // The words have the sign that they lead to beside them (common practice).
    const double size = context.type.look().style(Role::expression).size;
    const Words sign = context.type.sign(U'\U0001D10C', coda_beside * size, Part::road_sign);
    const double middle = -context.type.cap_height(Role::expression) / 2;
    layer.words(sign, left + set.width + coda_gap * context.space - sign.ink.left,
                middle - (sign.ink.top + sign.ink.bottom) / 2);
  }
  return layer;
}

Layer repeat_counts(const Context& context, const LinePlan& line) {
  Layer layer;
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::bar_line || context.bar(stop.bar).plays == 0) continue;
    const std::string text =
        words::fill_number(context.score.language, words::Word::times, context.bar(stop.bar).plays);
    const Words words = context.type.set(Role::ending, text, Part::road_sign);
    layer.words(words, stop.x - words.ink.right, 0);
  }
  return layer;
}

}  // namespace fretsheaf::layout
