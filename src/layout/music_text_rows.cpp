#include <algorithm>
#include <limits>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "layout/ink.h"
#include "layout/music_draw.h"
#include "layout/music_signs.h"
#include "layout/outline.h"
#include "layout/paragraph.h"
#include "words/language.h"

// The texts under the music. Each begins at its note. Its words are not pushed off the staff: what does not fit before
// the next text, or before the staff's end, moves left while half of it or more stands from its note on, and else is
// broken into lines.
namespace fretsheaf::layout {

using sheet::Part;
using templates::Role;

namespace {

constexpr double leading = 1.25;        // of the text's size
constexpr double text_gap = 1.0;        // spaces between two texts of a row
constexpr double line_clearance = 0.4;  // spaces between the ink of rows where texts have several lines
constexpr double most_room = 14;        // spaces that a text pushes its neighbours apart for at most

PlainStyle style_of(const Context& context) {
  return {Role::expression, 1, Part::text, std::string(words::language_code(context.score.language)), {}};
}

std::vector<TextLine> broken(const Context& context, const std::string& text, double width) {
  return set_plain(text, width, style_of(context), context.type);
}

// How much room a text asks of the notes it stands under.
double room_of(const Context& context, const std::string& text) {
  return std::min(context.type.width(Role::expression, text), most_room * context.space);
}

struct Text {
  const std::string* words = nullptr;
  double left = 0;  // where it begins if it can
};

// A line's texts by their rows, from left to right.
std::map<int, std::vector<Text>> texts_of(const Context& context, const LinePlan& line) {
  std::map<int, std::vector<Text>> texts;
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::column) continue;
    for (const lesson::Word& word : context.bar(stop.column->bar).texts) {
      if (word.at != stop.column->at) continue;
      texts[word.row].push_back({&word.text, stop.centre - proportion::head * context.space});
    }
  }
  return texts;
}

// A text between the one before it in its row and what ends its room.
Layer placed(const Context& context, const Text& text, double before, double end, double staff_end) {
  const double natural = context.type.width(Role::expression, *text.words);
  double measure = std::min({natural, 2 * (end - text.left), end - before});
  measure = std::min(std::max(measure, room_of(context, *text.words)), staff_end);
  Layer layer;
  double right = 0;
  double y = 0;
  // A hair more than its own width, so that rounding breaks nothing.
  for (TextLine& line : broken(context, *text.words, measure + 0.01)) {
    const std::optional<sheet::Box> ink = ink_of(line.items, context.type);
    if (!ink) continue;
    layer.words({std::move(line.items), line.width, *ink}, 0, y);
    right = std::max(right, ink->right);  // a slanted letter leans out of its width
    y += text_leading(context);
  }
  const double left = std::max(before, std::min(text.left, end - right));
  layer.move(std::max(0.0, std::min(left, staff_end - right)), 0);
  return layer;
}

// All of a row, y = 0 its baseline; a text that has no room beside the one before it stands under it.
Layer text_row(const Context& context, const LinePlan& line, const std::vector<Text>& texts) {
  Layer row;
  const double gap = text_gap * context.space;
  double before = 0;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const double end = i + 1 < texts.size() ? texts[i + 1].left - gap : line.width;
    Layer text = placed(context, texts[i], before, end, line.width);
    const double down = descent(row.ink(), text.ink(), line_clearance * context.space, gap / 2);
    if (down > std::numeric_limits<double>::lowest()) text.move(0, std::max(0.0, down));
    if (const auto reach = reach_of(text)) before = std::max(before, reach->right + gap);
    row.add(std::move(text));
  }
  return row;
}

}  // namespace

double text_leading(const Context& context) {
  return leading * context.type.look().style(Role::expression).size;
}

Layer text_room(const Context& context, const lesson::Word& word) {
  Layer layer;
  const double left = -proportion::head * context.space;
  const double y = word.row * text_leading(context);
  layer.reserve({left, y - text_leading(context), left + room_of(context, word.text), y});
  return layer;
}

Layer text_rows(const Context& context, const LinePlan& line) {
  Layer all;
  double y = 0;
  for (const auto& [number, texts] : texts_of(context, line)) {
    Layer row = text_row(context, line, texts);
    if (row.empty()) continue;
    row.move(0, y);
    const double down = std::max(0.0, descent(all.ink(), row.ink(), line_clearance * context.space, 0));
    row.move(0, down);
    all.add(std::move(row));
    y += down + text_leading(context);
  }
  return all;
}

}  // namespace fretsheaf::layout
