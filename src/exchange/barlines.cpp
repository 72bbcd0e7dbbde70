#include "exchange/barlines.h"

namespace fretsheaf::exchange {

namespace {

using lesson::BarSign;

// "1. 2." as MusicXML counts endings: "1, 2".
std::string ending_number(const std::string& label) {
  std::string numbers;
  std::string digits;
  for (const char c : label + " ") {
    if (c >= '0' && c <= '9') {
      digits += c;
    } else if (!digits.empty()) {
      numbers += (numbers.empty() ? "" : ", ") + digits;
      digits.clear();
    }
  }
  return numbers.empty() ? "1" : numbers;
}

void write_ending(Element barline, const lesson::Ending& ending, const char* type) {
  barline.add("ending", type[2] == 'a' ? ending.label : "")
      .set("number", ending_number(ending.label))
      .set("type", type);
}

const lesson::Ending* ending_at(const Part& part, int bar, bool begins) {
  for (const lesson::Ending& ending : part.example.endings) {
    if ((begins ? ending.first_bar : ending.last_bar) == bar) return &ending;
  }
  return nullptr;
}

}  // namespace

void write_left_barline(Element measure, const Part& part, int bar) {
  const BarSign sign = bar == 0 ? part.example.left : part.example.bars[bar - 1].right;
  const bool written = lesson::begins_repeat(sign);
  const bool repeat = written || part.targets[bar];
  const lesson::Ending* ending = ending_at(part, bar, true);
  if (!repeat && ending == nullptr) return;
  Element barline = measure.add("barline").set("location", "left");
  if (repeat) barline.add("bar-style", "heavy-light");
  if (ending != nullptr) write_ending(barline, *ending, "start");
  if (repeat) barline.add("repeat").set("direction", "forward");
}

void write_right_barline(Element measure, const Part& part, int bar) {
  const score::Bar& own = part.example.bars[bar];
  const bool repeat = lesson::ends_repeat(own.right);
  const lesson::Ending* ending = ending_at(part, bar, false);
  const char* style = repeat                          ? "light-heavy"
                      : own.right == BarSign::final   ? "light-heavy"
                      : own.right == BarSign::doubled ? "light-light"
                                                      : nullptr;
  if (style == nullptr && ending == nullptr) return;
  Element barline = measure.add("barline").set("location", "right");
  if (style != nullptr) barline.add("bar-style", style);
  if (ending != nullptr) write_ending(barline, *ending, repeat ? "stop" : "discontinue");
  if (!repeat) return;
  Element element = barline.add("repeat").set("direction", "backward");
  // An ending says itself which times it is played.
  if (own.plays > 0 && ending == nullptr) element.set("times", std::to_string(own.plays));
}

}  // namespace fretsheaf::exchange
