#pragma once

#include <string>
#include <vector>

#include "spoken/phrases.h"
#include "spoken/places.h"

namespace fretsheaf::spoken {

// What is told at a place beside the notes: before them a chord, a loudness, a sign of the way; after them words.
struct Mark {
  enum class Order { section, road, chord, loudness, span, lyric, text };
  theory::Rational at;
  Order order = Order::chord;
  std::string said;

  bool before_notes() const { return order < Order::lyric; }
};

// The marks of every bar of an example, each bar's by place and order.
std::vector<std::vector<Mark>> marks_of(const score::Example& example, const Places& places, const Phrases& phrases);

// A sign of the way to which another leads: it is met where it stands. All others act at their bar's end, but a fine.
bool is_goal(std::string_view road);
// "dal segno al Coda", as the words are spoken.
std::string road_said(std::string_view road);

}  // namespace fretsheaf::spoken
