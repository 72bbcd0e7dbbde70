#include <string>
#include <vector>

#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;
using templates::Role;

namespace {

// The flat's size and its gap are the house's measures; all else is chosen by eye.
constexpr double flat_space = 0.40;  // their staff spaces, of the text's size: a sharp is the taller sign
constexpr double sharp_space = 0.33;
constexpr double accidental_gap = 0.06;     // between it and the figure, of the text's size
constexpr double leading = 1.15;            // of the labels of one chord, which stand over each other
constexpr double answer_line_half = 1.1;    // spaces
constexpr double answer_line_weight = 0.5;  // points

// A label taken apart: accidentals before or after what is centred.
struct Label {
  std::string before;
  std::string middle;
  std::string after;
};

bool is_accidental(char c) {
  return c == 'b' || c == '#';
}

// "b3" has its sign in front, "Bb" behind.
Label take_apart(const std::string& text) {
  std::size_t begin = 0;
  while (begin + 1 < text.size() && is_accidental(text[begin])) ++begin;
  std::size_t end = text.size();
  while (end > begin + 1 && is_accidental(text[end - 1])) --end;
  return {text.substr(0, begin), text.substr(begin, end - begin), text.substr(end)};
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    if (c == ' ') {
      words.emplace_back();
    } else {
      words.back() += c;
    }
  }
  return words;
}

class LabelSetter {
 public:
  LabelSetter(Type& type, Role role, Part part)
      : type_(type), role_(role), part_(part), size_(type.look().style(role).size) {}

  // Draws one label, in the order that it is read, with its middle's centre at 0; accidentals hang beside it.
  Layer hung(const std::string& text) {
    const Label label = take_apart(text);
    Layer layer;
    const Words middle = type_.set(role_, label.middle, part_);
    const double half = (middle.ink.right - middle.ink.left) / 2 + accidental_gap * size_;
    double left = -half;
    for (std::size_t i = label.before.size(); i-- > 0;) left = sign(layer, label.before[i], left, true);
    layer.centred(middle, 0, 0);
    double right = half;
    for (const char c : label.after) right = sign(layer, c, right, false);
    return layer;
  }

  // Those of a chord stand over each other as its digits do, so that all share the column's centre. The first is that
  // of the lowest note; the row's baseline is the top one's, or `upward` the lowest one's.
  Layer stack(const std::string& text, bool upward) {
    const std::vector<std::string> words = words_of(text);
    const double lowest = upward ? 0 : static_cast<double>(words.size() - 1);
    Layer all;
    for (std::size_t i = 0; i < words.size(); ++i) {
      all.add(hung(words[i]), 0, (lowest - static_cast<double>(i)) * leading * size_);
    }
    return all;
  }

 private:
  // Returns where the next sign may begin.
  double sign(Layer& layer, char letter, double edge, bool leftward) {
    const bool flat = letter == 'b';
    const char32_t code_point = flat ? U'\u266D' : U'\u266F';
    const Words words =
        type_.signs({&code_point, 1}, (flat ? flat_space : sharp_space) * size_, part_, flat ? "♭" : "♯");
    const double width = words.ink.right - words.ink.left;
    layer.words(words, (leftward ? edge - width : edge) - words.ink.left, 0);
    const double step = width + accidental_gap * size_;
    return leftward ? edge - step : edge + step;
  }

  Type& type_;
  Role role_;
  Part part_;
  double size_;
};

// What the notes of a chord say, from the lowest string up.
std::string joined_marks(const score::Event& event, std::string score::Note::*mark) {
  std::string text;
  for (std::size_t i = event.notes.size(); i-- > 0;) {
    const score::Note& note = event.notes[i];
    if (note.tie_from || (note.*mark).empty()) continue;
    if (!text.empty()) text += ' ';
    text += note.*mark;
  }
  return text;
}

Layer label(const Context& context, Role role, Part part, const std::string& text, bool upward = false) {
  if (text.empty()) return {};
  return LabelSetter(context.type, role, part).stack(text, upward);
}

}  // namespace

Layer degree_label(const Context& context, const std::string& degrees) {
  return label(context, Role::degree, Part::degree_label, degrees);
}

Layer note_label(const Context& context, const score::Event& event) {
  return label(context, Role::note, Part::note_label, event.note_name);
}

Layer finger_label(const Context& context, const score::Event& event) {
  return label(context, Role::finger, Part::finger_label, joined_marks(event, &score::Note::finger));
}

Layer hand_label(const Context& context, const score::Event& event) {
  const std::string words = event.touch ? event.touch->hand : joined_marks(event, &score::Note::hand);
  return label(context, Role::hand, Part::technique, words, true);
}

Layer answer_line(const Context& context) {
  Layer layer;
  const double half = answer_line_half * context.space;
  layer.rule(Part::answer, {-half, 0}, {half, 0}, answer_line_weight);
  return layer;
}

Layer count_label(const Context& context, const score::Event& event) {
  Layer layer;
  if (!event.count) return layer;
  const Role role = event.count->rest ? Role::count_rest : Role::count;
  layer.centred(context.type.set(role, event.count->text, Part::count_label), 0, 0);
  return layer;
}

}  // namespace fretsheaf::layout
