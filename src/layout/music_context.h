#pragma once

#include <algorithm>
#include <functional>
#include <span>
#include <string>
#include <vector>

#include "layout/music_notes_chords.h"
#include "layout/type.h"
#include "score/score.h"
#include "source/diagnostic.h"

// What every part of the music engraver needs to know, and the fixed proportions of its signs.
namespace fretsheaf::layout {

// Which staves are drawn, and what stands on them.
struct Staves {
  bool slash = true;
  bool notes = false;
  bool tab = true;
  // Without a staff above it the tab carries stems, rests and the time signature itself.
  bool tab_rhythm() const { return tab && !slash && !notes; }
};

// Where a note reached by a hammer-on, pull-off or slide comes from: the latest note on its string.
struct Joint {
  int from_bar = 0;
  int from_event = 0;
  int bar = 0;
  int event = 0;
  int string = 1;
  lesson::Approach approach = lesson::Approach::none;
};

struct Context {
  const score::Example& example;
  const score::Score& score;
  Type& type;
  source::Diagnostics& diagnostics;
  double width = 0;  // of a full line
  double space = 0;  // a staff space of the slash and notes staves
  double tab = 0;    // between two tab lines
  Staves staves;
  bool stemless = false;  // heads without their values: the rhythm is to be written
  int strings = 4;
  int most_beams = 0;                        // of any value in the example
  double two_figures = 0;                    // the width of a fret number of two figures
  double number_figure = 0;                  // and of a figure of a bar's number
  std::vector<Joint> joints;                 // by the bar of their second note
  std::vector<Joint> leaving;                // the same, by the bar of their first
  std::vector<const score::Event*> tremolo;  // what is picked in tremolo, sorted by address
  StaffChords chords;                        // on the notes staff; empty where there is none

  const templates::Measures& measures() const { return type.measures(); }
  const score::Bar& bar(int index) const { return example.bars[static_cast<std::size_t>(index)]; }
  const score::Event& event(int bar_index, int event_index) const {
    return bar(bar_index).events[static_cast<std::size_t>(event_index)];
  }
  double tab_height() const { return tab * (strings - 1); }
  const StaffChord& chord(int bar_index, int event_index) const {
    return chords[static_cast<std::size_t>(bar_index)][static_cast<std::size_t>(event_index)];
  }
  // The joints whose second note stands in those bars (both inclusive), and those whose first does.
  std::span<const Joint> joints_into(int first_bar, int last_bar) const;
  std::span<const Joint> joints_out_of(int first_bar, int last_bar) const;
  // Whether this copy leaves a part of the example out, or, an answer key, sets it apart.
  bool leaves_out(bool lesson::Hidden::*part) const { return !score.answer_key && example.hidden.*part; }
  bool sets_apart(bool lesson::Hidden::*part) const { return score.answer_key && example.hidden.*part; }
  bool in_tremolo(const score::Event& event) const {
    return std::binary_search(tremolo.begin(), tremolo.end(), &event, std::less<>());
  }
};

Context make_context(const score::Example& example, const score::Score& score, double width, Type& type,
                     source::Diagnostics& diagnostics);

// Proportions of the signs, in staff spaces (engraving.md, table of measures; there in points where a value belongs to
// one size, here divided by its staff space of 5.5 or its tab gap of 8).
namespace proportion {
inline constexpr double staff_line = 0.10;
inline constexpr double stem = 0.12;
inline constexpr double beam = 0.5;
inline constexpr double beam_step = 0.75;  // from one beam's top to the next one's
inline constexpr double thin_bar = 0.15;
inline constexpr double thick_bar = 0.5;
inline constexpr double bar_gap = 0.40;
inline constexpr double bracket = 0.14;
inline constexpr double head = 0.95;       // half the width of a filled slash
inline constexpr double open_head = 1.30;  // of an open one
inline constexpr double dead_head = 0.62;
inline constexpr double harmonic_head = 0.72;
inline constexpr double ghost_scale = 0.78;
inline constexpr double ghost_tips = 1.0;  // the parentheses' tips from the centre
inline constexpr double ghost_bulge = 0.36;
inline constexpr double dot_radius = 0.2;
inline constexpr double dot_right = 0.65;  // its centre from the head's right edge
inline constexpr double tie_drop = 0.76;
inline constexpr double tab_line = 0.0625;  // of a tab gap, as are those that follow
inline constexpr double digit_gap = 0.19;   // the line's gap beyond a digit, each side
inline constexpr double ghost_digit = 0.425;
inline constexpr double dead_digit = 0.3625;
}  // namespace proportion

}  // namespace fretsheaf::layout
