#include <algorithm>
#include <string>
#include <utility>

#include "layout/music_draw.h"
#include "layout/music_notes_room.h"
#include "layout/music_signs.h"
#include "layout/outline.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;
using sheet::Box;

// Gaps that stacked rows keep at least, in spaces (chosen by eye).
constexpr double row_gap = 0.4;
constexpr double label_gap = 0.7;
constexpr double label_under_stems = 1.3;
constexpr double text_under_lyrics = 1.4;
constexpr double chord_gap = 1.0;
constexpr double staff_gap = 0.5;
constexpr double beside = 0.3;

// Distances of rows, in spaces of the slash staff or gaps of the tab (the house's measures; where there is no slash
// staff or no tab, chosen by eye).
constexpr double stroke_foot = 4.1;          // above the slash line
constexpr double dynamic_above_tab = 1.0;    // tab gaps above the top line
constexpr double words_above_tab = 0.8125;   // tab gaps
constexpr double vibrato_above_tab = 1.0;    // tab gaps
constexpr double dynamic_below_staff = 3.2;  // spaces, below the lowest of the upper staves
constexpr double words_below_staff = 2.4;
constexpr double word_beside = 1.0;           // between a letter of the technique row and a bend's amount: "1 h"
constexpr double most_raised_together = 1.0;  // the letters of a line rise together so far, else each by itself
constexpr double chord_above_notes = 3.4;
constexpr double chord_above_tab = 2.4;
constexpr double sign_above_staff = 0.8;  // strokes and fermatas where no slashes have them
constexpr double road_above_chord = 2.6;
constexpr double ending_above_chord = 26 / 5.5;
constexpr double number_above_staff = 0.6;
constexpr double writing_room = 6;  // points, over lines to write labels on

class Stacker {
 public:
  Stacker(const Engraving& engraving, const LinePlan& line, int number)
      : engraving_(engraving), context_(engraving.context), line_(line), number_(number), sp_(context_.space) {}

  Layer stack() {
    if (context_.staves.slash) add_slash();
    if (context_.staves.notes) add_notes();
    if (context_.staves.tab) {
      add_tab();
    } else {
      for (Middle& middle : middle_rows()) below(std::move(middle.layer), bottom_ + middle.below * sp_, row_gap);
    }
    Layer bars = bar_lines(context_, line_, span_, dots_);
    all_.add(std::move(bars));
    add_labels();
    const double chords = add_chords();
    for (const Box& band : bands_) all_.behind(answer_ground(band));
    all_.move(0, -chords);
    return std::move(all_);
  }

 private:
  // The signs of a row at their places in the line, y = 0 its baseline: each by itself, or all together.
  std::vector<Layer> each(Row which) const {
    std::vector<Layer> layers;
    for (const Stop& stop : line_.stops) {
      if (stop.kind != StopKind::column || stop.column->row(which).empty()) continue;
      const bool at_time = which == Row::chord || which == Row::dynamic;
      Layer signs = stop.column->row(which);
      signs.move(at_time ? stop.x : stop.centre, 0);
      layers.push_back(std::move(signs));
    }
    return layers;
  }
  Layer row(Row which) const {
    Layer all;
    for (Layer& signs : each(which)) all.add(std::move(signs));
    return all;
  }

  // `stems` are those that beams gave a length.
  void add_events(Layer& layer, Row which, const char* staff, const NoteStems* stems = nullptr) const {
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      const Stop& stop = line_.stops[i];
      if (stop.kind != StopKind::column) continue;
      Layer signs = stop.column->row(which);
      if (which == Row::tab && i == 1) signs.add(stop.column->tied_digits);
      if (signs.empty()) continue;
      signs.move(stop.centre, 0);
      if (stems != nullptr && stems->of[i]) signs.add(beamed_stem(context_, stop, *stems->of[i]));
      sheet::EventInfo info;
      info.bar = context_.bar(stop.column->bar).number;
      info.at = stop.column->at.to_string();
      info.staff = staff;
      info.line = number_;
      info.x = stop.centre;
      signs.wrap(std::move(info));
      layer.add(std::move(signs));
    }
  }

  // What an answer key sets apart, its ink at `y`: as high as that, all along the music.
  void set_apart(bool lesson::Hidden::*part, const std::optional<Box>& ink, double y = 0) {
    if (context_.sets_apart(part)) add_band(ink, y, {line_.prefix, line_.width});
  }

  void add_band(const std::optional<Box>& ink, double y, BarSpan along) {
    if (ink) bands_.push_back({along.left, y + ink->top, along.right, y + ink->bottom});
  }

  // A row of labels, by all that would give it away.
  void set_row_apart(Row which, const std::optional<Box>& ink, double y) {
    set_apart(&lesson::Hidden::labels, ink, y);
    if (which == Row::count) return set_apart(&lesson::Hidden::rhythm, ink, y);
    set_apart(&lesson::Hidden::frets, ink, y);
    const std::vector<lesson::Label>& kinds = context_.example.degree_kinds;
    const std::size_t index = which == Row::second_degree ? 1 : 0;
    const bool degrees = which == Row::degree || which == Row::second_degree;
    if (degrees && index < kinds.size() && kinds[index] == lesson::Label::chord_degrees) {
      set_apart(&lesson::Hidden::chords, ink, y);
    }
  }

  void add_slash() {
    Layer slash = slash_staff(context_, line_);
    Layer rhythm;
    add_events(rhythm, Row::slash, "slash");
    rhythm.add(slash_beams(context_, line_));
    Layer tuplets = slash_tuplets(context_, line_);
    has_tuplets_ = !tuplets.empty();
    rhythm.add(std::move(tuplets));
    rhythm.add(slash_ties(context_, line_));
    set_apart(&lesson::Hidden::rhythm, extent(rhythm));
    slash.add(std::move(rhythm));
    all_.add(std::move(slash));
    dots_.push_back({p::dot_radius * sp_, {-0.5 * sp_, 0.5 * sp_}});
    span_ = {-sp_, sp_};
    bottom_ = sp_;
  }

  // The notes staff, topmost or hung under the slash staff.
  void add_notes() {
    NoteStems stems = note_stems(context_, line_);
    Layer notes = notes_staff(context_, line_);
    add_events(notes, Row::notes, "notes", &stems);
    Layer tuplets = notes_tuplets(context_, line_, stems);
    NotesRoom room(context_, line_, stems, tuplets);
    add_notes_ties(context_, line_, room);
    add_notes_joints(context_, line_, stems, room);
    notes.add(std::move(stems.beams));
    notes.add(std::move(tuplets));
    notes.add(room.take());
    double y = 0;
    if (context_.staves.slash) {
      y = std::max(context_.measures().slash_to_notes, descent(all_.ink(), notes.ink(), staff_gap * sp_, beside * sp_));
    }
    set_apart(&lesson::Hidden::frets, extent(notes), y);
    if (!context_.staves.slash) set_apart(&lesson::Hidden::rhythm, extent(notes), y);
    notes.move(0, y);
    all_.add(std::move(notes));
    span_.bottom = bottom_ = y + staff_height * sp_;
    dots_.push_back({p::dot_radius * sp_, {y + 1.5 * sp_, y + 2.5 * sp_}});
  }

  // What stands between the upper staves and the tab: where it is above the tab's top line (in tab gaps), or below the
  // staff over it (in spaces) where there is no tab. What is nearer to the tab comes first; each rises over what is
  // there before it where they meet.
  struct Middle {
    Layer layer;
    double above_tab = words_above_tab;
    double below = words_below_staff;
  };
  std::vector<Middle> middle_rows() {
    std::vector<Middle> rows;
    const auto add = [&](Layer layer, double above_tab, double below) {
      if (!layer.empty()) rows.push_back({std::move(layer), above_tab, below});
    };
    Techniques drawn = techniques(context_, line_);
    on_tab_ = std::move(drawn.on_tab);
    letters_ = each(Row::word);
    letters_.insert(letters_.end(), drawn.letters.begin(), drawn.letters.end());
    if (!context_.staves.tab) {
      for (Layer& letter : letters_) add(std::move(letter), words_above_tab, words_below_staff);
    }
    add(row(Row::hand), words_above_tab, words_below_staff);
    for (Layer& wave : each(Row::vibrato)) add(std::move(wave), vibrato_above_tab, words_below_staff);
    for (Layer& span : dashed_spans(context_, line_)) add(std::move(span), words_above_tab, words_below_staff);
    Layer dynamics = row(Row::dynamic);
    dynamics.add(hairpins(context_, line_));
    add(std::move(dynamics), dynamic_above_tab, dynamic_below_staff);
    return rows;
  }

  // The tab with the rows that share the room above it, hung under the slash staff.
  void add_tab() {
    std::vector<Middle> rows = middle_rows();
    Layer tab = tab_staff(context_, line_);
    add_events(tab, Row::tab, "tab");
    tab.add(std::move(on_tab_));
    if (context_.staves.tab_rhythm()) {
      tab.add(tab_beams(context_, line_));
      tab.add(tab_tuplets(context_, line_));
      tab.add(tab_ties(context_, line_));
    }
    const std::optional<Box> staff = extent(tab);
    add_letters(tab);
    for (Middle& middle : rows) {
      raise_over(tab, std::move(middle.layer), -middle.above_tab * context_.tab, row_gap);
    }
    double y = 0;
    if (!context_.staves.tab_rhythm()) {
      y = context_.staves.notes ? bottom_ + context_.measures().notes_to_tab : context_.measures().slash_to_tab;
      y = std::max(y, descent(all_.ink(), tab.ink(), staff_gap * sp_, beside * sp_));
    }
    set_apart(&lesson::Hidden::frets, staff, y);
    if (context_.staves.tab_rhythm()) set_apart(&lesson::Hidden::rhythm, staff, y);
    tab.move(0, y);
    span_.bottom = bottom_ = y + context_.tab_height();
    all_.add(std::move(tab));
    std::vector<double> dots = tab_dots(context_);
    for (double& dot : dots) dot += y;
    dots_.push_back({0.22 * sp_, std::move(dots)});
  }

  // The letters of hammer-ons, pull-offs and the like stand on one baseline where little is in their way.
  void add_letters(Layer& tab) {
    const double y = -words_above_tab * context_.tab;
    Layer all;
    std::vector<Layer> others;
    for (const Layer& letter : letters_) {
      const bool free = descent(letter.ink(), all.ink(), 0, beside * sp_) == std::numeric_limits<double>::lowest();
      if (free) {
        all.add(letter);
      } else {
        others.push_back(letter);
      }
    }
    all.move(0, y);
    const double up = std::max(0.0, descent(all.ink(), tab.ink(), row_gap * sp_, word_beside * sp_));
    if (up <= most_raised_together * context_.tab) {
      all.move(0, -up);
      tab.add(std::move(all));
    } else {
      others = std::move(letters_);
    }
    for (Layer& letter : others) raise_over(tab, std::move(letter), y, row_gap, word_beside);
  }

  // Adds a row above what is in `base`, at `y` or as much higher as it takes.
  void raise_over(Layer& base, Layer row, double y, double gap, double aside = beside) {
    if (row.empty()) return;
    row.move(0, y);
    const double up = descent(row.ink(), base.ink(), gap * sp_, aside * sp_);
    if (up > 0) row.move(0, -up);
    base.add(std::move(row));
  }

  // Adds a row below everything, at `y` or as much lower as it takes; returns its baseline.
  double below(Layer row, double y, double gap) {
    if (row.empty()) return y;
    row.move(0, y);
    const double down = std::max(0.0, descent(all_.ink(), row.ink(), gap * sp_, beside * sp_));
    row.move(0, down);
    all_.add(std::move(row));
    return y + down;
  }

  // How high a figure reaches over the baseline of its row of labels, as a coordinate.
  double figure_top() const { return context_.type.set(templates::Role::count, "1", sheet::Part::count_label).ink.top; }

  void add_labels() {
    double y = bottom_ + context_.measures().tab_to_label;
    double gap = context_.staves.tab_rhythm() ? label_under_stems : label_gap;
    std::optional<double> end_of_stacks;
    for (const Row which : {Row::degree, Row::second_degree, Row::note, Row::finger, Row::count}) {
      Layer labels = row(which);
      if (labels.empty()) continue;
      const std::optional<Box> answers = extent(labels);
      for (const RowName& name : engraving_.names) {
        if (name.row == which && begins_in(name, line_)) labels.words(name.words, 0, 0);
      }
      if (context_.leaves_out(&lesson::Hidden::labels)) y += writing_room;
      // The lower labels of a chord would be read as the next row's, where that has nothing under the chord.
      if (end_of_stacks) y = std::max(y, *end_of_stacks + gap * sp_ - figure_top());
      y = below(std::move(labels), y, gap);
      const bool stacked = answers && answers->bottom > context_.measures().label_to_label / 2;
      end_of_stacks = stacked ? std::optional(y + answers->bottom) : std::nullopt;
      set_row_apart(which, answers, y);
      y += context_.measures().label_to_label;
      gap = label_gap;
    }
    Layer lyrics = row(Row::lyric);
    lyrics.add(lyric_lines(context_, line_));
    const bool lyrics_drawn = !lyrics.empty();
    if (!lyrics.empty()) y = below(std::move(lyrics), y + 0.3 * sp_, gap) + lyric_leading(context_);
    Layer texts = text_rows(context_, line_);
    // Words about the music keep apart from those that are sung.
    if (!texts.empty()) below(std::move(texts), y + 0.3 * sp_, lyrics_drawn ? text_under_lyrics : gap);
  }

  // Where the chord row's baseline is where nothing is in its way.
  double chord_y() const {
    const templates::Measures& m = context_.measures();
    if (context_.staves.slash) return has_tuplets_ ? -m.chord_to_slash_tuplet : -m.chord_to_slash;
    return -(context_.staves.notes ? chord_above_notes : chord_above_tab) * sp_;
  }

  // Returns the chord row's baseline.
  double add_chords() {
    const double foot = -(context_.staves.slash ? stroke_foot : sign_above_staff) * sp_;
    raise_over(all_, row(Row::stroke), foot, row_gap);
    raise_over(all_, row(Row::fermata), foot, row_gap);
    double y = chord_y();
    Sections boxes = sections(context_, line_);
    Layer chords = row(Row::chord);
    const std::optional<Box> answers = extent(chords);
    const std::vector<BarSpan> to_write = bars_to_write(context_, line_);
    if (context_.leaves_out(&lesson::Hidden::chords)) chords.add(chord_lines(context_, to_write));
    Layer number = bar_number();
    const bool boxed = !boxes.at_start.empty();
    // The number gives way to a section's box, and without chords it stands close to the staff.
    if (boxed || chords.empty()) {
      raise_over(all_, std::move(number), span_.top - number_above_staff * sp_, row_gap);
    } else {
      chords.add(std::move(number));
    }
    const std::vector<Layer> above = boxes_above(std::move(boxes), chords);
    if (!chords.empty()) {
      chords.move(0, y);
      const double up = std::max(0.0, descent(chords.ink(), all_.ink(), chord_gap * sp_, beside * sp_));
      chords.move(0, -up);
      all_.add(std::move(chords));
      y -= up;
    }
    if (context_.sets_apart(&lesson::Hidden::chords) && !to_write.empty()) {
      add_band(answers, y, {to_write.front().left, to_write.back().right});
    }
    Layer roads = row(Row::road);
    roads.add(repeat_counts(context_, line_));
    raise_over(all_, std::move(roads), y - road_above_chord * sp_, chord_gap);
    raise_over(all_, endings(context_, line_), y - ending_above_chord * sp_, chord_gap);
    for (const Layer& box : above) raise_over(all_, box, y - ending_above_chord * sp_ + 1.3 * sp_, chord_gap);
    return y;
  }

  bool apart(const Layer& a, const Layer& b) const {
    return descent(a.ink(), b.ink(), 0, chord_gap * sp_) == std::numeric_limits<double>::lowest();
  }

  // Puts the sections' boxes on the chord row where they have room beside the chords: the one at the line's start, and
  // the others if all of them have. Returns those that go above it: all that keep apart on one level, then the rest.
  std::vector<Layer> boxes_above(Sections boxes, Layer& chords) const {
    std::vector<Layer> above(1);
    Layer& start = apart(boxes.at_start, chords) ? chords : above.front();
    start.add(std::move(boxes.at_start));
    if (boxes.others.empty()) return above;
    Layer taken = chords;
    bool all_beside = true;
    for (const Layer& box : boxes.others) {
      all_beside = all_beside && apart(box, taken);
      taken.add(box);
    }
    for (Layer& box : boxes.others) {
      if (all_beside) {
        chords.add(std::move(box));
      } else if (apart(box, above.front())) {
        above.front().add(std::move(box));
      } else {
        above.push_back(std::move(box));
      }
    }
    return above;
  }

  // From the second line on.
  Layer bar_number() const {
    Layer layer;
    if (line_.first_line) return layer;
    const std::string text = std::to_string(context_.bar(line_.first_bar()).number);
    layer.words(context_.type.set(templates::Role::bar_number, text, sheet::Part::bar_number), 0, 0);
    return layer;
  }

  const Engraving& engraving_;
  const Context& context_;
  const LinePlan& line_;
  int number_;
  double sp_;
  Layer all_;
  Layer on_tab_;
  std::vector<Layer> letters_;
  StaffSpan span_;
  double bottom_ = 0;  // of the lowest staff
  bool has_tuplets_ = false;
  std::vector<DotHeights> dots_;
  std::vector<Box> bands_;
};

}  // namespace

Layer stack_line(const Engraving& engraving, const LinePlan& line, int number) {
  return Stacker(engraving, line, number).stack();
}

}  // namespace fretsheaf::layout
